//! The parts' matrices at the frequencies of a grid.

use std::collections::HashMap;
use std::sync::Arc;

use multiversion::multiversion;

use super::plan::Tree;
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::lanes::{Lanes, Real};
use crate::model::Model;
use crate::multiport::Multiport;

/// The most complex values held for one answer or one tree's samples: 1 GiB.
pub(crate) const MOST_VALUES: usize = 1 << 26;

/// One model's matrices: for each block of eight frequencies its entries row by row, the port towards the root first.
pub(crate) type Table = Arc<[Wave]>;

/// Evaluated models on one grid, kept from tree to tree: a model shared by many trees (a house before and after a change) is
/// evaluated once.
#[derive(Debug)]
pub struct Samples {
    grid: Arc<FrequencyGrid>,
    /// By address and upper port; the model is kept so that its address stays its own.
    tables: HashMap<(usize, usize), (Arc<Model>, Table)>,
}

impl Samples {
    /// No models yet, on `grid`.
    pub fn on(grid: FrequencyGrid) -> Self {
        Self { grid: Arc::new(grid), tables: HashMap::new() }
    }

    /// The samples of a tree; models that were met before are not evaluated again.
    ///
    /// # Errors
    /// [`CoaxError::TooMuchAsked`] if that would not fit in memory.
    pub fn of(&mut self, tree: &Tree) -> Result<Sampled, CoaxError> {
        let blocks = self.grid.len().div_ceil(LANES);
        let mut new = HashMap::new();
        for part in tree.parts.iter() {
            let key = (Arc::as_ptr(&part.model) as usize, part.up_port);
            if !self.tables.contains_key(&key) {
                new.insert(key, part.model.ports().pow(2) * blocks * LANES);
            }
        }
        let values = new.values().fold(0_usize, |sum, &count| sum.saturating_add(count));
        if values > MOST_VALUES {
            return Err(CoaxError::TooMuchAsked { values, most: MOST_VALUES });
        }
        let tables = tree
            .parts
            .iter()
            .map(|part| {
                let key = (Arc::as_ptr(&part.model) as usize, part.up_port);
                let (_, table) = self.tables.entry(key).or_insert_with(|| {
                    let table = evaluated(&part.model, part.up_port, &self.grid);
                    (Arc::clone(&part.model), table)
                });
                Arc::clone(table)
            })
            .collect();
        Ok(Sampled { tree: tree.clone(), grid: Arc::clone(&self.grid), tables })
    }

    /// Forgets the models that no tree but this cache still holds.
    pub fn forget_unused(&mut self) {
        self.tables.retain(|_, (model, _)| Arc::strong_count(model) > 1);
    }
}

fn evaluated(model: &Model, up_port: usize, grid: &FrequencyGrid) -> Table {
    let n = model.ports();
    let order: Vec<usize> = std::iter::once(up_port).chain((0..n).filter(|&port| port != up_port)).collect();
    let mut table = vec![Wave::ZERO; grid.len().div_ceil(LANES) * n * n];
    fill(model, &order, grid, &mut table);
    table.into()
}

/// Evaluates a model at every frequency, eight at a time; compiled as the walk is.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn fill(model: &Model, order: &[usize], grid: &FrequencyGrid, table: &mut [Wave]) {
    let mut matrix = Multiport::new(0);
    let size = order.len() * order.len();
    for (block, frequencies) in table.chunks_mut(size).zip(grid.frequencies().chunks(LANES)) {
        let mut megahertz = Lanes::of(0.0);
        for (lane, value) in megahertz.0.iter_mut().enumerate() {
            // A last block that is not full repeats its last frequency.
            let at = frequencies.get(lane).or(frequencies.last());
            *value = at.map_or(1.0, |at| at.value());
        }
        model.scatter_at(megahertz, &mut matrix);
        let mut entries = block.iter_mut();
        for &to in order {
            for &from in order {
                if let Some(entry) = entries.next() {
                    *entry = matrix.at(to, from);
                }
            }
        }
    }
}

/// A tree whose parts are evaluated at every frequency of a grid: all that solving needs.
#[derive(Debug, Clone)]
pub struct Sampled {
    pub(super) tree: Tree,
    pub(super) grid: Arc<FrequencyGrid>,
    pub(super) tables: Vec<Table>,
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
