//! The languages of the command: the survey's messages and the command's own.

use telling::words::{Figures, Language, LengthUnit};

/// The command's own English messages.
const ENGLISH: &str = include_str!("../words/en/desk.ftl");

/// English, with one unit of length first.
pub fn english(length_unit: LengthUnit) -> Language {
    Language::english(Figures::with_first(length_unit)).with(&[ENGLISH])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Ids of messages stand in the code as plain text; each one in quotes must be there.
    #[test]
    fn every_message_that_the_code_names_is_there() {
        let language = english(LengthUnit::Metres);
        let mut seen = 0;
        for file in source_files(std::path::Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src"))) {
            let text = std::fs::read_to_string(file).unwrap();
            for id in text.split('"').filter(|id| id.starts_with("sheet-") || id.starts_with("desk-")) {
                if id.chars().all(|c| c.is_ascii_lowercase() || c == '-') && !id.ends_with('-') {
                    assert!(language.knows(id), "no message {id}");
                    seen += 1;
                }
            }
        }
        assert!(seen > 50, "{seen}");
    }

    /// A later message would take the place of an earlier one without a word.
    #[test]
    fn no_message_stands_twice() {
        let rooms = std::path::Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
        let words = |room: std::path::PathBuf| room.join("words/en");
        let rooms = std::fs::read_dir(rooms).unwrap().map(|room| words(room.unwrap().path()));
        let files: Vec<_> =
            rooms.filter(|words| words.is_dir()).flat_map(|words| source_files(&words)).collect();
        let mut seen = std::collections::BTreeSet::new();
        for file in &files {
            let text = std::fs::read_to_string(file).unwrap();
            let heads = text.lines().filter(|line| !line.starts_with(['#', ' ', '}', '\t']));
            for id in heads.filter_map(|line| line.split_once('=')) {
                let id = id.0.trim().to_owned();
                assert!(seen.insert(id.clone()), "{id} stands twice, the second time in {}", file.display());
            }
        }
        assert!(files.len() > 5 && seen.len() > 500, "{} messages in {} files", seen.len(), files.len());
    }

    #[test]
    fn everything_expected_of_a_sheet_says_what_to_do() {
        let language = english(LengthUnit::Metres);
        for line in ENGLISH.lines().filter(|line| line.starts_with("sheet-")) {
            let id = line.split(' ').next().unwrap();
            if !id.starts_with("sheet-place-") {
                assert!(language.knows(&format!("{id}.do")), "{id} does not say what to do");
            }
        }
    }

    fn source_files(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
        let entries = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
        entries.flat_map(|path| if path.is_dir() { source_files(&path) } else { vec![path] }).collect()
    }
}
