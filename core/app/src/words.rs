//! The guide's words: English, and two pseudo-languages that show what is forgotten or too narrow.

use survey::words::{Figures, Language};

/// The English messages of the guide, one file a subject.
const ENGLISH: &[&str] = &[
    include_str!("../words/en/guide.ftl"),
    include_str!("../words/en/ask.ftl"),
    include_str!("../words/en/pictures.ftl"),
    include_str!("../words/en/result.ftl"),
    include_str!("../words/en/field.ftl"),
    include_str!("../words/en/share.ftl"),
];

/// English with the guide's words.
pub fn english(figures: Figures) -> Language {
    Language::english(figures).with(ENGLISH)
}
