//! Blocks that take an answer.

use super::block::said_at_all;

/// One answer to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceOption {
    /// Its key within the choice.
    pub key: String,
    /// What it says.
    pub words: String,
    /// What it means or looks like; may be empty.
    pub about: String,
    /// Whether it is chosen now.
    pub picked: bool,
    /// Whether it says that one does not know: chosen, it excludes all others.
    pub unsure: bool,
}

/// One or several of a few answers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceBlock {
    /// Its key.
    pub key: String,
    /// What is asked.
    pub name: String,
    /// Whether several may be chosen.
    pub several: bool,
    /// The answers in order.
    pub options: Vec<ChoiceOption>,
}

/// Words to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WritingBlock {
    /// Its key.
    pub key: String,
    /// What is asked for.
    pub name: String,
    /// What stands there now.
    pub text: String,
    /// An example or other hint; may be empty.
    pub hint: String,
    /// Whether it may have several lines.
    pub lines: bool,
}

/// A unit that a number may be typed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnitOption {
    /// Its key.
    pub key: String,
    /// How it is written beside the number.
    pub words: String,
}

/// A number with its unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NumberBlock {
    /// Its key.
    pub key: String,
    /// What is asked for.
    pub name: String,
    /// What stands there now, as it would be typed.
    pub text: String,
    /// The units that it may be typed in; the first is the user's own.
    pub units: Vec<UnitOption>,
    /// The key of the unit that `text` is in.
    pub unit: String,
    /// An example, the range, or other hint; may be empty.
    pub hint: String,
}

impl ChoiceBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        let options = self.options.iter().flat_map(|option| [&option.words, &option.about]);
        std::iter::once(&self.name).chain(options).map(String::as_str).filter(said_at_all).collect()
    }
}

impl WritingBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        [self.name.as_str(), &self.text, &self.hint].into_iter().filter(said_at_all).collect()
    }
}

impl NumberBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        let units = self.units.iter().map(|unit| unit.words.as_str());
        let said = [self.name.as_str(), &self.text, &self.hint].into_iter().filter(said_at_all);
        said.chain(units).collect()
    }
}
