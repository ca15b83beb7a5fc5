//! Where the version of the adapters, not the coax, keeps a room from what is wanted there.

use coax::Span;
use coax::link::{Version, common};
use facts::fact::SubjectId;
use house::record::Survey;

use crate::forecast::{Node, net_without_cable, nodes_of};

/// A room that the version of its adapters keeps from what is wanted there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VersionLimit {
    /// The outlet.
    pub outlet: SubjectId,
    /// The newest version that its adapter and the bridge both know.
    pub version: Version,
    /// What that gives over the best of cables, as the forecast counts it, Mb/s.
    pub net: Span,
    /// What is wanted there, Mb/s.
    pub wanted_mbps: f64,
}

/// What is wanted at an adapter, Mb/s: the wish of its room, else the internet plan's rate.
pub(crate) fn wanted_at(survey: &Survey, node: &Node) -> Option<f64> {
    match survey.wish_at(node.outlet) {
        Some(wish) => Some(wish.down_mbps.max(wish.up_mbps)),
        None => survey.internet.map(|internet| internet.down_mbps),
    }
}

/// Every room where what is wanted is likely more than the version gives over the best of cables.
pub fn version_limits(survey: &Survey) -> Vec<VersionLimit> {
    let all = nodes_of(survey);
    let head = |node: &Node| survey.wiring.head_of(node.outlet);
    let of_room = |node: &Node| {
        let on_tree = || all.iter().filter(|other| head(other) == head(node));
        let from = on_tree().find(|other| other.bridge).unwrap_or(node);
        let wanted_mbps = wanted_at(survey, node)?;
        let net = net_without_cable(from, node, on_tree().count())?;
        let version = common(from.link.version, node.link.version);
        (wanted_mbps > net.likely).then_some(VersionLimit { outlet: node.outlet, version, net, wanted_mbps })
    };
    all.iter().filter(|node| !node.bridge).filter_map(of_room).collect()
}
