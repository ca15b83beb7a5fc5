//! What a solved tree lets through from outlet to outlet.

use std::collections::HashMap;
use std::sync::Arc;

use num_complex::Complex64;

use super::group::GROUP;
use super::index::OutletIndex;
use crate::grid::FrequencyGrid;
use crate::quantity::{Decibels, Megahertz};

/// Where a pair's values lie.
#[derive(Debug, Clone)]
pub(crate) enum Slots {
    /// Every pair: a square table by outlet numbers.
    All(Arc<[usize]>),
    /// Some pairs.
    Some(HashMap<(usize, usize), usize>),
}

/// The scattering matrix between outlets, for the pairs that were wanted, at every frequency of the grid.
#[derive(Debug, Clone)]
pub struct Solution {
    pub(super) grid: Option<Arc<FrequencyGrid>>,
    pub(super) outlets: usize,
    /// For each group of frequencies the values of one pair after those of the other, each pair's together: as they are written, one
    /// after the other.
    pub(super) pairs: usize,
    /// The first value that begins a line of the cache.
    pub(super) first: usize,
    pub(super) values: Vec<Complex64>,
    pub(super) slots: Slots,
}

impl Solution {
    /// A solution of nothing, to solve into.
    pub fn empty() -> Self {
        Self {
            grid: None,
            outlets: 0,
            pairs: 0,
            first: 0,
            values: Vec::new(),
            slots: Slots::Some(HashMap::new()),
        }
    }

    /// The frequencies, rising.
    pub fn frequencies(&self) -> &[Megahertz] {
        self.grid.as_deref().map_or(&[], FrequencyGrid::frequencies)
    }

    /// The wave that leaves at `to` for a wave of 1 that enters at `from`, per frequency, all outlets on 75 ohm; none if the
    /// pair was not wanted. Alike in both directions unless an amplifier lies on the way.
    pub fn transfer(&self, to: OutletIndex, from: OutletIndex) -> Option<Vec<Complex64>> {
        let slot = match &self.slots {
            Slots::All(table) if to.0 < self.outlets && from.0 < self.outlets => {
                *table.get(to.0 * self.outlets + from.0)?
            }
            Slots::All(_) => return None,
            Slots::Some(map) => *map.get(&(to.0, from.0))?,
        };
        let groups = self.values.get(self.first..)?.chunks_exact(self.pairs * GROUP);
        let of_pair = groups.flat_map(|group| &group[slot * GROUP..(slot + 1) * GROUP]);
        Some(of_pair.take(self.frequencies().len()).copied().collect())
    }

    /// The loss from `from` to `to` per frequency: infinite where exactly nothing arrives. Empty if the pair was not wanted.
    pub fn loss(&self, to: OutletIndex, from: OutletIndex) -> Vec<Decibels> {
        let decibels = |value: &Complex64| -Decibels::of_power(value.norm_sqr());
        self.transfer(to, from).map(|values| values.iter().map(decibels).collect()).unwrap_or_default()
    }

    /// What comes back at an outlet, per frequency; none if it was not wanted.
    pub fn reflection(&self, outlet: OutletIndex) -> Option<Vec<Complex64>> {
        self.transfer(outlet, outlet)
    }
}
