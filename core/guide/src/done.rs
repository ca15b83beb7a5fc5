//! What was done on a screen, once its keys are known: a deed of a shell as pages take it.

use crate::deed::Deed;
use crate::place::Key;

/// What was done on a screen.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Done {
    /// Something was pressed.
    Press(Key),
    /// All that is picked in a choice now, by the keys of its options.
    Pick(Key, Vec<String>),
    /// The whole text as it stands.
    Write(Key, String),
    /// A number as typed, and the key of its unit.
    Measure(Key, String, String),
    /// A place in a photo was touched: how far across and down, ten-thousandths.
    Touch(Key, (u32, u32)),
    /// A photo's file for a photo slot.
    Photo(Key, String),
    /// A file for the press that asked for one.
    File(Key, String),
    /// One went back.
    Back,
}

impl Done {
    /// A deed with its keys known; `None` if no screen of this release has such a key.
    pub(crate) fn of(deed: &Deed) -> Option<Self> {
        let Some(key) = deed.key() else { return Some(Self::Back) };
        let key = Key::of(key)?;
        Some(match deed.clone() {
            Deed::Press { .. } => Self::Press(key),
            Deed::Pick { picked, .. } => Self::Pick(key, picked),
            // Print that was recognised is written like any text, under a key of its own.
            Deed::Write { words, .. } | Deed::Print { words, .. } => Self::Write(key, words),
            Deed::Measure { typed, unit, .. } => Self::Measure(key, typed, unit),
            Deed::Touch { across, down, .. } => Self::Touch(key, (across, down)),
            Deed::Photo { file, .. } => Self::Photo(key, file),
            Deed::File { file, .. } => Self::File(key, file),
            Deed::Back => Self::Back,
        })
    }

    /// What was pressed, if something was.
    pub(crate) fn pressed(&self) -> Option<&Key> {
        match self {
            Self::Press(key) => Some(key),
            _ => None,
        }
    }
}
