//! Languages: how a [`Phrase`](phrase::Phrase) is said. Its English stands in `words/en/*.ftl`.
//!
//! This folder knows languages and the writing of numbers. It does not know what any phrase is about.

mod count;
mod figures;
mod language;
mod marks;
mod moment;
mod written;

pub use figures::{Figures, LengthUnit, rounded_rate, shown_gain};
pub use language::Language;
pub use marks::Marks;
pub use moment::date_and_time;
