//! What went wrong, in words: a [`Phrase`] for every kind of every error.
//!
//! One file for each enum of errors. Each matches without a rest, so that a new kind that nobody has words for does not
//! compile. No phrase takes a path along: a survey and a file are called by their names.

mod advice;
mod fact;
mod facts;
mod file;
mod measurement;
mod picture;
mod system;
mod undo;

use phrase::Phrase;
use std::path::Path;

/// An error that can be told to people.
pub trait InWords {
    /// What went wrong, and what to do about it.
    fn phrase(&self) -> Phrase;
}

pub use system::system;

/// What the message of a fault of the program itself is called.
const OURS: &str = "error-ours";

/// That the program has a fault.
pub fn ours() -> Phrase {
    Phrase::new(OURS)
}

/// What people call a survey in this folder; anything else keeps its ending.
fn survey_name(folder: &Path) -> String {
    let name = file_name(folder);
    name.strip_suffix(".legwork").map(str::to_owned).unwrap_or(name)
}

/// What people call this file.
fn file_name(file: &Path) -> String {
    file.file_name().unwrap_or_default().to_string_lossy().into_owned()
}

/// Where a sentence counts: more than can be counted is said as the most that can.
fn count(of: usize) -> phrase::Arg {
    phrase::Arg::Count(u64::try_from(of).unwrap_or(u64::MAX))
}

#[cfg(test)]
mod tests;
