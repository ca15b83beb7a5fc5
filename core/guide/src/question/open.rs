//! What is open in a survey, and what a forecast made meanwhile takes for granted.

use coax::estimates;
use house::naming;
use house::record::{CableKind, Named, Part, Reply};
use phrase::{Arg, Phrase};

use super::journey::journey;
use super::some_order;
use crate::place::Question;
use crate::session::SurveySnapshot;

/// What is open, and what was looked at and could not be told.
pub(crate) struct Open {
    /// Neither answered nor put off.
    pub(crate) questions: Vec<Question>,
    /// How many were put off.
    pub(crate) later: usize,
    /// How many were answered by "not sure".
    pub(crate) unsure: usize,
    /// How many of the cables that are asked about are of a kind that somebody told.
    of_known_kind: usize,
    /// The parts of which the order of the outputs is a guess.
    in_order: Vec<Phrase>,
}

impl Open {
    /// What is open in a survey.
    pub(crate) fn of(snapshot: &SurveySnapshot<'_>) -> Self {
        let later = &snapshot.memory.later;
        let open =
            journey(snapshot).into_iter().filter(|on_way| !on_way.answered).map(|on_way| on_way.question);
        let (put_off, questions): (Vec<_>, Vec<_>) = open.partition(|question| later.contains(question));
        let is_unsure = |answer: &&serde_json::Value| answer.as_str() == Some(Reply::Unsure.name());
        let unsure = snapshot.survey.asked.values().filter(is_unsure).count();
        let survey = snapshot.survey;
        let guessed =
            |part: &&Part| (1..=part.outputs()).any(|port| some_order::is_guessed(survey, part.id, port));
        let in_order =
            survey.parts.values().filter(guessed).map(|part| naming::of_part(survey, part)).collect();
        let is_kind_known = |question: &&Question| match question {
            Question::Cable(run) => survey.runs.get(run).is_some_and(|run| run.cable != CableKind::Unknown),
            _ => false,
        };
        let of_known_kind = questions.iter().filter(is_kind_known).count();
        Self { of_known_kind, questions, later: put_off.len(), unsure, in_order }
    }

    fn count(&self, asks: impl Fn(&Question) -> bool) -> usize {
        self.questions.iter().filter(|question| asks(question)).count()
    }

    /// What a forecast made now takes for granted, since nobody was asked.
    pub(crate) fn granted(&self) -> Vec<Phrase> {
        let mut granted = Vec::new();
        let cables = self.count(|question| matches!(question, Question::Cable(_)));
        let of_known_kind = self.of_known_kind;
        for (id, cables) in [("granted-cables", cables - of_known_kind), ("granted-lengths", of_known_kind)] {
            let span = Arg::LengthRange(estimates::house::UNKNOWN_RUN.span);
            let told = Phrase::new(id).with("cables", Arg::Count(cables as u64)).with("length", span);
            granted.extend((cables > 0).then_some(told));
        }
        granted.extend(
            self.in_order.iter().map(|feeder| Phrase::new("granted-order").phrase("part", feeder.clone())),
        );
        for (id, open) in [
            ("granted-plugs", self.count(|question| *question == Question::Connectors)),
            ("granted-filter", self.count(|question| matches!(question, Question::EntryFilter(_)))),
            ("granted-uses", self.count(|question| *question == Question::Uses)),
        ] {
            granted.extend((open > 0).then(|| Phrase::new(id)));
        }
        granted
    }
}
