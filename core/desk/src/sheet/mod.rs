//! A house written by hand: one TOML file, `docs/sheet.md` describes it.
//!
//! A sheet is read whole, every mistake in it is told at once, and only a sheet without mistakes becomes facts. This
//! folder does not write: what it makes is a list of [`facts::fact::Edit`].

mod draft;
mod edits;
mod fields;
mod house;
mod known;
mod measured;
mod names;
mod onto;
mod part;
mod problem;
mod quantity;
mod rating;
mod reading;
mod service;
mod several;
mod size;
mod table;
mod value;
mod wire;

use std::path::Path;

use facts::fact::reserved::MOST_PARTS;
use phrase::{Arg, Phrase};
use toml::de::DeTable;

pub use draft::Sheet;
pub use known::Known;
pub use onto::{Called, edits_onto, name_anew};
pub use problem::{MOST_LISTED, Place, Problem, Problems, ValueFault};
use table::{Section, Source};
pub use value::{Among, Says, edits as edits_of_values};

/// The longest sheet taken, bytes. 2,000 parts told in full take less than a tenth.
pub const MOST_BYTES: u64 = 8 << 20;

/// Of a sheet of more pieces than this, what is no TOML is told one by one.
const MOST_TOLD_AT_ONCE: usize = 50_000;

/// Reads a sheet; `folder` is where it lies, and the files that it names beside it.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read(bytes: &[u8], folder: Option<&Path>) -> Result<Sheet, Problems> {
    read_onto(bytes, folder, &Known::default())
}

/// Reads a sheet for a survey that is there: what that knows need not stand in the sheet.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read_onto(bytes: &[u8], folder: Option<&Path>, known: &Known) -> Result<Sheet, Problems> {
    match read_all(bytes, folder, known) {
        (Some(sheet), problems) if problems.is_empty() => Ok(sheet),
        (_, problems) => Err(problems),
    }
}

/// Reads a sheet as far as it can be read, and tells everything that is wrong with it.
fn read_all(bytes: &[u8], folder: Option<&Path>, known: &Known) -> (Option<Sheet>, Problems) {
    let text = match as_text(bytes) {
        Ok(text) => text,
        Err(problems) => return (None, problems),
    };
    let source = Source::new(text);
    let Some(pieces) = size::pieces(&source) else { return (None, source.into_problems()) };
    let document = match DeTable::parse(text) {
        Ok(document) => document,
        Err(first) => {
            // The library keeps all mistakes, however many: of a text of nothing else, many times its length.
            let errors =
                if pieces > MOST_TOLD_AT_ONCE { vec![first] } else { DeTable::parse_recoverable(text).1 };
            refuse(&source, errors);
            return (None, source.into_problems());
        }
    };
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
        return (None, source.into_problems());
    }
    let empty = DeTable::new();
    let nothing = || Section::new(&source, &empty, 0..0, Place::Whole);
    let house = house::read(&section, known, nothing);
    let sheet = wire::join(house, folder, known);
    (Some(sheet), source.into_problems())
}

/// Notes what is no TOML.
fn refuse(source: &Source, errors: Vec<toml::de::Error>) {
    let mut told = 0;
    for error in errors {
        let span = error.span().unwrap_or(0..0);
        let number = source.line(span.start);
        // What follows on the same line mostly follows from the first.
        if std::mem::replace(&mut told, number) != number {
            let found = source.line_text(number).trim();
            source.refuse(&span, &Place::Whole, None, found, Phrase::new("sheet-toml"));
        }
    }
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
