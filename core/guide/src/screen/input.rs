//! Blocks that take an answer.

use super::Aloud;

/// One answer to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceOption {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
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
    /// Whether it can be chosen now.
    pub enabled: bool,
}

/// One or several of a few answers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key.
    pub key: String,
    /// What is asked.
    pub name: String,
    /// Whether several may be chosen.
    pub several: bool,
    /// The answers in order.
    pub options: Vec<ChoiceOption>,
}

/// What is written, for the keyboard and what the system may put right in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WritingKind {
    /// A name: words begin with a capital letter, and nothing is put right.
    Name,
    /// Several names, parted by commas or lines; as names.
    Names,
    /// The mark on a tape: capital letters and digits, and nothing is put right.
    Tag,
    /// What is printed on a thing, word for word, in several lines: nothing is put right and nothing is completed.
    Print,
    /// Sentences, in several lines, as anybody writes.
    Note,
    /// What is looked for: each letter counts at once, and nothing is put right.
    Search,
}

impl WritingKind {
    /// Whether it may have several lines.
    pub const fn has_lines(self) -> bool {
        matches!(self, Self::Names | Self::Print | Self::Note)
    }
}

/// Words to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WritingBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key.
    pub key: String,
    /// What is asked for.
    pub name: String,
    /// What stands there now.
    pub text: String,
    /// An example or other hint; may be empty.
    pub hint: String,
    /// What is written.
    pub kind: WritingKind,
    /// Whether it may have several lines.
    pub lines: bool,
    /// The key of the press that takes it, where a keyboard's Enter may press it.
    pub submit: Option<String>,
}

/// What numbers may be typed, for the keyboard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberKind {
    /// Whole ones from 0 on.
    Whole,
    /// From 0 on, with decimals.
    Decimal,
    /// With decimals, above and below 0.
    Signed,
}

/// A unit that a number may be typed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnitOption {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key.
    pub key: String,
    /// How it is written beside the number.
    pub words: String,
}

/// A number with its unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NumberBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
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
    /// What numbers may be typed.
    pub kind: NumberKind,
    /// Whether a unit may be typed after them (feet and inches, a rate with its unit): then a keyboard of digits alone is of
    /// no use.
    pub letters: bool,
    /// The key of the press that takes it, where a keyboard's Enter may press it.
    pub submit: Option<String>,
}
