//! Where the parts' matrices come from, in the walk over all pairs: kept over the whole grid, or made where they are needed.

use std::ops::Range;

use super::evaluate::{Evaluator, Table};
use super::group::Group;
use super::tree::Tree;
use crate::look::Blocks;

/// Where the parts' matrices come from.
pub(super) enum Tables<'a> {
    /// They are there, over the whole grid.
    Kept(&'a [Table]),
    /// So they are, in the order in which they are needed; those of one group are so many entries.
    InTurn(&'a [Group], usize),
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

    /// A part's matrix in a group, that which was made ready; `matrix` says where it lies among all.
    pub fn matrix(&self, place: usize, group: usize, matrix: &Range<usize>) -> &[Group] {
        let entries = matrix.len();
        match self {
            Self::InTurn(all, size) => {
                // The last part comes first.
                let first = (group + 1) * size - matrix.end;
                &all[first..first + entries]
            }
            Self::Kept(tables) => &tables[place][group * entries..(group + 1) * entries],
            Self::Made(made) => &made.groups[made.starts[place]..made.starts[place] + entries],
        }
    }
}
