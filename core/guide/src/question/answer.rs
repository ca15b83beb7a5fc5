//! What an answer is made of.

use facts::fact::FactFault;
use facts::fact::{Edit, SubjectId, value_of};
use house::naming::{self, SpecialPort};
use house::record::field;
use phrase::{Arg, Phrase};
use serde_json::{Value, json};

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
