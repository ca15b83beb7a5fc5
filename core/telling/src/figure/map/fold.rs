//! Which rows the map has: every part one, but for what folds until it fits.
//!
//! First outlets that are alike, then whole branches in which all is well, then such outlets and branches whose cables
//! nobody has looked at yet, then all of them that hang on one part, at last into the row of that part itself. Never: what is
//! weak, wrong, thin, loose, changed, on the weakest way, or was unfolded.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::record::PartKind;

use super::Folding;
use super::node::{Cable, Node, Plan, State};

/// So many rows the map may have before it folds further.
pub(super) const MOST_ROWS: usize = 30;
/// So many outlets that are alike fold into one row, at first.
const ALIKE: usize = 3;

/// What a row of the map shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Shows {
    /// A part.
    Part(usize),
    /// Outlets of one part, all alike.
    Outlets {
        /// The part that feeds them.
        at: usize,
        /// They, by port.
        outlets: Vec<usize>,
    },
    /// A branch in which all is well, as its first part.
    Branch {
        /// The first part.
        first: usize,
        /// How many hang behind it.
        behind: usize,
    },
    /// Several outlets and branches of one part in which all is well.
    Rest {
        /// The part that feeds them.
        at: usize,
        /// The first parts of them, by port.
        firsts: Vec<usize>,
        /// How many parts they are in all.
        count: usize,
    },
    /// A part that holds all it feeds in which all is well.
    Holding {
        /// The part.
        part: usize,
        /// How many it holds.
        count: usize,
    },
}

impl Shows {
    /// The part whose cable leads to the row.
    pub(super) fn first(&self) -> usize {
        match self {
            Self::Part(place) | Self::Branch { first: place, .. } | Self::Holding { part: place, .. } => {
                *place
            }
            Self::Outlets { outlets: firsts, at } | Self::Rest { firsts, at, .. } => {
                firsts.first().copied().unwrap_or(*at)
            }
        }
    }
}

impl Row {
    /// Whether a touch unfolds something.
    pub(super) const fn folds(&self) -> bool {
        !matches!(self.shows, Shows::Part(_))
    }

    /// Whether it shows one part as it is, and not several behind one another.
    pub(super) const fn is_single(&self) -> bool {
        matches!(self.shows, Shows::Part(_) | Shows::Holding { .. })
    }
}

/// A row of the map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Row {
    /// What it shows.
    pub shows: Shows,
    /// The row of what feeds it; comes before it.
    pub feeder: Option<usize>,
    /// How many forks lie above it.
    pub forks: usize,
    /// How many parts lie above it.
    pub depth: usize,
}

/// How far the map is folded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Stage {
    Nothing,
    Outlets,
    Branches,
    Unseen,
    Rest,
    Held,
}

const STAGES: [Stage; 6] =
    [Stage::Nothing, Stage::Outlets, Stage::Branches, Stage::Unseen, Stage::Rest, Stage::Held];

/// The rows of a plan, folded until it fits.
pub(super) fn folded(plan: &Plan, folding: &Folding) -> Vec<Row> {
    let nothing = BTreeSet::new();
    let rows_at = |stage, opened| Folder::of(plan, stage, opened).rows();
    let Folding::But(opened) = folding else { return rows_at(Stage::Nothing, &nothing) };
    let fits = |stage: &Stage| rows_at(*stage, &nothing).len() <= MOST_ROWS;
    let stage = STAGES.into_iter().find(fits).unwrap_or(Stage::Held);
    rows_at(stage, opened)
}

struct Folder<'a> {
    plan: &'a Plan,
    stage: Stage,
    opened: &'a BTreeSet<SubjectId>,
    /// How many parts hang behind each.
    behind: Vec<usize>,
    /// Whether all is well with each and behind it.
    well: Vec<bool>,
    rows: Vec<Row>,
}

impl<'a> Folder<'a> {
    fn of(plan: &'a Plan, stage: Stage, opened: &'a BTreeSet<SubjectId>) -> Self {
        let many = plan.nodes.len();
        let mut folder =
            Self { plan, stage, opened, behind: vec![0; many], well: vec![false; many], rows: Vec::new() };
        for (place, node) in plan.nodes.iter().enumerate().rev() {
            let of = |fed: &usize| folder.behind.get(*fed).map_or(0, |behind| behind + 1);
            let behind = node.feeds.iter().map(of).sum();
            let all_well = node.feeds.iter().all(|fed| folder.well.get(*fed) == Some(&true));
            let well = all_well && folder.is_well(node);
            if let (Some(slot), Some(is_well)) = (folder.behind.get_mut(place), folder.well.get_mut(place)) {
                (*slot, *is_well) = (behind, well);
            }
        }
        folder
    }

    /// Whether nothing about a part and its cable has to be seen.
    fn is_well(&self, node: &Node) -> bool {
        let cable = match node.cable {
            Cable::Six | Cable::Stout => true,
            Cable::Unknown => self.stage >= Stage::Unseen,
            Cable::Thin | Cable::Provider | Cable::New => false,
        };
        node.state == State::Well && cable && !node.on_way && node.step.is_none() && node.root.is_none()
    }

    fn well(&self, place: usize) -> bool {
        self.well.get(place) == Some(&true)
    }

    fn behind(&self, place: usize) -> usize {
        self.behind.get(place).copied().unwrap_or(0)
    }

    fn rows(mut self) -> Vec<Row> {
        for root in &self.plan.roots {
            self.grow(*root);
        }
        self.rows
    }

    fn grow(&mut self, root: usize) {
        let mut next = vec![Row { shows: Shows::Part(root), feeder: None, forks: 0, depth: 0 }];
        while let Some(row) = next.pop() {
            let index = self.rows.len();
            let mut row = row;
            if let Shows::Part(place) = row.shows
                && let Some(node) = self.plan.node(place)
            {
                let forks = row.forks + usize::from(node.forks());
                let mut below = self.below(place, node);
                if self.stage == Stage::Held
                    && let Some(Shows::Rest { count, .. }) = below.first()
                {
                    row.shows = Shows::Holding { part: place, count: *count };
                    below.remove(0);
                }
                next.extend(below.into_iter().rev().map(|shows| Row {
                    shows,
                    feeder: Some(index),
                    forks,
                    depth: row.depth + 1,
                }));
            }
            self.rows.push(row);
        }
    }

    /// What is shown of what a part feeds.
    fn below(&self, place: usize, node: &Node) -> Vec<Shows> {
        let is_open = self.opened.contains(&node.id);
        if self.stage >= Stage::Rest && !is_open {
            let (firsts, others): (Vec<_>, Vec<_>) =
                node.feeds.iter().copied().partition(|fed| self.well(*fed));
            if firsts.len() > 1 {
                let count = firsts.iter().map(|first| self.behind(*first) + 1).sum();
                let all_end = firsts.iter().all(|first| self.behind(*first) == 0);
                let rest = if self.stage == Stage::Rest && all_end && self.is_alike(&firsts) {
                    Shows::Outlets { at: place, outlets: firsts }
                } else {
                    Shows::Rest { at: place, firsts, count }
                };
                return std::iter::once(rest).chain(others.into_iter().map(Shows::Part)).collect();
            }
        }
        let mut shown = Vec::new();
        let mut left = node.feeds.clone();
        if self.stage >= Stage::Outlets && !is_open {
            for cable in [Cable::Six, Cable::Unknown] {
                let (alike, others): (Vec<_>, Vec<_>) =
                    left.iter().partition(|fed| self.is_plain_outlet(**fed, cable));
                if alike.len() >= ALIKE {
                    shown.push(Shows::Outlets { at: place, outlets: alike });
                    left = others;
                }
            }
        }
        shown.extend(left.into_iter().map(|fed| {
            let is_open = self.plan.node(fed).is_none_or(|node| self.opened.contains(&node.id));
            let behind = self.behind(fed);
            // A part with one behind it takes no more room unfolded than it is worth.
            if self.stage >= Stage::Branches && !is_open && behind > 1 && self.well(fed) {
                Shows::Branch { first: fed, behind }
            } else {
                Shows::Part(fed)
            }
        }));
        shown
    }

    fn is_plain_outlet(&self, place: usize, cable: Cable) -> bool {
        self.plan.node(place).is_some_and(|node| {
            node.kind == PartKind::Outlet && node.feeds.is_empty() && node.cable == cable && self.well(place)
        })
    }

    fn is_alike(&self, places: &[usize]) -> bool {
        [Cable::Six, Cable::Unknown]
            .into_iter()
            .any(|cable| places.iter().all(|place| self.is_plain_outlet(*place, cable)))
    }
}
