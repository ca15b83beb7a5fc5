//! What holds for this device: whose it is, and how its user likes to work.
//!
//! One small file in the home folder, written whole. Members that this release does not know are kept. No path stands in
//! it: a phone moves an app's folder when the app is updated.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use facts::fact::{DeviceKey, Writer};
use facts::whole_file::{self, Existing, Readers};
use serde_json::{Map, Value};
use telling::words::LengthUnit;

use crate::error::{GuideError, Result, Trouble};

/// Its name in the home folder.
const FILE: &str = "device.json";
/// The longest that is read, in bytes: what this release writes has some hundred.
const MOST_BYTES: u64 = 64 * 1024;

/// So many damaged files are told apart by their names.
const MOST_SET_ASIDE: u32 = 10_000;

/// The id under which releases before the key wrote into every survey of this device.
const AUTHOR: &str = "author";
/// What the author's id in each survey is made from.
const KEY: &str = "author_key";
const NAME: &str = "name";
const LENGTH: &str = "length_unit";
const WORKING: &str = "working";
const LANGUAGE: &str = "language";
/// The name that a damaged file has now, until its user was told.
const SET_ASIDE: &str = "set_aside";

/// The longest name of a person that is kept, in characters.
pub(crate) const LONGEST_NAME: usize = 60;

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
    /// What is kept in a home folder. A file that cannot be read as one is set aside under another name beside it, and
    /// [`Device::set_aside`] says so until its user has seen it: nothing of a survey is in it, but who wrote what is told
    /// by it.
    ///
    /// # Errors
    /// If the file is there and the system does not let us read it, or set it aside.
    pub fn at(home: &Path) -> Result<Self> {
        let file = home.join(FILE);
        match read(&file) {
            Ok(Some(kept)) => Ok(Self { folder: home.to_owned(), kept }),
            Ok(None) => Self::without(home, &file),
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                Ok(Self { folder: home.to_owned(), kept: Map::new() })
            }
            Err(error) => Err(failed(&error)),
        }
    }

    /// Sets a damaged file aside and begins anew.
    fn without(home: &Path, file: &Path) -> Result<Self> {
        let name = free_name(home).ok_or_else(|| failed(&io::ErrorKind::AlreadyExists.into()))?;
        fs::rename(file, home.join(&name)).map_err(|error| failed(&error))?;
        let mut device = Self { folder: home.to_owned(), kept: Map::new() };
        // Kept at once: whoever asks next must still be told.
        device.keep(SET_ASIDE, Value::from(name))?;
        Ok(device)
    }

    /// The name in the home folder that a damaged file of this device has now, if its user was not told yet.
    pub fn set_aside(&self) -> Option<&str> {
        self.text(SET_ASIDE)
    }

    /// Its user was told.
    pub(crate) fn was_told(&mut self) -> Result<()> {
        if self.set_aside().is_none() {
            return Ok(());
        }
        let mut kept = self.kept.clone();
        kept.remove(SET_ASIDE);
        self.replace(kept)
    }

    /// Whose device this is: its key is made by chance the first time, and kept. For shells that keep no author themselves.
    ///
    /// # Errors
    /// If it is new and cannot be written.
    pub fn author(&mut self) -> Result<Writer> {
        let before = self.text(AUTHOR).and_then(|id| id.parse().ok());
        if let Some(key) = self.text(KEY).and_then(|key| key.parse().ok()) {
            return Ok(Writer::Device { key, before });
        }
        let key = DeviceKey::random();
        self.keep(KEY, Value::from(key.to_string()))?;
        Ok(Writer::Device { key, before })
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

    /// How many letters a name has, where that is more than are kept.
    pub(crate) fn name_too_long(name: &str) -> Option<usize> {
        Some(name.trim().chars().count()).filter(|found| *found > LONGEST_NAME)
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
        self.replace(kept)
    }

    fn replace(&mut self, kept: Map<String, Value>) -> Result<()> {
        let text = format!("{:#}\n", Value::Object(kept.clone()));
        whole_file::write(&self.folder.join(FILE), text.as_bytes(), Existing::IsReplaced, Readers::Owner)
            .map_err(|error| failed(&error))?;
        self.kept = kept;
        Ok(())
    }
}

/// What stands in the file; nothing if it is damaged.
fn read(file: &Path) -> io::Result<Option<Map<String, Value>>> {
    let mut bytes = Vec::new();
    File::open(file)?.take(MOST_BYTES + 1).read_to_end(&mut bytes)?;
    let is_whole = bytes.len() as u64 <= MOST_BYTES;
    let kept: Option<Map<String, Value>> = serde_json::from_slice(&bytes).ok();
    // An id that is none would be replaced by another one, and be lost.
    let is_id = |id: &Value| id.as_str().is_some_and(|id| id.parse::<DeviceKey>().is_ok());
    let names_author =
        |kept: &Map<String, Value>| [AUTHOR, KEY].iter().filter_map(|name| kept.get(*name)).all(is_id);
    Ok(kept.filter(|kept| is_whole && names_author(kept)))
}

fn free_name(home: &Path) -> Option<String> {
    let mut names = (1..=MOST_SET_ASIDE).map(|number| format!("{FILE}.damaged-{number}"));
    names.find(|name| home.join(name).symlink_metadata().is_err())
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
        let names: Vec<_> = fs::read_dir(home.path()).unwrap().map(|at| at.unwrap().file_name()).collect();
        assert_eq!(names, [FILE]);
    }

    #[test]
    fn a_damaged_file_is_set_aside_and_told_of_until_it_was_seen() {
        let long = format!(r#"{{"name":"{}"}}"#, "x".repeat(70_000));
        let damaged: [&[u8]; 7] = [
            b"half {",
            b"[1]",
            b"\xff\xfe",
            b"",
            br#"{"author":"nobody","name":"Ann"}"#,
            br#"{"author_key":7,"name":"Ann"}"#,
            long.as_bytes(),
        ];
        for text in damaged {
            let home = tempfile::tempdir().unwrap();
            fs::write(home.path().join(FILE), text).unwrap();
            fs::write(home.path().join("device.json.damaged-1"), "an earlier one").unwrap();
            let author = Device::at(home.path()).unwrap().author().unwrap();
            // Who asks next is told all the same.
            let mut device = Device::at(home.path()).unwrap();
            assert_eq!(device.set_aside(), Some("device.json.damaged-2"));
            assert_eq!(device.author().unwrap(), author);
            assert_eq!(fs::read(home.path().join("device.json.damaged-2")).unwrap(), text);
            assert_eq!(fs::read(home.path().join("device.json.damaged-1")).unwrap(), b"an earlier one");
            device.was_told().unwrap();
            let device = Device::at(home.path()).unwrap();
            assert_eq!((device.set_aside(), device.name()), (None, ""));
        }
    }
}
