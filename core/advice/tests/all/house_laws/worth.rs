//! No list has a step that gains nothing and costs something.

use advice::finding::{FindingKind, Weight, findings};
use advice::forecast::{Forecast, PathForecast, forecast};
use advice::worklist::{Step, applied};
use facts::fact::SubjectId;
use house::record::{ChangeKind, Survey};

use super::{Seen, few_draws};

/// A loss that a service can be told to have, dB: below it lies within what the estimate is worth.
const COSTS_DB: f64 = 0.3;

/// A rate that can be told from none, Mb/s.
const GAINS_MBPS: f64 = 1.0;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let mut broken = Vec::new();
    for step in seen.list.steps.iter().filter(|step| !step.change.is_check()) {
        if serves(step.change) || is_suspect(seen, step) || takes_grave_away(step) {
            continue;
        }
        let rates = |house: &Survey| forecast(house, &few_draws().stating);
        let (Ok(before), Ok(after)) = (rates(&step.before), rates(&applied(step.change, &step.before)))
        else {
            continue;
        };
        if gains_rate(step.change, &before, &after) {
            continue;
        }
        if step.service_changes.iter().any(|change| change.worst_db() <= -COSTS_DB) {
            broken.push(format!("worth: {:?} gains nothing and costs another service", step.change));
        }
        // Between rooms the likely rate counts, too: what one loses another has.
        if rises(&after, &before, LOW).next().is_some() && rises(&before, &after, LIKELY).next().is_none() {
            broken.push(format!("worth: {:?} gains nothing and costs a room its rate", step.change));
        }
    }
    broken
}

/// Whether a change keeps the network private or the wiring quiet, or keeps a device safe from the network.
fn serves(change: ChangeKind) -> bool {
    matches!(
        change,
        ChangeKind::AddEntryFilter { .. }
            | ChangeKind::MoveEntryFilter { .. }
            | ChangeKind::SwapEntryFilter { .. }
            | ChangeKind::Cap { .. }
            | ChangeKind::RenewConnectors { .. }
            | ChangeKind::FilterAtDevice { .. }
    )
}

/// Whether a splitter not known to be made for the band stands on the way to a room whose test failed: the test says that it
/// costs more than the forecast knows of.
fn is_suspect(seen: &Seen, step: &Step) -> bool {
    let ChangeKind::SwapSplitter { splitter, .. } = step.change else { return false };
    let wiring = &step.before.wiring;
    let on_way = seen.list.failed.iter().any(|room| {
        let way = seen.list.as_found.bridge.and_then(|bridge| wiring.way_between(bridge, room.outlet));
        way.is_some_and(|way| way.contains(&splitter))
    });
    on_way && step.before.parts.get(&splitter).is_some_and(|part| part.rating.made_for_moca() != Some(true))
}

/// Whether something grave is wrong before a step and not after it.
fn takes_grave_away(step: &Step) -> bool {
    let grave = |house: &Survey| -> Vec<FindingKind> {
        let found = findings(house, None).into_iter();
        found.filter(|finding| finding.weight() == Weight::Grave).map(|finding| finding.kind).collect()
    };
    grave(&applied(step.change, &step.before)).len() < grave(&step.before).len()
}

/// The rates that are there nine times in ten.
const LOW: [fn(&PathForecast) -> f64; 4] =
    [|path| path.down.low, |path| path.up.low, |path| path.phy_down.low, |path| path.phy_up.low];

/// The likely rates.
const LIKELY: [fn(&PathForecast) -> f64; 4] =
    [|path| path.down.likely, |path| path.up.likely, |path| path.phy_down.likely, |path| path.phy_up.likely];

/// The rooms of which one of these rates is higher in the second house.
fn rises<'a>(
    before: &'a Forecast,
    after: &'a Forecast,
    rates: [fn(&PathForecast) -> f64; 4],
) -> impl Iterator<Item = SubjectId> + 'a {
    let at =
        |forecast: &Forecast, outlet, of: fn(&PathForecast) -> f64| forecast.path(outlet).map_or(0.0, of);
    let rise = move |outlet, of| at(after, outlet, of) - at(before, outlet, of) > GAINS_MBPS;
    let rooms = after.rooms.iter().map(|room| room.outlet);
    rooms.filter(move |outlet| rates.into_iter().any(|of| rise(*outlet, of)))
}

/// Whether a room gets more nine times in ten. Sharing an outlet makes room for an adapter, without which there is no rate:
/// what that room gets by it is its gain, at the bridge what any room gets.
fn gains_rate(change: ChangeKind, before: &Forecast, after: &Forecast) -> bool {
    match change {
        ChangeKind::ShareOutlet { outlet } => {
            let served = |room: SubjectId| after.path(room).is_some_and(|path| path.down.low > GAINS_MBPS);
            let mut rooms = after.rooms.iter().map(|room| room.outlet);
            rooms.any(|room| (room == outlet || after.bridge == Some(outlet)) && served(room))
        }
        _ => rises(before, after, LOW).next().is_some(),
    }
}
