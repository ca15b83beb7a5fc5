//! What holds for this device: whose it is, and how its user likes to work.
//!
//! One small file in the home folder, written whole. Members that this release does not know are kept.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use facts::fact::AuthorId;
use facts::whole_file::{self, Existing, Readers};
use serde_json::{Map, Value};
use telling::words::LengthUnit;

use crate::error::{GuideError, Result, Trouble};

/// Its name in the home folder.
const FILE: &str = "device.json";

const AUTHOR: &str = "author";
const NAME: &str = "name";
const LENGTH: &str = "length_unit";
const WORKING: &str = "working";
const LANGUAGE: &str = "language";

/// The longest name of a person that is kept, in characters.
const LONGEST_NAME: usize = 80;

/// How its user likes to begin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Working {
    /// Led from question to question.
    #[default]
    Led,
    /// With the whole job in view.
    Freely,
}

/// What holds for one device.
#[derive(Debug, Clone, PartialEq)]
pub struct Device {
    folder: PathBuf,
    kept: Map<String, Value>,
}

impl Device {
    /// What is kept in a home folder. A file that is no JSON counts as none: nothing of a survey is in it.
    ///
    /// # Errors
    /// If the file is there and the system does not let us read it.
    pub fn at(home: &Path) -> Result<Self> {
        let file = home.join(FILE);
        let kept = match fs::read_to_string(&file) {
            Ok(text) => serde_json::from_str(&text).unwrap_or_default(),
            Err(error) if matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::InvalidData) => {
                Map::new()
            }
            Err(error) => return Err(failed(&error)),
        };
        Ok(Self { folder: home.to_owned(), kept })
    }

    /// Whose device this is: made by chance the first time, and kept. For shells that keep no author themselves.
    ///
    /// # Errors
    /// If it is new and cannot be written.
    pub fn author(&mut self) -> Result<AuthorId> {
        if let Some(author) = self.text(AUTHOR).and_then(|id| id.parse().ok()) {
            return Ok(author);
        }
        let author = AuthorId::random();
        self.keep(AUTHOR, Value::from(author.to_string()))?;
        Ok(author)
    }

    /// What its user wants to be called by others; empty if nothing was said.
    pub fn name(&self) -> &str {
        self.text(NAME).unwrap_or_default()
    }

    /// Which unit of length comes first, if that was chosen.
    pub fn length_unit(&self) -> Option<LengthUnit> {
        match self.text(LENGTH)? {
            "metres" => Some(LengthUnit::Metres),
            "feet" => Some(LengthUnit::Feet),
            _ => None,
        }
    }

    /// How its user likes to begin.
    pub fn working(&self) -> Working {
        if self.text(WORKING) == Some("freely") { Working::Freely } else { Working::Led }
    }

    /// The language that was chosen, as a tag (RFC 5646), if one was. Which languages there are, a shell knows.
    pub fn language(&self) -> Option<&str> {
        self.text(LANGUAGE)
    }

    pub(crate) fn set_name(&mut self, name: &str) -> Result<()> {
        let name: String = name.trim().chars().filter(|sign| !sign.is_control()).take(LONGEST_NAME).collect();
        self.keep(NAME, Value::from(name.trim_end()))
    }

    pub(crate) fn set_length_unit(&mut self, unit: LengthUnit) -> Result<()> {
        let word = match unit {
            LengthUnit::Metres => "metres",
            LengthUnit::Feet => "feet",
        };
        self.keep(LENGTH, Value::from(word))
    }

    pub(crate) fn set_working(&mut self, working: Working) -> Result<()> {
        let word = match working {
            Working::Led => "led",
            Working::Freely => "freely",
        };
        self.keep(WORKING, Value::from(word))
    }

    fn text(&self, member: &str) -> Option<&str> {
        self.kept.get(member)?.as_str()
    }

    fn keep(&mut self, member: &str, value: Value) -> Result<()> {
        if self.kept.get(member) == Some(&value) {
            return Ok(());
        }
        let mut kept = self.kept.clone();
        kept.insert(member.into(), value);
        let text = format!("{:#}\n", Value::Object(kept.clone()));
        let file = self.folder.join(FILE);
        whole_file::write(&file, text.as_bytes(), Existing::IsReplaced, Readers::Owner)
            .map_err(|error| failed(&error))?;
        self.kept = kept;
        Ok(())
    }
}

fn failed(error: &io::Error) -> GuideError {
    Trouble::Device { fault: error.into() }.into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_settled_is_found_again_and_what_is_not_known_stays() {
        let home = tempfile::tempdir().unwrap();
        fs::write(home.path().join(FILE), r#"{"later":{"a":1},"working":"upside-down"}"#).unwrap();
        let mut device = Device::at(home.path()).unwrap();
        assert_eq!((device.working(), device.length_unit(), device.name()), (Working::Led, None, ""));
        let author = device.author().unwrap();
        device.set_name("  Ann of the\u{7} office ").unwrap();
        device.set_length_unit(LengthUnit::Feet).unwrap();
        device.set_working(Working::Freely).unwrap();
        let mut again = Device::at(home.path()).unwrap();
        assert_eq!(again, device);
        assert_eq!(again.author().unwrap(), author);
        assert_eq!(again.name(), "Ann of the office");
        assert_eq!(again.length_unit(), Some(LengthUnit::Feet));
        assert_eq!(again.working(), Working::Freely);
        assert_eq!(again.kept.get("later"), Some(&serde_json::json!({"a": 1})));
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 1, "nothing unfinished is left");
    }

    #[test]
    fn a_file_that_is_none_is_as_good_as_none() {
        for text in [&b"half {"[..], b"[1]", b"\xff\xfe", b""] {
            let home = tempfile::tempdir().unwrap();
            fs::write(home.path().join(FILE), text).unwrap();
            let mut device = Device::at(home.path()).unwrap();
            let author = device.author().unwrap();
            assert_eq!(Device::at(home.path()).unwrap().author().unwrap(), author);
        }
    }
}
