//! What follows from a forecast alone.

use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::Reach;
use crate::verdict::{Together, Wished};

/// Outlets for which no channel is left.
pub(super) fn no_channel(inspection: &Inspection<'_>) -> Vec<Finding> {
    let rooms = inspection.forecast.map_or(&[][..], |forecast| &forecast.rooms);
    rooms
        .iter()
        .filter(|room| room.reach == Reach::NoChannel)
        .map(|room| {
            Finding::new(FindingKind::NoChannel, vec![Place::Part(room.outlet)])
                .phrase("outlet", inspection.name(room.outlet))
        })
        .collect()
}

/// All wishes at once against the one capacity that all adapters share.
pub(super) fn wishes(inspection: &Inspection<'_>) -> Vec<Finding> {
    let Some(forecast) = inspection.forecast else { return Vec::new() };
    let Some(Together::DoNotFit(share)) = Together::of(forecast) else { return Vec::new() };
    let wished = forecast.rooms.iter().filter_map(|room| Wished::to_come(inspection.survey, room));
    // What one room gets while the others rest is its forecast.
    let alone = if wished.into_iter().all(|wished| wished.met.is_met()) { "yes" } else { "no" };
    let finding = Finding::new(FindingKind::WishesDoNotFit, vec![Place::House]);
    vec![finding.with("share", Arg::Share(share)).text("alone", alone)]
}
