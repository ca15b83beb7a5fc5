//! Adapters that change places: the better one goes to where more is wished for.

use coax::link::Version;
use house::record::{ChangeKind, Survey};

use crate::forecast::Node;
use crate::verdict::{VersionLimit, version_limits, wanted_at};

/// The most other adapters that are weighed for one place: those that can do most, and of these where least is wanted.
const MOST_FOR_ONE: usize = 2;

/// A better adapter for each outlet where the version or the network socket of the one there is what keeps a room from what is
/// wanted, or for the start of the network where that one does. Only adapters that are there can change places.
pub(super) fn proposals(survey: &Survey, nodes: &[Node]) -> Vec<ChangeKind> {
    let mut found = Vec::new();
    let limits = version_limits(survey);
    for place in nodes.iter().filter(|node| is_own(survey, node) && holds_back(survey, nodes, &limits, node))
    {
        let head = survey.wiring.head_of(place.outlet);
        let better = |other: &&Node| {
            is_own(survey, other)
                && survey.wiring.head_of(other.outlet) == head
                && is_better(survey, other, place)
        };
        let mut others: Vec<&Node> = nodes.iter().filter(better).collect();
        others.sort_by(|a, b| {
            let wanted = |node: &Node| wanted_at(survey, node).unwrap_or_default();
            able(survey, b).cmp(&able(survey, a)).then(wanted(a).total_cmp(&wanted(b)))
        });
        let exchange =
            |other: &Node| ChangeKind::ExchangeAdapters { outlet: place.outlet, with: other.outlet };
        found.extend(others.into_iter().take(MOST_FOR_ONE).map(exchange));
    }
    found
}

/// Whether an adapter is there, one's own, and no router that speaks MoCA itself.
fn is_own(survey: &Survey, node: &Node) -> bool {
    survey.parts.get(&node.outlet).is_some_and(|part| part.adapter.is_some())
}

/// What an adapter can do by itself, whatever lies behind it: its version, and the rate of its network socket.
fn able(survey: &Survey, node: &Node) -> (Version, u32) {
    let adapter = survey.parts.get(&node.outlet).and_then(|part| part.adapter.as_ref());
    (node.link.version, survey.port_of(adapter).mbps)
}

/// Whether one can do more than another in one thing, and no less in the other.
fn is_better(survey: &Survey, one: &Node, other: &Node) -> bool {
    let ((version, port), (least_version, least_port)) = (able(survey, one), able(survey, other));
    version >= least_version && port >= least_port && (version, port) != (least_version, least_port)
}

/// Whether some room would get more of what is wanted with a better adapter here.
fn holds_back(survey: &Survey, nodes: &[Node], limits: &[VersionLimit], place: &Node) -> bool {
    let passes = place.link.port.payload_rate().value();
    let mut concerned = nodes.iter().filter(|node| place.bridge || node.outlet == place.outlet);
    concerned.any(|node| wanted_at(survey, node).is_some_and(|wanted| wanted > passes))
        || limits.iter().any(|limit| {
            let older = place.link.version == limit.version;
            older && (place.bridge || limit.outlet == place.outlet)
        })
}
