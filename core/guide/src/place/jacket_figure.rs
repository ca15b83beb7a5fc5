//! What photos of a cable's jacket may tell, and what was taken of it.

use house::record::CableKind;

use super::choice::{Choice, choices};

choices! {
    /// What photos of a cable's jacket may tell.
    JacketFigure {
        /// Its series.
        Series "series",
        /// What lies between the marks at its two ends.
        Length "length",
    }
}

/// What was taken of a jacket, as it was read: it stays so, whatever is read after that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum TakenOfJacket {
    /// Its series.
    Series(CableKind),
    /// Its length, metres.
    Metres(f64),
}

impl TakenOfJacket {
    /// Which of both.
    pub(crate) const fn figure(self) -> JacketFigure {
        match self {
            Self::Series(_) => JacketFigure::Series,
            Self::Metres(_) => JacketFigure::Length,
        }
    }
}

impl Choice for TakenOfJacket {
    fn key(&self) -> String {
        let figure = self.figure();
        match self {
            Self::Series(series) => format!("{}={}", figure.word(), series.key()),
            Self::Metres(metres) => format!("{}={metres}", figure.word()),
        }
    }

    fn of(key: &str) -> Option<Self> {
        let (figure, value) = key.split_once('=')?;
        match <JacketFigure as Choice>::of(figure)? {
            JacketFigure::Series => CableKind::of(value).map(Self::Series),
            JacketFigure::Length => {
                let metres = value.parse().ok().filter(|metres: &f64| metres.is_finite() && *metres > 0.0);
                metres.map(Self::Metres)
            }
        }
    }
}
