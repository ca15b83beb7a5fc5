//! Satellite signals use the band of the adapters: 950 to 2150 MHz holds all of 1125 to 1675 MHz.

use coax::estimates::parts::COMBINER_ISOLATION;
use facts::fact::SubjectId;
use house::record::{Incoming, Part, PartKind, Plugged, ServiceKind, Survey};
use phrase::Arg;

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::forecast::{CostAt, Forecast};

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

/// TV and satellite combiners on a path, where no dish is known on the tree: left over, and in the way. With what each costs
/// in the forecast, where it lies on a way that was worked out.
pub(super) fn combiners(inspection: &Inspection<'_>) -> Vec<Finding> {
    let costs = |combiner| {
        let paths = inspection.forecast.into_iter().flat_map(Forecast::weakest_first);
        let at =
            paths.flat_map(|(_, path)| &path.costs).filter(move |cost| cost.at == CostAt::Part(combiner));
        at.map(|cost| cost.db).reduce(f64::max)
    };
    inspection
        .parts(&[PartKind::SatelliteCombiner])
        .filter(|part| inspection.standing(part.id).is_on_a_path())
        .filter(|part| {
            let head = inspection.survey.wiring.head_of(part.id);
            !inspection.tree(head).any(|part| is_satellite(inspection.survey, part))
        })
        .map(|part| {
            let cost = costs(part.id);
            let apart = COMBINER_ISOLATION.span;
            Finding::new(FindingKind::CombinerInPath, vec![Place::Part(part.id)])
                .phrase("part", inspection.name(part.id))
                .text("known", if cost.is_some() { "yes" } else { "no" })
                .with("cost", cost.map_or(Arg::LossRange(apart), Arg::Loss))
        })
        .collect()
}
