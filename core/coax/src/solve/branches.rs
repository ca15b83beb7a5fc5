//! The power between a tree's root and some of its outlets, for many trees that differ in little: what a branch folds to is kept,
//! and taken again wherever a branch of the very same parts hangs. A change is worked out at the cost of its way up to the root,
//! whatever it does to the wiring.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use foldhash::fast::FixedState;
use multiversion::multiversion;
use num_complex::Complex64;

use super::arena::Arena;
use super::branch_numbers::{NumberedBranch, NumberedBranches};
use super::eliminate::{Columns, fold, turn_back};
use super::evaluate::fill;
use super::index::OutletIndex;
use super::plan::{Plan, Side, Step, TreePart};
use super::tree::Tree;
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::Blocks;
use crate::model::{Filler, Model};

/// Branches of trees over one grid, each folded once: what has the same number is the same until all is forgotten.
#[derive(Debug)]
pub struct Branches {
    grid: FrequencyGrid,
    blocks: Blocks,
    filler: Filler,
    /// Where each part's matrices lie. The model is held, so that no other comes to lie in its place.
    tables: HashMap<Part, (Arc<Model>, Range<usize>), FixedState>,
    matrices: Arena,
    /// By their numbers.
    folded: Vec<Option<Folded>>,
    /// What all branches fold to, one after the other.
    waves: Arena,
    scratch: Scratch,
}

/// A model, by where it lies in memory, and which of its ports faces the root.
type Part = (usize, usize);

/// What becomes of a branch: where in [`Branches::waves`] it lies.
#[derive(Debug, Clone, Copy)]
struct Folded {
    /// What is sent back, block by block.
    reflected: usize,
    /// What comes out at each port for what goes in at the root: port by port of a block, block after block.
    down: usize,
    /// The other way round, where that is not the same.
    up: Option<usize>,
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
    /// The way down to an outlet, and up from it where that is not the same.
    way: Vec<Wave>,
    back: Vec<Wave>,
}

/// The powers between the root and some outlets.
#[derive(Debug, Clone, PartialEq)]
pub struct RootPowers {
    points: usize,
    /// Outlet by outlet, from the root's to it.
    from_root: Vec<f64>,
    /// The same from each outlet to the root's; none where that is alike.
    to_root: Option<Vec<f64>>,
}

impl RootPowers {
    /// From the root's outlet to one of those that were asked for, by its place among them, at every frequency of the grid; empty
    /// beyond the last.
    pub fn from_root(&self, outlet: usize) -> &[f64] {
        self.from_root.get(outlet * self.points..(outlet + 1) * self.points).unwrap_or(&[])
    }

    /// From one of those to the root's.
    pub fn to_root(&self, outlet: usize) -> &[f64] {
        let powers = self.to_root.as_ref().unwrap_or(&self.from_root);
        powers.get(outlet * self.points..(outlet + 1) * self.points).unwrap_or(&[])
    }
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
            matrices: Arena::default(),
            folded: Vec::new(),
            waves: Arena::default(),
            scratch: Scratch::default(),
        }
    }

    /// Forgets all branches, so that their memory can be used again.
    pub fn forget(&mut self) {
        self.tables.clear();
        self.matrices.forget();
        self.folded.clear();
        self.waves.forget();
    }

    /// How many waves of eight frequencies are kept of all branches and their parts.
    pub fn waves(&self) -> usize {
        self.matrices.taken() + self.waves.taken()
    }

    /// The powers between the root's outlet and these outlets of a tree laid as `tree`, of which `part` gives the model of each part
    /// (in the order in which they were added to the network) and `end` what each of [`Tree::ends`] sends back. Both are asked only
    /// for what is not folded yet.
    ///
    /// # Errors
    /// [`CoaxError::NoOutlet`] where no outlet is at the root, [`CoaxError::NoSuchOutlet`], [`CoaxError::NoSuchPart`] where the
    /// branches are another tree's, [`CoaxError::Resonance`] where the equations have no single answer, and what `part` gives.
    pub fn powers<E: From<CoaxError>>(
        &mut self,
        (tree, branches): (&Tree, &NumberedBranches),
        mut part: impl FnMut(usize) -> Result<Arc<Model>, E>,
        mut end: impl FnMut(usize) -> Complex64,
        wanted: &[OutletIndex],
    ) -> Result<RootPowers, E> {
        if tree.plan.root_outlet.is_none() {
            return Err(CoaxError::NoOutlet.into());
        }
        let (laid, numbered) = (tree.parts.len(), branches.of.len());
        if laid != numbered {
            return Err(CoaxError::NoSuchPart { part: laid.min(numbered), parts: numbered }.into());
        }
        for ((step, laid), branch) in tree.plan.steps.iter().zip(tree.parts.iter()).zip(&branches.of).rev() {
            if self.folded.get(branch.number).copied().flatten().is_none() {
                let sides = &tree.plan.sides[step.sides.clone()];
                self.fold(branches, *branch, (step, sides, laid), &part(laid.original)?, &mut end)?;
            }
        }
        let points = self.grid.len();
        let mut powers =
            RootPowers { points, from_root: Vec::with_capacity(wanted.len() * points), to_root: None };
        let folded = |place: usize| {
            branches.of.get(place).and_then(|branch| self.folded.get(branch.number).copied().flatten())
        };
        for outlet in wanted {
            let outlets = tree.outlets();
            let side = tree.plan.side_of.get(outlet.0);
            let side = *side.ok_or(CoaxError::NoSuchOutlet { outlet: outlet.0, outlets })?;
            let Scratch { way, back, .. } = &mut self.scratch;
            if let Some(side) = side {
                along(&tree.plan, &folded, side, self.waves.all(), way, back);
            } else {
                let first = folded(0).map_or(0, |root| root.reflected);
                way.clear();
                way.extend_from_slice(&self.waves.all()[first..first + self.blocks.at.len()]);
                back.clear();
            }
            if !back.is_empty() && powers.to_root.is_none() {
                powers.to_root = Some(powers.from_root.clone());
            }
            push_power(way, points, &mut powers.from_root);
            if let Some(to_root) = &mut powers.to_root {
                push_power(if back.is_empty() { way } else { back }, points, to_root);
            }
        }
        Ok(powers)
    }

    /// Folds a branch of which those under it are folded.
    fn fold(
        &mut self,
        branches: &NumberedBranches,
        branch: NumberedBranch,
        (step, sides, part): (&Step, &[Side], &TreePart),
        model: &Arc<Model>,
        end: &mut impl FnMut(usize) -> Complex64,
    ) -> Result<(), CoaxError> {
        let blocks = &self.blocks.at;
        let place = (Arc::as_ptr(model) as usize, part.up_port);
        let matrices = if let Some((_, known)) = self.tables.get(&place) {
            known.clone()
        } else {
            let order = part.order();
            let table = self.matrices.take(blocks.len() * order.len().pow(2));
            fill(model, &order, blocks, &mut self.filler, self.matrices.at(table.clone()));
            self.tables.insert(place, (Arc::clone(model), table.clone()));
            table
        };
        let Scratch { live, loads, .. } = &mut self.scratch;
        live.clear();
        // Only those of live ports are looked at.
        loads.resize((blocks.len() * step.width).max(loads.len()), Wave::ZERO);
        let loads = &mut loads[..blocks.len() * step.width];
        let mut next_end = branch.first_end;
        for (port, side) in sides.iter().enumerate() {
            let here = loads.iter_mut().skip(port).step_by(step.width);
            match side {
                Side::Part(below) => {
                    let below = branches.of.get(*below);
                    let below = below.and_then(|below| self.folded.get(below.number).copied().flatten());
                    let of = below.map_or(&[][..], |below| &self.waves.all()[below.reflected..]);
                    here.zip(of).for_each(|(load, of)| *load = *of);
                }
                Side::End(_) => {
                    let reflection = end(next_end);
                    next_end += 1;
                    if reflection == Complex64::ZERO {
                        continue;
                    }
                    here.for_each(|load| *load = Wave::of(reflection));
                }
                Side::Outlet(_) => continue,
            }
            live.push(port);
        }
        let count = blocks.len();
        let is_one_way = !model.is_reciprocal();
        let ways = if is_one_way { 2 * step.width } else { step.width };
        let taken = self.waves.take(count * (1 + ways));
        let down = taken.start + count;
        let up = is_one_way.then_some(down + count * step.width);
        let folded = Folded { reflected: taken.start, down, up };
        let (reflected, rest) = self.waves.at(taken).split_at_mut(count);
        let (down, up) = rest.split_at_mut(count * step.width);
        let into = Written { reflected, down, up: folded.up.is_some().then_some(up) };
        if let Some(block) = fold_part(step.width, &self.matrices.all()[matrices], into, &mut self.scratch) {
            return Err(CoaxError::Resonance { part: step.original, megahertz: blocks[block].0.0[0] });
        }
        if self.folded.len() <= branch.number {
            self.folded.resize(branch.number + 1, None);
        }
        self.folded[branch.number] = Some(folded);
        Ok(())
    }
}

/// The products along the way from the root to a side, and back where that is not the same (else nothing). Compiled as the folding is.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn along(
    plan: &Plan,
    folded: &dyn Fn(usize) -> Option<Folded>,
    side: usize,
    waves: &[Wave],
    way: &mut Vec<Wave>,
    back: &mut Vec<Wave>,
) {
    let mut here = Some(side);
    way.clear();
    back.clear();
    while let Some(side) = here {
        let place = plan.part_of[side];
        // Every branch of the tree is folded before a way is asked for.
        let (Some(folded), step) = (folded(place), &plan.steps[place]) else { return };
        let port = side - step.sides.start;
        let blocks = folded.down - folded.reflected;
        let of = |first: usize| &waves[first..first + blocks * step.width];
        if folded.up.is_some() && back.is_empty() {
            back.extend_from_slice(way);
        }
        if folded.up.is_some() || !back.is_empty() {
            go(back, of(folded.up.unwrap_or(folded.down)), port, step.width);
        }
        go(way, of(folded.down), port, step.width);
        here = plan.above[place];
    }
}

/// Goes on by a port of a part: the first of a way is what it begins with.
#[inline(always)]
fn go(along: &mut Vec<Wave>, factors: &[Wave], port: usize, width: usize) {
    if along.is_empty() {
        along.extend(factors.iter().skip(port).step_by(width));
        return;
    }
    for (wave, factors) in along.iter_mut().zip(factors.chunks_exact(width)) {
        *wave = wave.times(&factors[port]);
    }
}

/// Where what a part folds to is written.
struct Written<'a> {
    reflected: &'a mut [Wave],
    down: &'a mut [Wave],
    up: Option<&'a mut [Wave]>,
}

/// Folds a part in every block; the block in which that has no answer, if there is one. Compiled for several instruction sets, as
/// the sweep is; and for a cable with something behind it, as most parts are, by itself.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn fold_part<'a>(width: usize, matrices: &[Wave], into: Written<'a>, scratch: &mut Scratch) -> Option<usize> {
    let Scratch { live, loads, rows, small, .. } = scratch;
    match (width, live.as_slice()) {
        (1, [0]) => fold_blocks(1, matrices, into, (&[0], loads), [rows, small]),
        _ => fold_blocks(width, matrices, into, (live, loads), [rows, small]),
    }
}

#[inline(always)]
fn fold_blocks(
    width: usize,
    matrices: &[Wave],
    mut into: Written<'_>,
    (live, loads): (&[usize], &[Wave]),
    [rows, small]: [&mut Vec<Wave>; 2],
) -> Option<usize> {
    let size = (width + 1) * (width + 1);
    let is_one_way = into.up.is_some();
    let stride = if is_one_way { width + 1 } else { 1 };
    rows.resize((width * stride).max(rows.len()), Wave::ZERO);
    small.resize((width * width).max(small.len()), Wave::ZERO);
    for block in 0..into.reflected.len() {
        let columns = if is_one_way { Columns::All } else { Columns::Of(&[]) };
        let matrix = &matrices[block * size..(block + 1) * size];
        let rows = &mut rows[..width * stride];
        let here = (live, &loads[block * width..(block + 1) * width]);
        let Some(reflected) = fold(width, matrix, columns, rows, here, small) else {
            return Some(block);
        };
        into.reflected[block] = reflected;
        for (port, x) in into.down[block * width..(block + 1) * width].iter_mut().enumerate() {
            *x = rows[port * stride];
        }
        if let Some(up) = &mut into.up {
            turn_back(matrix, rows, here, &mut up[block * width..(block + 1) * width]);
        }
    }
    None
}

/// Adds the magnitudes squared of so many frequencies.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn push_power(waves: &[Wave], points: usize, to: &mut Vec<f64>) {
    let first = to.len();
    to.resize(first + points, 0.0);
    for (wave, here) in waves.iter().zip(to[first..].chunks_mut(LANES)) {
        let mut powers = [0.0; LANES];
        for (k, power) in powers.iter_mut().enumerate() {
            *power = wave.re.0[k] * wave.re.0[k] + wave.im.0[k] * wave.im.0[k];
        }
        here.copy_from_slice(&powers[..here.len()]);
    }
}
