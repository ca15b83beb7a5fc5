//! Which parts and runs on the way to an outlet are most likely to be at fault when its test failed: what nobody knows, what
//! is known to be poor, and what the tests of other rooms say of the same stretch.

use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;
use house::record::{PartKind, Survey};
use indexmap::IndexSet;

use crate::forecast::{CostAt, Forecast};
use crate::verdict::RoomVerdict;
use crate::weighed::{CLEARED, part_weight, run_weight};

pub use crate::weighed::Ground;

/// Something on the way to an outlet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Suspect {
    /// Where.
    pub at: CostAt,
    /// How likely it is at fault, against a sound part, 1.
    pub weight: f64,
    /// Why.
    pub ground: Ground,
    /// Whether another room's test over it went well.
    pub is_cleared: bool,
}

/// What lies on the way from the bridge to each outlet, and what the tests at all outlets say of it.
pub struct Suspects<'a> {
    survey: &'a Survey,
    bridge: Option<SubjectId>,
    /// Outlets over each place, the tests of which failed.
    failed: BTreeMap<Spot, IndexSet<SubjectId>>,
    /// Places over which a test went well.
    cleared: BTreeSet<Spot>,
}

/// A place, so that it can be looked up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Spot {
    Part(SubjectId),
    RunTo(SubjectId),
}

impl From<CostAt> for Spot {
    fn from(at: CostAt) -> Self {
        match at {
            CostAt::Part(id) => Self::Part(id),
            CostAt::RunTo(id) => Self::RunTo(id),
        }
    }
}

impl<'a> Suspects<'a> {
    /// By the tests of a survey. `forecast` says what was to be expected of them, and where the bridge is.
    pub fn of(survey: &'a Survey, forecast: &Forecast) -> Self {
        let mut suspects =
            Self { survey, bridge: forecast.bridge, failed: BTreeMap::new(), cleared: BTreeSet::new() };
        for room in &forecast.rooms {
            let verdict = RoomVerdict::at(survey, room.outlet, Some(forecast));
            for at in suspects.way(room.outlet) {
                if !verdict.faults.is_empty() {
                    suspects.failed.entry(at.into()).or_default().insert(room.outlet);
                } else if verdict.is_well() {
                    suspects.cleared.insert(at.into());
                }
            }
        }
        suspects
    }

    /// The outlets whose way passes a place and whose tests failed.
    pub fn failed_over(&self, at: CostAt) -> impl Iterator<Item = SubjectId> + '_ {
        self.failed.get(&at.into()).into_iter().flatten().copied()
    }

    /// Whether a test over a place went well, and none that passes it failed.
    pub fn is_cleared(&self, at: CostAt) -> bool {
        self.cleared.contains(&at.into()) && self.failed_over(at).next().is_none()
    }

    /// What lies on the way to an outlet, what is most likely at fault first; of equals, what is nearer to the outlet. What is
    /// at the bridge's own outlet serves every room, and stands last among equals.
    pub fn on_way(&self, outlet: SubjectId) -> Vec<Suspect> {
        let mut found: Vec<_> =
            self.way(outlet).into_iter().rev().filter_map(|at| self.weighed(at)).collect();
        found.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        found
    }

    /// How likely something is at fault, as [`on_way`](Self::on_way) weighs it.
    pub fn weighed(&self, at: CostAt) -> Option<Suspect> {
        let (weight, ground) = match at {
            CostAt::Part(id) => part_weight(self.survey.parts.get(&id)?),
            CostAt::RunTo(id) => {
                let feed = self.survey.wiring.feed(id)?;
                run_weight(feed.run.and_then(|run| self.survey.runs.get(&run)))
            }
        };
        let failed = self.failed_over(at).count();
        let is_cleared = self.cleared.contains(&at.into());
        let share = if is_cleared { CLEARED } else { failed.max(1) as f64 };
        let ground =
            if failed > 1 && !is_cleared && ground != Ground::Poor { Ground::Shared } else { ground };
        Some(Suspect { at, weight: weight * share, ground, is_cleared })
    }

    /// Parts and runs between the bridge and an outlet, from the bridge on. What the provider works on alone is not among
    /// them.
    fn way(&self, outlet: SubjectId) -> Vec<CostAt> {
        let way = self.bridge.and_then(|bridge| self.survey.wiring.way_between(bridge, outlet));
        let way = way.unwrap_or_default();
        let mut found = Vec::new();
        for (place, id) in way.iter().copied().enumerate() {
            let before = place.checked_sub(1).and_then(|place| way.get(place)).copied();
            if let Some(before) = before {
                let is_fed = self.survey.wiring.feed(id).is_some_and(|feed| feed.part == before);
                let to = if is_fed { id } else { before };
                if !self.survey.is_street_side(to) {
                    found.push(CostAt::RunTo(to));
                }
            }
            let is_entry = self.survey.parts.get(&id).is_none_or(|part| part.kind == PartKind::Entry);
            if !is_entry {
                found.push(CostAt::Part(id));
            }
        }
        found
    }
}
