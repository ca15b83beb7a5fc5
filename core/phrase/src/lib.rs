//! A thing to say, as data: which message, and what it speaks of.
//!
//! A phrase is made wherever something is known and written out where a language is at hand. This crate knows no
//! language and no message.
//!
//! ```
//! use phrase::{Arg, Phrase};
//!
//! let said = Phrase::new("written-length").with("length", Arg::Length(15.24));
//! assert_eq!(said.attribute("why").id, "written-length.why");
//! ```

mod direction;

use coax::Span;

pub use direction::{turns_direction, turns_what_follows};

/// One value that a phrase speaks of, with its unit, written out only when the language is known.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A name or other text of the user's own, said as it is.
    Text(String),
    /// A number of things; messages may choose a plural by it.
    Count(u64),
    /// A number without a unit, as it would be typed.
    Number(f64),
    /// What somebody typed for a number, with English marks; said with the locale's.
    Typed(String),
    /// A moment, in milliseconds since 1970 UTC.
    When(u64),
    /// A length in metres.
    Length(f64),
    /// A length in metres with its range.
    LengthRange(Span),
    /// A loss, gain or isolation in decibels.
    Loss(f64),
    /// A loss in decibels with its range.
    LossRange(Span),
    /// A level in dBmV.
    Level(f64),
    /// A data rate in Mb/s.
    Rate(f64),
    /// A data rate in Mb/s as somebody read or wrote it: not rounded.
    RateAsRead(f64),
    /// A data rate in Mb/s with its range: likely, and nine times in ten at least the low one.
    RateRange(Span),
    /// A range of data rates in Mb/s beside a rate as somebody read it: rounded as usual, but never so that the read rate
    /// seems to lie on another side of an end than it does.
    RateRangeBeside {
        /// The range.
        range: Span,
        /// The rate that stands beside it as [`Arg::RateAsRead`].
        read: f64,
    },
    /// A frequency in MHz.
    Frequency(f64),
    /// A band in MHz.
    Band(f64, f64),
    /// Minutes of work.
    Minutes(u64),
    /// Milliseconds.
    Milliseconds(f64),
    /// Milliseconds with a range.
    MillisecondsRange(Span),
    /// A share as a fraction of one, said in percent.
    Share(f64),
    /// Another phrase.
    Phrase(Box<Phrase>),
    /// Several phrases or names, joined as a list.
    Several(Vec<Arg>),
}

/// A message's name and arguments.
#[derive(Debug, Clone, PartialEq)]
pub struct Phrase {
    /// The message's id in the Fluent files; `message.attribute` names an attribute.
    pub id: String,
    /// What it speaks of.
    pub args: Vec<(&'static str, Arg)>,
}

impl Phrase {
    /// A phrase without arguments.
    pub fn new(id: impl Into<String>) -> Self {
        Self { id: id.into(), args: Vec::new() }
    }

    /// This phrase with one more argument.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: Arg) -> Self {
        self.args.push((name, arg));
        self
    }

    /// This phrase with a text argument.
    #[must_use]
    pub fn text(self, name: &'static str, text: impl Into<String>) -> Self {
        self.with(name, Arg::Text(text.into()))
    }

    /// This phrase with another phrase as an argument.
    #[must_use]
    pub fn phrase(self, name: &'static str, phrase: Self) -> Self {
        self.with(name, Arg::Phrase(Box::new(phrase)))
    }

    /// The same arguments for another message or attribute: `finding-open-leg` becomes `finding-open-leg.why`.
    #[must_use]
    pub fn attribute(&self, attribute: &str) -> Self {
        Self { id: format!("{}.{attribute}", self.id), args: self.args.clone() }
    }
}
