//! What another list that may be chosen is beside the list that is shown.

use std::collections::BTreeSet;

use house::naming;
use house::record::{ChangeKind, Named, Room, Survey, Without};
use phrase::{Arg, Phrase};

use super::effect::applied;
use super::effort::{PartNeeded, effort};
use super::gain::{Gain, gains, lost};
use super::list::{OtherList, OtherStep, WorkList};
use super::need::WORTH_MBPS;
use super::rank::keeps_private;
use super::same_work::is_same_work;
use super::shopping::shopping;
use crate::forecast::Forecast;
use crate::verdict::answers_to_come;

/// Of two lists a room's rates are told apart where they differ by so large a share of the greater (our own choice).
const TOLD_APART: f64 = 0.1;

impl OtherStep {
    /// What is done, in words.
    pub fn what(&self) -> Phrase {
        self.change.phrase(&self.before)
    }
}

impl OtherList {
    /// A list of these steps in a house.
    pub(crate) fn of(
        survey: &Survey,
        without: BTreeSet<Without>,
        changes: &[ChangeKind],
        when_done: Forecast,
    ) -> Self {
        let mut house = survey.where_not_wanted(&without);
        let mut steps = Vec::with_capacity(changes.len());
        for change in changes.iter().copied() {
            let after = if change.is_check() { house.clone() } else { applied(change, &house) };
            let effort = effort(change, &house);
            steps.push(OtherStep { change, effort, before: std::mem::replace(&mut house, after) });
        }
        Self { without, steps, when_done, house_when_done: house }
    }

    /// What it is called: by what it leaves out.
    pub fn name(&self) -> Phrase {
        if self.without.is_empty() {
            return Phrase::new("without-nothing");
        }
        Phrase::new("without-list").with("kinds", kinds(&self.without))
    }

    /// The minutes of all its steps.
    pub fn minutes(&self) -> u64 {
        self.steps.iter().map(|step| step.effort.minutes).sum()
    }

    /// What all its steps need, as [`WorkList::shopping`] has it.
    pub fn shopping(&self, survey: &Survey) -> Vec<PartNeeded> {
        shopping(survey, &self.house_when_done, self.steps.iter().map(|step| &step.effort))
    }

    /// How many steps it has, how long they take, how many things there are to get.
    pub fn takes(&self, survey: &Survey) -> Phrase {
        let things = self.shopping(survey).iter().map(|part| part.count).sum();
        Phrase::new("other-takes")
            .with("count", Arg::Count(self.steps.len() as u64))
            .with("minutes", Arg::Minutes(self.minutes()))
            .with("things", Arg::Count(things))
    }

    /// What the list does and this one does not, each in words.
    pub fn leaves_out(&self, list: &WorkList) -> Vec<Phrase> {
        let is_done = |change| self.steps.iter().any(|step| is_same_work(step.change, change));
        let left_out = list.steps.iter().filter(|step| !is_done(step.change));
        left_out.map(|step| step.change.phrase(&step.before)).collect()
    }

    /// What this one does and the list does not, each in words.
    pub fn adds(&self, list: &WorkList) -> Vec<Phrase> {
        let is_done = |change| list.steps.iter().any(|step| is_same_work(step.change, change));
        self.steps.iter().filter(|step| !is_done(step.change)).map(OtherStep::what).collect()
    }

    /// What each room gets in place of what it gets with the list; a room that has an outlet with one of the two alone gets
    /// nothing with the other.
    pub fn beside(&self, list: &WorkList) -> Vec<Gain> {
        let mut rooms = gains(&list.when_done, &self.when_done);
        rooms.extend(lost(&list.when_done, &self.when_done));
        rooms
    }

    /// The rooms that get so much more or less than with the list that it is worth a word: what they get.
    pub fn rooms(&self, list: &WorkList) -> Vec<Phrase> {
        let differs = |gain: &&Gain| {
            let (with, then) = (&gain.before, &gain.after);
            let is_other =
                |one: f64, other: f64| (one - other).abs() >= WORTH_MBPS.max(TOLD_APART * one.max(other));
            is_other(with.likely_mbps, then.likely_mbps) || is_other(with.low_mbps, then.low_mbps)
        };
        let beside = self.beside(list);
        let mut told: Vec<_> = beside.iter().filter(differs).map(|gain| self.room(list, gain)).collect();
        let (told_of, all) = (told.len(), beside.len());
        if told_of < all {
            let rest = if told_of == 0 { "other-rooms-alike" } else { "other-rooms-else-alike" };
            told.push(Phrase::new(rest).with("rooms", Arg::Count((all - told_of) as u64)));
        }
        told
    }

    fn room(&self, list: &WorkList, gain: &Gain) -> Phrase {
        let house = [&self.house_when_done, &list.house_when_done]
            .into_iter()
            .find(|house| house.parts.contains_key(&gain.outlet))
            .unwrap_or(&self.house_when_done);
        Phrase::new("other-room")
            .phrase("room", naming::part(house, gain.outlet))
            .with("likely", Arg::Rate(gain.after.likely_mbps))
            .with("low", Arg::Rate(gain.after.low_mbps))
    }

    /// The rooms whose wish is met with the list and not with this one.
    pub fn not_met<'a>(&'a self, list: &'a WorkList) -> Vec<&'a Room> {
        let then = met_rooms(&self.house_when_done, &self.when_done);
        let with_list = met_rooms(&list.house_when_done, &list.when_done);
        with_list.into_iter().filter(|room| !then.iter().any(|met| met.id == room.id)).collect()
    }

    /// The rooms whose wish is met with this one and not with the list.
    pub fn met<'a>(&'a self, list: &'a WorkList) -> Vec<&'a Room> {
        let then = met_rooms(&self.house_when_done, &self.when_done);
        let with_list = met_rooms(&list.house_when_done, &list.when_done);
        then.into_iter().filter(|room| !with_list.iter().any(|met| met.id == room.id)).collect()
    }

    /// All that differs from the list, in sentences: what rooms get, whose wish it decides, whether the network stays in the house,
    /// then what is done and not done.
    pub fn differs(&self, list: &WorkList) -> Vec<Phrase> {
        let wish = |id, rooms: Vec<&Room>| {
            let names = rooms.iter().map(|room| naming::of_room(&self.house_when_done, room));
            let names: Vec<_> = names.map(|name| Arg::Phrase(Box::new(name))).collect();
            (!names.is_empty()).then(|| Phrase::new(id).with("rooms", Arg::Several(names)))
        };
        let mut told = self.rooms(list);
        told.extend(wish("other-not-met", self.not_met(list)));
        told.extend(wish("other-met", self.met(list)));
        let is_kept = self.steps.iter().any(|step| keeps_private(step.change));
        if !is_kept && list.steps.iter().any(|step| keeps_private(step.change)) {
            told.push(Phrase::new("other-not-private"));
        }
        let change = |id: &'static str| move |what| Phrase::new(id).phrase("change", what);
        told.extend(self.leaves_out(list).into_iter().map(change("other-leaves-out")));
        told.extend(self.adds(list).into_iter().map(change("other-adds")));
        told
    }
}

/// That a list was chosen which leaves out some kinds of work; `None` where everything may be done.
pub fn chosen(survey: &Survey) -> Option<Phrase> {
    let without = survey.without();
    (!without.is_empty()).then(|| Phrase::new("worklist-chosen").with("kinds", kinds(&without)))
}

fn kinds(without: &BTreeSet<Without>) -> Arg {
    let kind = |without: &Without| Phrase::new(format!("without-{}", without.name()));
    Arg::Several(without.iter().map(|of| Arg::Phrase(Box::new(kind(of)))).collect())
}

fn met_rooms<'a>(house: &'a Survey, forecast: &'a Forecast) -> Vec<&'a Room> {
    let answers = answers_to_come(house, forecast).into_iter();
    answers.filter(|answer| answer.wished.met.is_met()).map(|answer| answer.room).collect()
}
