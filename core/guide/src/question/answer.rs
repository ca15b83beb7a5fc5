//! What an answer is made of.

use facts::fact::{Edit, FactFault, SubjectId, value_of};
use house::record::field;
use phrase::Phrase;
use serde_json::{Value, json};

use crate::place::Place;

/// How it is written that somebody looked and could not tell.
pub(crate) const UNSURE: &str = "unsure";

/// Why an answer cannot be taken as it stands.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Problem {
    /// What is wrong with it, and what to do.
    Phrase(Phrase),
    /// It does not fit a fact.
    Fact(FactFault),
}

impl From<Phrase> for Problem {
    fn from(phrase: Phrase) -> Self {
        Self::Phrase(phrase)
    }
}

impl From<FactFault> for Problem {
    fn from(fault: FactFault) -> Self {
        Self::Fact(fault)
    }
}

/// An answer, or what is wrong with it.
pub(crate) type Told<T> = Result<T, Problem>;

/// What was answered.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Answer {
    /// What it says.
    pub(crate) edits: Vec<Edit>,
    /// Where to go then; the next open question if nothing is named.
    pub(crate) then: Option<Place>,
}

/// That nothing was chosen or written yet.
pub(crate) fn not_answered() -> Problem {
    Phrase::new("not-answered").into()
}

impl Answer {
    /// An answer that says nothing yet.
    pub(crate) fn new() -> Self {
        Self::default()
    }

    /// With the value of a field that is a record's own.
    pub(crate) fn says<T>(mut self, subject: SubjectId, name: impl Into<String>, value: &T) -> Told<Self>
    where
        T: serde::Serialize + serde::de::DeserializeOwned + PartialEq,
    {
        self.edits.push(Edit::new(subject, name, value_of(value)?));
        Ok(self)
    }

    /// With a plain text, a name of a thing or another value that needs no check.
    pub(crate) fn plain(mut self, subject: SubjectId, name: impl Into<String>, value: Value) -> Self {
        self.edits.push(Edit::new(subject, name, value));
        self
    }

    /// With how a question about a subject was answered that no other field answers.
    pub(crate) fn asked(self, subject: SubjectId, question: &str, answer: impl Into<Value>) -> Self {
        self.plain(subject, field::asked_field(question), answer.into())
    }

    /// With a new subject.
    pub(crate) fn is(self, subject: SubjectId, is: &str) -> Self {
        self.plain(subject, field::IS, json!(is))
    }

    /// And then a screen.
    pub(crate) fn then(self, place: Place) -> Self {
        Self { then: Some(place), ..self }
    }
}
