//! The adapters themselves: how many, which versions, which ports.

use std::collections::BTreeSet;

use coax::link::{Version, common, most_nodes};
use phrase::Arg;

use super::inspection::Inspection;
use super::networks::provider_nodes;
use super::{Finding, FindingKind, Place};
use crate::forecast::Node;

/// More adapters on one tree than a network may have, the provider's boxes counted.
pub(super) fn number(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let nodes = inspection.nodes_on(head);
        let (others, of_others) = provider_nodes(inspection, head);
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

/// What is wanted at an outlet, Mb/s: the wish of its room, else the internet plan's rate.
fn wanted(inspection: &Inspection<'_>, node: &Node) -> Option<f64> {
    let survey = inspection.survey;
    match survey.wish_at(node.outlet) {
        Some(wish) => Some(wish.down_mbps.max(wish.up_mbps)),
        None => survey.internet.map(|internet| internet.down_mbps),
    }
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
        let bridge = nodes.iter().find(|node| node.bridge);
        for node in nodes.iter().filter(|node| !node.bridge) {
            let version =
                bridge.map_or(node.link.version, |bridge| common(bridge.link.version, node.link.version));
            let most = version.mac_ceiling(nodes.len()).value.value();
            if let Some(wanted) = wanted(inspection, node).filter(|wanted| *wanted > most) {
                found.push(
                    Finding::new(FindingKind::VersionTooSlow, vec![Place::Part(node.outlet)])
                        .phrase("outlet", inspection.name(node.outlet))
                        .with("version", Arg::Text(version.to_string()))
                        // A published ceiling is said as published, not rounded like a forecast.
                        .with("most", Arg::Text(format!("{most:.0}")))
                        .with("wanted", Arg::Rate(wanted)),
                );
            }
        }
    }
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
            let most = of_all.filter_map(|other| wanted(inspection, other)).reduce(f64::max);
            let wanted = most.filter(|wanted| *wanted > port && coax > port)?;
            Some(
                Finding::new(FindingKind::EthernetSlower, vec![Place::Part(node.outlet)])
                    .phrase("outlet", inspection.name(node.outlet))
                    .with("port", Arg::Rate(port))
                    .with("payload", Arg::Rate(node.link.port.payload_rate().value()))
                    .with("wanted", Arg::Rate(wanted)),
            )
        })
        .collect()
}
