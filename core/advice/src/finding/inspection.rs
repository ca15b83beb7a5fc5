//! What every detector needs to see: the adapters, and how each part stands towards them.

use std::borrow::Cow;
use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, PartKind, Plugged, Survey};
use indexmap::IndexSet;
use phrase::{Arg, Phrase};

use crate::forecast::{Forecast, Node, nodes_of};
use crate::level::{Levels, Options, Unexplained, levels, unexplained};

/// How a part stands towards the adapters of its tree.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Standing {
    /// A path between two adapters passes it from below to above.
    Between,
    /// Paths turn round in it: adapters hang below different ports of it.
    Meeting,
    /// All adapters of the tree hang below one port of it.
    Above,
    /// It feeds the only adapter of the tree; where the other will be is not known.
    OnlyOne,
    /// No adapter hangs below it.
    Aside,
}

impl Standing {
    /// Whether signals between adapters pass it, or may.
    pub(super) fn is_on_a_path(self) -> bool {
        matches!(self, Self::Between | Self::Meeting | Self::OnlyOne)
    }
}

/// A house as the detectors see it.
pub(super) struct Inspection<'a> {
    /// The records.
    pub(super) survey: &'a Survey,
    /// What gets through, where it was worked out.
    pub(super) forecast: Option<&'a Forecast>,
    /// The levels as found, where they were worked out already.
    levels: Option<&'a Levels>,
    /// The same, worked out when first asked for; `None` where the physics refuses the house, which its forecast tells.
    solved: OnceCell<Option<Levels>>,
    /// The adapters, recorded or wished for.
    pub(super) nodes: Vec<Node>,
    /// Adapters at or below each part.
    below: BTreeMap<SubjectId, usize>,
    ends: BTreeSet<SubjectId>,
}

impl<'a> Inspection<'a> {
    pub(super) fn new(
        survey: &'a Survey,
        forecast: Option<&'a Forecast>,
        levels: Option<&'a Levels>,
    ) -> Self {
        let nodes = nodes_of(survey);
        // Before any wish is stated, every outlet may get an adapter.
        let ends: BTreeSet<_> = if nodes.is_empty() {
            survey.parts.values().filter(|part| part.kind == PartKind::Outlet).map(|part| part.id).collect()
        } else {
            nodes.iter().map(|node| node.outlet).collect()
        };
        let mut below = BTreeMap::new();
        for end in &ends {
            for part in survey.wiring.way_up(*end) {
                *below.entry(part).or_insert(0) += 1;
            }
        }
        Self { survey, forecast, levels, solved: OnceCell::new(), nodes, below, ends }
    }

    /// How a part stands towards the adapters of its tree. While no adapter and no wish is known, every outlet
    /// counts as one.
    pub(super) fn standing(&self, part: SubjectId) -> Standing {
        let count = |id: SubjectId| self.below.get(&id).copied().unwrap_or(0);
        let here = count(part);
        let all = count(self.survey.wiring.head_of(part));
        match here {
            0 => Standing::Aside,
            1 if all == 1 => Standing::OnlyOne,
            _ if here < all => Standing::Between,
            _ => {
                let passed_down = self.survey.wiring.fed_from(part).iter().any(|child| count(*child) == all);
                let turns = self.ends.contains(&part) || !passed_down;
                if turns { Standing::Meeting } else { Standing::Above }
            }
        }
    }

    /// The levels as found.
    pub(super) fn levels(&self) -> Option<&Levels> {
        let solve = || levels(self.survey, &Options::default()).ok();
        self.levels.or_else(|| self.solved.get_or_init(solve).as_ref())
    }

    /// What was measured and the wiring does not explain: of the levels as found where a forecast stands beside, else by
    /// itself, which takes less.
    pub(super) fn unexplained(&self) -> Cow<'_, [Unexplained]> {
        if self.forecast.is_some() || self.levels.is_some() {
            return Cow::Borrowed(self.levels().map_or(&[], |levels| levels.unexplained.as_slice()));
        }
        Cow::Owned(unexplained(self.survey, &Options::default()).unwrap_or_default())
    }

    /// Parts of some kinds, in the order of the house.
    pub(super) fn parts(&self, kinds: &'static [PartKind]) -> impl Iterator<Item = &'a Part> {
        self.survey.parts.values().filter(|part| kinds.contains(&part.kind))
    }

    /// The parts of the tree headed by `head`.
    pub(super) fn tree(&self, head: SubjectId) -> impl Iterator<Item = &'a Part> {
        self.survey.wiring.below(head).into_iter().filter_map(|id| self.survey.parts.get(&id))
    }

    /// The adapters on the tree headed by `head`.
    pub(super) fn nodes_on(&self, head: SubjectId) -> Vec<&Node> {
        self.nodes.iter().filter(|node| self.survey.wiring.head_of(node.outlet) == head).collect()
    }

    /// Heads of trees with adapters on them; a loose part is the head of what hangs below it.
    pub(super) fn heads_with_nodes(&self) -> IndexSet<SubjectId> {
        self.nodes.iter().map(|node| self.survey.wiring.head_of(node.outlet)).collect()
    }

    /// Entries that may be joined to the world outside and have adapters on their tree.
    pub(super) fn entries_with_nodes(&self) -> impl Iterator<Item = &'a Part> {
        let heads = self.heads_with_nodes();
        self.parts(&[PartKind::Entry])
            .filter(move |entry| entry.is_joined_entry() && heads.contains(&entry.id))
    }

    /// The parts in one line behind an entry, up to and without the first that splits, amplifies or ends the line.
    pub(super) fn entry_line(&self, entry: SubjectId) -> Vec<&'a Part> {
        let row = self.survey.wiring.in_row(entry).map_while(|id| self.survey.parts.get(&id));
        row.take_while(|part| is_in_line(part.kind)).collect()
    }

    /// The ports of a part on which no part hangs.
    pub(super) fn free_ports(&self, part: &Part) -> Vec<u8> {
        (1..=part.outputs())
            .filter(|port| self.survey.wiring.on_port(part.id, *port).next().is_none())
            .collect()
    }

    /// The phrase that names a part.
    pub(super) fn name(&self, id: SubjectId) -> Phrase {
        naming::part(self.survey, id)
    }

    /// The phrases that name some parts, as a list.
    pub(super) fn names(&self, ids: impl IntoIterator<Item = SubjectId>) -> Arg {
        Arg::Several(ids.into_iter().map(|id| Arg::Phrase(Box::new(self.name(id)))).collect())
    }
}

fn is_in_line(kind: PartKind) -> bool {
    matches!(
        kind,
        PartKind::GroundBlock
            | PartKind::EntryFilter
            | PartKind::Barrel
            | PartKind::Pad
            | PartKind::PowerInserter
            | PartKind::HighPassFilter
    )
}

/// Whether a device is plugged in at an outlet.
pub(super) fn has_plugged(part: &Part, device: Plugged) -> bool {
    part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&device))
}
