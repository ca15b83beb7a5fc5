//! Bands that other services need on the same tree, and where a network may therefore not go.

use coax::Megahertz;

use crate::fact::SubjectId;
use crate::rating::EXTENDED_D;
use crate::record::{EntryKind, EntryState, PartKind, Plugged, ServiceKind, Survey};

/// Satellite intermediate frequency: 950 to 2150 MHz (EN 50607:2015 and EN 50494:2007 distribute it).
const SATELLITE_IF: (Megahertz, Megahertz) = (Megahertz(950.0), Megahertz(2150.0));

/// The bands on the tree headed by `head` that a network must stay out of.
pub(super) fn taken_bands(survey: &Survey, head: SubjectId) -> Vec<(Megahertz, Megahertz)> {
    let parts: Vec<_> = survey.wiring.below(head).iter().filter_map(|id| survey.parts.get(id)).collect();
    let mut taken = Vec::new();
    let satellite = parts.iter().any(|part| {
        let dish = part.kind == PartKind::Entry
            && part.entry_kind == EntryKind::Satellite
            && part.entry_state != EntryState::CutOff;
        dish || part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&Plugged::SatelliteReceiver))
    });
    if satellite {
        taken.push(SATELLITE_IF);
    }
    let street = parts.iter().any(|part| {
        part.kind == PartKind::Entry
            && part.entry_state != EntryState::CutOff
            && part.entry_kind != EntryKind::Satellite
    });
    if street {
        for service in survey.services.values() {
            let cable = matches!(service.kind, ServiceKind::CableTv | ServiceKind::CableInternet);
            if let Some(top) = service.top_mhz.filter(|top| cable && *top > EXTENDED_D.low_mhz) {
                taken.push((Megahertz(0.0), Megahertz(top)));
            }
        }
    }
    taken
}
