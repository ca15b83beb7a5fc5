//! Whether all wishes fit at once into the one capacity that all adapters share.

use coax::Span;
use phrase::{Arg, Phrase};

use crate::forecast::Forecast;

/// Whether all wished rates at once fit into the network's time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Together {
    /// In at least nine draws of ten; with the share of the time that they take, reached or undercut in so many.
    Fit(f64),
    /// In at least half of the draws; with the likely share.
    LikelyFit(f64),
    /// In less than half of the draws; with the likely share, above 1.
    DoNotFit(f64),
    /// At least one wish cannot be met even with the network to itself.
    Never,
}

impl Together {
    /// By a forecast; `None` where nothing is wished or no way was worked out.
    pub fn of(forecast: &Forecast) -> Option<Self> {
        let Span { likely, high, .. } = forecast.shared?.airtime;
        Some(match () {
            () if high <= 1.0 => Self::Fit(high),
            () if likely <= 1.0 => Self::LikelyFit(likely),
            () if likely.is_finite() => Self::DoNotFit(likely),
            () => Self::Never,
        })
    }

    /// By a forecast, whether each wish may be met alone and not all of them at once.
    pub fn is_too_much(forecast: &Forecast) -> bool {
        matches!(Self::of(forecast), Some(Self::DoNotFit(_)))
    }

    /// It in words.
    pub fn phrase(self) -> Phrase {
        let with = |id: &str, share| Phrase::new(id).with("share", Arg::Share(share));
        match self {
            Self::Fit(share) => with("shared-fits", share),
            Self::LikelyFit(share) => with("shared-likely", share),
            Self::DoNotFit(share) => with("shared-not", share),
            Self::Never => Phrase::new("shared-never"),
        }
    }
}
