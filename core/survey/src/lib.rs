//! What was found in a house, and what follows from it.

pub mod document;
pub mod error;
pub mod figure;
pub mod finding;
pub mod forecast;
pub mod label;
pub mod label_seen;
pub mod level;
pub mod naming;
pub mod rating;
pub mod record;
pub mod report;
pub mod story;
pub mod words;
pub mod worklist;

pub use error::SurveyError;
pub use facts::{act, fact, forget, home, photo, store};

/// The file in which a survey travels, with its report as the page for people.
pub mod file {
    pub use crate::document::{Report, pack};
    pub use facts::file::*;
}
