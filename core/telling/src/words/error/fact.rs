//! Why a fact is not well formed.

use facts::fact::FactFault;
use phrase::Phrase;

use super::{InWords, count};

impl InWords for FactFault {
    fn phrase(&self) -> Phrase {
        match self {
            Self::TooLong { field: _, bytes: _, limit } => {
                Phrase::new("error-text-too-long").with("limit", count(*limit))
            }
            Self::NumberInexact { number } => Phrase::new("error-number-inexact").text("number", number),
            // Nobody types these: another program wrote them, or this one has a fault.
            Self::TooDeep { limit: _ }
            | Self::NotJson
            | Self::FieldName { limit: _ }
            | Self::IdVersion { id: _ }
            | Self::ReplacesLater { id: _, later: _ }
            | Self::ForgottenForget
            | Self::Line { reason: _, column: _ }
            | Self::LineNotCanonical
            | Self::ExtraTooLong { bytes: _, limit: _ } => Phrase::new("error-record"),
        }
    }
}
