//! The two walks, eight frequencies at a time.

use multiversion::multiversion;
use num_complex::Complex64;

use super::cores;
use super::eliminate::{Columns, fold, let_down, seen_from_branch, turn_back};
use super::pairs::{Pairs, Wanted};
use super::plan::{Plan, Side, Tree};
use super::samples::{MOST_VALUES, Sampled};
use super::solution::Solution;
use super::tables::{Made, Tables};
use super::wave::{LANES, Wave};
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::{ANCHOR, Blocks};

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
    let here = (&plan.live[step.live.clone()], &scratch.loads[step.sides.clone()]);
    let rows = &mut scratch.fold[step.fold.clone()];
    let Some(gin) = fold(step.width, matrix, Columns::All, rows, here, &mut scratch.small) else {
        return false;
    };
    if let Some(back) = step.back.clone() {
        turn_back(matrix, rows, here, &mut scratch.back[back]);
    }
    match plan.above[place] {
        Some(side) => scratch.loads[side] = gin,
        None => scratch.root = gin,
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
    let Some(h) = let_down(&gin, &up) else { return false };
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
            let Some(seen) = seen_from_branch(&scratch.loads[side], &own) else { return false };
            scratch.up[below] = seen;
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
