//! Changes that concern the outlets and the trees as wholes: sharing an outlet, the modem's line, the bridge, loose
//! parts, rooms without coax.

use coax::link::Version;
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::{
    ChangeKind, LooseReason, ModemGeneration, Part, PartKind, Plugged, PortEnd, Room, ServiceKind, Sharing,
    Survey, other_homes_leg,
};

use super::exchanges;
use crate::finding::drops_out_beside_adapter;
use crate::forecast::Node;
use crate::verdict::{VersionLimit, version_limits};

/// Every such change worth working out, refused ones included.
pub(super) fn proposals(survey: &Survey, nodes: &[Node]) -> Vec<ChangeKind> {
    let mut found = Vec::new();
    let Some(bridge) = nodes.iter().find(|node| node.bridge) else { return found };
    let head = survey.wiring.head_of(bridge.outlet);
    for node in nodes {
        found.extend(share(survey, node.outlet));
    }
    for outlet in survey.parts.values().filter(|part| part.kind == PartKind::Outlet) {
        let has_node = nodes.iter().any(|node| node.outlet == outlet.id);
        if survey.wiring.head_of(outlet.id) == head {
            found.extend(filter_at(survey, nodes, outlet, has_node));
            found.extend(own_line(survey, outlet, head).filter(|_| is_modem(outlet) && !has_node));
        }
        if !has_node {
            found.extend(bridge_to(survey, nodes, bridge, outlet));
        }
    }
    found.extend(newer_adapters(survey));
    found.extend(exchanges::proposals(survey, nodes));
    found.extend(join_loose(survey, head));
    for room in survey.rooms.values() {
        found.extend(without_coax(survey, nodes, head, room));
    }
    found
}

/// A newer adapter wherever the version of the one there, or of the bridge, is what keeps the room from what is wanted. A
/// router that speaks MoCA itself is not ours to renew: where it is what holds the room back, nothing is gained.
fn newer_adapters(survey: &Survey) -> impl Iterator<Item = ChangeKind> {
    let older = |limit: &VersionLimit| limit.version < Version::V2_5;
    version_limits(survey)
        .into_iter()
        .filter(older)
        .map(|limit| ChangeKind::NewerAdapter { outlet: limit.outlet })
}

fn is_modem(outlet: &Part) -> bool {
    has(outlet, &[Plugged::Modem])
}

fn has(outlet: &Part, devices: &[Plugged]) -> bool {
    outlet.plugged.iter().flatten().any(|device| devices.contains(device))
}

/// Sharing an outlet with what is plugged in there, where nobody said yet that they do.
fn share(survey: &Survey, outlet: SubjectId) -> Option<ChangeKind> {
    let part = survey.parts.get(&outlet)?;
    let shared =
        part.plugged.as_ref().is_some_and(|plugged| plugged.iter().any(|d| *d != Plugged::MocaGateway));
    (shared && part.sharing.is_none()).then_some(ChangeKind::ShareOutlet { outlet })
}

/// A modem or TV that may be disturbed by the network is kept from hearing it. Not where the device passes the cable on (the
/// filter would stand before the next cable too), nor where it is itself a member of our network.
fn filter_at(survey: &Survey, nodes: &[Node], outlet: &Part, has_node: bool) -> Option<ChangeKind> {
    let reaches = |kind| survey.services_of(kind).any(|service| made_to_reach(service) > EXTENDED_D.low_mhz);
    let modem = is_modem(outlet)
        && (reaches(ServiceKind::CableInternet) || drops_out_beside_adapter(survey, nodes, outlet));
    // An adapter at the same splitter is so loud that it may overload a TV's input; its own through port keeps it from
    // there (common practice, no source).
    let loud = has_node && outlet.sharing == Some(Sharing::Splitter);
    let tv = has(outlet, &[Plugged::Tv, Plugged::TvBox]) && (loud || reaches(ServiceKind::CableTv));
    let may_stand = !outlet.passes_on_through_box() && !has(outlet, &[Plugged::MocaGateway]);
    let wanted = (modem || tv) && may_stand && !outlet.device_filter;
    wanted.then_some(ChangeKind::FilterAtDevice { outlet: outlet.id })
}

fn made_to_reach(service: &house::record::Service) -> f64 {
    let by_generation = service.modem.and_then(|modem| modem.generation).map(ModemGeneration::may_reach_mhz);
    by_generation.unwrap_or_default().max(service.top_mhz.unwrap_or_default())
}

/// The modem hangs straight on the first split behind the entry, over a run of its own.
fn own_line(survey: &Survey, outlet: &Part, head: SubjectId) -> Option<ChangeKind> {
    let split = survey.wiring.feed(outlet.id)?.part;
    let first = survey.to_first_split(head).last().copied()?;
    let entry = survey.parts.get(&head).is_some_and(|part| part.kind == PartKind::Entry);
    let is_split = survey.parts.get(&split).is_some_and(|part| part.kind == PartKind::Splitter);
    let others = survey.wiring.fed_from(split).len() > 1;
    (entry && first == split && is_split && others).then_some(ChangeKind::ModemOwnLine { outlet: outlet.id })
}

/// The bridge goes where the router can be: in its room, or beside the modem or fibre box; not to a tree that another bridge
/// joins to the router already.
fn bridge_to(survey: &Survey, nodes: &[Node], bridge: &Node, outlet: &Part) -> Option<ChangeKind> {
    let from = survey.parts.get(&bridge.outlet).filter(|part| part.adapter.is_some())?;
    let same_room = from.room.is_some() && from.room == outlet.room;
    let tree = survey.wiring.head_of(outlet.id);
    let joins =
        |node: &Node| node.bridge && node.outlet != from.id && survey.wiring.head_of(node.outlet) == tree;
    // A gateway is a bridge by itself: with the adapter gone from beside it there would be two.
    let is_alone = !has(from, &[Plugged::MocaGateway]) && !nodes.iter().any(joins);
    let may_stand = (same_room || outlet.has_internet_box()) && is_alone;
    may_stand.then_some(ChangeKind::MoveBridge { from: from.id, to: outlet.id })
}

/// One loose part and one loose end: they belong together, or tracing them will tell. Several cannot be paired from
/// here.
fn join_loose(survey: &Survey, head: SubjectId) -> Option<ChangeKind> {
    let untraced: Vec<_> = survey
        .wiring
        .loose()
        .iter()
        .filter(|(_, reason)| **reason == LooseReason::NotTraced)
        .map(|(part, _)| *part)
        .collect();
    let ends: Vec<_> = survey
        .wiring
        .below(head)
        .into_iter()
        .filter_map(|id| survey.parts.get(&id))
        .flat_map(|part| part.ends.iter().map(move |(port, end)| (part.id, *port, *end)))
        .filter(|(_, _, end)| *end == PortEnd::LooseEnd)
        .collect();
    match (untraced.as_slice(), ends.as_slice()) {
        ([part], [(to, port, _)]) => Some(ChangeKind::JoinLoose { part: *part, to: *to, port: *port }),
        _ => None,
    }
}

fn without_coax(survey: &Survey, nodes: &[Node], head: SubjectId, room: &Room) -> Vec<ChangeKind> {
    let own =
        || survey.parts.values().filter(|part| part.kind == PartKind::Outlet && part.room == Some(room.id));
    let has_coax = own().any(|outlet| !survey.is_dead_outlet(outlet));
    let wanted =
        room.wish.is_some() || own().any(|outlet| outlet.adapter.as_ref().is_some_and(|a| !a.bridge));
    if !wanted || has_coax || room.served_from.is_some() {
        return Vec::new();
    }
    let tree = survey.wiring.below(head);
    let of_kind = |kind| {
        let tree = &tree;
        tree.iter().copied().filter(move |id| survey.parts.get(id).is_some_and(|part| part.kind == kind))
    };
    let free = of_kind(PartKind::Outlet).filter(|id| !nodes.iter().any(|node| node.outlet == *id));
    let nearby = free.map(|outlet| ChangeKind::UseOutletNearby { room: room.id, outlet });
    let own = |id: &SubjectId| other_homes_leg(survey, *id).is_none();
    let run = of_kind(PartKind::Splitter).find(own).map(|from| ChangeKind::NewRun { room: room.id, from });
    nearby.chain(run).collect()
}
