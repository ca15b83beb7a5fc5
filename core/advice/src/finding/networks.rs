//! Several networks on one wire, and what an adapter sees of its own.

use coax::Megahertz;
use coax::link::Version;
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::{ReadingKind, Service, ServiceKind};
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::channels_left;

/// Networks that are not ours and may be on the tree headed by `head`.
fn others<'a>(inspection: &'a Inspection<'_>, head: SubjectId) -> impl Iterator<Item = &'a Service> {
    let wiring = &inspection.survey.wiring;
    inspection
        .survey
        .services
        .values()
        .filter(|service| matches!(service.kind, ServiceKind::ProviderNetwork | ServiceKind::FibreLink))
        .filter(move |service| service.entry.is_none_or(|entry| wiring.head_of(entry) == head))
}

/// Nodes and versions of the networks that the provider runs on a tree: they count like ours.
pub(super) fn provider_nodes(inspection: &Inspection<'_>, head: SubjectId) -> (usize, Vec<Version>) {
    let mut nodes = 0;
    let mut versions = Vec::new();
    for service in others(inspection, head).filter(|service| service.kind == ServiceKind::ProviderNetwork) {
        let Some(network) = &service.network else { continue };
        nodes += usize::try_from(network.nodes).unwrap_or(usize::MAX);
        versions.extend(network.version.as_ref().and_then(|version| version.parse::<Version>().ok()));
    }
    (nodes, versions)
}

/// Trees on which another network leaves ours fewer channels than it could use, or nobody knows how many.
pub(super) fn channels(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let Some(newest) = inspection.nodes_on(head).iter().map(|node| node.link.version).max() else {
            continue;
        };
        let full = newest.most_channels().value;
        for service in others(inspection, head) {
            let bands = service.network.as_ref().map_or(&[][..], |network| &network.bands);
            let taken: Vec<_> =
                bands.iter().map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz))).collect();
            let at = vec![Place::Service(service.id)];
            let finding = |kind| {
                Finding::new(kind, at.clone())
                    .phrase("service", house::naming::service(service.kind))
                    .with("full", Arg::Count(full as u64))
                    .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz))
            };
            let left = channels_left(newest, &taken);
            if taken.is_empty() {
                // A network on one or two channels finds room beside another; one that wants the whole band may not.
                if newest == Version::V2_5 {
                    found.push(finding(FindingKind::NetworkChannelsUnknown));
                }
            } else if left < full {
                found.push(finding(FindingKind::NetworksOverlap).with("left", Arg::Count(left as u64)));
            }
        }
    }
    found
}

/// Adapters that see more nodes than are known, or none but themselves.
pub(super) fn nodes_seen(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let bridge = || inspection.nodes.iter().find(|node| node.bridge).map(|node| node.outlet);
    let mut found = Vec::new();
    for reading in survey.readings.values() {
        let ReadingKind::NodesSeen { count } = reading.measured else { continue };
        let Some(outlet) = reading.about.or_else(bridge) else { continue };
        let head = survey.wiring.head_of(outlet);
        let nodes = inspection.nodes_on(head);
        let recorded = nodes.iter().filter(|node| node.recorded).count();
        let counted = others(inspection, head)
            .filter(|service| service.kind == ServiceKind::ProviderNetwork)
            .all(|service| service.network.as_ref().is_some_and(|network| network.nodes > 0));
        let known = nodes.len() + provider_nodes(inspection, head).0;
        let seen = usize::try_from(count).unwrap_or(usize::MAX);
        let finding = |kind| {
            Finding::new(kind, vec![Place::Part(outlet)])
                .phrase("outlet", inspection.name(outlet))
                .with("seen", Arg::Count(u64::from(count)))
        };
        if seen > known && counted {
            found.push(finding(FindingKind::NodesMoreThanKnown).with("known", Arg::Count(known as u64)));
        }
        let has_adapter = nodes.iter().any(|node| node.outlet == outlet && node.recorded);
        if seen <= 1 && recorded >= 2 && has_adapter {
            found.push(finding(FindingKind::NodeAlone).with("known", Arg::Count(recorded as u64)));
        }
    }
    found
}
