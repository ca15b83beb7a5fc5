//! What a label states or a person guesses, as ranges, drawn to concrete parts by dice.
//!
//! Every drawn part is passive and reciprocal whatever the dice show, except the amplifier.

mod amplifier;
mod cable;
mod condition;
mod filter;
mod joint;
mod splitter;

pub use amplifier::AmplifierRating;
pub use cable::{CableRating, CableSeries};
pub use condition::Condition;
pub use filter::FilterRating;
pub use joint::JointRating;
pub use splitter::SplitterRating;

use crate::error::CoaxError;
use crate::span::Span;

/// `span` if all of it is finite and at least `least`.
fn at_least(
    what: &'static str,
    span: Span,
    least: f64,
    unit: &'static str,
    must: &'static str,
) -> Result<Span, CoaxError> {
    for value in [span.low, span.likely, span.high] {
        crate::error::at_least(what, value, least, unit, must)?;
    }
    Ok(span)
}
