//! The rounds in which the guide asks: first what a forecast stands on, then what changes it, then the rest.

use serde::{Deserialize, Serialize};

/// A round of questions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Round {
    /// What a first, wide forecast stands on, and who has a say before hands go to the wiring.
    Forecast,
    /// What may change a rate, a risk or a caution.
    Worth,
    /// What changes little.
    Rest,
}

impl Round {
    /// Every one, in order.
    pub(crate) const ALL: [Self; 3] = [Self::Forecast, Self::Worth, Self::Rest];

    /// Its number, as it is told.
    pub(crate) fn number(self) -> u64 {
        1 + Self::ALL.iter().take_while(|round| **round != self).count() as u64
    }

    /// Its key.
    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::Forecast => "forecast",
            Self::Worth => "worth",
            Self::Rest => "rest",
        }
    }
}
