//! What else uses the coax: cable services that reach into the band, and networks that are not ours.

use house::naming;
use house::rating::EXTENDED_D;
use house::record::{PartKind, Plugged, ServiceKind, may_come_in};
use phrase::Arg;

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};

/// Cable services that reach into the MoCA band on a tree with adapters.
pub(super) fn in_the_band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for entry in inspection.entries_with_nodes() {
        for service in inspection.survey.services.values() {
            let comes_in = service.is_cable() && may_come_in(inspection.survey, service, entry.id);
            if let Some(top) = service.top_mhz.filter(|top| comes_in && *top > EXTENDED_D.low_mhz) {
                found.push(
                    Finding::new(
                        FindingKind::ServiceInBand,
                        vec![Place::Service(service.id), Place::Part(entry.id)],
                    )
                    .phrase("service", naming::service(service.kind))
                    .with("top", Arg::Frequency(top))
                    .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz)),
                );
            }
        }
    }
    found
}

/// Networks already on the wire: the provider's own, and a fibre box's link to the router. Neither is a stranger.
pub(super) fn other_networks(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let named = |kind| inspection.survey.services.values().find(move |service| service.kind == kind);
    if let Some(service) = named(ServiceKind::ProviderNetwork) {
        found.push(Finding::new(FindingKind::ProviderNetwork, vec![Place::Service(service.id)]));
    }
    let boxes = inspection.parts(&[PartKind::Outlet]).filter(|outlet| has_plugged(outlet, Plugged::FibreBox));
    let mut at: Vec<_> = boxes.map(|outlet| Place::Part(outlet.id)).collect();
    at.extend(named(ServiceKind::FibreLink).map(|service| Place::Service(service.id)));
    if !at.is_empty() {
        found.push(Finding::new(FindingKind::FibreLink, at));
    }
    found
}

/// Modems that share a tree with adapters, may be made to listen in the band, and have no filter of their own. Where
/// the service itself is known to reach into the band that is a finding of its own.
pub(super) fn modems(inspection: &Inspection<'_>) -> Vec<Finding> {
    let may_reach = inspection.survey.services_of(ServiceKind::CableInternet).find_map(|service| {
        let reaches = service.modem?.generation?.may_reach_mhz();
        let known = service.top_mhz.is_some_and(|top| top > EXTENDED_D.low_mhz);
        (reaches > EXTENDED_D.low_mhz && !known).then_some((service.id, reaches))
    });
    let Some((service, reaches)) = may_reach else { return Vec::new() };
    let heads = inspection.heads_with_nodes();
    inspection
        .parts(&[PartKind::Outlet])
        .filter(|outlet| has_plugged(outlet, Plugged::Modem) && !outlet.device_filter)
        .filter(|outlet| heads.contains(&inspection.survey.wiring.head_of(outlet.id)))
        .filter(|outlet| !is_filtered(inspection, outlet.id))
        .map(|outlet| {
            Finding::new(
                FindingKind::ModemMayReachBand,
                vec![Place::Part(outlet.id), Place::Service(service)],
            )
            .phrase("outlet", inspection.name(outlet.id))
            .with("reaches", Arg::Frequency(reaches))
            .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz))
        })
        .collect()
}

/// Whether a filter right before the outlet keeps the network from it.
fn is_filtered(inspection: &Inspection<'_>, outlet: facts::fact::SubjectId) -> bool {
    let feeder =
        inspection.survey.wiring.feed(outlet).and_then(|feed| inspection.survey.parts.get(&feed.part));
    feeder.is_some_and(|part| part.kind == PartKind::EntryFilter)
}
