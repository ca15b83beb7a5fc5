//! Satellite signals use the band of the adapters: 950 to 2150 MHz holds all of 1125 to 1675 MHz.

use house::record::{EntryKind, EntryState, Part, PartKind, Plugged, ServiceKind};

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};

/// Whether satellite signals come from or go to this part.
pub(super) fn is_satellite(part: &Part) -> bool {
    let dish = part.kind == PartKind::Entry
        && part.entry_kind == EntryKind::Satellite
        && part.entry_state != EntryState::CutOff;
    dish || has_plugged(part, Plugged::SatelliteReceiver)
}

/// Trees that carry satellite signals and adapters; or, where a satellite service is named and nothing more, a note.
pub(super) fn on_the_tree(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let satellite: Vec<_> = inspection.tree(head).filter(|part| is_satellite(part)).collect();
        if !satellite.is_empty() {
            let ids = satellite.iter().map(|part| part.id);
            let adapters = inspection.nodes_on(head).into_iter().map(|node| node.outlet);
            found.push(
                Finding::new(FindingKind::SatelliteOnTree, ids.clone().map(Place::Part).collect())
                    .with("satellite", inspection.names(ids))
                    .with("outlets", inspection.names(adapters)),
            );
        }
    }
    let placed =
        inspection.survey.parts.values().any(|part| {
            part.entry_kind == EntryKind::Satellite || has_plugged(part, Plugged::SatelliteReceiver)
        });
    if !placed && !inspection.nodes.is_empty() {
        let named =
            inspection.survey.services.values().find(|service| service.kind == ServiceKind::SatelliteTv);
        if let Some(service) = named {
            found.push(Finding::new(FindingKind::SatelliteNotPlaced, vec![Place::Service(service.id)]));
        }
    }
    found
}
