//! What the map draws: every part once, with its words, its sign and the line that leads to it.

use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::record::{CableKind, LooseReason, PartKind, Stands, rows};
use phrase::Phrase;

use super::words::Speaker;

/// How a part stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum State {
    /// Nothing is noted against it.
    Well,
    /// Something about it is to be found out.
    Unknown,
    /// It is weak, or something about it is wrong.
    Weak,
}

/// The line of the cable that leads to a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Cable {
    /// 6 series.
    Six,
    /// 7 or 11 series.
    Stout,
    /// 59 series: thin, more loss.
    Thin,
    /// Nobody knows yet.
    Unknown,
    /// The provider's side: not ours, stays closed.
    Provider,
    /// Laid or renewed by the work.
    New,
}

/// Where a tree of the map starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Root {
    /// At an entry, or at a part that nothing feeds.
    Head,
    /// At a part whose stated feed cannot be.
    Wrong,
    /// At a part that nobody has traced yet.
    Loose,
}

/// One part.
#[derive(Debug, Clone)]
pub(super) struct Node {
    /// Its identity.
    pub id: SubjectId,
    /// Its kind, as a sign.
    pub kind: PartKind,
    /// Whether an adapter joins the coax to the router here.
    pub bridge: bool,
    /// The mark on tape; may be empty.
    pub tag: String,
    /// What it is called, the longest first.
    pub names: Vec<Phrase>,
    /// What there is to remark, the weightiest first.
    pub remarks: Vec<Phrase>,
    /// Its name in full, for those who do not see it.
    pub name: Phrase,
    /// What else there is to say of it and of its cable.
    pub about: Vec<Phrase>,
    /// How it stands.
    pub state: State,
    /// The line that leads to it.
    pub cable: Cable,
    /// The step that changes it.
    pub step: Option<usize>,
    /// Whether it is on the weakest way.
    pub on_way: bool,
    /// Whether the cable that leads to it is.
    pub cable_on_way: bool,
    /// What it feeds, as places in the plan: what ends there first, then branches; by port among equals.
    pub feeds: Vec<usize>,
    /// For the first part of a tree: where that starts.
    pub root: Option<Root>,
}

impl Node {
    /// Whether what it feeds hangs beside it: it parts the signal.
    pub(super) fn forks(&self) -> bool {
        let parts = matches!(self.kind, PartKind::Splitter | PartKind::Tap | PartKind::SatelliteCombiner);
        self.feeds.len() > 1 || (parts && !self.feeds.is_empty())
    }
}

/// Every part of a house, in reading order.
#[derive(Debug)]
pub(super) struct Plan {
    /// The parts; what feeds comes before what is fed.
    pub nodes: Vec<Node>,
    /// The first parts of the trees: from the street, then what does not fit, then what is not traced.
    pub roots: Vec<usize>,
}

impl Plan {
    /// The plan of a house.
    pub(super) fn of(speaker: &Speaker<'_>) -> Self {
        let forest = rows(speaker.survey);
        let mut plan = Self { nodes: Vec::new(), roots: Vec::new() };
        let mut places = BTreeMap::new();
        for (row, stands) in forest.rows.iter().enumerate() {
            let Stands::Part(id) = stands.stands else { continue };
            let place = plan.nodes.len();
            places.insert(row, place);
            let mut node = speaker.node(id);
            if let Some(feeder) = stands.feeder.and_then(|feeder| places.get(&feeder)) {
                if let Some(feeder) = plan.nodes.get_mut(*feeder) {
                    feeder.feeds.push(place);
                }
            } else {
                node.root = Some(match speaker.survey.wiring.loose().get(&id) {
                    None if !stands.loose => Root::Head,
                    None | Some(LooseReason::NotTraced) => Root::Loose,
                    Some(_) => Root::Wrong,
                });
                plan.roots.push(place);
            }
            plan.nodes.push(node);
        }
        let ends: Vec<_> = plan.nodes.iter().map(|node| node.feeds.is_empty()).collect();
        for node in &mut plan.nodes {
            node.feeds.sort_by_key(|fed| !ends.get(*fed).copied().unwrap_or(true));
        }
        let roots: Vec<_> = plan.nodes.iter().map(|node| node.root).collect();
        plan.roots.sort_by_key(|place| roots.get(*place).copied().flatten());
        plan
    }

    /// One part of it.
    pub(super) fn node(&self, place: usize) -> Option<&Node> {
        self.nodes.get(place)
    }
}

impl Cable {
    /// The line of a cable of this kind.
    pub(super) fn of(kind: CableKind) -> Self {
        match kind {
            CableKind::Six => Self::Six,
            CableKind::FiftyNine => Self::Thin,
            CableKind::Seven | CableKind::Eleven => Self::Stout,
            CableKind::Unknown => Self::Unknown,
        }
    }
}
