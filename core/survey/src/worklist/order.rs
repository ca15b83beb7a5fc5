//! The order of the work: the change that gains most goes first, and what it leaves is looked at anew.

use std::collections::BTreeMap;

use super::change::ChangeKind;
use super::effort::Effort;
use super::propose::proposals;
use super::refusal::Refusal;
use crate::error::SurveyError;
use crate::fact::SubjectId;
use crate::forecast::{self, Forecast, Reach, forecast};
use crate::record::Survey;

/// How a work list is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// How candidates are weighed: few draws at few frequencies.
    pub screening: forecast::Options,
    /// How each step's gain is stated.
    pub stating: forecast::Options,
    /// At most so many steps.
    pub most_steps: usize,
}

impl Default for Options {
    fn default() -> Self {
        let stating = forecast::Options::default();
        Self { screening: forecast::Options { draws: 16, points: 89, ..stating }, stating, most_steps: 24 }
    }
}

/// What a step gains at one outlet: the likely rate towards it, Mb/s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// The outlet.
    pub outlet: SubjectId,
    /// Before the step.
    pub before_mbps: f64,
    /// After it.
    pub after_mbps: f64,
}

/// One step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What is done.
    pub change: ChangeKind,
    /// The house as it stands before this step: names and places are those of this house.
    pub before: Survey,
    /// What it gains, outlet by outlet in the forecast's order.
    pub gains: Vec<Gain>,
    /// Parts and minutes.
    pub effort: Effort,
}

/// The whole work.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkList {
    /// The steps in order.
    pub steps: Vec<Step>,
    /// Changes that were looked at and are not offered, with the reason.
    pub refused: Vec<(ChangeKind, Refusal)>,
    /// The forecast of the house as found.
    pub as_found: Forecast,
    /// The forecast after all steps.
    pub when_done: Forecast,
    /// The house after all steps.
    pub house_when_done: Survey,
}

/// A gain in Mb/s below which a step that only serves speed is not worth the work.
const WORTH_MBPS: f64 = 15.0;

/// Works out what to change and in which order.
///
/// Greedy: of all changes not refused, the one whose gain a minute of work is greatest comes next; then the house
/// with that change is looked at anew. What keeps the network private or the house quiet (entry filter, caps) is
/// done whether or not it gains speed.
///
/// # Errors
/// What [`forecast()`] gives.
pub fn worklist(survey: &Survey, options: &Options) -> Result<WorkList, SurveyError> {
    let as_found = forecast(survey, &options.stating)?;
    let mut house = survey.clone();
    let mut steps: Vec<Step> = Vec::new();
    let mut refused = BTreeMap::new();
    let mut current = as_found.clone();
    while steps.len() < options.most_steps {
        let screened = forecast(&house, &options.screening)?;
        let mut best: Option<(f64, ChangeKind, Survey)> = None;
        for change in proposals(&house) {
            if let Some(refusal) = change.refusal(&house) {
                refused.entry(change).or_insert(refusal);
                continue;
            }
            let after = change.applied(&house);
            let gain = worth(&house, &screened, &forecast(&after, &options.screening)?);
            let minutes = change.effort(&house).minutes.max(1) as f64;
            let wanted = change.is_wanted_anyway();
            if gain < WORTH_MBPS && !wanted {
                continue;
            }
            // What is wanted anyway never loses out to nothing: its least value is that of a small gain.
            let value = if wanted { gain.max(WORTH_MBPS) } else { gain } / minutes;
            if best.as_ref().is_none_or(|(most, ..)| value > *most) {
                best = Some((value, change, after));
            }
        }
        let Some((_, change, after)) = best else { break };
        let next = forecast(&after, &options.stating)?;
        steps.push(Step {
            change,
            gains: gains(&current, &next),
            effort: change.effort(&house),
            before: std::mem::replace(&mut house, after),
        });
        current = next;
    }
    let refused = refused.into_iter().collect();
    Ok(WorkList { steps, refused, as_found, when_done: current, house_when_done: house })
}

impl ChangeKind {
    /// Whether it is done even if no room gains: it keeps the network in the house, or the wiring free of echoes and
    /// leaks.
    pub fn is_wanted_anyway(self) -> bool {
        matches!(
            self,
            Self::AddEntryFilter { .. }
                | Self::MoveEntryFilter { .. }
                | Self::SwapEntryFilter { .. }
                | Self::Cap { .. }
                | Self::RenewConnectors { .. }
        )
    }
}

/// What a change is worth, Mb/s: over all rooms and both directions, the rise of what people asked for, and a tenth of
/// what rises beyond. Half of it counts at the likely value, half at the low one, so that a doubtful path made sure
/// counts too.
fn worth(survey: &Survey, before: &Forecast, after: &Forecast) -> f64 {
    let value = |forecast: &Forecast, outlet: SubjectId| {
        let wish = survey.parts.get(&outlet).and_then(|part| survey.room_of(part)?.wish);
        let rated = |mbps: f64, wish: Option<f64>| match wish {
            Some(wish) => mbps.min(wish) + 0.1 * (mbps - wish).max(0.0),
            None => 0.3 * mbps,
        };
        match forecast.room(outlet).map(|room| &room.reach) {
            Some(Reach::Estimated(path)) => [path.down, path.up]
                .into_iter()
                .zip([wish.map(|wish| wish.down_mbps), wish.map(|wish| wish.up_mbps)])
                .map(|(rate, wish)| 0.5 * (rated(rate.likely, wish) + rated(rate.low, wish)))
                .sum(),
            _ => 0.0,
        }
    };
    after.rooms.iter().map(|room| value(after, room.outlet) - value(before, room.outlet)).sum()
}

fn gains(before: &Forecast, after: &Forecast) -> Vec<Gain> {
    let likely = |forecast: &Forecast, outlet| match forecast.room(outlet).map(|room| &room.reach) {
        Some(Reach::Estimated(path)) => path.down.likely,
        _ => 0.0,
    };
    after
        .rooms
        .iter()
        .map(|room| Gain {
            outlet: room.outlet,
            before_mbps: likely(before, room.outlet),
            after_mbps: likely(after, room.outlet),
        })
        .collect()
}
