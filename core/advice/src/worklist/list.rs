//! The whole work list, and the rooms for which it looks because their tests failed.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::naming;
use house::record::{ChangeKind, Survey, Without};
use phrase::{Arg, Phrase};
use serde::{Deserialize, Serialize};

use super::bridge_places::BridgePlace;
use super::effort::Effort;
use super::refusal::Refusal;
use super::step::Step;
use crate::forecast::Forecast;
use crate::level::{Levels, OutletChange, OutletDone};
use crate::suspect::Suspect;
use crate::verdict::Fault;

/// A room whose test failed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FailedRoom {
    /// Its outlet.
    pub outlet: SubjectId,
    /// What its tests show to be wrong on the way, what is graver first; empty where they only give less than is wished.
    pub faults: Vec<Fault>,
    /// What on the way is most likely at fault, where something is wrong on it.
    pub suspect: Option<Suspect>,
    /// The step of the list that comes next for it; `None` where no check and no change is left.
    pub next: Option<ChangeKind>,
}

impl FailedRoom {
    /// What comes next for it, or what is left where nothing does.
    pub fn phrase(&self, survey: &Survey, list: &WorkList) -> Phrase {
        let step = list.steps.iter().find(|step| Some(step.change) == self.next);
        let id = match step {
            Some(_) => "failed-next",
            None if self.faults.is_empty() => "failed-wish",
            None => "failed-nothing-left",
        };
        let phrase = self.head(id, naming::part(survey, self.outlet));
        match step {
            Some(step) => phrase.phrase("step", step.change.phrase(&step.before)),
            None => phrase,
        }
    }

    /// A message about the room, by the name that its outlet has there: it tells a test from a count of adapters that missed
    /// it.
    pub fn head(&self, id: &str, outlet: Phrase) -> Phrase {
        let how = if self.faults == [Fault::NotSeen] { "not_seen" } else { "tested" };
        Phrase::new(id).phrase("outlet", outlet).text("how", how)
    }
}

/// Why a list ends although more may be worth doing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum CutShort {
    /// It holds as many steps as a list does.
    Steps,
    /// The house has so many parts and possible changes that weighing all of them anew would take too long.
    Size,
}

impl CutShort {
    /// Its name in JSON.
    pub fn name(self) -> &'static str {
        match self {
            Self::Steps => "steps",
            Self::Size => "size",
        }
    }

    /// What is said of it.
    pub fn phrase(self) -> Phrase {
        Phrase::new(format!("worklist-cut-{}", self.name()))
    }
}

/// How far the changes for a rate alone were searched.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Searched {
    /// So many houses, each with other changes made, were weighed against each other.
    pub houses: u64,
    /// By so much, Mb/s over all rooms and both directions, less what it costs, another choice may be better at the most; 0 where
    /// none is.
    pub better_by_mbps: f64,
}

/// Nearer to each other two choices are the same, Mb/s.
const SAME_MBPS: f64 = 0.5;

impl Searched {
    /// Whether no other choice is better.
    pub fn is_best(self) -> bool {
        self.better_by_mbps < SAME_MBPS
    }

    /// What is said of it.
    pub fn phrase(self) -> Phrase {
        Phrase::new("worklist-searched")
            .with("houses", Arg::Count(self.houses))
            .text("best", if self.is_best() { "yes" } else { "no" })
            .with("more", Arg::Rate(self.better_by_mbps))
    }
}

/// Another list that may be chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherList {
    /// The kinds of work that it leaves out; none where everything may be done.
    pub without: BTreeSet<Without>,
    /// Its steps in order.
    pub steps: Vec<OtherStep>,
    /// The forecast after all of them, by the same draws as the list's own.
    pub when_done: Forecast,
    /// The house then.
    pub house_when_done: Survey,
}

/// A step of another list.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherStep {
    /// What is done.
    pub change: ChangeKind,
    /// The house as it stands before it.
    pub before: Survey,
    /// Parts and minutes.
    pub effort: Effort,
}

/// The whole work.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkList {
    /// The steps in order.
    pub steps: Vec<Step>,
    /// Why it ends, unless because nothing more is worth doing.
    pub cut_short: Option<CutShort>,
    /// How far the changes were searched; `None` where the house is too large for it.
    pub searched: Option<Searched>,
    /// What the list might be instead: without work of some kind, or with all of it.
    pub others: Vec<OtherList>,
    /// Changes that were looked at and are not offered, with the reason.
    pub refused: Vec<(ChangeKind, Refusal)>,
    /// Where the network could start, while nobody has said where it does.
    pub places: Vec<BridgePlace>,
    /// The forecast of the house as found.
    pub as_found: Forecast,
    /// The forecast after all steps.
    pub when_done: Forecast,
    /// The house after all steps.
    pub house_when_done: Survey,
    /// The rooms whose tests failed, each with the step that comes next for it.
    pub failed: Vec<FailedRoom>,
    /// What TV and modem get in the house as found.
    pub levels: Levels,
    /// What all steps together change of it.
    pub level_changes: Vec<OutletChange>,
}

impl WorkList {
    /// Whether there are steps, and all of them are checks that change nothing.
    pub fn is_only_checks(&self) -> bool {
        !self.steps.is_empty() && self.steps.iter().all(|step| step.change.is_check())
    }

    /// What is known of TV and modem, as it will be after all steps.
    pub fn levels_when_done(&self) -> Vec<OutletDone> {
        self.levels.when_done(&self.level_changes)
    }
}
