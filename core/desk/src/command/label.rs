//! `legwork label`: what a label states.

use std::io::{BufRead, Read};

mod photo_json;
mod photo_told;
mod rows;

pub mod photo;

use phrase::Phrase;

use super::context::Context;
use crate::error::DeskError;
use crate::output;
use crate::printed::Page;

/// The longest line taken as a label, bytes, its end aside.
const LONGEST: usize = label::LONGEST_TEXT;

/// Reads one label, or one a line of standard input where the text is `-`.
pub fn run(context: &Context, text: &str) -> Result<(), DeskError> {
    if text != "-" {
        if text.len() > LONGEST {
            return Err(DeskError::LabelLong { found: text.len(), most: LONGEST });
        }
        return tell(context, text);
    }
    let mut input = std::io::stdin().lock();
    for number in 1.. {
        let Some(line) = next_line(&mut input, number)? else { break };
        tell(context, &line)?;
    }
    Ok(())
}

/// The next line without its end; `None` at the end of the input. Read bytewise and capped: what comes in may be
/// anything.
fn next_line(input: &mut impl BufRead, number: usize) -> Result<Option<String>, DeskError> {
    let mut bytes = Vec::new();
    // With its end, of one byte or two.
    let most = LONGEST as u64 + 3;
    let cannot = |source| DeskError::Read { path: "standard input".into(), source };
    input.by_ref().take(most).read_until(b'\n', &mut bytes).map_err(cannot)?;
    if bytes.is_empty() {
        return Ok(None);
    }
    let line = bytes.strip_suffix(b"\n").unwrap_or(&bytes);
    let line = line.strip_suffix(b"\r").unwrap_or(line);
    if line.len() > LONGEST {
        return Err(DeskError::LabelTooLong { line: number, most: LONGEST });
    }
    let line = std::str::from_utf8(line).map_err(|_| DeskError::LabelNotText { line: number })?;
    Ok(Some(line.to_owned()))
}

fn tell(context: &Context, text: &str) -> Result<(), DeskError> {
    let reading = label::read(text);
    if context.json {
        return output::say_json(&format!("{}\n", telling::doubts::json_line(&reading)));
    }
    let mut page = Page::for_output();
    page.title(text);
    let told: Vec<_> = rows::of(context, &reading).into_iter().map(|row| (row.name, row.value)).collect();
    page.rows(2, &told);
    for doubt in &telling::doubts::in_english(&reading.doubts) {
        page.item(2, &context.say(&Phrase::new("desk-label-doubt").text("doubt", doubt)));
    }
    page.gap();
    output::say_page(page)
}
