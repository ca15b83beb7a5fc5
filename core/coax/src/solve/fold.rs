//! The walk over all pairs, 64 frequencies at a time: up from the ends, down from the root, and the pairs.
//!
//! A part's matrix, joined to what hangs on it, stays one matrix: its first entry is what the part above sees, its first row and
//! column are `x` and `y`, the rest is `g` and, after the walk down, `B`. What comes down into a branch is the entry of `B` at its
//! port: nothing is divided on the way down.

use std::ops::Range;
use std::sync::Arc;

use num_complex::Complex64;

use super::any_part::{AnyPart, Aside};
use super::cores;
use super::eliminate::NO_PIVOT_SQUARED;
use super::group::{
    GROUP, Group, MOST_AT_ONCE, Shape, echoes, fold_upper, let_down_upper, multiply, multiply_by, put,
    put_product,
};
use super::layout::{Layout, Load, Place};
use super::pairs::{Pairs, Wanted};
use super::plan::{Plan, Side};
use super::samples::{MOST_VALUES, Matrices, Sampled};
use super::solution::Solution;
use super::tables::{Made, Tables};
use super::tree::Tree;
use crate::error::CoaxError;
use crate::grid::FrequencyGrid;
use crate::look::Blocks;

/// Values in a line of the cache.
const LINE: usize = 4;

/// All that one group of frequencies needs; nothing is allocated while solving.
struct Scratch {
    /// Every part's matrix, joined to what hangs on it.
    folded: Vec<Group>,
    /// What fixed ends reflect.
    ends: Vec<Group>,
    /// By place of outlet: the way down to it and the way up from it, as far as walked; the latter only if it differs.
    down: Vec<Group>,
    rise: Vec<Group>,
    /// What the parts of one output above a part let through, down and up.
    passed: [Group; 2],
    /// What comes down into the root.
    root: Option<Group>,
    sent: Group,
    /// The part's own matrix, where it comes from far away: fetched in one go, for folding looks at many places of it at a time.
    fetched: Vec<Group>,
    aside: Aside,
}

impl Scratch {
    fn new(plan: &Plan, layout: &Layout) -> Self {
        let outlets = plan.outlets.len();
        let reflected = plan.root_reflection;
        let [sent, passed] = [Group::ZERO; 2];
        Self {
            folded: vec![Group::ZERO; layout.size],
            ends: layout.ends(),
            down: vec![Group::ZERO; outlets],
            rise: vec![Group::ZERO; if plan.is_reciprocal() { 0 } else { outlets }],
            passed: [passed; 2],
            root: (reflected != Complex64::ZERO).then(|| Group::of(reflected)),
            sent,
            fetched: vec![Group::ZERO; layout.largest],
            aside: Aside::new(plan.widest + 1),
        }
    }

    fn rise(&self) -> &[Group] {
        if self.rise.is_empty() { &self.down } else { &self.rise }
    }
}

/// Which part has no answer, at which frequency of its group.
struct Failed {
    place: usize,
    at: usize,
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
        let size = self.tree.layout().size;
        let tables = || match &self.matrices {
            Matrices::ByPart(tables) => Tables::Kept(tables),
            Matrices::InTurn(all) => Tables::InTurn(all, size),
        };
        solve(&self.tree, &self.grid, wanted, tables, solution)
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
        solve(self, &Arc::new(grid.clone()), wanted, tables, solution)
    }
}

/// Solves on as many of the computer's cores as there are and are worth it: the same bits on any number of them, since each
/// walks whole groups.
fn solve<'a>(
    tree: &Tree,
    grid: &Arc<FrequencyGrid>,
    wanted: Wanted<'_>,
    tables: impl Fn() -> Tables<'a> + Sync,
    solution: &mut Solution,
) -> Result<(), CoaxError> {
    let plan = &*tree.plan;
    let groups = grid.len().div_ceil(GROUP);
    let outlets = plan.outlets.len();
    let asked = match wanted {
        Wanted::All => outlets.saturating_mul(outlets + 1) / 2,
        Wanted::Pairs(list) => list.len(),
    };
    let check = |slots: usize| match slots.saturating_mul(groups * GROUP) {
        values if values > MOST_VALUES => Err(CoaxError::TooMuchAsked { values, most: MOST_VALUES }),
        _ => Ok(()),
    };
    check(asked)?;
    let some;
    let (pairs, slots) = match wanted {
        Wanted::All => tree.all_pairs(),
        Wanted::Pairs(list) => {
            some = Pairs::some(plan, list)?;
            &some
        }
    };
    check(pairs.slots)?;
    solution.fit(grid, outlets, slots, pairs.slots, groups);
    let layout = tree.layout();
    let shares = cores::shares(groups, groups * (pairs.slots + 4 * plan.steps.len()));
    let mut outs = Vec::with_capacity(shares.len());
    let mut values = &mut solution.values[solution.first..];
    for groups in &shares {
        let (ours, others) = values.split_at_mut(groups.len() * pairs.slots * GROUP);
        outs.push(Out { values: ours, pairs: pairs.slots, first: groups.start });
        values = others;
    }
    let work = |mut out: Out<'_>, groups: Range<usize>| {
        let tables = tables();
        let is_far = matches!(tables, Tables::InTurn(..));
        let mut walk = Walk { plan, layout, pairs, tables, is_far, scratch: Scratch::new(plan, layout) };
        groups
            .into_iter()
            .try_for_each(|group| walk.group(group, &mut out).map_err(|failed| (group * GROUP, failed)))
    };
    let done = cores::each(outs.into_iter().zip(shares), |(out, groups)| work(out, groups));
    let failed = done.into_iter().find_map(Result::err);
    failed.map_or(Ok(()), |(first, Failed { place, at })| {
        let frequencies = grid.frequencies();
        Err(CoaxError::Resonance {
            part: plan.steps[place].original,
            megahertz: frequencies[(first + at).min(frequencies.len() - 1)].value(),
        })
    })
}

impl Solution {
    /// Makes room for so many pairs.
    fn fit(
        &mut self,
        grid: &Arc<FrequencyGrid>,
        outlets: usize,
        slots: &super::solution::Slots,
        pairs: usize,
        groups: usize,
    ) {
        self.grid = Some(Arc::clone(grid));
        self.outlets = outlets;
        self.slots = slots.clone();
        self.pairs = pairs;
        self.values.resize(groups * pairs * GROUP + LINE, Complex64::ZERO);
        // Lines of the cache that are written whole need not be written twice.
        self.first = self.values.as_ptr().align_offset(LINE * size_of::<Complex64>());
        self.first = if self.first < LINE { self.first } else { 0 };
        self.values.truncate(self.first + groups * pairs * GROUP);
    }
}

/// Where results go: the groups from `first` on.
struct Out<'a> {
    values: &'a mut [Complex64],
    pairs: usize,
    first: usize,
}

impl Out<'_> {
    /// Where a pair's values of a group lie.
    fn values(&mut self, slot: usize, group: usize) -> Option<&mut [Complex64; GROUP]> {
        let first = ((group - self.first) * self.pairs + slot) * GROUP;
        self.values.get_mut(first..)?.first_chunk_mut()
    }

    fn put(&mut self, slot: usize, group: usize, value: &Group) {
        if let Some(to) = self.values(slot, group) {
            put(value, to);
        }
    }

    fn put_product(&mut self, slot: usize, group: usize, a: &Group, b: &Group) {
        if let Some(to) = self.values(slot, group) {
            put_product(a, b, to);
        }
    }
}

/// The walk over a tree, on one core.
struct Walk<'a> {
    plan: &'a Plan,
    layout: &'a Layout,
    pairs: &'a Pairs,
    tables: Tables<'a>,
    /// Whether the tables are too large to stay in the core's own caches.
    is_far: bool,
    scratch: Scratch,
}

impl Walk<'_> {
    fn group(&mut self, group: usize, out: &mut Out<'_>) -> Result<(), Failed> {
        self.tables.ready(group);
        for place in (0..self.layout.places.len()).rev() {
            self.fold(place, group)?;
        }
        for place in &self.layout.places {
            self.scratch.let_down(place)?;
        }
        for place in (0..self.layout.places.len()).rev() {
            self.meet(place, group, out);
            self.lengthen(place);
        }
        if let Some(slot) = self.pairs.at_root {
            out.put(slot, group, &self.scratch.folded[0]);
        }
        for &(place, slot) in &self.pairs.from_root {
            out.put(slot, group, &self.scratch.down[place]);
        }
        for &(place, slot) in &self.pairs.to_root {
            out.put(slot, group, &self.scratch.rise()[place]);
        }
        Ok(())
    }

    /// Joins a part to its branches.
    fn fold(&mut self, at: usize, group: usize) -> Result<(), Failed> {
        let place = &self.layout.places[at];
        let Scratch { folded, ends, fetched, aside, .. } = &mut self.scratch;
        let matrix = self.tables.matrix(at, group, &place.matrix);
        let (before, branches) = folded.split_at_mut(place.matrix.end);
        let into = &mut before[place.matrix.start..];
        if !place.is_live {
            into.copy_from_slice(matrix);
            return Ok(());
        }
        let joined = &self.layout.loads[place.loads.clone()];
        let load = |load: &Load| match *load {
            Load::End(end) => &ends[end],
            Load::Branch(first) => &branches[first - place.matrix.end],
        };
        if place.is_made_for() {
            let mut loads = [&ends[0]; MOST_AT_ONCE - 1];
            for (to, from) in loads.iter_mut().zip(joined) {
                *to = load(from);
            }
            let matrix = if self.is_far {
                let fetched = &mut fetched[..matrix.len()];
                fetched.copy_from_slice(matrix);
                fetched
            } else {
                matrix
            };
            if fold_upper(place.ports, matrix, &loads, into) {
                return Ok(());
            }
        } else {
            into.copy_from_slice(matrix);
            let live = joined.iter().enumerate().filter(|(_, joined)| !matches!(joined, Load::End(0)));
            let mut each = live.map(|(port, joined)| (port + 1, load(joined)));
            if each.all(|(port, load)| place.any().join(port, load, into, aside)) {
                return Ok(());
            }
        }
        let loads: Vec<&Group> = joined.iter().map(load).collect();
        place.any().fold_with_exchange(matrix, &loads, into).map_err(|k| Failed { place: at, at: k })
    }

    /// Writes the pairs that meet in a part.
    fn meet(&mut self, at: usize, group: usize, out: &mut Out<'_>) {
        let place = &self.layout.places[at];
        let sides = &self.plan.sides[self.plan.steps[at].sides.clone()];
        for meeting in &self.pairs.meetings[self.pairs.in_part[at].clone()] {
            let bend = &self.scratch.folded[place.entry(meeting.to_port + 1, meeting.from_port + 1)];
            // To an outlet on this very part there is no way yet.
            let sent = if matches!(sides[meeting.from_port], Side::Outlet(_)) {
                bend
            } else {
                let rise = if self.scratch.rise.is_empty() { &self.scratch.down } else { &self.scratch.rise };
                multiply(bend, &rise[meeting.from], &mut self.scratch.sent);
                &self.scratch.sent
            };
            let receivers = &self.pairs.receivers[meeting.receivers.clone()];
            for &(to, slot) in receivers {
                if matches!(sides[meeting.to_port], Side::Outlet(_)) {
                    out.put(slot, group, sent);
                } else {
                    out.put_product(slot, group, &self.scratch.down[to], sent);
                }
            }
        }
    }

    /// Lengthens the ways of all outlets below a part by the part, and by those of one output above it.
    fn lengthen(&mut self, at: usize) {
        let place = &self.layout.places[at];
        let Scratch { folded, down, rise, passed: [passed, passed_up], sent: own, .. } = &mut self.scratch;
        let first = self.plan.steps[at].sides.start;
        let above = &self.layout.passed[place.passed.clone()];
        let is_in_between = place.ports == 2 && !matches!(self.plan.sides[first], Side::Outlet(_));
        if is_in_between {
            return;
        }
        for (is_up, ways, passed) in [(false, down, passed), (true, rise, passed_up)] {
            if ways.is_empty() {
                continue;
            }
            let factor = |place: &Place, port: usize| {
                let (to, from) = if is_up { (0, port) } else { (port, 0) };
                &folded[place.entry(to, from)]
            };
            if let Some((next, others)) = above.split_first() {
                *passed = *factor(&self.layout.places[*next], 1);
                for other in others {
                    multiply_by(passed, factor(&self.layout.places[*other], 1));
                }
            }
            for port in 1..place.ports {
                let side = first + port - 1;
                let ways = &mut ways[self.plan.below[side].clone()];
                let x = factor(place, port);
                let x = if above.is_empty() {
                    x
                } else {
                    multiply(x, passed, own);
                    &*own
                };
                match (self.plan.sides[side], ways) {
                    (Side::Outlet(_), [way]) => *way = *x,
                    (_, ways) => ways.iter_mut().for_each(|way| multiply_by(way, x)),
                }
            }
        }
    }
}

impl Scratch {
    /// Turns `g` into `B` by what comes down.
    fn let_down(&mut self, place: &Place) -> Result<(), Failed> {
        let (above, folded) = self.folded.split_at_mut(place.matrix.start);
        let folded = &mut folded[..place.matrix.len()];
        let h = match (place.above, &self.root) {
            (Some(above_it), _) => &above[above_it],
            (None, None) => return Ok(()),
            // What comes down into the house, where so much is reflected above it: `u / (1 - gin u)`.
            (None, Some(up)) => {
                if !echoes(&folded[0], up, NO_PIVOT_SQUARED, &mut self.passed[0]) {
                    let small = |k: &usize| {
                        let square = (1.0 - folded[0].value(*k) * up.value(*k)).norm_sqr();
                        square.is_nan() || square <= NO_PIVOT_SQUARED
                    };
                    return Err(Failed { place: 0, at: (0..GROUP).find(small).unwrap_or(0) });
                }
                multiply(&self.passed[0], up, &mut self.sent);
                &self.sent
            }
        };
        if place.is_made_for() {
            let_down_upper(place.ports, h, folded);
        } else {
            place.any().let_down(h, folded, &mut self.aside);
        }
        Ok(())
    }
}

impl Place {
    /// Whether there are functions made for its size.
    fn is_made_for(&self) -> bool {
        self.shape == Shape::Upper && (2..=MOST_AT_ONCE).contains(&self.ports)
    }

    fn any(&self) -> AnyPart {
        AnyPart { ports: self.ports, shape: self.shape }
    }
}
