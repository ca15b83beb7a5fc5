//! Where all outputs of a part lead, on one screen.

use facts::fact::SubjectId;
use house::record::{Part, PortEnd};
use phrase::Phrase;

use super::answer::{Answer, Told};
use super::house::cautions_of_tracing;
use super::leads_to::{LeadsToAnswer, Tags, current};
use crate::place::{Key, Question};
use crate::screen::PressWeight;
use crate::session::{Pending, SurveySnapshot};
use crate::view::ScreenBuilder;

/// The most options that stand on one screen; a part with more of them is asked about output by output.
const MOST_OPTIONS: usize = 150;

/// Whether the outputs of a part are asked about together. Counted from above, since it is asked of every part for every
/// screen.
pub(super) fn are_asked_together(snapshot: &SurveySnapshot<'_>, part: &Part) -> bool {
    let ports = usize::from(part.outputs());
    ports > 1 && ports * LeadsToAnswer::most_offers(snapshot.survey) <= MOST_OPTIONS
}

/// Whether it is told of a port where it leads.
pub(super) fn is_told(snapshot: &SurveySnapshot<'_>, part: &Part, port: u8) -> bool {
    snapshot.survey.wiring.on_port(part.id, port).next().is_some() || part.end(port).is_some()
}

/// Where the outputs lead, as far as that was picked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct OutputsAnswer(Vec<(u8, LeadsToAnswer)>);

impl OutputsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let Some(found) = snapshot.survey.parts.get(&part) else { return };
        for port in 1..=found.outputs() {
            let asked = Question::LeadsTo(part, port).phrase(snapshot);
            let name = Phrase { id: "outputs-port".into(), args: asked.args };
            let now = current(snapshot, part, port);
            builder.choice(&Key::PortHere(port), &name, false, LeadsToAnswer::offers(snapshot, part), &now);
        }
        builder.press(&Key::OthersToo, &Phrase::new("outputs-others-loose"), PressWeight::Other);
        builder.press(&Key::OthersOpen, &Phrase::new("outputs-others-open"), PressWeight::Other);
        cautions_of_tracing(snapshot, builder);
    }

    pub(super) fn read(pending: &Pending, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Self {
        let ports = snapshot.survey.parts.get(&part).map_or(0, Part::outputs);
        Self((1..=ports).filter_map(|port| Some((port, pending.one(&Key::PortHere(port))?))).collect())
    }

    /// Every output has to be told of.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Told<Answer> {
        let open = self.open(snapshot, part);
        match open.first() {
            Some(port) => {
                let asked = Question::LeadsTo(part, *port).phrase(snapshot);
                Err(Phrase { id: "outputs-not-told".into(), args: asked.args })
            }
            None => self.edits(snapshot, part),
        }
    }

    /// The same, where every output that nobody told of ends in one way.
    pub(super) fn answer_with_others(
        mut self,
        snapshot: &SurveySnapshot<'_>,
        part: SubjectId,
        end: PortEnd,
    ) -> Told<Answer> {
        let open = self.open(snapshot, part);
        self.0.extend(open.into_iter().map(|port| (port, LeadsToAnswer::End(end))));
        self.edits(snapshot, part)
    }

    /// The outputs of which nothing is told.
    fn open(&self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Vec<u8> {
        let Some(found) = snapshot.survey.parts.get(&part) else { return Vec::new() };
        let is_open =
            |port: &u8| !is_told(snapshot, found, *port) && !self.0.iter().any(|(picked, _)| picked == port);
        (1..=found.outputs()).filter(is_open).collect()
    }

    fn edits(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Told<Answer> {
        let mut loose: Vec<_> = self
            .0
            .iter()
            .filter(|(_, leads)| matches!(leads, LeadsToAnswer::Loose(_)))
            .map(|(_, leads)| *leads)
            .collect();
        let many = loose.len();
        loose.dedup();
        if loose.len() < many {
            return Err(Phrase::new("outputs-twice"));
        }
        let mut tags = Tags::of(snapshot.survey);
        let mut answer = Answer::new();
        for (port, leads) in self.0 {
            if current(snapshot, part, port) != Some(leads) {
                answer.edits.extend(leads.answer_with(&mut tags, snapshot, part, port).edits);
            }
        }
        Ok(answer)
    }
}
