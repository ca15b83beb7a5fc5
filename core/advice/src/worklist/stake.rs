//! What each unknown moves in the forecast: whether it is worth going back for.
//!
//! The house of the forecast is drawn, and each unknown thrown again by itself, all else as it was: what is left of a rate's
//! spread while only that is open (its total effect, `forecast/total_effect.rs`). Behind something that lets nothing through,
//! nothing is.

use facts::fact::SubjectId;
use house::record::Survey;
use serde::{Deserialize, Serialize};

use super::need::WORTH_MBPS;
use crate::error::AdviceError;
use crate::forecast::{CostAt, Forecast, Moved, Open, Options, What, total_effects};
use crate::unknown::{Matters, Unknown};

/// What an unknown moves most, and for whom.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stake {
    /// The outlet for which it moves most.
    pub outlet: SubjectId,
    /// How far its rate typically lies to either side of what is expected while only this is open, Mb/s: the root of its total
    /// effect, to the room or from it, whichever is moved more.
    pub mbps: f64,
}

impl Stake {
    /// Whether it is worth going back for; else knowing it hardly changes the forecast. What typically moves a rate by less than
    /// a gain has to be is not worth the way either.
    pub fn is_worth_going_back(self) -> bool {
        self.mbps >= WORTH_MBPS
    }
}

/// The most unknowns that are weighed: each takes the way from it to the bridge, draw by draw.
const MOST_WEIGHED: usize = 60;

/// A change is weighed with a few draws, which are the same on both sides. What an unknown moves is told by their spread: so
/// many times as many are made, at as many times the frequencies.
const TIMES: u32 = 2;

/// What each of these moves, in their order: of those on a way to a room or between two, the first so many. `None` where what it
/// may turn out to be cannot be told, as with a part that is not traced, or no room's rate was worked out. `watch` is told which
/// share is done, 0 to 1, and says whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once `watch` says no; else what [`forecast()`](crate::forecast::forecast()) gives.
pub fn stakes(
    survey: &Survey,
    forecast: &Forecast,
    unknowns: &[Unknown],
    options: &Options,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<Option<Stake>>, AdviceError> {
    let is_weighed = |unknown: &Unknown| matches!(unknown.matters, Matters::Weakest | Matters::OnWayTo(_));
    let first = unknowns.iter().take(MOST_WEIGHED).enumerate();
    let weighed = first.filter(|(_, unknown)| is_weighed(unknown));
    let (places, open): (Vec<_>, Vec<_>) =
        weighed.filter_map(|(place, unknown)| Some((place, open(unknown)?))).unzip();
    let mut done = 0.0;
    let draws = options.draws.saturating_mul(TIMES);
    let options = Options { draws, points: options.points.saturating_mul(TIMES as usize), ..*options };
    let of = f64::from(options.draws.max(1));
    let mut goes_on = || {
        let share = done / of;
        done += 1.0;
        watch(f64::min(share, 1.0))
    };
    let mut stakes = vec![None; unknowns.len()];
    let moved = total_effects(survey, forecast, &open, &options, &mut goes_on)?;
    for (place, rooms) in places.into_iter().zip(moved) {
        if let Some(stake) = stakes.get_mut(place) {
            *stake = most(&rooms);
        }
    }
    Ok(stakes)
}

/// Of what an unknown moves in each room that where it moves most.
fn most(rooms: &[Moved]) -> Option<Stake> {
    let stakes = rooms
        .iter()
        .map(|room| Stake { outlet: room.outlet, mbps: room.down.deviation().max(room.up.deviation()) });
    stakes.max_by(|a, b| a.mbps.total_cmp(&b.mbps))
}

/// What of the circuit an unknown leaves open; `None` where its answer is not one of its figures.
pub(crate) fn open(unknown: &Unknown) -> Option<Open> {
    let (run, part) = (CostAt::RunTo(unknown.about), CostAt::Part(unknown.about));
    let (at, what) = match unknown.what.id.as_str() {
        "unknown-length" | "unknown-length-guessed" => (run, What::Length),
        "unknown-cable" => (run, What::Series),
        "unknown-bypass" => (part, What::ByPass),
        "unknown-label" | "unknown-band" | "unknown-doubtful" => (part, What::Label),
        _ => return None,
    };
    Some(Open { at, what })
}
