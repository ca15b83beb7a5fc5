//! `legwork label`: what a label states.

use std::io::{BufRead, Read};

use label::{self, LabelReading};
use phrase::{Arg, Phrase};

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
    page.rows(2, &rows(context, &reading));
    for doubt in &telling::doubts::in_english(&reading.doubts) {
        page.item(2, &context.say(&Phrase::new("desk-label-doubt").text("doubt", doubt)));
    }
    page.gap();
    output::say_page(page)
}

/// What the label states, a row each.
fn rows(context: &Context, reading: &LabelReading) -> Vec<(String, String)> {
    let write = |arg| context.language.write(&arg);
    let mut rows = Vec::new();
    let mut row = |id: &str, value: String| rows.push((context.word(id), value));
    if let Some(kind) = reading.kind {
        row("desk-label-kind", context.say(&Phrase::new("desk-label-kind-name").text("kind", kind.name())));
    }
    if let Some(legs) = reading.legs {
        row("desk-label-legs", legs.to_string());
    }
    match (reading.low, reading.high) {
        (Some(low), Some(high)) => row("desk-label-band", write(Arg::Band(low.value(), high.value()))),
        (None, Some(high)) => {
            row(
                "desk-label-band",
                context.say(&Phrase::new("desk-up-to").with("edge", Arg::Frequency(high.value()))),
            );
        }
        (Some(low), None) => {
            row(
                "desk-label-band",
                context.say(&Phrase::new("desk-from").with("edge", Arg::Frequency(low.value()))),
            );
        }
        (None, None) => {}
    }
    if let (Some(low), Some(high)) = (reading.stop_low, reading.stop_high) {
        row("desk-label-stop-band", write(Arg::Band(low.value(), high.value())));
    }
    if let (Some(low), Some(high)) = (reading.return_low, reading.return_high) {
        row("desk-label-return-band", write(Arg::Band(low.value(), high.value())));
    }
    if let (Some(low), Some(high)) = (reading.satellite_low, reading.satellite_high) {
        row("desk-label-satellite-band", write(Arg::Band(low.value(), high.value())));
    }
    if !reading.leg_losses.is_empty() {
        let losses = reading.leg_losses.iter().map(|loss| Arg::Loss(loss.value())).collect();
        row("desk-label-losses", context.say(&Phrase::new("desk-list").with("items", Arg::Several(losses))));
    }
    let decibels = [
        ("desk-label-tap", reading.tap),
        ("desk-label-gain", reading.gain),
        ("desk-label-return-gain", reading.return_gain),
        ("desk-label-rejection", reading.rejection),
        ("desk-label-isolation", reading.isolation),
        ("desk-label-return-loss", reading.return_loss),
    ];
    for (id, figure) in decibels {
        if let Some(figure) = figure {
            row(id, write(Arg::Loss(figure.value())));
        }
    }
    let flags = [
        ("desk-label-power", reading.power_pass.map(label::PowerPass::passes)),
        ("desk-label-bypass", reading.moca_bypass),
        ("desk-label-passive-port", reading.modem_port),
        ("desk-label-moca", reading.says_moca),
        ("desk-label-indoor", reading.indoor_only),
    ];
    for (id, flag) in flags {
        if let Some(flag) = flag {
            row(id, context.word(if flag { "desk-yes" } else { "desk-no" }));
        }
    }
    if let Some(series) = reading.cable {
        row("desk-label-series", series.name().to_owned());
    }
    rows
}
