//! Loose parts, and whether every adapter shares a tree with exactly one bridge.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::LooseReason;
use phrase::Phrase;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};

/// Parts found and not yet traced to a feed, with the reason.
pub(super) fn loose_parts(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .survey
        .wiring
        .loose()
        .iter()
        .map(|(part, reason)| {
            Finding::new(FindingKind::PartLoose, vec![Place::Part(*part)])
                .phrase("part", inspection.name(*part))
                .phrase("reason", reason_words(*reason))
        })
        .collect()
}

fn reason_words(reason: LooseReason) -> Phrase {
    Phrase::new(match reason {
        LooseReason::NotTraced => "loose-not-traced",
        LooseReason::Loop => "loose-loop",
        LooseReason::TooDeep => "loose-too-deep",
        LooseReason::NoSuchPort => "loose-no-such-port",
        LooseReason::FeederGone => "loose-feeder-gone",
    })
}

/// No bridge, two bridges on one tree, adapters on a tree without the bridge, or where no cable leads.
pub(super) fn bridges(inspection: &Inspection<'_>) -> Vec<Finding> {
    let wiring = &inspection.survey.wiring;
    let mut bridges: BTreeMap<SubjectId, Vec<SubjectId>> = BTreeMap::new();
    for node in inspection.nodes.iter().filter(|node| node.bridge) {
        bridges.entry(wiring.head_of(node.outlet)).or_default().push(node.outlet);
    }
    let mut found = Vec::new();
    for outlets in bridges.values().filter(|outlets| outlets.len() > 1) {
        found.push(
            Finding::new(FindingKind::TwoBridges, outlets.iter().copied().map(Place::Part).collect())
                .with("outlets", inspection.names(outlets.iter().copied())),
        );
    }
    if bridges.is_empty() {
        if !inspection.nodes.is_empty() {
            found.push(Finding::new(FindingKind::BridgeNotChosen, vec![Place::House]));
        }
        return found;
    }
    // A part that is not yet traced may turn out to hang anywhere.
    let is_loose = |head: &SubjectId| wiring.loose().contains_key(head);
    if bridges.keys().any(is_loose) {
        return found;
    }
    let is_dead = |outlet: SubjectId| {
        inspection.survey.parts.get(&outlet).is_some_and(|part| inspection.survey.is_dead_outlet(part))
    };
    let dead = inspection.nodes.iter().map(|node| node.outlet).filter(|outlet| is_dead(*outlet));
    found.extend(dead.map(|outlet| {
        Finding::new(FindingKind::OutletFedByNothing, vec![Place::Part(outlet)])
            .phrase("outlet", inspection.name(outlet))
    }));
    if bridges.values().flatten().all(|bridge| is_dead(*bridge)) {
        return found;
    }
    let first_bridge = bridges.values().flatten().next().copied();
    for node in inspection.nodes.iter().filter(|node| !node.bridge) {
        let head = wiring.head_of(node.outlet);
        if bridges.contains_key(&head) || is_loose(&head) || is_dead(node.outlet) {
            continue;
        }
        let mut at = vec![Place::Part(node.outlet)];
        at.extend(first_bridge.map(Place::Part));
        let bridge = first_bridge.map_or_else(|| Phrase::new("part-unknown"), |id| inspection.name(id));
        found.push(
            Finding::new(FindingKind::OtherTree, at)
                .phrase("outlet", inspection.name(node.outlet))
                .phrase("bridge", bridge),
        );
    }
    found
}
