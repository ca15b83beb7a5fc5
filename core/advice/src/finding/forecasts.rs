//! What follows from a forecast alone.

use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::Reach;
use crate::verdict::Together;

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
    match inspection.forecast.and_then(Together::of) {
        Some(Together::DoNotFit(share)) => vec![
            Finding::new(FindingKind::WishesDoNotFit, vec![Place::House]).with("share", Arg::Share(share)),
        ],
        _ => Vec::new(),
    }
}
