//! What else uses the coax: cable services that reach into the band, and networks that are not ours.

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::rating::EXTENDED_D;
use crate::record::{EntryKind, PartKind, Plugged, ServiceKind};
use crate::words::{Arg, Phrase};

/// The phrase that names a kind of service.
pub(super) fn name(kind: ServiceKind) -> Phrase {
    Phrase::new(match kind {
        ServiceKind::CableTv => "service-cable-tv",
        ServiceKind::CableInternet => "service-cable-internet",
        ServiceKind::AntennaTv => "service-antenna-tv",
        ServiceKind::SatelliteTv => "service-satellite-tv",
        ServiceKind::ProviderNetwork => "service-provider-network",
        ServiceKind::FibreLink => "service-fibre-link",
    })
}

/// Cable services that reach into the MoCA band on a tree with adapters.
pub(super) fn in_the_band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for entry in inspection.entries_with_nodes() {
        if !matches!(entry.entry_kind, EntryKind::Cable | EntryKind::FibreBox | EntryKind::Unknown) {
            continue;
        }
        for service in inspection.survey.services.values() {
            let cable = matches!(service.kind, ServiceKind::CableTv | ServiceKind::CableInternet);
            if let Some(top) = service.top_mhz.filter(|top| cable && *top > EXTENDED_D.low_mhz) {
                found.push(
                    Finding::new(
                        FindingKind::ServiceInBand,
                        vec![Place::Service(service.id), Place::Part(entry.id)],
                    )
                    .phrase("service", name(service.kind))
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
