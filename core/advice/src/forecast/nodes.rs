//! The adapters of a house: those recorded, and those that the wishes ask for.

use std::collections::BTreeSet;

use coax::link::{self, EthernetPort, Version};
use facts::fact::SubjectId;
use house::record::{Adapter, Part, PartKind, Plugged, Survey};

/// An adapter at an outlet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Node {
    /// The outlet.
    pub outlet: SubjectId,
    /// Version and port.
    pub link: link::Node,
    /// Where the rate of that port comes from.
    pub port_known: PortKnown,
    /// Whether it bridges the coax to the router's network.
    pub bridge: bool,
    /// Whether it stands in the survey, or is only asked for by a room's wish.
    pub recorded: bool,
}

/// Where the rate at which an adapter passes data on to the network comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PortKnown {
    /// Somebody said which network socket the adapter has, or shall have.
    Stated,
    /// Nobody said; it is what adapters of this version mostly have.
    Usual,
    /// What lies behind the adapter is slower than its socket.
    Behind,
}

/// The adapters of a house: one at each outlet that has one recorded (a gateway that speaks MoCA counts), and one at
/// the first outlet of each room that has a wish and no adapter yet, or at the outlet that serves a room without coax. An
/// outlet that nothing feeds counts for a room only where there is no other. The bridge comes first.
pub fn nodes_of(survey: &Survey) -> Vec<Node> {
    let mut nodes = Vec::new();
    let mut served = BTreeSet::new();
    for part in survey.parts.values().filter(|part| part.kind == PartKind::Outlet) {
        let gateway = part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&Plugged::MocaGateway));
        if let Some(adapter) = &part.adapter {
            nodes.push(node(survey, part.id, Some(adapter), true));
        } else if gateway {
            nodes.push(Node { bridge: true, ..node(survey, part.id, None, true) });
        } else {
            continue;
        }
        // An adapter at an outlet that nothing feeds serves nobody.
        served.extend(part.room.filter(|_| !survey.is_dead_outlet(part)));
    }
    for room in survey.rooms.values().filter(|room| room.wish.is_some() && !served.contains(&room.id)) {
        let own = || {
            survey.parts.values().filter(|part| part.kind == PartKind::Outlet && part.room == Some(room.id))
        };
        let fed = own().find(|outlet| !survey.is_dead_outlet(outlet));
        let nearby = || survey.parts.get(&room.served_from?);
        let has_node = |outlet: &Part| nodes.iter().any(|node: &Node| node.outlet == outlet.id);
        if let Some(outlet) = fed.or_else(nearby).or_else(|| own().next()).filter(|outlet| !has_node(outlet))
        {
            nodes.push(node(survey, outlet.id, None, false));
        }
    }
    nodes.sort_by_key(|node| (!node.bridge, node.outlet));
    nodes
}

fn node(survey: &Survey, outlet: SubjectId, adapter: Option<&Adapter>, recorded: bool) -> Node {
    let port = survey.port_of(adapter);
    let behind = survey.parts.get(&outlet).and_then(|part| part.behind_adapter.as_ref()?.mbps);
    let (mbps, port_known) = match behind.filter(|behind| *behind < port.mbps) {
        Some(behind) => (behind, PortKnown::Behind),
        None if port.is_stated => (port.mbps, PortKnown::Stated),
        None => (port.mbps, PortKnown::Usual),
    };
    let version = survey.version_of(adapter).parse().unwrap_or(Version::V2_5);
    let link = link::Node { version, port: port_of(mbps) };
    Node { outlet, link, port_known, bridge: adapter.is_some_and(|adapter| adapter.bridge), recorded }
}

fn port_of(mbps: u32) -> EthernetPort {
    match mbps {
        0..1000 => EthernetPort::Fast,
        1000..2500 => EthernetPort::Gigabit,
        2500..10_000 => EthernetPort::TwoPointFive,
        _ => EthernetPort::TenGigabit,
    }
}

/// What else is plugged in where an adapter shall go: the adapter then shares the outlet through a splitter.
pub(super) fn shares_outlet(part: &Part) -> bool {
    part.plugged.as_ref().is_some_and(|plugged| plugged.iter().any(|device| *device != Plugged::MocaGateway))
}
