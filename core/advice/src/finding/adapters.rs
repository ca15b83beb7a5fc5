//! The adapters themselves: how many, which versions, which ports.

use std::collections::BTreeSet;

use coax::link::{Version, most_nodes};
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::PortKnown;
use crate::verdict::{provider_nodes, version_limits, wanted_at};

/// More adapters on one tree than a network may have, the provider's boxes counted.
pub(super) fn number(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let nodes = inspection.nodes_on(head);
        let (others, of_others) = provider_nodes(inspection.survey, head);
        let most = most_nodes(nodes.iter().map(|node| node.link.version).chain(of_others)).value;
        let count = nodes.len() + others;
        if count > most {
            found.push(
                Finding::new(
                    FindingKind::TooManyAdapters,
                    nodes.iter().map(|node| Place::Part(node.outlet)).collect(),
                )
                .with("count", Arg::Count(count as u64))
                .with("most", Arg::Count(most as u64)),
            );
        }
    }
    found
}

/// Different versions on one tree, and versions too slow for what is wanted.
pub(super) fn versions(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let nodes = inspection.nodes_on(head);
        let versions: BTreeSet<Version> = nodes.iter().map(|node| node.link.version).collect();
        if versions.len() > 1 {
            let slowest = versions.iter().next().map(|oldest| oldest.mac_ceiling(nodes.len()).value.value());
            let names = versions.iter().map(|version| Arg::Text(version.to_string())).collect();
            found.push(
                Finding::new(
                    FindingKind::VersionsMixed,
                    nodes.iter().map(|node| Place::Part(node.outlet)).collect(),
                )
                .with("versions", Arg::Several(names))
                // A published ceiling is said as published.
                .with("slowest", Arg::Text(format!("{:.0}", slowest.unwrap_or_default()))),
            );
        }
    }
    found.extend(version_limits(inspection.survey).into_iter().map(|limit| {
        Finding::new(FindingKind::VersionTooSlow, vec![Place::Part(limit.outlet)])
            .phrase("outlet", inspection.name(limit.outlet))
            .with("version", Arg::Text(limit.version.to_string()))
            .with("likely", Arg::Rate(limit.net.likely))
            .with("wanted", Arg::Rate(limit.wanted_mbps))
    }));
    found
}

/// Ethernet ports slower than what is wanted, where the coax could give more.
pub(super) fn ports(inspection: &Inspection<'_>) -> Vec<Finding> {
    let count = inspection.nodes.len();
    inspection
        .nodes
        .iter()
        .filter_map(|node| {
            let port = node.link.port.line_rate().value();
            let coax = node.link.version.mac_ceiling(count).value.value();
            // All that any room wants passes the bridge.
            let of_all = inspection.nodes.iter().filter(|other| node.bridge || other.outlet == node.outlet);
            let most = of_all.filter_map(|other| wanted_at(inspection.survey, other)).reduce(f64::max);
            // What a wish is held against is what passes, not what the socket is called by: of 1 Gb/s, 949 Mb/s.
            let passes = node.link.port.payload_rate().value();
            let wanted = most.filter(|wanted| *wanted > passes && coax > passes)?;
            Some(
                Finding::new(FindingKind::EthernetSlower, vec![Place::Part(node.outlet)])
                    .phrase("outlet", inspection.name(node.outlet))
                    .text("known", port_known(node.port_known))
                    .with("port", Arg::Rate(port))
                    .with("payload", Arg::Rate(passes))
                    .with("wanted", Arg::Rate(wanted)),
            )
        })
        .collect()
}

/// For the words: where a port's rate comes from.
const fn port_known(known: PortKnown) -> &'static str {
    match known {
        PortKnown::Stated => "stated",
        PortKnown::Usual => "usual",
        PortKnown::Behind => "behind",
    }
}
