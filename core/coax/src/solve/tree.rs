//! A network that is a tree: its parts, and the order of work on it.

use std::sync::{Arc, OnceLock};

use num_complex::Complex64;

use super::index::{OutletIndex, PartIndex};
use super::layout::Layout;
use super::pairs::Pairs;
use super::plan::{Plan, Side, TreePart};
use super::solution::Slots;

/// A network that is a tree, every port of it spoken for, in the order of solving.
#[derive(Debug, Clone)]
pub struct Tree {
    pub(super) plan: Arc<Plan>,
    pub(super) parts: Arc<Vec<TreePart>>,
    all_pairs: Arc<AllPairs>,
}

/// What the walk over all pairs needs, laid out when it is first asked for.
#[derive(Debug, Default)]
struct AllPairs {
    layout: OnceLock<Layout>,
    pairs: OnceLock<(Pairs, Slots)>,
}

impl Tree {
    pub(crate) fn new(
        parts: Vec<TreePart>,
        root_reflection: Complex64,
        root_outlet: Option<usize>,
        outlets: usize,
    ) -> Self {
        let plan = Plan::of(&parts, root_reflection, root_outlet, outlets);
        Self { plan: Arc::new(plan), parts: Arc::new(parts), all_pairs: Arc::default() }
    }

    /// Where what the walk over all pairs works out lies.
    pub(super) fn layout(&self) -> &Layout {
        self.all_pairs.layout.get_or_init(|| Layout::of(&self.plan))
    }

    /// All pairs, and where each one's values lie.
    pub(super) fn all_pairs(&self) -> &(Pairs, Slots) {
        self.all_pairs.pairs.get_or_init(|| Pairs::all(&self.plan))
    }

    /// How many parts it has.
    pub fn parts(&self) -> usize {
        self.parts.len()
    }

    /// How many outlets it has.
    pub fn outlets(&self) -> usize {
        self.plan.outlets.len()
    }

    /// The outlet at the root, if one is there: waves are carried from it and to it.
    pub fn root_outlet(&self) -> Option<OutletIndex> {
        self.plan.root_outlet.map(OutletIndex)
    }

    /// The ports that lead nowhere, by the network's part and its port, in the order of work.
    pub fn ends(&self) -> Vec<(PartIndex, usize)> {
        let of_part = |part: &TreePart| {
            let below = part.order().into_iter().skip(1);
            let ends = below.zip(&part.sides).filter(|(_, side)| matches!(side, Side::End(_)));
            ends.map(|(port, _)| (PartIndex(part.original), port)).collect::<Vec<_>>()
        };
        self.parts.iter().flat_map(of_part).collect()
    }

    /// Whether every part carries waves alike both ways.
    pub fn is_reciprocal(&self) -> bool {
        self.plan.is_reciprocal()
    }

    /// Whether another tree differs in its models, and in what its ends send back, at the most, with every part the same way
    /// round and as wide.
    pub(super) fn is_laid_as(&self, other: &Self) -> bool {
        let is_as = |(one, other): (&TreePart, &TreePart)| {
            one.up_port == other.up_port && one.model.ports() == other.model.ports()
        };
        self.plan.is_shaped_as(&other.plan) && self.parts.iter().zip(other.parts.iter()).all(is_as)
    }

    /// The part of the network that the tree hangs from.
    pub fn root(&self) -> PartIndex {
        PartIndex(self.parts.first().map_or(0, |part| part.original))
    }
}
