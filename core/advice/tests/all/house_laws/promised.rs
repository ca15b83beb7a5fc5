//! Every change of a list, made by hand one after the other, gives what the list promised.

use advice::forecast::{Forecast, forecast};
use advice::level;
use advice::worklist::{Gain, RoomRates, applied, effort};

use house::record::Survey;

use super::{Seen, few_draws, near};

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let mut broken = Vec::new();
    let mut wrong = |what: String| broken.push(format!("promised: {what}"));
    let rates = |house: &Survey| forecast(house, &few_draws().stating);
    let mut house = seen.survey.clone();
    let Ok(mut current) = rates(&house) else { return vec!["promised: no forecast".into()] };
    if current != seen.list.as_found {
        wrong("the forecast as found".into());
    }
    for step in &seen.list.steps {
        if step.before != house {
            wrong(format!("{:?} stands on another house", step.change));
        }
        let after = applied(step.change, &house);
        if step.change.is_check() {
            // What is only looked at changes nothing, and promises nothing.
            let gains = step.gains.iter().any(|gain| gain.before != gain.after);
            if after != house || gains || !step.service_changes.is_empty() {
                wrong(format!("{:?} changes something", step.change));
            }
            continue;
        }
        if after == house {
            wrong(format!("{:?} changes nothing", step.change));
        }
        let Ok(next) = rates(&after) else {
            wrong(format!("{:?} leaves a house without forecast", step.change));
            continue;
        };
        if !is_near(&gains(&current, &next), &told(&step.gains)) {
            wrong(format!("the gains of {:?}", step.change));
        }
        let levels = level::change(&house, &after, &level::Options::default());
        if levels.as_ref().ok() != Some(&step.service_changes) {
            wrong(format!("the levels of {:?}", step.change));
        }
        if effort(step.change, &house) != step.effort {
            wrong(format!("the effort of {:?}", step.change));
        }
        (house, current) = (after, next);
    }
    if house != seen.list.house_when_done {
        wrong("the house when done".into());
    }
    if !near::is_near(&current, &seen.list.when_done) {
        wrong("the forecast when done".into());
    }
    let all = level::change(&seen.survey, &house, &level::Options::default());
    if all.ok().as_ref() != Some(&seen.list.level_changes) {
        wrong("the levels when done".into());
    }
    broken
}

/// Houses forecast together and one by one are worked out in another order: the last digits may differ.
fn is_near(made: &[[[f64; 3]; 2]], promised: &[[[f64; 3]; 2]]) -> bool {
    let (made, promised) = (made.as_flattened().as_flattened(), promised.as_flattened().as_flattened());
    made.len() == promised.len() && made.iter().zip(promised).all(|(one, other)| (one - other).abs() < 1e-6)
}

/// Likely rate, low rate and PHY rate towards each room, before and after.
fn gains(before: &Forecast, after: &Forecast) -> Vec<[[f64; 3]; 2]> {
    let of_room = |forecast: &Forecast, outlet| {
        let path = forecast.path(outlet);
        path.map_or([0.0; 3], |path| [path.down.likely, path.down.low, path.phy_down.likely])
    };
    after.rooms.iter().map(|room| [before, after].map(|of| of_room(of, room.outlet))).collect()
}

fn told(gains: &[Gain]) -> Vec<[[f64; 3]; 2]> {
    let figures = |rates: RoomRates| [rates.likely_mbps, rates.low_mbps, rates.phy_mbps];
    gains.iter().map(|gain| [gain.before, gain.after].map(figures)).collect()
}
