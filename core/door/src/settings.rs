//! What the system says of whoever holds the phone.

use telling::words::{Figures, Language, LengthUnit};

/// Which unit of length comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Enum)]
pub enum FirstLength {
    /// Metres.
    Metres,
    /// Feet.
    Feet,
}

/// What holds on this phone. What its user has settled on the screen of the device wins.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct Settings {
    /// The folder of the surveys: a place of the app's own that the system keeps. It is made if it is not there.
    pub home: String,
    /// The user's language as a tag (RFC 5646), such as `en-GB`. Numbers and dates go by it; what has no words in it yet is
    /// said in English.
    pub language: String,
    /// Which unit of length the user's region has first.
    pub first_length: FirstLength,
}

impl Settings {
    /// The words for it.
    pub(crate) fn words(&self) -> Language {
        let unit = match self.first_length {
            FirstLength::Metres => LengthUnit::Metres,
            FirstLength::Feet => LengthUnit::Feet,
        };
        guide::language_of(&self.language, Figures::with_first(unit))
    }
}
