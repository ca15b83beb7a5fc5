//! Languages: how a [`Phrase`](phrase::Phrase) is said. Its English stands in `words/en/*.ftl`.
//!
//! This folder knows languages, the writing of numbers, and how errors are said. It does not know what any other phrase is
//! about.

mod count;
pub mod error;
mod figures;
mod gains;
mod language;
mod marks;
mod moment;
mod written;

pub use figures::{Figures, LengthUnit, rounded_rate, shown_gain};
pub use gains::{ToldGain, told_gains};
pub use language::Language;
pub use marks::Marks;
pub use moment::date_and_time;
