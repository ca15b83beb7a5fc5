//! Why a number that was seen on a label is not sure.

use phrase::Phrase;

/// Why something that was seen is asked and not taken as it is.
#[derive(Debug, Clone, PartialEq)]
pub enum Unsure {
    /// One of its letters was not certain enough.
    Faint,
    /// Only one of two looks saw it.
    SeenOnce,
    /// The other look saw another number in its place.
    SeenOtherwise {
        /// As the other look saw it.
        other: String,
    },
    /// By itself, one of two looks states another thing, or nothing.
    ReadOtherwise,
    /// The picture ends beside it, ink goes on, or a blank or a sign stands where a digit may: more of it may stand there.
    Cut,
    /// It stands at the beginning of its row, and with one digit more it is as usual.
    PerhapsLonger {
        /// What it may be.
        perhaps: f64,
    },
    /// Letters were read as the digits they look like.
    LettersForDigits,
    /// Labels of such parts do not usually carry it.
    Unusual,
    /// What is read with it does not fit what else the label states.
    DoesNotFit,
    /// What it stands for is not said in a way that leaves no doubt.
    MeaningUnclear,
}

impl Unsure {
    /// Its name, for programs; it never changes.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Faint => "faint",
            Self::SeenOnce => "seen_once",
            Self::SeenOtherwise { .. } => "seen_otherwise",
            Self::ReadOtherwise => "read_otherwise",
            Self::Cut => "cut",
            Self::PerhapsLonger { .. } => "perhaps_longer",
            Self::LettersForDigits => "letters_for_digits",
            Self::Unusual => "unusual",
            Self::DoesNotFit => "does_not_fit",
            Self::MeaningUnclear => "meaning_unclear",
        }
    }

    /// The phrase that says it.
    pub fn phrase(&self) -> Phrase {
        match self {
            Self::Faint => Phrase::new("label-unsure-faint"),
            Self::SeenOnce => Phrase::new("label-unsure-seen-once"),
            Self::SeenOtherwise { other } => {
                Phrase::new("label-unsure-seen-otherwise").text("other", other.clone())
            }
            Self::ReadOtherwise => Phrase::new("label-unsure-read-otherwise"),
            Self::Cut => Phrase::new("label-unsure-cut"),
            Self::PerhapsLonger { perhaps } => {
                Phrase::new("label-unsure-perhaps-longer").text("perhaps", perhaps.to_string())
            }
            Self::LettersForDigits => Phrase::new("label-unsure-letters-for-digits"),
            Self::Unusual => Phrase::new("label-unsure-unusual"),
            Self::DoesNotFit => Phrase::new("label-unsure-does-not-fit"),
            Self::MeaningUnclear => Phrase::new("label-unsure-meaning-unclear"),
        }
    }
}
