//! How a level lies to its window.

use coax::Span;
use phrase::Phrase;

use super::window::Window;

/// How a level lies to its window, the worse the greater.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// No level is known, or no window.
    NotKnown,
    /// Measured inside, or inside from the 10th percentile to the 90th.
    Inside,
    /// The likely level is inside, but not all of the range, or without the margin that is recommended.
    Marginal,
    /// The measured or likely level is outside, or nothing arrives at all.
    Outside,
}

impl Fit {
    /// How this level lies to this window.
    pub(super) fn of(window: &Window, level: Span) -> Self {
        if !window.holds(level.likely) {
            Self::Outside
        } else if window.holds(level.low) && window.holds(level.high) && window.has_margin(level.likely) {
            Self::Inside
        } else {
            Self::Marginal
        }
    }

    /// Its name in the command's JSON.
    pub const fn name(self) -> &'static str {
        match self {
            Self::NotKnown => "not_known",
            Self::Inside => "inside",
            Self::Marginal => "marginal",
            Self::Outside => "outside",
        }
    }

    /// Its word.
    pub fn phrase(self) -> Phrase {
        Phrase::new(format!("fits-{}", self.name().replace('_', "-")))
    }
}
