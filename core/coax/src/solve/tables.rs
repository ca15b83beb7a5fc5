//! Where the parts' matrices come from, in the walk over all pairs: kept over the whole grid, or made where they are needed.

use super::group::{Group, Shape};
use super::plan::TreePart;
use super::samples::{Table, fill};
use super::tree::Tree;
use super::wave::Wave;
use crate::look::{ANCHOR, Blocks};
use crate::model::Filler;

/// Where the parts' matrices come from.
pub(super) enum Tables<'a> {
    /// They are there, over the whole grid.
    Kept(&'a [Table]),
    /// They are made where they are needed.
    Made(Box<Made<'a>>),
}

/// The matrices of the group at hand.
pub(super) struct Made<'a> {
    tree: &'a Tree,
    blocks: &'a Blocks,
    evaluator: Evaluator,
    /// By place, one after the other, as `starts` tells.
    groups: Vec<Group>,
    starts: Vec<usize>,
}

impl<'a> Made<'a> {
    pub fn new(tree: &'a Tree, blocks: &'a Blocks) -> Self {
        let mut size = 0;
        let mut starts = Vec::with_capacity(tree.parts.len());
        for part in tree.parts.iter() {
            starts.push(size);
            size += part.entries();
        }
        let evaluator = Evaluator::on(blocks);
        Self { tree, blocks, evaluator, groups: vec![Group::ZERO; size], starts }
    }

    fn make(&mut self, group: usize) {
        for (part, first) in self.tree.parts.iter().zip(&self.starts) {
            let into = &mut self.groups[*first..first + part.entries()];
            self.evaluator.evaluate(part, self.blocks, group, into);
        }
    }
}

impl Tables<'_> {
    /// Makes them ready for a group of frequencies.
    pub fn ready(&mut self, group: usize) {
        if let Self::Made(made) = self {
            made.make(group);
        }
    }

    /// A part's matrix of so many entries in a group, that which was made ready.
    pub fn matrix(&self, place: usize, group: usize, entries: usize) -> &[Group] {
        match self {
            Self::Kept(tables) => &tables[place][group * entries..(group + 1) * entries],
            Self::Made(made) => &made.groups[made.starts[place]..made.starts[place] + entries],
        }
    }
}

impl TreePart {
    /// How its matrix lies in memory.
    pub(super) fn shape(&self) -> Shape {
        if self.model.is_reciprocal() { Shape::Upper } else { Shape::Full }
    }

    /// Entries of its matrix, as it lies in memory.
    pub fn entries(&self) -> usize {
        self.shape().entries(self.model.ports())
    }
}

/// Works out parts' matrices group by group.
pub(super) struct Evaluator {
    filler: Filler,
    waves: Vec<Wave>,
}

impl Evaluator {
    /// For the blocks of a grid.
    pub fn on(blocks: &Blocks) -> Self {
        Self { filler: Filler::on(blocks), waves: Vec::new() }
    }

    /// Writes a part's matrix over a group of a grid's frequencies.
    pub fn evaluate(&mut self, part: &TreePart, blocks: &Blocks, group: usize, into: &mut [Group]) {
        let order = part.order();
        let (ports, shape) = (order.len(), part.shape());
        let first = group * ANCHOR;
        let blocks = &blocks.at[first..(first + ANCHOR).min(blocks.at.len())];
        self.waves.resize(blocks.len() * ports * ports, Wave::ZERO);
        fill(&part.model, &order, blocks, &mut self.filler, &mut self.waves);
        for to in 0..ports {
            for from in if shape == Shape::Upper { to } else { 0 }..ports {
                let waves = &self.waves[to * ports + from..];
                into[shape.entry(ports, to, from)].gather(waves, ports * ports);
            }
        }
    }
}
