//! The parts' matrices at the frequencies of a grid.

use std::collections::HashMap;
use std::sync::Arc;

use super::cores;
use super::evaluate::{Evaluator, Table};
use super::group::{GROUP, Group};
use super::plan::TreePart;
use super::tree::Tree;
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::{ANCHOR, Blocks};
use crate::model::Model;

/// The most complex values held for one answer or one tree's samples: 1 GiB.
pub(crate) const MOST_VALUES: usize = 1 << 26;

/// Evaluated models on one grid, kept from tree to tree: a model shared by many trees (a house before and after a change) is
/// evaluated once.
#[derive(Debug)]
pub struct Samples {
    grid: Arc<FrequencyGrid>,
    blocks: Blocks,
    /// By address and upper port; the model is kept so that its address stays its own.
    tables: HashMap<(usize, usize), (Arc<Model>, Table)>,
}

impl Samples {
    /// No models yet, on `grid`.
    pub fn on(grid: FrequencyGrid) -> Self {
        Self { blocks: Blocks::of(&grid), grid: Arc::new(grid), tables: HashMap::new() }
    }

    /// The samples of a tree; models that were met before are not evaluated again.
    ///
    /// # Errors
    /// [`CoaxError::TooMuchAsked`] if that would not fit in memory.
    pub fn of(&mut self, tree: &Tree) -> Result<Sampled, CoaxError> {
        let points = self.grid.len().next_multiple_of(GROUP);
        let mut new = HashMap::new();
        for part in tree.parts.iter() {
            let key = (Arc::as_ptr(&part.model) as usize, part.up_port);
            if !self.tables.contains_key(&key) {
                new.insert(key, part.entries() * points);
            }
        }
        let values = new.values().fold(0_usize, |sum, &count| sum.saturating_add(count));
        if values > MOST_VALUES {
            return Err(CoaxError::TooMuchAsked { values, most: MOST_VALUES });
        }
        let key = |part: &TreePart| (Arc::as_ptr(&part.model) as usize, part.up_port);
        let parts: Vec<&TreePart> =
            tree.parts.iter().filter(|part| new.remove(&key(part)).is_some()).collect();
        let evaluate = |share: std::ops::Range<usize>| {
            let mut evaluator = Evaluator::on(&self.blocks);
            parts[share].iter().map(|part| evaluated(part, &self.blocks, &mut evaluator)).collect::<Vec<_>>()
        };
        let made = cores::each(cores::shares(parts.len(), values / GROUP), evaluate);
        for (part, table) in parts.iter().zip(made.into_iter().flatten()) {
            self.tables.insert(key(part), (Arc::clone(&part.model), table));
        }
        let kept = |part: &TreePart| self.tables.get(&key(part)).map(|(_, table)| Arc::clone(table));
        let tables: Vec<Table> = tree.parts.iter().filter_map(kept).collect();
        let groups = points / GROUP;
        let matrices = if tree.layout().size * groups > KEPT_NEAR {
            Matrices::InTurn(in_turn(tree, &tables, groups).into())
        } else {
            Matrices::ByPart(tables)
        };
        Ok(Sampled { tree: tree.clone(), grid: Arc::clone(&self.grid), matrices })
    }

    /// Forgets the models that no tree but this cache still holds.
    pub fn forget_unused(&mut self) {
        self.tables.retain(|_, (model, _)| Arc::strong_count(model) > 1);
    }
}

fn evaluated(part: &TreePart, blocks: &Blocks, evaluator: &mut Evaluator) -> Table {
    let entries = part.entries();
    let groups = blocks.at.len().div_ceil(ANCHOR);
    let mut table = vec![Group::ZERO; groups * entries];
    for (group, into) in table.chunks_exact_mut(entries).enumerate() {
        evaluator.evaluate(part, blocks, group, into);
    }
    Arc::new(table)
}

/// The parts' matrices of a tree over the whole grid.
#[derive(Debug, Clone)]
pub(super) enum Matrices {
    /// Part by part, of each group after group; the table of a model is there once.
    ByPart(Vec<Table>),
    /// Group by group, in each those of all parts in the order in which a walk comes to them: what is too much to stay in the core's
    /// own caches is read from one end to the other.
    InTurn(Arc<[Group]>),
}

/// Groups that stay in a core's own caches from one solution to the next (2 MiB).
const KEPT_NEAR: usize = 2048;

fn in_turn(tree: &Tree, tables: &[Table], groups: usize) -> Vec<Group> {
    let places = &tree.layout().places;
    let mut all = Vec::with_capacity(tree.layout().size * groups);
    for group in 0..groups {
        for (place, table) in places.iter().zip(tables).rev() {
            let entries = place.matrix.len();
            all.extend_from_slice(&table[group * entries..(group + 1) * entries]);
        }
    }
    all
}

/// A tree whose parts are evaluated at every frequency of a grid: all that solving needs.
#[derive(Debug, Clone)]
pub struct Sampled {
    pub(super) tree: Tree,
    pub(super) grid: Arc<FrequencyGrid>,
    pub(super) matrices: Matrices,
}

impl Tree {
    /// Evaluates every part at every frequency of `grid`, each shared model once.
    ///
    /// # Errors
    /// [`CoaxError::TooMuchAsked`] if that would not fit in memory.
    pub fn sample(&self, grid: &FrequencyGrid) -> Result<Sampled, CoaxError> {
        Samples::on(grid.clone()).of(self)
    }
}

impl Sampled {
    /// The tree.
    pub fn tree(&self) -> &Tree {
        &self.tree
    }

    /// The frequencies.
    pub fn grid(&self) -> &FrequencyGrid {
        &self.grid
    }
}
