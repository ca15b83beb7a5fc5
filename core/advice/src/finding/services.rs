//! What else uses the coax: cable services that reach into the band, and networks that are not ours.

use house::naming;
use house::rating::EXTENDED_D;
use house::record::{ModemGeneration, Part, PartKind, Plugged, ServiceKind, Survey, may_come_in};
use phrase::Arg;

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::forecast::{Node, nodes_of};

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

/// Modems of which nobody knows how far they reach, on a tree whose network uses channels that the newest may listen to.
/// Before a forecast is made, the whole band counts as used.
pub(super) fn reach_unknown(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut internet = survey.services_of(ServiceKind::CableInternet).peekable();
    let unknown = internet.peek().is_some() && internet.all(|service| service.may_reach_mhz().is_none());
    let used = match inspection.forecast {
        Some(forecast) => lowest_edge(&forecast.channels),
        None => Some(EXTENDED_D.low_mhz),
    };
    let may_reach = ModemGeneration::V4_0.may_reach_mhz();
    let Some(lowest) = used.filter(|lowest| unknown && *lowest < may_reach) else { return Vec::new() };
    let heads = inspection.heads_with_nodes();
    inspection
        .parts(&[PartKind::Outlet])
        .filter(|outlet| has_plugged(outlet, Plugged::Modem) && !outlet.device_filter)
        .filter(|outlet| {
            heads.contains(&survey.wiring.head_of(outlet.id)) && !is_filtered(inspection, outlet.id)
        })
        .map(|outlet| {
            Finding::new(FindingKind::ModemReachUnknown, vec![Place::Part(outlet.id)])
                .phrase("outlet", inspection.name(outlet.id))
                .with("used", Arg::Frequency(lowest))
                .with("reaches", Arg::Frequency(may_reach))
        })
        .collect()
}

/// The lower edge of the lowest channel, MHz.
fn lowest_edge(channels: &[(f64, f64)]) -> Option<f64> {
    channels.iter().map(|(centre, width)| centre - width / 2.0).min_by(f64::total_cmp)
}

/// Whether a filter right before the outlet keeps the network from it.
fn is_filtered(inspection: &Inspection<'_>, outlet: facts::fact::SubjectId) -> bool {
    let feeder =
        inspection.survey.wiring.feed(outlet).and_then(|feed| inspection.survey.parts.get(&feed.part));
    feeder.is_some_and(|part| part.kind == PartKind::EntryFilter)
}

/// Modems without a filter whose internet drops out, where an adapter is at the same outlet or splitter: whatever the modem's
/// generation, so loud a neighbour may be what disturbs it (common practice, no source).
pub(super) fn drop_outs(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Outlet])
        .filter(|outlet| drops_out_beside_adapter(inspection.survey, &inspection.nodes, outlet))
        .map(|outlet| {
            Finding::new(FindingKind::ModemDropsOut, vec![Place::Part(outlet.id)])
                .phrase("outlet", inspection.name(outlet.id))
        })
        .collect()
}

/// Whether the internet drops out at a modem without a filter that shares its outlet or its splitter with an adapter.
pub(crate) fn drops_out_beside_adapter(survey: &Survey, nodes: &[Node], outlet: &Part) -> bool {
    let drops = survey.services_of(ServiceKind::CableInternet).any(|service| service.drops_out);
    drops && is_beside_adapter(survey, nodes, outlet)
}

/// Whether any modem without a filter shares its outlet or its splitter with an adapter: then it matters whether its internet
/// drops out.
pub fn is_modem_beside_adapter(survey: &Survey) -> bool {
    let nodes = nodes_of(survey);
    let mut outlets = survey.parts.values().filter(|part| part.kind == PartKind::Outlet);
    outlets.any(|outlet| is_beside_adapter(survey, &nodes, outlet))
}

fn is_beside_adapter(survey: &Survey, nodes: &[Node], outlet: &Part) -> bool {
    let feeder = survey.wiring.feed(outlet.id).and_then(|feed| survey.parts.get(&feed.part));
    let filtered = outlet.device_filter || feeder.is_some_and(|part| part.kind == PartKind::EntryFilter);
    let split = feeder.filter(|part| matches!(part.kind, PartKind::Splitter | PartKind::Tap));
    let beside = |node: &Node| {
        let feed = survey.wiring.feed(node.outlet).map(|feed| feed.part);
        node.outlet == outlet.id || (feed.is_some() && feed == split.map(|split| split.id))
    };
    has_plugged(outlet, Plugged::Modem) && !filtered && nodes.iter().any(beside)
}
