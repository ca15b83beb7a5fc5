//! Which pairs of outlets are asked for, and in which part their ways meet.

use std::collections::HashMap;
use std::ops::Range;

use super::index::OutletIndex;
use super::plan::{Plan, Side};
use super::solution::Slots;
use crate::error::CoaxError;

/// Which pairs of outlets to solve for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted<'a> {
    /// Every pair, both directions, and every reflection.
    All,
    /// These pairs: where the wave leaves, and where it enters. A pair whose way is alike in both directions is found in both.
    Pairs(&'a [(OutletIndex, OutletIndex)]),
}

/// All receivers `to` for one transmitting outlet whose ways meet in one part between the same two ports.
#[derive(Debug)]
pub(super) struct Meeting {
    /// Port (counted among the part's sides) towards the receivers.
    pub to_port: usize,
    /// Port towards the transmitter.
    pub from_port: usize,
    /// The transmitter's place.
    pub from: usize,
    /// Which of [`Pairs::receivers`].
    pub receivers: Range<usize>,
}

/// The wanted pairs in the order of work.
#[derive(Debug)]
pub(super) struct Pairs {
    /// By part: which of `meetings` are in it.
    pub in_part: Vec<Range<usize>>,
    pub meetings: Vec<Meeting>,
    /// (place of the outlet, slot).
    pub receivers: Vec<(usize, usize)>,
    /// Pairs with the root's outlet: (place, slot), the wave leaving at the place.
    pub from_root: Vec<(usize, usize)>,
    /// The same, the wave leaving at the root.
    pub to_root: Vec<(usize, usize)>,
    /// The slot of the root outlet's own reflection.
    pub at_root: Option<usize>,
    pub slots: usize,
}

/// Where two outlets' ways meet.
pub(super) enum Meet {
    In { part: usize, to_port: usize, from_port: usize },
    FromRoot,
    ToRoot,
    AtRoot,
}

impl Pairs {
    fn none(plan: &Plan) -> Self {
        Self {
            in_part: vec![0..0; plan.steps.len()],
            meetings: Vec::new(),
            receivers: Vec::new(),
            from_root: Vec::new(),
            to_root: Vec::new(),
            at_root: None,
            slots: 0,
        }
    }

    fn slot(&mut self) -> usize {
        let slot = self.slots;
        self.slots += 1;
        slot
    }

    pub fn all(plan: &Plan) -> (Self, Slots) {
        let count = plan.outlets.len();
        let mut pairs = Self::none(plan);
        let mut table = vec![usize::MAX; count * count];
        for (part, step) in plan.steps.iter().enumerate() {
            let first = pairs.meetings.len();
            for (from_port, from_side) in step.sides.clone().enumerate() {
                for from in plan.below[from_side].clone() {
                    for (to_port, to_side) in step.sides.clone().enumerate() {
                        let own = to_port == from_port;
                        if own && !matches!(plan.sides[to_side], Side::Outlet(_)) {
                            continue;
                        }
                        let both = |to: usize| plan.is_two_way(part, plan.outlets[to], plan.outlets[from]);
                        let start = pairs.receivers.len();
                        for to in plan.below[to_side].clone() {
                            let (i, j) = (plan.outlets[to], plan.outlets[from]);
                            if to_port > from_port && both(to) {
                                continue; // found from the other end
                            }
                            let slot = pairs.slot();
                            table[i * count + j] = slot;
                            if both(to) {
                                table[j * count + i] = slot;
                            }
                            pairs.receivers.push((to, slot));
                        }
                        if pairs.receivers.len() > start {
                            let receivers = start..pairs.receivers.len();
                            pairs.meetings.push(Meeting { to_port, from_port, from, receivers });
                        }
                    }
                }
            }
            pairs.in_part[part] = first..pairs.meetings.len();
        }
        if let Some(root) = plan.root_outlet {
            let slot = pairs.slot();
            pairs.at_root = Some(slot);
            table[root * count + root] = slot;
            for place in 1..count {
                let outlet = plan.outlets[place];
                let slot = pairs.slot();
                pairs.from_root.push((place, slot));
                table[outlet * count + root] = slot;
                let slot = if plan.is_two_way_to_root(outlet) {
                    slot
                } else {
                    let slot = pairs.slot();
                    pairs.to_root.push((place, slot));
                    slot
                };
                table[root * count + outlet] = slot;
            }
        }
        (pairs, Slots::All(table.into()))
    }

    pub fn some(plan: &Plan, list: &[(OutletIndex, OutletIndex)]) -> Result<(Self, Slots), CoaxError> {
        let outlets = plan.outlets.len();
        let mut place = vec![0; outlets];
        for (at, &outlet) in plan.outlets.iter().enumerate() {
            place[outlet] = at;
        }
        let mut pairs = Self::none(plan);
        let mut slots = HashMap::new();
        let mut found = Vec::new();
        for &(to, from) in list {
            for outlet in [to.0, from.0] {
                if outlet >= outlets {
                    return Err(CoaxError::NoSuchOutlet { outlet, outlets });
                }
            }
            if slots.contains_key(&(to.0, from.0)) {
                continue;
            }
            let slot = pairs.slot();
            slots.insert((to.0, from.0), slot);
            let two_way = match plan.meet(to.0, from.0) {
                Meet::In { part, to_port, from_port } => {
                    found.push((part, place[from.0], from_port, to_port, place[to.0], slot));
                    plan.is_two_way(part, to.0, from.0)
                }
                Meet::FromRoot => {
                    pairs.from_root.push((place[to.0], slot));
                    plan.is_two_way_to_root(to.0)
                }
                Meet::ToRoot => {
                    pairs.to_root.push((place[from.0], slot));
                    plan.is_two_way_to_root(from.0)
                }
                Meet::AtRoot => {
                    pairs.at_root = Some(slot);
                    true
                }
            };
            if two_way {
                slots.insert((from.0, to.0), slot);
            }
        }
        found.sort_unstable();
        let mut at = 0;
        while let Some(&(part, from, from_port, to_port, _, _)) = found.get(at) {
            let start = pairs.receivers.len();
            while let Some(&(p, f, fp, tp, to, slot)) = found.get(at)
                && (p, f, fp, tp) == (part, from, from_port, to_port)
            {
                pairs.receivers.push((to, slot));
                at += 1;
            }
            let here = pairs.meetings.len();
            let range = &mut pairs.in_part[part];
            *range = if range.start == range.end { here..here + 1 } else { range.start..here + 1 };
            let receivers = start..pairs.receivers.len();
            pairs.meetings.push(Meeting { to_port, from_port, from, receivers });
        }
        Ok((pairs, Slots::Some(slots)))
    }
}

impl Plan {
    /// Whether the way between two outlets that meet in `part` is alike in both directions.
    pub(super) fn is_two_way(&self, part: usize, a: usize, b: usize) -> bool {
        let count = |outlet: usize| self.side_of[outlet].map(|side| self.one_way[self.part_of[side]]);
        !self.steps[part].is_one_way
            && count(a) == Some(self.one_way[part])
            && count(b) == Some(self.one_way[part])
    }

    /// Whether the way from an outlet to the root's is alike in both directions.
    pub(super) fn is_two_way_to_root(&self, outlet: usize) -> bool {
        self.side_of[outlet].is_none_or(|side| self.one_way[self.part_of[side]] == 0)
    }

    pub(super) fn meet(&self, to: usize, from: usize) -> Meet {
        let (mut a, mut b) = match (self.side_of[to], self.side_of[from]) {
            (Some(a), Some(b)) => (a, b),
            (Some(_), None) => return Meet::FromRoot,
            (None, Some(_)) => return Meet::ToRoot,
            (None, None) => return Meet::AtRoot,
        };
        while self.part_of[a] != self.part_of[b] {
            let (part_a, part_b) = (self.part_of[a], self.part_of[b]);
            let climb_a = self.depth[part_a] >= self.depth[part_b];
            match self.above[if climb_a { part_a } else { part_b }] {
                Some(side) if climb_a => a = side,
                Some(side) => b = side,
                None => break,
            }
        }
        let part = self.part_of[a];
        let first = self.steps[part].sides.start;
        Meet::In { part, to_port: a - first, from_port: b - first }
    }
}
