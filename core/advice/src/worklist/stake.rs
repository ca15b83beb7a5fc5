//! What knowing an unknown may change of the forecast: whether it is worth going back for.
//!
//! The forecast is made for the house with the unknown at either end of what it may turn out to be, with the same dice:
//! the difference of the rates is what is at stake. Behind something that lets nothing through, nothing is.

use coax::estimates;
use coax::estimates::parts::SPLITTER_UNKNOWN_TOP;
use coax::trade::LABELS_BEGIN;
use facts::fact::SubjectId;
use house::rating::{Band, EXTENDED_D};
use house::record::{CableKind, LengthKnown, PartKind, Run, RunLength, Survey};
use serde::{Deserialize, Serialize};

use super::need::WORTH_MBPS;
use crate::error::AdviceError;
use crate::forecast::{Forecast, Options, forecast_each};
use crate::unknown::{Matters, Unknown};

/// What an unknown may change at most, and for whom.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stake {
    /// The outlet for which it may change most.
    pub outlet: SubjectId,
    /// By how much its rate may turn out other, Mb/s: the likely one or the one reached nine times in ten, to the room or
    /// from it, whichever changes most.
    pub mbps: f64,
}

impl Stake {
    /// Whether it is worth going back for; else knowing it hardly changes the forecast.
    pub fn is_worth_going_back(self) -> bool {
        self.mbps >= WORTH_MBPS
    }
}

/// What knowing an unknown may change; `None` where the two ends of what it may turn out to be cannot be told, as with a
/// part that is not traced, or no room's rate was worked out.
///
/// # Errors
/// What [`forecast()`](crate::forecast::forecast()) gives.
pub fn at_stake(survey: &Survey, unknown: &Unknown, options: &Options) -> Result<Option<Stake>, AdviceError> {
    let Some([best, worst]) = ends(survey, unknown) else { return Ok(None) };
    let [best, worst] = &forecast_each(&[&best, &worst], options)?[..] else { return Ok(None) };
    Ok(between(best, worst))
}

/// What is at stake between two forecasts, for the outlet for which it is most.
fn between(best: &Forecast, worst: &Forecast) -> Option<Stake> {
    let stakes = best.rooms.iter().filter_map(|room| {
        let (best, worst) = (rates(best, room.outlet)?, rates(worst, room.outlet)?);
        let mbps = best.into_iter().zip(worst).map(|(best, worst)| (best - worst).abs()).fold(0.0, f64::max);
        Some(Stake { outlet: room.outlet, mbps })
    });
    stakes.max_by(|a, b| a.mbps.total_cmp(&b.mbps))
}

/// The most unknowns that are weighed: each takes two forecasts.
const MOST_WEIGHED: usize = 60;

/// So many are weighed together: their houses differ in little, and are forecast as such.
const TOGETHER: usize = 12;

/// What knowing each of these may change, in their order: of those on a way to a room or between two, the first so many.
/// `watch` is told which share is done, 0 to 1, and says whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once `watch` says no; else what [`forecast()`](crate::forecast::forecast()) gives.
pub fn stakes(
    survey: &Survey,
    open: &[Unknown],
    options: &Options,
    watch: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<Option<Stake>>, AdviceError> {
    let is_weighed = |(place, unknown): &(usize, &Unknown)| {
        *place < MOST_WEIGHED && matches!(unknown.matters, Matters::Weakest | Matters::OnWayTo(_))
    };
    let weighed = open.iter().enumerate().filter(is_weighed);
    let weighed: Vec<_> =
        weighed.filter_map(|(place, unknown)| Some((place, ends(survey, unknown)?))).collect();
    let mut stakes = vec![None; open.len()];
    for (done, some) in weighed.chunks(TOGETHER).enumerate() {
        if !watch((done * TOGETHER) as f64 / weighed.len() as f64) {
            return Err(AdviceError::Stopped);
        }
        let houses: Vec<&Survey> = some.iter().flat_map(|(_, ends)| ends).collect();
        let forecasts = forecast_each(&houses, options)?;
        for ((place, _), pair) in some.iter().zip(forecasts.chunks_exact(2)) {
            if let ([best, worst], Some(stake)) = (pair, stakes.get_mut(*place)) {
                *stake = between(best, worst);
            }
        }
    }
    Ok(stakes)
}

fn rates(forecast: &Forecast, outlet: SubjectId) -> Option<[f64; 4]> {
    let path = forecast.path(outlet)?;
    Some([path.down.likely, path.down.low, path.up.likely, path.up.low])
}

/// The house with an unknown at either end of what it may turn out to be.
fn ends(survey: &Survey, unknown: &Unknown) -> Option<[Survey; 2]> {
    match unknown.what.id.as_str() {
        "unknown-length" | "unknown-length-guessed" => {
            let [short, long] = lengths(survey, unknown.about)?;
            with_run(survey, unknown.about, |run| run.length = Some(short), |run| run.length = Some(long))
        }
        "unknown-cable" => with_run(
            survey,
            unknown.about,
            |run| run.cable = CableKind::Six,
            |run| run.cable = CableKind::FiftyNine,
        ),
        "unknown-bypass" => with_by_pass(survey, unknown.about),
        "unknown-label" | "unknown-band" | "unknown-doubtful" => with_band(survey, unknown.about),
        _ => None,
    }
}

fn lengths(survey: &Survey, to: SubjectId) -> Option<[RunLength; 2]> {
    let run = survey.runs.get(&survey.wiring.feed(to)?.run?)?;
    let span = run.length.map_or(estimates::house::UNKNOWN_RUN.span, |length| length.span());
    Some([span.low, span.high].map(|metres| RunLength::stated(metres, LengthKnown::Measured)))
}

fn with_run(
    survey: &Survey,
    to: SubjectId,
    best: impl FnOnce(&mut Run),
    worst: impl FnOnce(&mut Run),
) -> Option<[Survey; 2]> {
    let id = survey.wiring.feed(to)?.run?;
    let (mut good, mut poor) = (survey.clone(), survey.clone());
    best(good.runs.get_mut(&id)?);
    worst(poor.runs.get_mut(&id)?);
    Some([good, poor])
}

/// An amplifier may turn out to have a by-pass, or none.
fn with_by_pass(survey: &Survey, id: SubjectId) -> Option<[Survey; 2]> {
    let known = |has: bool| {
        let mut house = survey.clone();
        house.parts.get_mut(&id)?.rating.moca_bypass = Some(has);
        Some(house)
    };
    Some([known(true)?, known(false)?])
}

/// A splitter may turn out to be made for the whole band, or for what the most common labels say.
fn with_band(survey: &Survey, id: SubjectId) -> Option<[Survey; 2]> {
    if !matches!(survey.parts.get(&id)?.kind, PartKind::Splitter | PartKind::Tap) {
        return None;
    }
    let made_for = |high_mhz| {
        let mut house = survey.clone();
        let part = house.parts.get_mut(&id)?;
        part.rating.band = Some(Band { low_mhz: LABELS_BEGIN.value(), high_mhz });
        part.rating.doubtful = false;
        Some(house)
    };
    Some([made_for(EXTENDED_D.high_mhz)?, made_for(SPLITTER_UNKNOWN_TOP.span.likely)?])
}
