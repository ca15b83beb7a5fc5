//! The way to the weakest room, with what each place on it costs.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;
use house::record::Survey;

use super::outcome::{CostAt, Forecast};

/// The way from the bridge to the room with the lowest likely rate.
#[derive(Debug, Clone, PartialEq)]
pub struct WeakWay {
    /// The outlet at its end.
    pub outlet: SubjectId,
    parts: BTreeSet<SubjectId>,
    runs_to: BTreeSet<SubjectId>,
    part_costs: BTreeMap<SubjectId, f64>,
    run_costs: BTreeMap<SubjectId, f64>,
}

impl WeakWay {
    /// The weakest way of a forecast; `None` where no room's rate was worked out.
    pub fn of(survey: &Survey, forecast: &Forecast) -> Option<Self> {
        let weakest = forecast.weakest_first();
        let (room, path) = weakest.first()?;
        let way = survey.wiring.way_between(forecast.bridge?, room.outlet)?;
        let mut runs_to = BTreeSet::new();
        for (one, next) in way.iter().zip(way.iter().skip(1)) {
            let next_is_fed = survey.wiring.feed(*next).is_some_and(|feed| feed.part == *one);
            runs_to.insert(if next_is_fed { *next } else { *one });
        }
        let mut weak = Self {
            outlet: room.outlet,
            parts: way.into_iter().collect(),
            runs_to,
            part_costs: BTreeMap::new(),
            run_costs: BTreeMap::new(),
        };
        for cost in &path.costs {
            let (costs, id) = match cost.at {
                CostAt::Part(id) => (&mut weak.part_costs, id),
                CostAt::RunTo(id) => (&mut weak.run_costs, id),
            };
            *costs.entry(id).or_default() += cost.db;
        }
        Some(weak)
    }

    /// Whether a part is on the way.
    pub fn passes(&self, part: SubjectId) -> bool {
        self.parts.contains(&part)
    }

    /// Whether the run that feeds a part is on the way.
    pub fn passes_run_to(&self, part: SubjectId) -> bool {
        self.runs_to.contains(&part)
    }

    /// What a part costs on the way, dB.
    pub fn part_cost(&self, part: SubjectId) -> Option<f64> {
        self.part_costs.get(&part).copied()
    }

    /// What the run that feeds a part costs on the way, dB.
    pub fn run_cost(&self, part: SubjectId) -> Option<f64> {
        self.run_costs.get(&part).copied()
    }
}
