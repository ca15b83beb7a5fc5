//! A house written by hand: one TOML file, `docs/sheet.md` describes it.
//!
//! A sheet is read whole, every mistake in it is told at once, and only a sheet without mistakes becomes facts. This
//! folder does not write: what it makes is a list of [`facts::fact::Edit`].

mod draft;
mod edits;
mod house;
mod measured;
mod names;
mod part;
mod problem;
mod quantity;
mod rating;
mod reading;
mod service;
mod several;
mod table;
mod wire;

use std::path::Path;

use facts::fact::reserved::MOST_PARTS;
use phrase::{Arg, Phrase};
use toml::de::DeTable;

pub use draft::Sheet;
pub use problem::{MOST_LISTED, Place, Problem, Problems};
use table::{Section, Source};

/// The longest sheet taken, bytes. 2,000 parts told in full take less than a tenth.
pub const MOST_BYTES: u64 = 8 << 20;

/// Reads a sheet; `folder` is where it lies, and the files that it names beside it.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read(bytes: &[u8], folder: Option<&Path>) -> Result<Sheet, Problems> {
    let text = as_text(bytes)?;
    let source = Source::new(text);
    let (document, errors) = DeTable::parse_recoverable(text);
    let mut told = 0;
    for error in errors {
        let span = error.span().unwrap_or(0..0);
        let number = source.line(span.start);
        // What follows on the same line mostly follows from the first.
        if std::mem::replace(&mut told, number) == number {
            continue;
        }
        let line = text.lines().nth(number - 1).unwrap_or_default();
        let expected = Phrase::new("sheet-toml");
        source.refuse(&span, &Place::Whole, None, line.trim(), expected);
    }
    if !source.is_right() {
        return Err(source.into_problems());
    }
    let section = Section::new(&source, document.get_ref(), 0..0, Place::Whole);
    for heading in ["part", "room", "service", "reading"] {
        let rows = section.field(heading).map_or(0, |field| field.every().len());
        if rows > MOST_PARTS {
            let expected = Phrase::new("sheet-too-many")
                .with("most", Arg::Count(MOST_PARTS as u64))
                .text("heading", heading);
            section.refuse(heading, &rows.to_string(), expected);
        }
    }
    if !source.is_right() {
        return Err(source.into_problems());
    }
    let house = house::read(&section);
    let sheet = wire::join(house, folder);
    let problems = source.into_problems();
    if problems.is_empty() { Ok(sheet) } else { Err(problems) }
}

/// The text of a sheet's bytes, without the byte-order mark that some editors put first.
fn as_text(bytes: &[u8]) -> Result<&str, Problems> {
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    std::str::from_utf8(bytes).map_err(|error| {
        let (before, after) = bytes.split_at_checked(error.valid_up_to()).unwrap_or((bytes, &[]));
        let text = String::from_utf8_lossy(before);
        let source = Source::new(&text);
        let found = after.first().map_or_else(String::new, |byte| format!("0x{byte:02X}"));
        let at = text.len();
        source.refuse(&(at..at), &Place::Whole, None, &found, Phrase::new("sheet-utf8"));
        source.into_problems()
    })
}
