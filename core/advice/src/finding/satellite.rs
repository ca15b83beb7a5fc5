//! Satellite signals use the band of the adapters: 950 to 2150 MHz holds all of 1125 to 1675 MHz.

use facts::fact::SubjectId;
use house::record::{Incoming, Part, PartKind, Plugged, ServiceKind, Survey};

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};

/// Whether satellite signals are known to come from this part, or go to it.
pub(super) fn is_satellite(survey: &Survey, part: &Part) -> bool {
    comes_in(survey, part.id) || has_plugged(part, Plugged::SatelliteReceiver)
}

fn comes_in(survey: &Survey, entry: SubjectId) -> bool {
    Incoming::at(survey, entry).knows(ServiceKind::SatelliteTv)
}

/// Trees that carry satellite signals and adapters; or, where a satellite service is named and nothing more, a note.
pub(super) fn on_the_tree(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let satellite: Vec<_> =
            inspection.tree(head).filter(|part| is_satellite(inspection.survey, part)).collect();
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
    let survey = inspection.survey;
    let placed = survey.parts.values().any(|part| is_satellite(survey, part));
    if !placed && !inspection.nodes.is_empty() {
        let named =
            inspection.survey.services.values().find(|service| service.kind == ServiceKind::SatelliteTv);
        if let Some(service) = named {
            let may_be = inspection
                .parts(&[PartKind::Entry])
                .filter(|entry| Incoming::at(survey, entry.id).may_bring(ServiceKind::SatelliteTv));
            let mut at = vec![Place::Service(service.id)];
            at.extend(may_be.map(|entry| Place::Part(entry.id)));
            found.push(Finding::new(FindingKind::SatelliteNotPlaced, at));
        }
    }
    found
}
