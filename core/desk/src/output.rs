//! Standard output and standard error: the one way out of the program. All text is made harmless to a terminal here.

use std::io::{self, Write};

use crate::clean;
use crate::error::DeskError;
use crate::printed::Page;

/// Writes an answer of one line or several.
///
/// # Errors
/// [`DeskError::Output`], also where the reader has gone.
pub fn say(text: &str) -> Result<(), DeskError> {
    write(&clean::lines(text))
}

/// Writes an answer in JSON.
///
/// # Errors
/// As [`say`].
pub fn say_json(text: &str) -> Result<(), DeskError> {
    write(&clean::json(text))
}

/// Writes a table in CSV, whose lines end in a carriage return and a line feed.
///
/// # Errors
/// As [`say`].
pub fn say_table(text: &str) -> Result<(), DeskError> {
    write(&text.split("\r\n").map(clean::lines).collect::<Vec<_>>().join("\r\n"))
}

/// Writes a page, whose texts are harmless already and whose colours are ours.
///
/// # Errors
/// As [`say`].
pub fn say_page(page: Page) -> Result<(), DeskError> {
    write(&page.into_text())
}

/// Asks for a line: writes what stands before it.
///
/// # Errors
/// As [`say`].
pub fn ask(prompt: &str) -> Result<(), DeskError> {
    say(prompt)
}

fn write(text: &str) -> Result<(), DeskError> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes()).and_then(|()| out.flush()).map_err(DeskError::Output)
}

/// Writes a complaint. Where nobody can read it there is nothing more to do.
pub fn complain(text: &str) {
    let _ = io::stderr().lock().write_all(clean::lines(text).as_bytes());
}
