//! What an answer is made of.

use facts::fact::FactFault;
use facts::fact::{Edit, SubjectId};
use house::naming::{self, SpecialPort};
use house::record::field::{Field, FieldValue};
use house::record::{Asked, Is, Reply};
use phrase::{Arg, Phrase};

use super::Question;
use crate::place::Place;
use crate::session::Scene;

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

/// Gives a question's message what it speaks of.
pub(super) fn name_subject(question: &Question, scene: &Scene<'_>, phrase: Phrase) -> Phrase {
    let survey = scene.survey;
    match question {
        Question::Wish(room) | Question::WishOther(room) => {
            phrase.text("room", survey.rooms.get(room).map_or("", |room| room.name.as_str()))
        }
        Question::Joined(part)
        | Question::GroundBlock(part)
        | Question::EntryFilter(part)
        | Question::Label(part)
        | Question::LabelRead(part)
        | Question::Legs(part)
        | Question::Powered(part)
        | Question::Plugged(part)
        | Question::RoomOf(part)
        | Question::FedBy(part) => phrase.phrase("part", naming::part(survey, *part)),
        Question::LeadsTo(part, port) => {
            let losses = survey.parts.get(part).map(|part| part.rating.leg_losses_db.as_slice());
            let differ = losses.unwrap_or_default().windows(2).any(|pair| pair.first() != pair.last());
            let loss =
                losses.unwrap_or_default().get(usize::from(*port).saturating_sub(1)).filter(|_| differ);
            let phrase = phrase
                .text("printed", if loss.is_some() { "yes" } else { "no" })
                .with("loss", Arg::Loss(loss.copied().unwrap_or_default()));
            let found = survey.parts.get(part);
            let only = match found.and_then(|part| naming::special_port(part, *port)) {
                Some(SpecialPort::Passive) => "passive",
                Some(SpecialPort::Through) => "through",
                Some(SpecialPort::Tap) => "tap",
                None if found.is_none_or(|part| part.outputs() < 2) => "yes",
                None => "no",
            };
            phrase
                .phrase("part", naming::part(survey, *part))
                .with("port", Arg::Count(u64::from(*port)))
                .text("only", only)
        }
        Question::Cable(run) | Question::Length(run) | Question::Marks(run) | Question::ConnectorsOf(run) => {
            match survey.wiring.fed_over(*run) {
                Some(to) => phrase.phrase("run", naming::run_to(survey, to)),
                None => phrase.phrase("run", house::story::thing(survey, *run)),
            }
        }
        _ => phrase,
    }
}
