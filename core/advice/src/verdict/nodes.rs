//! How many members of its network an adapter sees, beside how many are known and how many are there by now.

use coax::link::Version;
use facts::fact::SubjectId;
use house::record::{Asked, Reading, ReadingKind, Reply, Service, ServiceKind, Survey};

use super::fault::hears_others;
use super::tells::is_from_before;
use crate::adapters::adapters_owned;
use crate::forecast::{Node, nodes_of};

/// Where the number of members that an adapter sees stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NodesBeside {
    /// As many as are known here.
    AsMany,
    /// More: a box that was forgotten, or a stranger.
    More,
    /// More than our own; nobody counted the boxes of the provider's, which may be among them.
    MoreWithProvider,
    /// Fewer, but no fewer than are there by now: the others are still to come.
    FewerToCome,
    /// Fewer than are there.
    Fewer,
    /// None but itself, though others are there.
    Alone,
}

/// What an adapter's count of its network tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NodesTold {
    /// The outlet of the adapter that was asked.
    pub outlet: SubjectId,
    /// How many it sees, itself included.
    pub seen: usize,
    /// How many are known on its tree, those still to come and those of the provider included.
    pub known: usize,
    /// How many of our own are there by now.
    pub there: usize,
    /// Where the one stands beside the others.
    pub beside: NodesBeside,
    /// Where fewer are seen than are there: the outlets that may be the missing ones, since nothing else shows that their
    /// adapter hears another.
    pub missing: Vec<SubjectId>,
}

impl NodesTold {
    /// What it tells that the adapter at `about` (at the bridge where that is `None`) sees so many. `None` where no adapter
    /// is known that could have been asked.
    pub fn of(survey: &Survey, about: Option<SubjectId>, seen: u32) -> Option<Self> {
        let all = nodes_of(survey);
        let bridge = || all.iter().find(|node| node.bridge).map(|node| node.outlet);
        let outlet = about.or_else(bridge)?;
        let head = survey.wiring.head_of(outlet);
        let ours: Vec<_> = all.iter().filter(|node| survey.wiring.head_of(node.outlet) == head).collect();
        let placed: Vec<_> =
            ours.iter().filter(|node| is_there(survey, node)).map(|node| node.outlet).collect();
        let known = ours.len() + provider_nodes(survey, head).0;
        let seen = usize::try_from(seen).unwrap_or(usize::MAX);
        // Of those that somebody has, as many as there are can be there.
        let there = adapters_owned(survey).map_or(placed.len(), |owned| placed.len().min(owned));
        let beside = match () {
            () if seen > known && are_theirs_counted(survey, head) => NodesBeside::More,
            () if seen > known => NodesBeside::MoreWithProvider,
            () if seen <= 1 && there >= 2 && placed.contains(&outlet) => NodesBeside::Alone,
            () if seen < there => NodesBeside::Fewer,
            () if seen < known => NodesBeside::FewerToCome,
            () => NodesBeside::AsMany,
        };
        let missing = match beside {
            NodesBeside::Alone => vec![outlet],
            NodesBeside::Fewer => {
                placed.iter().copied().filter(|at| *at != outlet && !hears_others(survey, *at)).collect()
            }
            _ => Vec::new(),
        };
        Some(Self { outlet, seen, known, there, beside, missing })
    }

    /// Whether the adapter at an outlet must be one that is missing: it sees nobody itself, or no more may be missing than are.
    pub fn is_surely_missing(&self, outlet: SubjectId) -> bool {
        let are_all =
            self.beside == NodesBeside::Alone || self.missing.len() <= self.there.saturating_sub(self.seen);
        are_all && self.missing.contains(&outlet)
    }

    /// What each count in a survey tells, by the readings' identities.
    pub fn all(survey: &Survey) -> Vec<Self> {
        let still = |reading: &&Reading| !is_from_before(survey, reading);
        let counts = survey.readings.values().filter(still).filter_map(|reading| match reading.measured {
            ReadingKind::NodesSeen { count } => Self::of(survey, reading.about, count),
            _ => None,
        });
        counts.collect()
    }
}

/// Whether an adapter is there by now: somebody has such adapters or placed them, or noted it down where nobody was asked.
fn is_there(survey: &Survey, node: &Node) -> bool {
    match survey.reply(survey.id, Asked::Adapters) {
        Some(Reply::None) => survey.reply(survey.id, Asked::AdaptersPlaced) == Some(Reply::Yes),
        Some(Reply::Unsure) | None => node.recorded,
        Some(_) => true,
    }
}

/// Networks that are not ours and may be on the tree headed by `head`.
pub(crate) fn other_networks(survey: &Survey, head: SubjectId) -> impl Iterator<Item = &Service> {
    survey
        .services
        .values()
        .filter(|service| matches!(service.kind, ServiceKind::ProviderNetwork | ServiceKind::FibreLink))
        .filter(move |service| service.entry.is_none_or(|entry| survey.wiring.head_of(entry) == head))
}

/// Nodes and versions of the networks that the provider runs on a tree: they count like ours.
pub(crate) fn provider_nodes(survey: &Survey, head: SubjectId) -> (usize, Vec<Version>) {
    let mut nodes = 0;
    let mut versions = Vec::new();
    for service in other_networks(survey, head).filter(|service| service.kind == ServiceKind::ProviderNetwork)
    {
        let Some(network) = &service.network else { continue };
        nodes += usize::try_from(network.nodes).unwrap_or(usize::MAX);
        versions.extend(network.version.as_ref().and_then(|version| version.parse::<Version>().ok()));
    }
    (nodes, versions)
}

fn are_theirs_counted(survey: &Survey, head: SubjectId) -> bool {
    other_networks(survey, head)
        .filter(|service| service.kind == ServiceKind::ProviderNetwork)
        .all(|service| service.network.as_ref().is_some_and(|network| network.nodes > 0))
}
