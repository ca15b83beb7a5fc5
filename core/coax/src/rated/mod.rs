//! What a label states or a person guesses, as ranges, drawn to concrete parts by dice.
//!
//! Every drawn part is passive and reciprocal whatever the dice show, except the amplifier and a measured part.

mod amplifier;
mod band_filter;
mod cable;
mod condition;
mod diplexer;
mod filter;
mod joint;
mod mismatch;
mod pad;
mod pass_on;
mod rating;
mod splitter;
mod tap;

pub use amplifier::{AmplifierRating, ByPass};
pub use band_filter::BandFilterRating;
pub use cable::{CableRating, CableSeries};
pub use condition::Condition;
pub use diplexer::DiplexerRating;
pub use filter::FilterRating;
pub use joint::JointRating;
pub use mismatch::MismatchRating;
pub use pad::PadRating;
pub use pass_on::PassOnRating;
pub use rating::Rating;
pub use splitter::SplitterRating;
use splitter::{AboveSplitter, draw_above};
pub use tap::TapRating;

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
