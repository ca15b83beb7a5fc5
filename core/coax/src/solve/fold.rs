//! The two walks, eight frequencies at a time.

use multiversion::multiversion;
use num_complex::Complex64;

use super::cores;
use super::pairs::{Pairs, Wanted};
use super::plan::Tree;
use super::plan::{Plan, Side};
use super::samples::{MOST_VALUES, Sampled, Table, fill};
use super::solution::Solution;
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::{ANCHOR, Blocks};
use crate::model::Filler;

/// A pivot below this magnitude squared (1e-6) makes the elimination start again with exchanged rows.
const SMALL_PIVOT_SQUARED: f64 = 1e-12;
/// A pivot below this magnitude squared (1e-9), with rows exchanged, leaves no digits worth having.
pub(super) const NO_PIVOT_SQUARED: f64 = 1e-18;

/// The most blocks of frequencies walked together.
const MOST_TOGETHER: usize = ANCHOR;

/// Waves of scratch that a core's own cache holds with room to spare (256 KiB).
const CACHE_WAVES: usize = 2048;

/// All that one block of frequencies needs; nothing is allocated while solving.
#[derive(Clone)]
struct Scratch {
    /// Rows `[x | g]` of every part; after the walk down `[x | B]`.
    fold: Vec<Wave>,
    /// `y` of the parts that are not reciprocal.
    back: Vec<Wave>,
    /// What is reflected at every side.
    loads: Vec<Wave>,
    /// What every part sees above it.
    up: Vec<Wave>,
    /// The small matrix `I - S_cc G` of the part at hand.
    small: Vec<Wave>,
    /// By place of outlet: the way down to it and the way up from it, as far as walked.
    down: Vec<Wave>,
    rise: Vec<Wave>,
    /// What is reflected at the root.
    root: Wave,
}

impl Scratch {
    /// How many waves one holds, about.
    fn waves(plan: &Plan) -> usize {
        plan.fold_size + plan.back_size + plan.sides.len() + plan.steps.len() + 2 * plan.outlets.len()
    }

    fn new(plan: &Plan) -> Self {
        let outlets = plan.outlets.len();
        let loads = plan.sides.iter().map(|side| match side {
            Side::End(reflection) => Wave::of(*reflection),
            _ => Wave::ZERO,
        });
        let mut up = vec![Wave::ZERO; plan.steps.len()];
        if let Some(first) = up.first_mut() {
            *first = Wave::of(plan.root_reflection);
        }
        Self {
            fold: vec![Wave::ZERO; plan.fold_size],
            back: vec![Wave::ZERO; plan.back_size],
            loads: loads.collect(),
            up,
            small: vec![Wave::ZERO; plan.widest * plan.widest],
            down: vec![Wave::ONE; outlets],
            rise: vec![Wave::ONE; if plan.back_size > 0 { outlets } else { 0 }],
            root: Wave::ZERO,
        }
    }
}

/// Which part failed, in which block of frequencies.
struct Failed {
    place: usize,
    block: usize,
}

impl Sampled {
    /// Solves for the wanted pairs of outlets.
    ///
    /// # Errors
    /// [`CoaxError::NoSuchOutlet`], [`CoaxError::TooMuchAsked`], and [`CoaxError::Resonance`] where the equations have no single
    /// answer.
    pub fn solve(&self, wanted: Wanted<'_>) -> Result<Solution, CoaxError> {
        let mut solution = Solution::empty();
        self.solve_into(wanted, &mut solution)?;
        Ok(solution)
    }

    /// As [`Sampled::solve`], into the memory of a solution that is no longer needed. After an error the solution holds nothing
    /// of use.
    ///
    /// # Errors
    /// As [`Sampled::solve`].
    pub fn solve_into(&self, wanted: Wanted<'_>, solution: &mut Solution) -> Result<(), CoaxError> {
        let tables = || Tables::Kept(&self.tables);
        let together = (CACHE_WAVES / Scratch::waves(&self.tree.plan).max(1)).clamp(1, MOST_TOGETHER);
        solve(&self.tree, &self.grid, wanted, tables, together, solution)
    }
}

impl Tree {
    /// Evaluates every part on a grid and solves for the wanted pairs of outlets, a few frequencies at a time: as
    /// [`Tree::sample`] and [`Sampled::solve`], but no part's matrices are kept.
    ///
    /// # Errors
    /// As [`Sampled::solve`].
    pub fn solve_over(&self, grid: &FrequencyGrid, wanted: Wanted<'_>) -> Result<Solution, CoaxError> {
        let mut solution = Solution::empty();
        self.solve_over_into(grid, wanted, &mut solution)?;
        Ok(solution)
    }

    /// As [`Tree::solve_over`], into the memory of a solution that is no longer needed.
    ///
    /// # Errors
    /// As [`Sampled::solve`].
    pub fn solve_over_into(
        &self,
        grid: &FrequencyGrid,
        wanted: Wanted<'_>,
        solution: &mut Solution,
    ) -> Result<(), CoaxError> {
        let blocks = Blocks::of(grid);
        let tables = || Tables::Made(Box::new(Made::new(self, &blocks)));
        // From one exact block to the next.
        solve(self, &std::sync::Arc::new(grid.clone()), wanted, tables, ANCHOR, solution)
    }
}

/// Where the parts' matrices come from.
enum Tables<'a> {
    /// They are there, over the whole grid.
    Kept(&'a [Table]),
    /// They are made where they are needed.
    Made(Box<Made<'a>>),
}

/// The matrices of the blocks at hand.
struct Made<'a> {
    tree: &'a Tree,
    blocks: &'a Blocks,
    filler: Filler,
    waves: Vec<Wave>,
    /// By part: its ports in order, and where its matrices begin.
    parts: Vec<(Vec<usize>, usize)>,
}

impl<'a> Made<'a> {
    fn new(tree: &'a Tree, blocks: &'a Blocks) -> Self {
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
    fn ready(&mut self, blocks: std::ops::Range<usize>) {
        if let Self::Made(made) = self {
            made.make(blocks);
        }
    }

    /// A part's matrix of so many entries in a block, one of those that were made ready from `first` on.
    #[inline(always)]
    fn matrix(&self, place: usize, first: usize, block: usize, size: usize) -> &[Wave] {
        match self {
            Self::Kept(tables) => &tables[place][(first + block) * size..(first + block + 1) * size],
            Self::Made(made) => {
                let at = made.parts[place].1 + block * size;
                &made.waves[at..at + size]
            }
        }
    }
}

/// Solves on as many of the computer's cores as there are and are worth it: the same bits on any number of them, since each
/// walks whole groups of so many blocks.
fn solve<'a>(
    tree: &Tree,
    grid: &std::sync::Arc<FrequencyGrid>,
    wanted: Wanted<'_>,
    tables: impl Fn() -> Tables<'a> + Sync,
    together: usize,
    solution: &mut Solution,
) -> Result<(), CoaxError> {
    let plan = &*tree.plan;
    let points = grid.len();
    let blocks = points.div_ceil(LANES);
    // An odd number of cache lines between pairs, so that they do not fight for the same places of the cache.
    let stride = blocks * LANES + 4;
    let most_slots = MOST_VALUES / stride;
    let asked = match wanted {
        Wanted::All => plan.outlets.len().saturating_mul(plan.outlets.len() + 1) / 2,
        Wanted::Pairs(list) => list.len(),
    };
    let too_much =
        |slots: usize| CoaxError::TooMuchAsked { values: slots.saturating_mul(stride), most: MOST_VALUES };
    if asked > most_slots {
        return Err(too_much(asked));
    }
    let (pairs, slots) = Pairs::of(plan, wanted)?;
    if pairs.slots > most_slots {
        return Err(too_much(pairs.slots));
    }
    solution.grid = Some(std::sync::Arc::clone(grid));
    solution.outlets = plan.outlets.len();
    solution.stride = stride;
    solution.slots = slots;
    solution.values.resize(pairs.slots * stride, Complex64::ZERO);
    let shares = cores::shares(blocks.div_ceil(together), blocks * (pairs.slots + 4 * plan.steps.len()));
    let mut outs: Vec<Out<'_>> = shares
        .iter()
        .map(|groups| Out { slots: Vec::with_capacity(pairs.slots), first: groups.start * together })
        .collect();
    for mut values in solution.values.chunks_mut(stride) {
        for (out, groups) in outs.iter_mut().zip(&shares) {
            let end = (groups.end * together).min(blocks);
            let (ours, others) = values.split_at_mut((end - out.first) * LANES);
            out.slots.push(ours);
            values = others;
        }
    }
    let work = |mut out: Out<'_>, groups: std::ops::Range<usize>| {
        let mut tables = tables();
        let mut scratch = vec![Scratch::new(plan); together];
        for first in groups.map(|group| group * together) {
            let count = together.min(blocks - first);
            tables.ready(first..first + count);
            walk(plan, &tables, first, &pairs, &mut scratch[..count], &mut out)?;
        }
        Ok(())
    };
    let done = cores::each(outs.into_iter().zip(shares), |(out, groups)| work(out, groups));
    let failed = done.into_iter().find_map(Result::err);
    failed.map_or(Ok(()), |Failed { place, block }| {
        Err(CoaxError::Resonance {
            part: plan.steps[place].original,
            megahertz: grid.frequencies()[block * LANES].value(),
        })
    })
}

/// A few neighbouring blocks of frequencies, from `first` on: up, down, and the pairs. Compiled for several instruction sets,
/// the best of which is chosen at run time; all give the same bits, for none may fuse a product and a sum.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn walk<'t, 'o>(
    plan: &Plan,
    tables: &Tables<'t>,
    first: usize,
    pairs: &Pairs,
    scratch: &mut [Scratch],
    out: &mut Out<'o>,
) -> Result<(), Failed> {
    // Part by part and in each block by block, for a part's matrices of neighbouring blocks lie together in memory.
    for place in (0..plan.steps.len()).rev() {
        let size = (plan.steps[place].width + 1).pow(2);
        for (k, scratch) in scratch.iter_mut().enumerate() {
            let block = first + k;
            let matrix = tables.matrix(place, first, k, size);
            if !fold_branch(plan, place, matrix, scratch) {
                return Err(Failed { place, block });
            }
        }
    }
    for place in 0..plan.steps.len() {
        for (k, scratch) in scratch.iter_mut().enumerate() {
            if !carry_down(plan, place, scratch) {
                return Err(Failed { place, block: first + k });
            }
        }
    }
    for scratch in scratch.iter_mut() {
        scratch.down.fill(Wave::ONE);
        scratch.rise.fill(Wave::ONE);
    }
    let from = first - out.first;
    for place in (0..plan.steps.len()).rev() {
        meet(plan, place, pairs, scratch, from, out);
        for scratch in scratch.iter_mut() {
            lengthen(plan, place, scratch);
        }
    }
    for (k, scratch) in scratch.iter_mut().enumerate() {
        if let Some(slot) = pairs.at_root {
            out.put(slot, from + k, &scratch.root);
        }
        for &(place, slot) in &pairs.from_root {
            out.put(slot, from + k, &scratch.down[place]);
        }
        let rise = if scratch.rise.is_empty() { &scratch.down } else { &scratch.rise };
        for &(place, slot) in &pairs.to_root {
            out.put(slot, from + k, &rise[place]);
        }
    }
    Ok(())
}

/// Where results go: of every slot the blocks from `first` on.
struct Out<'a> {
    slots: Vec<&'a mut [Complex64]>,
    first: usize,
}

impl Out<'_> {
    /// Puts the waves of a block, counted from the first that is here.
    #[inline(always)]
    fn put(&mut self, slot: usize, block: usize, wave: &Wave) {
        let at = block * LANES;
        if let Some(to) = self.slots.get_mut(slot).and_then(|values| values.get_mut(at..at + LANES)) {
            for (k, value) in to.iter_mut().enumerate() {
                *value = Complex64::new(wave.re.0[k], wave.im.0[k]);
            }
        }
    }
}

/// Folds a part and its branches: rows `[x | g]`, `y`, and what the part above sees; false if that has no answer.
#[inline(always)]
fn fold_branch(plan: &Plan, place: usize, matrix: &[Wave], scratch: &mut Scratch) -> bool {
    let step = &plan.steps[place];
    let (m, n) = (step.width, step.width + 1);
    let live = &plan.live[step.live.clone()];
    let loads = &scratch.loads[step.sides.clone()];
    let rows = &mut scratch.fold[step.fold.clone()];
    // Row a of S without its first row is [S_a0 | S_ac]: just the right-hand side.
    rows.copy_from_slice(&matrix[n..]);
    let r = live.len();
    let small = &mut scratch.small[..r * r];
    fill_small(small, live, matrix, loads, n);
    if !eliminate(small, rows, live, n) {
        fill_small(small, live, matrix, loads, n);
        rows.copy_from_slice(&matrix[n..]);
        if !eliminate_with_exchange(small, rows, live, n) {
            return false;
        }
    }
    // Ports that reflect nothing only listen.
    let mut next_live = 0;
    for a in 0..m {
        if live.get(next_live) == Some(&a) {
            next_live += 1;
            continue;
        }
        for &l in live {
            let share = matrix[(a + 1) * n + l + 1].times(&loads[l]);
            for c in 0..n {
                let from = rows[l * n + c];
                rows[a * n + c].add_product(&share, &from);
            }
        }
    }
    let mut gin = matrix[0];
    for &l in live {
        let share = matrix[l + 1].times(&loads[l]);
        gin.add_product(&share, &rows[l * n]);
    }
    if let Some(back) = step.back.clone() {
        let back = &mut scratch.back[back];
        back.copy_from_slice(&matrix[1..n]);
        for &l in live {
            let share = matrix[l + 1].times(&loads[l]);
            for (c, y) in back.iter_mut().enumerate() {
                y.add_product(&share, &rows[l * n + c + 1]);
            }
        }
    }
    match plan.above[place] {
        Some(side) => scratch.loads[side] = gin,
        None => scratch.root = gin,
    }
    true
}

/// `I - S_cc G` over the ports that reflect something.
#[inline(always)]
pub(super) fn fill_small(small: &mut [Wave], live: &[usize], matrix: &[Wave], loads: &[Wave], n: usize) {
    let r = live.len();
    for (i, &a) in live.iter().enumerate() {
        for (j, &b) in live.iter().enumerate() {
            let mut entry = if i == j { Wave::ONE } else { Wave::ZERO };
            entry.subtract_product(&matrix[(a + 1) * n + b + 1], &loads[b]);
            small[i * r + j] = entry;
        }
    }
}

/// Gauss-Jordan without exchange of rows; false if a pivot is small.
#[inline(always)]
pub(super) fn eliminate(small: &mut [Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
    let r = live.len();
    for (p, &a) in live.iter().enumerate() {
        let (inverse, sound) = small[p * r + p].inverse_above(SMALL_PIVOT_SQUARED);
        if !sound {
            return false;
        }
        for j in p + 1..r {
            small[p * r + j] = small[p * r + j].times(&inverse);
        }
        for c in 0..n {
            rows[a * n + c] = rows[a * n + c].times(&inverse);
        }
        for (i, &b) in live.iter().enumerate() {
            if i == p {
                continue;
            }
            let factor = small[i * r + p];
            for j in p + 1..r {
                let pivot = small[p * r + j];
                small[i * r + j].subtract_product(&factor, &pivot);
            }
            for c in 0..n {
                let pivot = rows[a * n + c];
                rows[b * n + c].subtract_product(&factor, &pivot);
            }
        }
    }
    true
}

/// The same, one frequency after the other, with the largest pivot of each column; false if the matrix is singular.
#[cold]
pub(super) fn eliminate_with_exchange(small: &[Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
    let r = live.len();
    for lane in 0..LANES {
        let mut left: Vec<Complex64> = small.iter().map(|wave| wave.lane(lane)).collect();
        let mut right: Vec<Complex64> =
            live.iter().flat_map(|&a| rows[a * n..(a + 1) * n].iter().map(|wave| wave.lane(lane))).collect();
        for p in 0..r {
            let size = |i: usize| left[i * r + p].norm_sqr();
            let best = (p..r).max_by(|&i, &j| size(i).total_cmp(&size(j))).unwrap_or(p);
            let square = size(best);
            // Written so that a value that is not a number fails too.
            if !(square > NO_PIVOT_SQUARED && square.is_finite()) {
                return false;
            }
            for j in 0..r {
                left.swap(p * r + j, best * r + j);
            }
            for c in 0..n {
                right.swap(p * n + c, best * n + c);
            }
            let inverse = left[p * r + p].inv();
            for j in p..r {
                left[p * r + j] *= inverse;
            }
            for c in 0..n {
                right[p * n + c] *= inverse;
            }
            for i in (0..r).filter(|&i| i != p) {
                let factor = left[i * r + p];
                for j in p..r {
                    let pivot = left[p * r + j];
                    left[i * r + j] -= factor * pivot;
                }
                for c in 0..n {
                    let pivot = right[p * n + c];
                    right[i * n + c] -= factor * pivot;
                }
            }
        }
        for (i, &a) in live.iter().enumerate() {
            for c in 0..n {
                rows[a * n + c].set_lane(lane, right[i * n + c]);
            }
        }
    }
    true
}

/// Turns `g` into `B` and tells the branches what they see above them; false if that has no answer.
#[inline(always)]
fn carry_down(plan: &Plan, place: usize, scratch: &mut Scratch) -> bool {
    let step = &plan.steps[place];
    let n = step.width + 1;
    let gin = plan.above[place].map_or(scratch.root, |side| scratch.loads[side]);
    let up = scratch.up[place];
    let (inverse, sound) = gin.times(&up).taken_from_one().inverse_above(NO_PIVOT_SQUARED);
    if !sound {
        return false;
    }
    let h = up.times(&inverse);
    let rows = &mut scratch.fold[step.fold.clone()];
    if let Some(back) = step.back.clone() {
        let y = &scratch.back[back];
        for row in rows.chunks_exact_mut(n) {
            let hx = h.times(&row[0]);
            for (b, y) in row[1..].iter_mut().zip(y) {
                b.add_product(&hx, y);
            }
        }
    } else {
        for a in 0..step.width {
            let hx = h.times(&rows[a * n]);
            for b in 0..step.width {
                let y = rows[b * n];
                rows[a * n + b + 1].add_product(&hx, &y);
            }
        }
    }
    for (port, side) in step.sides.clone().enumerate() {
        if let Side::Part(below) = plan.sides[side] {
            let own = rows[port * n + port + 1];
            let mut whole = Wave::ONE;
            whole.add_product(&scratch.loads[side], &own);
            let (inverse, sound) = whole.inverse_above(NO_PIVOT_SQUARED);
            if !sound {
                return false;
            }
            scratch.up[below] = own.times(&inverse);
        }
    }
    true
}

/// Writes the pairs that meet in a part, of all blocks at once: their places in memory are neighbours.
#[inline(always)]
fn meet(plan: &Plan, place: usize, pairs: &Pairs, scratch: &[Scratch], from: usize, out: &mut Out<'_>) {
    let step = &plan.steps[place];
    let n = step.width + 1;
    let mut sent = [Wave::ZERO; MOST_TOGETHER];
    for meeting in &pairs.meetings[pairs.in_part[place].clone()] {
        let entry = step.fold.start + meeting.to_port * n + meeting.from_port + 1;
        for (sent, scratch) in sent.iter_mut().zip(scratch) {
            let rise = if scratch.rise.is_empty() { &scratch.down } else { &scratch.rise };
            *sent = scratch.fold[entry].times(&rise[meeting.from]);
        }
        for &(to, slot) in &pairs.receivers[meeting.receivers.clone()] {
            // An outlet's own reflection: its way is not yet lengthened, so both factors are 1.
            for (k, (sent, scratch)) in sent.iter().zip(scratch).enumerate() {
                out.put(slot, from + k, &scratch.down[to].times(sent));
            }
        }
    }
}

/// Lengthens the ways of all outlets below a part by the part.
#[inline(always)]
fn lengthen(plan: &Plan, place: usize, scratch: &mut Scratch) {
    let step = &plan.steps[place];
    let n = step.width + 1;
    let rows = &scratch.fold[step.fold.clone()];
    for (port, side) in step.sides.clone().enumerate() {
        let x = rows[port * n];
        for way in &mut scratch.down[plan.below[side].clone()] {
            *way = way.times(&x);
        }
        if !scratch.rise.is_empty() {
            let y = step.back.clone().map_or(x, |back| scratch.back[back.start + port]);
            for way in &mut scratch.rise[plan.below[side].clone()] {
                *way = way.times(&y);
            }
        }
    }
}
