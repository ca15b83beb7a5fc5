//! What a change is needed for: what is worth the work, what is done in any case, what gains nothing where another service pays.

use coax::link::USABLE;
use facts::fact::SubjectId;
use house::record::ChangeKind;

use crate::forecast::Forecast;

/// A gain in Mb/s below which a step that only serves speed is not worth the work.
pub(super) const WORTH_MBPS: f64 = 15.0;

/// Whether a room that has no link worth the name gets one.
pub(super) fn gives_a_link(before: &Forecast, after: &Forecast) -> bool {
    let has = |forecast: &Forecast, outlet| forecast.likely_down(outlet) >= USABLE.value();
    after.rooms.iter().any(|room| has(after, room.outlet) && !has(before, room.outlet))
}

/// The outlet of a room that has the network, by the coax or because the bridge stands there, and has none afterwards.
pub(super) fn loses_the_network(before: &Forecast, after: &Forecast) -> Option<SubjectId> {
    let has = |outlet| before.path(outlet).is_some() || before.bridge == Some(outlet);
    let mut rooms = after.rooms.iter().map(|room| room.outlet);
    rooms.find(|outlet| has(*outlet) && after.path(*outlet).is_none())
}

/// Whether a change brings no rate that is there nine times in ten, and neither quiet nor privacy. Sharing an outlet is what
/// the rate of its room takes, or, at the bridge, that of every room.
pub(super) fn gains_nothing(change: ChangeKind, before: &Forecast, after: &Forecast) -> bool {
    !gains_times(1.0, change, before, after)
}

/// So many times what a gain is worth lies above it by far: few draws tell as surely as many (our own choice).
const BY_FAR: f64 = 4.0;

/// Whether few draws tell for sure that a change brings something.
pub(super) fn gains_by_far(change: ChangeKind, before: &Forecast, after: &Forecast) -> bool {
    gains_times(BY_FAR, change, before, after)
}

/// Whether it brings so many times what is worth something.
fn gains_times(times: f64, change: ChangeKind, before: &Forecast, after: &Forecast) -> bool {
    let low = |forecast: &Forecast, outlet: SubjectId| {
        forecast.path(outlet).map_or(0.0, |path| path.down.low.max(0.0) + path.up.low.max(0.0))
    };
    let is_served = |outlet| low(after, outlet) >= times * USABLE.value();
    match change {
        ChangeKind::ShareOutlet { outlet } if after.bridge == Some(outlet) => {
            after.rooms.iter().any(|room| is_served(room.outlet))
        }
        ChangeKind::ShareOutlet { outlet } => is_served(outlet),
        _ if is_wanted_anyway(change) => true,
        _ => {
            let rise = |outlet| low(after, outlet) - low(before, outlet);
            after.rooms.iter().map(|room| rise(room.outlet)).sum::<f64>() >= times * WORTH_MBPS
        }
    }
}

/// Whether it is done even if no room gains: it keeps the network in the house, or the wiring free of echoes and
/// leaks.
pub fn is_wanted_anyway(change: ChangeKind) -> bool {
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
