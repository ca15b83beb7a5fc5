//! The few words that only the page says: of files, of a tab that is out of date.

use telling::words::{Figures, Language};

/// The page's own English messages.
const ENGLISH: &str = include_str!("../words/en/page.ftl");

/// English with the page's words.
pub fn english(figures: Figures) -> Language {
    worded(guide::english(figures))
}

/// A language of the guide with the page's words.
pub fn worded(language: Language) -> Language {
    language.with(&[ENGLISH])
}
