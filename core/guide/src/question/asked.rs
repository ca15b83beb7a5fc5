//! What a question asks, in words, and whether it still stands.

use house::naming::{self, SpecialPort};
use phrase::{Arg, Phrase};

use crate::place::Question;
use crate::session::SurveySnapshot;

impl Question {
    /// The message of the question, with what it speaks of.
    pub(crate) fn phrase(&self, snapshot: &SurveySnapshot<'_>) -> Phrase {
        let phrase = Phrase::new(format!("ask-{}", self.name()));
        name_subject(self, snapshot, phrase)
    }

    /// Whether the thing that it asks about is still there.
    pub(crate) fn stands(&self, snapshot: &SurveySnapshot<'_>) -> bool {
        let survey = snapshot.survey;
        match self {
            Self::Wish(room) | Self::WishOther(room) => survey.rooms.contains_key(room),
            Self::Cable(run) | Self::Length(run) | Self::Marks(run) | Self::ConnectorsOf(run) => {
                survey.runs.contains_key(run)
            }
            Self::Joined(part)
            | Self::GroundBlock(part)
            | Self::EntryFilter(part)
            | Self::Label(part)
            | Self::LabelRead(part)
            | Self::Legs(part)
            | Self::LeadsTo(part, _)
            | Self::ByPass(part)
            | Self::Powered(part)
            | Self::Plugged(part)
            | Self::RoomOf(part)
            | Self::FedBy(part) => survey.parts.contains_key(part),
            _ => true,
        }
    }
}

/// Gives a question's message what it speaks of.
fn name_subject(question: &Question, snapshot: &SurveySnapshot<'_>, phrase: Phrase) -> Phrase {
    let survey = snapshot.survey;
    match question {
        Question::Wish(room) | Question::WishOther(room) => {
            phrase.phrase("room", naming::room(survey, *room))
        }
        Question::Joined(part)
        | Question::GroundBlock(part)
        | Question::EntryFilter(part)
        | Question::Label(part)
        | Question::LabelRead(part)
        | Question::Legs(part)
        | Question::ByPass(part)
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
            phrase.phrase("run", naming::run(survey, *run))
        }
        _ => phrase,
    }
}
