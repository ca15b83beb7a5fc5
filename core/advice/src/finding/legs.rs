//! Legs and outlets with nothing on them, cables that lead nowhere known, and ports with two cables.

use house::record::{Part, PartKind, PortEnd, may_carry_power};
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};

/// Parts whose free ports matter.
const WITH_LEGS: &[PartKind] =
    &[PartKind::Splitter, PartKind::Tap, PartKind::Amplifier, PartKind::SatelliteCombiner];

/// Free legs: open, not looked at, or with a cable that leads nowhere known.
pub(super) fn free_legs(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for part in inspection.survey.parts.values() {
        let free = inspection.free_ports(part);
        let with_end = |end: Option<PortEnd>| -> Vec<u8> {
            free.iter().copied().filter(|port| part.end(*port) == end).collect()
        };
        let open = with_end(Some(PortEnd::Open));
        if !open.is_empty() && WITH_LEGS.contains(&part.kind) {
            found.push(legs(inspection, FindingKind::LegOpen, part, &open));
        }
        let leads_away = with_end(Some(PortEnd::LooseEnd));
        if !leads_away.is_empty() {
            found.push(legs(inspection, FindingKind::LooseEnd, part, &leads_away));
        }
        let unseen = with_end(None);
        let counted = part.rating.legs > 0 && WITH_LEGS.contains(&part.kind);
        if counted && !unseen.is_empty() {
            found.push(legs(inspection, FindingKind::LegNotSeen, part, &unseen));
        }
    }
    found
}

fn legs(inspection: &Inspection<'_>, kind: FindingKind, part: &Part, ports: &[u8]) -> Finding {
    let at = ports.iter().map(|port| Place::Port { part: part.id, port: *port }).collect();
    Finding::new(kind, at)
        .text("power", if may_carry_power(inspection.survey, part.id) { "yes" } else { "no" })
        .phrase("part", inspection.name(part.id))
        .with("count", Arg::Count(ports.len() as u64))
        .phrase("legs", house::naming::ports(part, ports))
}

/// Outlets that somebody looked at, with nothing plugged in, no adapter to come and no cap on.
pub(super) fn empty_outlets(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Outlet])
        .filter(|outlet| outlet.plugged.as_ref().is_some_and(Vec::is_empty) && outlet.adapter.is_none())
        .filter(|outlet| outlet.end(1) != Some(PortEnd::Capped))
        .filter(|outlet| inspection.survey.wiring.feed(outlet.id).is_some())
        .filter(|outlet| inspection.survey.wiring.fed_from(outlet.id).is_empty())
        .filter(|outlet| !inspection.nodes.iter().any(|node| node.outlet == outlet.id))
        .map(|outlet| {
            Finding::new(FindingKind::OutletOpen, vec![Place::Part(outlet.id)])
                .text("power", if may_carry_power(inspection.survey, outlet.id) { "yes" } else { "no" })
                .phrase("outlet", inspection.name(outlet.id))
        })
        .collect()
}

/// Ports on which two cables are noted.
pub(super) fn crowded_ports(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for part in inspection.survey.parts.values() {
        for port in 1..=part.outputs() {
            let on_port: Vec<_> = inspection.survey.wiring.on_port(part.id, port).collect();
            if on_port.len() > 1 {
                let mut at = vec![Place::Port { part: part.id, port }];
                at.extend(on_port.iter().copied().map(Place::Part));
                found.push(
                    Finding::new(FindingKind::TwoOnPort, at)
                        .phrase("port", house::naming::port(inspection.survey, part.id, port))
                        .with("parts", inspection.names(on_port)),
                );
            }
        }
    }
    found
}
