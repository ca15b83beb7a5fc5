//! The parts' matrices, worked out group of frequencies by group.

use std::sync::Arc;

use multiversion::multiversion;

use super::group::{Group, Shape};
use super::plan::TreePart;
use super::wave::Wave;
use crate::lanes::Lanes;
use crate::look::{ANCHOR, Blocks};
use crate::model::{Filler, Model};

/// One model's matrices: for each group of frequencies its entries, the port towards the root first.
pub(super) type Table = Arc<Vec<Group>>;

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

/// Evaluates a model at some blocks of frequencies, of which the first is the first of the grid or any eighth after it;
/// compiled as the walk is.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn fill(
    model: &Model,
    order: &[usize],
    blocks: &[(Lanes, Lanes)],
    filler: &mut Filler,
    table: &mut [Wave],
) {
    model.scatter_over(order, blocks, filler, table);
}
