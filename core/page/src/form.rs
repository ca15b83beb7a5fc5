//! What a form of the page sends: names of fields, and the fields as they came.

use std::path::PathBuf;

/// What the name of a field begins with that gives an answer that was pressed; `page.js` knows the same.
const PICK: &str = "pick";

/// A field of the form: what kind of thing it gives, and the key of its block.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Field<'a> {
    /// Words that were written.
    Written(&'a str),
    /// A number as typed.
    Typed(&'a str),
    /// The unit of a number.
    Unit(&'a str),
    /// An answer that is marked; the empty one says only that the choice was there.
    Chosen(&'a str),
    /// An answer that was pressed.
    Pick(&'a str),
    /// A touch on a photo that is shown so wide, CSS pixels.
    Touch(&'a str, u32),
    /// A photo.
    Photo(&'a str),
    /// A file that somebody sent.
    File(&'a str),
}

impl Field<'_> {
    /// Its name in the form.
    pub(crate) fn name(self) -> String {
        if let Self::Touch(key, wide) = self {
            return format!("touch-{wide} {key}");
        }
        let (kind, key) = match self {
            Self::Written(key) => ("written", key),
            Self::Typed(key) => ("typed", key),
            Self::Unit(key) => ("unit", key),
            Self::Chosen(key) => ("chosen", key),
            Self::Pick(key) => (PICK, key),
            Self::Touch(key, _) => ("touch", key),
            Self::Photo(key) => ("photo", key),
            Self::File(key) => ("file", key),
        };
        format!("{kind} {key}")
    }
}

/// What came of a form.
#[derive(Debug, Default)]
pub(crate) struct Given {
    /// Fields of text by name, in the order in which they came.
    pub(crate) texts: Vec<(String, String)>,
    /// Files by the name of their field; they lie in the page's own folder.
    pub(crate) files: Vec<(String, PathBuf)>,
}

impl Given {
    /// The text of a field, the last one if there are several.
    pub(crate) fn text(&self, name: &str) -> Option<&str> {
        self.texts.iter().rev().find(|(known, _)| known == name).map(|(_, text)| text.as_str())
    }

    /// All texts of a field.
    pub(crate) fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.texts.iter().filter(move |(known, _)| known == name).map(|(_, text)| text.as_str())
    }

    /// All files of a field.
    pub(crate) fn files_of<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a PathBuf> {
        self.files.iter().filter(move |(known, _)| known == name).map(|(_, file)| file)
    }

    /// The answer that was pressed: the key of its choice, and its own.
    pub(crate) fn picked(&self) -> Option<(&str, &str)> {
        self.texts.iter().find_map(|(name, option)| {
            let key = name.strip_prefix(PICK)?.strip_prefix(' ')?;
            Some((key, option.as_str()))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The script tells presses from what is only kept by the names of their fields.
    #[test]
    fn the_script_knows_a_press_by_its_name() {
        let script = include_str!("../assets/page.js");
        let presses = script.lines().find(|line| line.contains("const presses =")).unwrap();
        let picked = Field::Pick("").name();
        assert!(presses.contains(&format!("key.startsWith({picked:?})")), "{presses}");
        for field in [Field::Written, Field::Typed, Field::Unit, Field::Chosen, Field::Photo, Field::File] {
            let name = field("key").name();
            let kind = name.split(' ').next().unwrap();
            assert!(!name.starts_with(&picked) && !presses.contains(kind), "{kind}: {presses}");
        }
    }
}
