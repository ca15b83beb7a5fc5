//! The power between some outlets over a whole grid: parts are evaluated a few blocks of frequencies at a time, and what comes
//! of them is used while it is still in the core's own cache. Of trees that are alike but for some parts, only those parts and
//! what stands above them are worked out anew.

use std::sync::Arc;

use multiversion::multiversion;

use super::course::{Bend, Course, Factor, Piece};
use super::eliminate::{Columns, NO_PIVOT_SQUARED, fold, let_down, seen_from_branch, turn_back};
use super::evaluate::fill;
use super::index::OutletIndex;
use super::plan::{Plan, Side};
use super::samples::MOST_VALUES;
use super::tree::Tree;
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::{ANCHOR, Blocks};
use crate::model::Filler;

/// Blocks of frequencies worked on together: as many as lie between two exact waves.
const TOGETHER: usize = ANCHOR;

/// Solves trees over one grid, and keeps its memory from tree to tree.
#[derive(Debug)]
pub struct Sweep {
    grid: Arc<FrequencyGrid>,
    blocks: Blocks,
    filler: Filler,
    scratch: Scratch,
    /// What was last asked for, of a tree of which shape, and what that takes.
    asked: Option<AskedBefore>,
}

/// A tree, the pairs that were asked of it, and what they take.
type AskedBefore = (Tree, Vec<(OutletIndex, OutletIndex)>, Arc<Course>);

/// `|S|^2` for each pair that was asked for, at every frequency of the grid.
#[derive(Debug, Clone)]
pub struct Powers {
    values: Vec<f64>,
    points: usize,
    stride: usize,
    slots: Vec<usize>,
}

impl Powers {
    /// The powers of a pair, by its place among those that were asked for; empty beyond the last.
    pub fn of(&self, pair: usize) -> &[f64] {
        let first = self.slots.get(pair).map(|slot| slot * self.stride);
        first.and_then(|first| self.values.get(first..first + self.points)).unwrap_or_default()
    }
}

/// What a few blocks of frequencies need.
#[derive(Debug, Default)]
struct Scratch {
    /// Each part's matrices lie together, block after block; so do its rows, `y` and `B`.
    matrices: Vec<Wave>,
    rows: Vec<Wave>,
    back: Vec<Wave>,
    bends: Vec<Wave>,
    /// What is reflected at every side, all sides of a block together.
    loads: Vec<Wave>,
    /// What is reflected at the root, by block.
    root: Vec<Wave>,
    /// What every part sees above it, block by block.
    up: Vec<Wave>,
    /// Products along ways, block by block.
    products: Vec<Wave>,
    /// The small matrix `I - S_cc G` of the part at hand.
    small: Vec<Wave>,
    /// Parts whose rows are not those of the tree at hand.
    stale: Vec<bool>,
}

impl Scratch {
    fn fit(&mut self, course: &Course, plan: &Plan) {
        let fit = |waves: &mut Vec<Wave>, size: usize| {
            if waves.len() < size {
                waves.resize(size, Wave::ZERO);
            }
        };
        fit(&mut self.matrices, course.matrix_size * TOGETHER);
        fit(&mut self.rows, course.fold_size * TOGETHER);
        fit(&mut self.back, course.back_size * TOGETHER);
        fit(&mut self.bends, course.bend_size * TOGETHER);
        fit(&mut self.loads, plan.sides.len() * TOGETHER);
        fit(&mut self.root, TOGETHER);
        fit(&mut self.up, plan.steps.len() * TOGETHER);
        fit(&mut self.products, course.products.len() * TOGETHER);
        fit(&mut self.small, plan.widest * plan.widest);
        self.stale.clear();
        self.stale.resize(plan.steps.len(), true);
    }
}

/// Which part has no answer, in which of the blocks at hand.
struct Failed {
    place: usize,
    block: usize,
}

impl Sweep {
    /// On a grid; nothing is worked out yet.
    pub fn on(grid: FrequencyGrid) -> Self {
        let blocks = Blocks::of(&grid);
        Self {
            grid: Arc::new(grid),
            filler: Filler::on(&blocks),
            blocks,
            scratch: Scratch::default(),
            asked: None,
        }
    }

    /// The frequencies.
    pub fn grid(&self) -> &FrequencyGrid {
        &self.grid
    }

    /// The power that leaves at one outlet for a power of 1 that enters at another, for each wanted pair (where it leaves, where
    /// it enters) of each of some trees. Trees of the same wiring whose parts are shared are worked out together: what only
    /// the later ones have costs its way up to the root.
    ///
    /// # Errors
    /// [`CoaxError::NoSuchOutlet`], [`CoaxError::TooMuchAsked`], and [`CoaxError::Resonance`] where the equations have no single
    /// answer.
    pub fn powers(
        &mut self,
        trees: &[&Tree],
        wanted: &[(OutletIndex, OutletIndex)],
    ) -> Result<Vec<Powers>, CoaxError> {
        let Some((first, others)) = trees.split_first() else { return Ok(Vec::new()) };
        if others.iter().any(|tree| !tree.plan.is_shaped_as(&first.plan)) {
            let apart = trees.iter().map(|tree| self.powers(&[tree], wanted));
            return apart.map(|powers| powers.map(|mut one| one.remove(0))).collect();
        }
        let course = self.course(first, wanted)?;
        let stride = self.blocks.at.len() * LANES;
        let values = course.pairs.len().saturating_mul(stride).saturating_mul(trees.len());
        if values > MOST_VALUES {
            return Err(CoaxError::TooMuchAsked { values, most: MOST_VALUES });
        }
        let empty = |_| Powers {
            values: vec![0.0; course.pairs.len() * stride],
            points: self.grid.len(),
            stride,
            slots: course.slots.clone(),
        };
        let mut powers: Vec<Powers> = trees.iter().map(empty).collect();
        self.scratch.fit(&course, &first.plan);
        for (chunk, blocks) in self.blocks.at.chunks(TOGETHER).enumerate() {
            let mut before: Option<&Tree> = None;
            for (&tree, powers) in trees.iter().zip(&mut powers) {
                self.scratch.compare(tree, before);
                for (place, part) in tree.parts.iter().enumerate() {
                    let is_other = before.is_none_or(|before| !before.parts[place].is_same_model(part));
                    let piece = &course.pieces[place];
                    if is_other {
                        let size = (piece.width + 1).pow(2);
                        let first = piece.matrix * TOGETHER;
                        let into = &mut self.scratch.matrices[first..first + blocks.len() * size];
                        fill(
                            &part.model,
                            &course.orders[piece.order.clone()],
                            blocks,
                            &mut self.filler,
                            into,
                        );
                    }
                }
                let first = chunk * TOGETHER * LANES;
                walk(&tree.plan, &course, &mut self.scratch, blocks.len(), &mut powers.values, stride, first)
                    .map_err(|Failed { place, block }| CoaxError::Resonance {
                        part: tree.plan.steps[place].original,
                        megahertz: blocks[block].0.0[0],
                    })?;
                before = Some(tree);
            }
        }
        Ok(powers)
    }

    /// What it takes to work out these pairs of a tree: the same as before where only its models differ.
    fn course(
        &mut self,
        tree: &Tree,
        wanted: &[(OutletIndex, OutletIndex)],
    ) -> Result<Arc<Course>, CoaxError> {
        if let Some((before, asked, course)) = &self.asked
            && asked == wanted
            && tree.is_laid_as(before)
        {
            return Ok(Arc::clone(course));
        }
        let course = Arc::new(Course::of(tree, wanted)?);
        self.asked = Some((tree.clone(), wanted.to_vec(), Arc::clone(&course)));
        Ok(course)
    }
}

impl Scratch {
    /// Notes which parts' rows have to be worked out: all, or those that differ from the tree before, and all above them.
    fn compare(&mut self, tree: &Tree, before: Option<&Tree>) {
        let Some(before) = before else { return self.stale.fill(true) };
        self.stale.fill(false);
        for (place, (part, old)) in tree.parts.iter().zip(before.parts.iter()).enumerate().rev() {
            let is_other = |side| match (tree.plan.sides[side], before.plan.sides[side]) {
                (Side::End(reflection), Side::End(old)) => reflection != old,
                _ => false,
            };
            let mut sides = tree.plan.steps[place].sides.clone();
            self.stale[place] |= !part.is_same_model(old) || sides.any(is_other);
            if self.stale[place]
                && let Some(side) = tree.plan.above[place]
            {
                self.stale[tree.plan.part_of[side]] = true;
            }
        }
    }
}

/// A few neighbouring blocks of one tree: up, down, and the pairs, of which one's values are `slot_stride` after the last's and
/// begin at `first`. Compiled for several instruction sets, the best of which is
/// chosen at run time; all give the same bits, for none may fuse a product and a sum.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn walk(
    plan: &Plan,
    course: &Course,
    scratch: &mut Scratch,
    blocks: usize,
    values: &mut [f64],
    slot_stride: usize,
    first: usize,
) -> Result<(), Failed> {
    let sides = plan.sides.len();
    for (place, piece) in course.pieces.iter().enumerate().rev() {
        if !scratch.stale[place] {
            continue;
        }
        let size = (piece.width + 1).pow(2);
        for block in 0..blocks {
            let loads = &mut scratch.loads[block * sides..(block + 1) * sides];
            for side in piece.sides.clone() {
                if let Side::End(reflection) = plan.sides[side] {
                    loads[side] = Wave::of(reflection);
                }
            }
            let first = piece.matrix * TOGETHER + block * size;
            let matrix = &scratch.matrices[first..first + size];
            let first = piece.fold * TOGETHER + block * piece.width * piece.stride();
            let rows = &mut scratch.rows[first..first + piece.width * piece.stride()];
            let here = (&plan.live[piece.live.clone()], &loads[piece.sides.clone()]);
            let reflected = if piece.width == 1 && piece.columns.is_empty() {
                pass(matrix, rows, here)
            } else {
                let columns = Columns::Of(&course.columns[piece.columns.clone()]);
                fold(piece.width, matrix, columns, rows, here, &mut scratch.small)
            };
            let Some(reflected) = reflected else { return Err(Failed { place, block }) };
            if let Some(back) = piece.back {
                let first = back * TOGETHER + block * piece.width;
                turn_back(matrix, rows, here, &mut scratch.back[first..first + piece.width]);
            }
            match plan.above[place] {
                Some(side) => loads[side] = reflected,
                None => scratch.root[block] = reflected,
            }
        }
    }
    for up in scratch.up.iter_mut().take(blocks) {
        *up = Wave::of(plan.root_reflection);
    }
    for (place, piece) in course.pieces.iter().enumerate().filter(|(_, piece)| piece.is_carried) {
        for block in 0..blocks {
            if !carry_down(plan, place, piece, course, scratch, block) {
                return Err(Failed { place, block });
            }
        }
    }
    for (at, product) in course.products.iter().enumerate() {
        let (before, here) = scratch.products.split_at_mut(at * TOGETHER);
        for (block, into) in here.iter_mut().enumerate().take(blocks) {
            let factor = match product.factor {
                Factor::Down { first, size, at } => &scratch.rows[first * TOGETHER + block * size + at],
                Factor::Up { first, size, at } => &scratch.back[first * TOGETHER + block * size + at],
            };
            *into = match product.before {
                Some(product) => before[product * TOGETHER + block].times(factor),
                None => *factor,
            };
        }
    }
    for (slot, pair) in course.pairs.iter().enumerate() {
        for block in 0..blocks {
            let mut wave = match pair.bend {
                Bend::In { first, size, at } => scratch.bends[first * TOGETHER + block * size + at],
                Bend::Straight => Wave::ONE,
                Bend::AtRoot => scratch.root[block],
            };
            for way in [pair.to, pair.from].into_iter().flatten() {
                wave = wave.times(&scratch.products[way * TOGETHER + block]);
            }
            let at = slot * slot_stride + first + block * LANES;
            for (k, value) in values[at..at + LANES].iter_mut().enumerate() {
                *value = wave.re.0[k] * wave.re.0[k] + wave.im.0[k] * wave.im.0[k];
            }
        }
    }
    Ok(())
}

/// Folds a part of one output of which only `x` is wanted; none if that has no answer.
#[inline(always)]
fn pass(matrix: &[Wave], rows: &mut [Wave], (live, loads): (&[usize], &[Wave])) -> Option<Wave> {
    let (&[near, back, through, far], [x], [load]) = (matrix, rows, loads) else { return None };
    if live.is_empty() {
        *x = through;
        return Some(near);
    }
    let (inverse, sound) = far.times(load).taken_from_one().inverse_above(NO_PIVOT_SQUARED);
    *x = through.times(&inverse);
    let mut reflected = near;
    reflected.add_product(&back.times(load), x);
    sound.then_some(reflected)
}

/// Works out `B` and tells the branches in which something bends what they see above them; false if that has no answer.
#[inline(always)]
fn carry_down(
    plan: &Plan,
    place: usize,
    piece: &Piece,
    course: &Course,
    scratch: &mut Scratch,
    block: usize,
) -> bool {
    let sides = plan.sides.len();
    let loads = &scratch.loads[block * sides..(block + 1) * sides];
    let up = scratch.up[place * TOGETHER + block];
    if let (1, Side::Part(below)) = (piece.width, plan.sides[piece.sides.start]) {
        // u' = S_cc + S_c0 u S_0c / (1 - S_00 u)
        let first = piece.matrix * TOGETHER + block * 4;
        let &[near, back, through, far] = &scratch.matrices[first..first + 4] else { return false };
        let (inverse, sound) = near.times(&up).taken_from_one().inverse_above(NO_PIVOT_SQUARED);
        let mut seen = far;
        seen.add_product(&through.times(&up), &back.times(&inverse));
        scratch.up[below * TOGETHER + block] = seen;
        return sound;
    }
    let reflected = plan.above[place].map_or(scratch.root[block], |side| loads[side]);
    let Some(h) = let_down(&reflected, &up) else { return false };
    let stride = piece.stride();
    let columns = &course.columns[piece.columns.clone()];
    let first = piece.fold * TOGETHER + block * piece.width * stride;
    let rows = &scratch.rows[first..first + piece.width * stride];
    let first = piece.bend * TOGETHER + block * piece.width * columns.len();
    let bends = &mut scratch.bends[first..first + piece.width * columns.len()];
    for (c, column) in columns.iter().enumerate() {
        let y = match piece.back {
            Some(back) => &scratch.back[back * TOGETHER + block * piece.width + column],
            None => &rows[column * stride],
        };
        let hy = h.times(y);
        for port in 0..piece.width {
            let bend = &mut bends[port * columns.len() + c];
            *bend = rows[port * stride + c + 1];
            bend.add_product(&rows[port * stride], &hy);
        }
    }
    for (c, &port) in columns.iter().enumerate() {
        let side = piece.sides.start + port;
        if let Side::Part(below) = plan.sides[side]
            && course.pieces[below].is_carried
        {
            let own = bends[port * columns.len() + c];
            let Some(seen) = seen_from_branch(&loads[side], &own) else { return false };
            scratch.up[below * TOGETHER + block] = seen;
        }
    }
    true
}
