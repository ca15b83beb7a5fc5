//! No list has a step that gains nothing and costs another service.

use advice::finding::{FindingKind, Weight, findings};
use advice::forecast::{Forecast, PathForecast, forecast};
use advice::worklist::{Step, applied};
use house::record::{ChangeKind, Survey};

use super::{Seen, few_draws};

/// A loss that a service can be told to have, dB: below it lies within what the estimate is worth.
const COSTS_DB: f64 = 0.3;

/// A rate that can be told from none, Mb/s.
const GAINS_MBPS: f64 = 1.0;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let costly = |step: &&Step| step.service_changes.iter().any(|change| change.worst_db() <= -COSTS_DB);
    let gains = |step: &&Step| {
        serves(step.change) || is_suspect(seen, step) || takes_grave_away(step) || gains_rate(step)
    };
    let idle = seen.list.steps.iter().filter(costly).filter(|step| !gains(step));
    idle.map(|step| format!("worth: {:?} gains nothing and costs another service", step.change)).collect()
}

/// Whether a change keeps the network private or the wiring quiet, keeps a device safe from the network, or makes room for
/// an adapter, without which there is no rate at all.
fn serves(change: ChangeKind) -> bool {
    matches!(
        change,
        ChangeKind::AddEntryFilter { .. }
            | ChangeKind::MoveEntryFilter { .. }
            | ChangeKind::SwapEntryFilter { .. }
            | ChangeKind::Cap { .. }
            | ChangeKind::RenewConnectors { .. }
            | ChangeKind::FilterAtDevice { .. }
            | ChangeKind::ShareOutlet { .. }
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

fn gains_rate(step: &Step) -> bool {
    let rates = |house: &Survey| forecast(house, &few_draws().stating);
    let (Ok(before), Ok(after)) = (rates(&step.before), rates(&applied(step.change, &step.before))) else {
        return false;
    };
    let rise = |of: fn(&PathForecast) -> f64| {
        let at = |forecast: &Forecast, outlet| forecast.path(outlet).map_or(0.0, of);
        after.rooms.iter().any(|room| at(&after, room.outlet) - at(&before, room.outlet) > GAINS_MBPS)
    };
    let of: [fn(&PathForecast) -> f64; 6] = [
        |path| path.down.low,
        |path| path.down.likely,
        |path| path.up.low,
        |path| path.up.likely,
        |path| path.phy_down.low,
        |path| path.phy_up.low,
    ];
    of.into_iter().any(rise)
}
