//! Where the parts' matrices come from, in the walk over all pairs: kept over the whole grid, or made where they are needed.

use super::plan::Tree;
use super::samples::{Table, fill};
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

/// The matrices of the blocks at hand.
pub(super) struct Made<'a> {
    tree: &'a Tree,
    blocks: &'a Blocks,
    filler: Filler,
    waves: Vec<Wave>,
    /// By part: its ports in order, and where its matrices begin.
    parts: Vec<(Vec<usize>, usize)>,
}

impl<'a> Made<'a> {
    pub fn new(tree: &'a Tree, blocks: &'a Blocks) -> Self {
        let mut size = 0;
        let mut parts = Vec::with_capacity(tree.parts.len());
        for part in tree.parts.iter() {
            let order = part.order();
            let entries = order.len() * order.len();
            parts.push((order, size));
            size += entries * ANCHOR;
        }
        Self { tree, blocks, filler: Filler::on(blocks), waves: vec![Wave::ZERO; size], parts }
    }

    /// Makes those of some blocks, of which the first is the first of the grid or any eighth after it.
    fn make(&mut self, blocks: std::ops::Range<usize>) {
        let blocks = &self.blocks.at[blocks];
        for (part, (order, first)) in self.tree.parts.iter().zip(&self.parts) {
            let into = &mut self.waves[*first..first + blocks.len() * order.len() * order.len()];
            fill(&part.model, order, blocks, &mut self.filler, into);
        }
    }
}

impl Tables<'_> {
    /// Makes them ready for some blocks.
    pub fn ready(&mut self, blocks: std::ops::Range<usize>) {
        if let Self::Made(made) = self {
            made.make(blocks);
        }
    }

    /// A part's matrix of so many entries in a block, one of those that were made ready from `first` on.
    #[inline(always)]
    pub fn matrix(&self, place: usize, first: usize, block: usize, size: usize) -> &[Wave] {
        match self {
            Self::Kept(tables) => &tables[place][(first + block) * size..(first + block + 1) * size],
            Self::Made(made) => {
                let at = made.parts[place].1 + block * size;
                &made.waves[at..at + size]
            }
        }
    }
}
