//! What goes wrong where something is worked out from a survey.

use advice::AdviceError;
use coax::{CoaxError, LinkError};
use phrase::{Arg, Phrase};

use super::{InWords, ours};

impl InWords for AdviceError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Coax(error) => error.phrase(),
            Self::Link(error) => error.phrase(),
            Self::Inner(_) => ours(),
            Self::Stopped => Phrase::new("error-stopped"),
        }
    }
}

impl InWords for CoaxError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::BadFigure { value: _, what: _, unit: _, must: _ }
            | Self::BadReflection { part: _, port: _ } => Phrase::new("error-wiring-figure"),
            Self::Loop { part: _ } => Phrase::new("error-wiring-loop"),
            Self::Resonance { part: _, megahertz } => {
                Phrase::new("error-wiring-rings").with("frequency", Arg::Frequency(*megahertz))
            }
            Self::TooMuchAsked { values: _, most: _ } => Phrase::new("error-wiring-too-large"),
            // A circuit is made from records in a way that cannot bring these about.
            Self::BadFrequency { why: _ }
            | Self::BadCount { what: _, given: _, must: _ }
            | Self::NoSuchPart { part: _, parts: _ }
            | Self::NoSuchPort { part: _, port: _, ports: _ }
            | Self::PortUsedTwice { part: _, port: _ }
            | Self::PortLeftUndefined { part: _, port: _ }
            | Self::NotConnected { part: _, root: _ }
            | Self::NoOutlet
            | Self::NoSuchOutlet { outlet: _, outlets: _ } => ours(),
        }
    }
}

impl InWords for LinkError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Transfer { frequency: _, transfer: _ } | Self::Draw => Phrase::new("error-wiring-figure"),
            // Frequencies, channels and versions are never typed where a link is worked out.
            Self::Grid { place: _, frequency: _ }
            | Self::Lengths { frequencies: _, transfers: _ }
            | Self::Uncovered { low: _, high: _, from: _, to: _ }
            | Self::UnknownVersion { text: _ }
            | Self::OffGrid { frequency: _, low: _, high: _ } => ours(),
        }
    }
}
