//! What an answer is made of.

use facts::fact::{Edit, SubjectId};
use house::record::field::{Field, FieldValue};
use house::record::{Asked, Is, Reply};
use phrase::Phrase;

use crate::place::Place;

/// How it is written that somebody looked and could not tell.
pub(crate) const UNSURE: &str = "unsure";

/// An answer; or what is wrong with it, and what to do.
pub(crate) type Told<T> = Result<T, Phrase>;

/// What was answered.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Answer {
    /// What it says.
    pub(crate) edits: Vec<Edit>,
    /// Where to go then; the next open question if nothing is named.
    pub(crate) then: Option<Place>,
}

/// That nothing was chosen or written yet.
pub(crate) fn not_answered() -> Phrase {
    Phrase::new("not-answered")
}

impl Answer {
    /// An answer that says nothing yet.
    pub(crate) fn new() -> Self {
        Self::default()
    }

    /// With one more edit.
    pub(crate) fn with(mut self, edit: Edit) -> Self {
        self.edits.push(edit);
        self
    }

    /// With the value of a field.
    pub(crate) fn says<T: ?Sized + FieldValue>(self, subject: SubjectId, field: Field<T>, value: &T) -> Self {
        self.with(field.set(subject, value))
    }

    /// With a field emptied.
    pub(crate) fn clears<T: ?Sized + FieldValue>(self, subject: SubjectId, field: Field<T>) -> Self {
        self.with(field.clear(subject))
    }

    /// With the reply to a question about a subject that no other field answers.
    pub(crate) fn asked(self, subject: SubjectId, question: Asked, reply: Reply) -> Self {
        self.with(question.set(subject, reply))
    }

    /// With a new record.
    pub(crate) fn is(self, subject: SubjectId, is: Is) -> Self {
        self.with(is.begin(subject))
    }

    /// And then a screen.
    pub(crate) fn then(self, place: Place) -> Self {
        Self { then: Some(place), ..self }
    }
}
