//! The stages of the job, in the order in which they are proposed. One may start anywhere.

use phrase::Phrase;
use serde::{Deserialize, Serialize};

/// A stage of the job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Stage {
    /// The house, its people and what uses the coax.
    House,
    /// Where cable comes in.
    WayIn,
    /// Splitters, taps, amplifiers.
    Splits,
    /// The cables between.
    Cables,
    /// Where devices are plugged in.
    Outlets,
    /// Where the coax meets the router.
    Router,
}

impl Stage {
    /// Every stage that asks, in order.
    pub(crate) const ALL: [Self; 6] =
        [Self::House, Self::WayIn, Self::Splits, Self::Cables, Self::Outlets, Self::Router];

    /// Its key.
    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::House => "house",
            Self::WayIn => "way-in",
            Self::Splits => "splits",
            Self::Cables => "cables",
            Self::Outlets => "outlets",
            Self::Router => "router",
        }
    }

    /// Its name in words.
    pub(crate) fn phrase(self) -> Phrase {
        Phrase::new(format!("stage-{}", self.key()))
    }
}
