//! The power between a tree's root and some of its outlets, for many trees that differ in little: what a branch folds to is kept,
//! and taken again wherever a branch of the very same parts hangs. A change is worked out at the cost of its way up to the root,
//! whatever it does to the wiring.

use std::collections::HashMap;
use std::sync::Arc;

use foldhash::fast::FixedState;
use multiversion::multiversion;
use num_complex::Complex64;

use super::eliminate::{Columns, fold, turn_back};
use super::index::OutletIndex;
use super::plan::{Side, Step, TreePart};
use super::samples::fill;
use super::tree::Tree;
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::Blocks;
use crate::model::{Filler, Model};

/// Branches of trees over one grid, each folded once.
#[derive(Debug)]
pub struct Branches {
    grid: FrequencyGrid,
    blocks: Blocks,
    filler: Filler,
    /// Each model is held, so that no other comes to lie in its place.
    tables: HashMap<Part, (Arc<Model>, Vec<Wave>), FixedState>,
    numbers: HashMap<Branch, usize, FixedState>,
    folded: Vec<Folded>,
    scratch: Scratch,
}

/// A model, by where it lies in memory, and which of its ports faces the root.
type Part = (usize, usize);

/// What makes a branch what it is: its first part, and what is on each other port of that.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Branch {
    part: Part,
    sides: Vec<Under>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Under {
    Outlet,
    /// Something that sends this back: the bits of its real and imaginary part.
    End(u64, u64),
    /// A branch, by its number.
    Branch(usize),
}

/// What becomes of a branch.
#[derive(Debug)]
struct Folded {
    /// What comes out at each port for what goes in at the root: port by port of a block, block after block.
    down: Vec<Wave>,
    /// The other way round, where that is not the same.
    up: Option<Vec<Wave>>,
    /// What is sent back, block by block.
    reflected: Vec<Wave>,
}

/// What folding one part needs besides.
#[derive(Debug, Default)]
struct Scratch {
    /// Its ports that reflect something.
    live: Vec<usize>,
    /// What is sent back at each port, port by port of a block, block after block.
    loads: Vec<Wave>,
    rows: Vec<Wave>,
    small: Vec<Wave>,
}

/// The powers between the root and some outlets.
#[derive(Debug, Clone, PartialEq)]
pub struct RootPowers {
    /// From the root's outlet to each that was asked for, at every frequency of the grid.
    pub from_root: Vec<Vec<f64>>,
    /// From each of these to the root's.
    pub to_root: Vec<Vec<f64>>,
}

impl Branches {
    /// On a grid; nothing is known yet.
    pub fn on(grid: FrequencyGrid) -> Self {
        let blocks = Blocks::of(&grid);
        Self {
            grid,
            filler: Filler::on(&blocks),
            blocks,
            tables: HashMap::default(),
            numbers: HashMap::default(),
            folded: Vec::new(),
            scratch: Scratch::default(),
        }
    }

    /// Forgets all branches, so that their memory can be used again.
    pub fn forget(&mut self) {
        self.tables.clear();
        self.numbers.clear();
        self.folded.clear();
    }

    /// The powers between the root's outlet and these outlets of a tree laid as `tree`, of which the parts are these models (in
    /// the order in which they were added to the network) and the ends send back so much (in the order of [`Tree::ends`]).
    ///
    /// # Errors
    /// [`CoaxError::NoOutlet`] where no outlet is at the root, [`CoaxError::NoSuchOutlet`], [`CoaxError::NoSuchPart`] for too few
    /// models, and [`CoaxError::Resonance`] where the equations have no single answer.
    pub fn powers(
        &mut self,
        tree: &Tree,
        models: &[Arc<Model>],
        ends: &[Complex64],
        wanted: &[OutletIndex],
    ) -> Result<RootPowers, CoaxError> {
        if tree.plan.root_outlet.is_none() {
            return Err(CoaxError::NoOutlet);
        }
        let numbers = self.fold_all(tree, models, ends)?;
        let mut powers = RootPowers { from_root: Vec::new(), to_root: Vec::new() };
        for outlet in wanted {
            let outlets = tree.outlets();
            let side = tree.plan.side_of.get(outlet.0);
            let Some(side) = *side.ok_or(CoaxError::NoSuchOutlet { outlet: outlet.0, outlets })? else {
                let numbers = numbers.first().copied().unwrap_or_default();
                let own = power(&self.folded[numbers].reflected, self.grid.len());
                powers.from_root.push(own.clone());
                powers.to_root.push(own);
                continue;
            };
            let (down, up) = self.along(tree, &numbers, side);
            let from_root = power(&down, self.grid.len());
            powers.to_root.push(up.map_or_else(|| from_root.clone(), |up| power(&up, self.grid.len())));
            powers.from_root.push(from_root);
        }
        Ok(powers)
    }

    /// Folds what is not known yet; the number of the branch that begins with each part, by the part's place.
    fn fold_all(
        &mut self,
        tree: &Tree,
        models: &[Arc<Model>],
        ends: &[Complex64],
    ) -> Result<Vec<usize>, CoaxError> {
        let mut numbers = vec![0; tree.parts.len()];
        let mut branch = Branch { part: (0, 0), sides: Vec::new() };
        let mut ends_left = ends.len();
        for (place, (step, part)) in tree.plan.steps.iter().zip(tree.parts.iter()).enumerate().rev() {
            let Some(model) = models.get(part.original) else {
                return Err(CoaxError::NoSuchPart { part: part.original, parts: models.len() });
            };
            let sides = &tree.plan.sides[step.sides.clone()];
            ends_left -= sides.iter().filter(|side| matches!(side, Side::End(_))).count().min(ends_left);
            let mut next = ends_left;
            let under = sides.iter().map(|side| match side {
                Side::Outlet(_) => Under::Outlet,
                Side::Part(below) => Under::Branch(numbers[*below]),
                Side::End(reflection) => {
                    let reflection = ends.get(next).copied().unwrap_or(*reflection);
                    next += 1;
                    Under::End(reflection.re.to_bits(), reflection.im.to_bits())
                }
            });
            branch.part = (Arc::as_ptr(model) as usize, part.up_port);
            branch.sides.clear();
            branch.sides.extend(under);
            numbers[place] = match self.numbers.get(&branch) {
                Some(number) => *number,
                None => self.folded_anew(branch.clone(), step, part, model)?,
            };
        }
        Ok(numbers)
    }

    fn folded_anew(
        &mut self,
        branch: Branch,
        step: &Step,
        part: &TreePart,
        model: &Arc<Model>,
    ) -> Result<usize, CoaxError> {
        let blocks = &self.blocks.at;
        let (_, matrices) = self.tables.entry(branch.part).or_insert_with(|| {
            let order = part.order();
            let mut table = vec![Wave::ZERO; blocks.len() * order.len().pow(2)];
            fill(model, &order, blocks, &mut self.filler, &mut table);
            (Arc::clone(model), table)
        });
        let Scratch { live, loads, .. } = &mut self.scratch;
        live.clear();
        loads.clear();
        loads.resize(blocks.len() * step.width, Wave::ZERO);
        for (port, under) in branch.sides.iter().enumerate() {
            let here = loads.iter_mut().skip(port).step_by(step.width);
            match under {
                Under::Branch(number) => {
                    here.zip(&self.folded[*number].reflected).for_each(|(load, of)| *load = *of);
                }
                Under::End(re, im) if (*re, *im) != (0, 0) => {
                    let reflection = Complex64::new(f64::from_bits(*re), f64::from_bits(*im));
                    here.for_each(|load| *load = Wave::of(reflection));
                }
                Under::End(..) | Under::Outlet => continue,
            }
            live.push(port);
        }
        let is_one_way = !model.is_reciprocal();
        let mut folded = Folded {
            down: vec![Wave::ZERO; blocks.len() * step.width],
            up: is_one_way.then(|| vec![Wave::ZERO; blocks.len() * step.width]),
            reflected: vec![Wave::ZERO; blocks.len()],
        };
        if let Some(block) = fold_part(step.width, matrices, &mut folded, &mut self.scratch) {
            return Err(CoaxError::Resonance { part: step.original, megahertz: blocks[block].0.0[0] });
        }
        self.folded.push(folded);
        self.numbers.insert(branch, self.folded.len() - 1);
        Ok(self.folded.len() - 1)
    }

    /// The products along the way from the root to a side, and back where that is not the same.
    fn along(&self, tree: &Tree, numbers: &[usize], side: usize) -> (Vec<Wave>, Option<Vec<Wave>>) {
        let plan = &tree.plan;
        let mut down = vec![Wave::ONE; self.blocks.at.len()];
        let mut up: Option<Vec<Wave>> = None;
        let mut here = Some(side);
        while let Some(side) = here {
            let place = plan.part_of[side];
            let (folded, step) = (&self.folded[numbers[place]], &plan.steps[place]);
            let port = side - step.sides.start;
            if let Some(back) = &folded.up {
                multiply(up.get_or_insert_with(|| down.clone()), back, port, step.width);
            } else if let Some(up) = &mut up {
                multiply(up, &folded.down, port, step.width);
            }
            multiply(&mut down, &folded.down, port, step.width);
            here = plan.above[place];
        }
        (down, up)
    }
}

/// Folds a part in every block; the block in which that has no answer, if there is one. Compiled for several instruction sets, as
/// the sweep is.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn fold_part(width: usize, matrices: &[Wave], folded: &mut Folded, scratch: &mut Scratch) -> Option<usize> {
    let size = (width + 1) * (width + 1);
    let is_one_way = folded.up.is_some();
    let stride = if is_one_way { width + 1 } else { 1 };
    scratch.rows.resize((width * stride).max(scratch.rows.len()), Wave::ZERO);
    scratch.small.resize((width * width).max(scratch.small.len()), Wave::ZERO);
    for block in 0..folded.reflected.len() {
        let columns = if is_one_way { Columns::All } else { Columns::Of(&[]) };
        let matrix = &matrices[block * size..(block + 1) * size];
        let rows = &mut scratch.rows[..width * stride];
        let here = (scratch.live.as_slice(), &scratch.loads[block * width..(block + 1) * width]);
        let Some(reflected) = fold(width, matrix, columns, rows, here, &mut scratch.small) else {
            return Some(block);
        };
        folded.reflected[block] = reflected;
        for (port, x) in folded.down[block * width..(block + 1) * width].iter_mut().enumerate() {
            *x = rows[port * stride];
        }
        if let Some(up) = &mut folded.up {
            turn_back(matrix, rows, here, &mut up[block * width..(block + 1) * width]);
        }
    }
    None
}

fn multiply(along: &mut [Wave], factors: &[Wave], port: usize, width: usize) {
    for (wave, factors) in along.iter_mut().zip(factors.chunks_exact(width)) {
        *wave = wave.times(&factors[port]);
    }
}

/// The magnitudes squared of so many frequencies.
fn power(waves: &[Wave], points: usize) -> Vec<f64> {
    let mut power = Vec::with_capacity(waves.len() * LANES);
    for wave in waves {
        power.extend((0..LANES).map(|k| wave.re.0[k] * wave.re.0[k] + wave.im.0[k] * wave.im.0[k]));
    }
    power.truncate(points);
    power
}
