//! Why something that was to be written is no fact.

use facts::fact::FactFault;
use house::story::field_name;
use phrase::Phrase;

use super::{InWords, count};

impl InWords for FactFault {
    fn phrase(&self) -> Phrase {
        match self {
            Self::TooLong { field, bytes, limit } => {
                let name = field_name(field);
                let what = if name.id == "field-other" { Phrase::new("field-unnamed") } else { name };
                Phrase::new("error-text-too-long")
                    .phrase("what", what)
                    .with("found", count(*bytes))
                    .with("limit", count(*limit))
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
