//! Where all outputs of a part lead, told on one screen.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::{Asked, Feed, FeedFrom, Part, PartKind, PortEnd, Reply, field};
use phrase::Phrase;

use super::answer::{Answer, Told};
use super::leads_to::{LeadsToAnswer, Tags, cleared, current, no_guess};
use super::{outputs_drawn, some_order};
use crate::place::{Choice, Key, Question};
use crate::session::{Pending, SurveySnapshot};
use crate::view::ScreenBuilder;

/// The most options that there are in all; a part with more of them is asked about output by output.
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

/// Whether what was picked for an output is what stands there, and not as a guess.
pub(super) fn is_as_it_stands(snapshot: &SurveySnapshot<'_>, part: SubjectId, key: &str) -> bool {
    let Some(Key::PortHere(port)) = Key::of(key) else { return false };
    let picked: Option<LeadsToAnswer> = snapshot.pending().one(&Key::PortHere(port));
    picked.is_some()
        && picked == current(snapshot, part, port)
        && !some_order::is_guessed(snapshot.survey, part, port)
}

/// Where the outputs lead, as far as that was picked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct OutputsAnswer {
    /// Output by output.
    ports: Vec<(u8, LeadsToAnswer)>,
    /// What those left lead to in some order.
    in_order: Vec<LeadsToAnswer>,
}

impl OutputsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        outputs_drawn::draw(snapshot, builder, part);
    }

    pub(super) fn read(pending: &Pending, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Self {
        let ports = snapshot.survey.parts.get(&part).map_or(0, Part::outputs);
        let ports: Vec<_> =
            (1..=ports).filter_map(|port| Some((port, pending.one(&Key::PortHere(port))?))).collect();
        Self { ports, in_order: some_order::read(pending) }
    }

    /// What was picked for an output.
    pub(super) fn picked(&self, port: u8) -> Option<LeadsToAnswer> {
        self.ports.iter().find(|(picked, _)| *picked == port).map(|(_, leads)| *leads)
    }

    /// Whether something was picked for any output.
    pub(super) fn has(&self, leads: LeadsToAnswer) -> bool {
        self.ports.iter().any(|(_, picked)| *picked == leads)
    }

    /// Every output has to be told of.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Told<Answer> {
        let Some(found) = snapshot.survey.parts.get(&part) else { return Ok(Answer::new()) };
        if let Some(port) = self.open(snapshot, found).first() {
            let asked = Question::LeadsTo(part, *port).phrase(snapshot);
            // Whoever has just told of one goes on to the next one.
            let has_just_told = snapshot.pending().picked_keys(&Key::Unfolded).is_some_and(<[_]>::is_empty);
            let id = if has_just_told { "outputs-next" } else { "outputs-not-told" };
            return Err(Phrase { id: id.into(), args: asked.args });
        }
        let guessed = self.guessed(snapshot, found)?;
        self.edits(snapshot, found, guessed)
    }

    /// The same, where every output that nobody told of ends in one way.
    pub(super) fn answer_with_others(
        mut self,
        snapshot: &SurveySnapshot<'_>,
        part: SubjectId,
        end: PortEnd,
    ) -> Told<Answer> {
        let Some(found) = snapshot.survey.parts.get(&part) else { return Ok(Answer::new()) };
        let guessed = self.guessed(snapshot, found)?;
        let others = self.open(snapshot, found);
        self.ports.extend(others.into_iter().map(|port| (port, LeadsToAnswer::End(end))));
        self.edits(snapshot, found, guessed)
    }

    /// The outlets that are taken to be on the outputs left, in some order.
    fn guessed(&self, snapshot: &SurveySnapshot<'_>, found: &Part) -> Told<Vec<(u8, LeadsToAnswer)>> {
        some_order::taken(found, &self.open_but_in_order(snapshot, found), &self.in_order)
    }

    /// The outputs of which nothing is told, if not by what leads to rooms in some order.
    pub(super) fn open_but_in_order(&self, snapshot: &SurveySnapshot<'_>, found: &Part) -> Vec<u8> {
        let is_open = |port: &u8| !is_told(snapshot, found, *port) && self.picked(*port).is_none();
        (1..=found.outputs()).filter(is_open).collect()
    }

    /// The outputs of which nothing is told.
    pub(super) fn open(&self, snapshot: &SurveySnapshot<'_>, found: &Part) -> Vec<u8> {
        let open = self.open_but_in_order(snapshot, found);
        open.into_iter().skip(self.in_order.len()).collect()
    }

    fn edits(
        self,
        snapshot: &SurveySnapshot<'_>,
        found: &Part,
        guessed: Vec<(u8, LeadsToAnswer)>,
    ) -> Told<Answer> {
        let part = found.id;
        let mut loose: Vec<_> =
            self.ports.iter().filter(|(_, leads)| matches!(leads, LeadsToAnswer::Loose(_))).collect();
        let many = loose.len();
        loose.sort_by_key(|(_, leads)| leads.key());
        loose.dedup_by_key(|(_, leads)| leads.key());
        if loose.len() < many {
            return Err(Phrase::new("outputs-twice"));
        }
        let mut tags = Tags::of(snapshot.survey);
        let mut answer = Answer::new();
        let moved = self.moved(snapshot, part);
        for (port, leads) in &self.ports {
            let there = snapshot.survey.wiring.on_port(part, *port).next();
            let stays = there.filter(|child| !moved.values().any(|moved| moved == child));
            if let Some(outlet) = moved.get(port) {
                let run = snapshot.survey.wiring.feed(*outlet).and_then(|feed| feed.run);
                let feed = Feed::From(FeedFrom { part, port: *port, run });
                answer.edits.extend(cleared(snapshot, stays, part, *port).edits);
                answer = no_guess(answer.says(*outlet, field::part::FEED, &feed), snapshot, *outlet);
            } else if stays.is_some() && current(snapshot, part, *port) == Some(*leads) {
                answer = there.into_iter().fold(answer, |answer, outlet| no_guess(answer, snapshot, outlet));
            } else if stays != there || current(snapshot, part, *port) != Some(*leads) {
                let told = leads.answer_over(stays, &mut tags, snapshot, part, *port);
                answer.edits.extend(told.edits);
                answer = stays.into_iter().fold(answer, |answer, outlet| no_guess(answer, snapshot, outlet));
            }
        }
        for (port, leads) in guessed {
            let (told, outlet) = leads.outlet_on(&mut tags, snapshot, part, port);
            answer.edits.extend(told.edits);
            answer.edits.extend(outlet.map(|outlet| Asked::FedBy.set(outlet, Reply::Guessed)));
        }
        Ok(answer)
    }

    /// Outlets of this part that turn out to be on another of its outputs than was told: each takes its cable along.
    fn moved(&self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> BTreeMap<u8, SubjectId> {
        let survey = snapshot.survey;
        let mut moved = BTreeMap::new();
        for (port, leads) in &self.ports {
            let LeadsToAnswer::Room(room) = leads else { continue };
            if current(snapshot, part, *port) == Some(*leads) {
                continue;
            }
            let from = self.ports.iter().find_map(|(other, picked)| {
                let child = survey.wiring.on_port(part, *other).next()?;
                let outlet = survey.parts.get(&child).filter(|child| child.kind == PartKind::Outlet)?;
                (other != port && picked != leads && outlet.room == Some(*room)).then_some(child)
            });
            moved.extend(from.map(|child| (*port, child)));
        }
        moved
    }
}
