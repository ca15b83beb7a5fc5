//! The order of work on a tree, laid out flat.

use std::ops::Range;
use std::sync::Arc;

use num_complex::Complex64;

use crate::model::Model;

/// What is on a port away from the root.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Side {
    /// A matched device whose signals are asked for: an outlet, by its number in the network.
    Outlet(usize),
    /// A fixed reflection.
    End(Complex64),
    /// The root of a branch, by its place in the order of work.
    Part(usize),
}

/// A part of a tree, with its ports away from the root in rising order.
#[derive(Debug, Clone)]
pub(crate) struct TreePart {
    pub original: usize,
    pub model: Arc<Model>,
    pub up_port: usize,
    pub sides: Vec<Side>,
}

/// A part's place in the flat scratch arrays.
#[derive(Debug, Clone)]
pub(crate) struct Step {
    /// Ports away from the root.
    pub width: usize,
    /// Whether it is not alike both ways.
    pub is_one_way: bool,
    /// Where its sides (and their loads) lie.
    pub sides: Range<usize>,
    /// Its ports that reflect something, in `Plan::live`.
    pub live: Range<usize>,
    /// Outlets (in order of work) below each side, in `Plan::below`.
    pub original: usize,
}

/// A tree laid out for the solver: parts in an order in which each stands after the one it hangs on.
#[derive(Debug)]
pub(crate) struct Plan {
    pub steps: Vec<Step>,
    pub sides: Vec<Side>,
    /// For each side: the outlets below it, a range of places in `outlets`.
    pub below: Vec<Range<usize>>,
    /// Ports (counted from 0 among the sides of their part) that reflect something.
    pub live: Vec<usize>,
    /// The root's reflection from above.
    pub root_reflection: Complex64,
    /// The outlet at the root's upper port.
    pub root_outlet: Option<usize>,
    /// Outlets by place: their numbers in the network.
    pub outlets: Vec<usize>,
    /// By outlet number: the side it is on; none for the root's.
    pub side_of: Vec<Option<usize>>,
    /// By side: the part it belongs to.
    pub part_of: Vec<usize>,
    /// By part: the side above it; none for the root.
    pub above: Vec<Option<usize>>,
    /// By part: how many parts from it up to the root are not reciprocal, itself included.
    pub one_way: Vec<usize>,
    /// By part: steps down from the root.
    pub depth: Vec<usize>,
    pub widest: usize,
}

impl TreePart {
    /// Its ports, that towards the root first.
    pub fn order(&self) -> Vec<usize> {
        let others = (0..self.model.ports()).filter(|port| *port != self.up_port);
        std::iter::once(self.up_port).chain(others).collect()
    }

    /// Whether two parts are one and the same model, the same way round.
    pub fn is_same_model(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.model, &other.model) && self.up_port == other.up_port
    }
}

impl Plan {
    /// Lays these parts out.
    pub fn of(
        parts: &[TreePart],
        root_reflection: Complex64,
        root_outlet: Option<usize>,
        outlets: usize,
    ) -> Self {
        let mut plan = Self {
            steps: Vec::with_capacity(parts.len()),
            sides: Vec::new(),
            below: Vec::new(),
            live: Vec::new(),
            root_reflection,
            root_outlet,
            outlets: vec![0; outlets],
            side_of: vec![None; outlets],
            part_of: Vec::new(),
            above: vec![None; parts.len()],
            one_way: vec![0; parts.len()],
            depth: vec![0; parts.len()],
            widest: 0,
        };
        for (place, part) in parts.iter().enumerate() {
            plan.lay(place, part);
        }
        plan.place_outlets();
        plan
    }

    /// Whether every part carries waves alike both ways.
    pub fn is_reciprocal(&self) -> bool {
        self.steps.iter().all(|step| !step.is_one_way)
    }

    /// Whether another tree differs in its models, and in what its ends send back, at the most.
    pub fn is_shaped_as(&self, other: &Self) -> bool {
        let is_alike = |(one, other): (&Side, &Side)| match (one, other) {
            (Side::End(_), Side::End(_)) => true,
            (Side::Outlet(one), Side::Outlet(other)) | (Side::Part(one), Side::Part(other)) => one == other,
            _ => false,
        };
        let is_step =
            |(one, other): (&Step, &Step)| (&one.sides, one.is_one_way) == (&other.sides, other.is_one_way);
        self.root_outlet == other.root_outlet
            && self.live == other.live
            && self.sides.len() == other.sides.len()
            && self.sides.iter().zip(&other.sides).all(is_alike)
            && self.steps.len() == other.steps.len()
            && self.steps.iter().zip(&other.steps).all(is_step)
    }

    fn lay(&mut self, place: usize, part: &TreePart) {
        let width = part.sides.len();
        let one_way = !part.model.is_reciprocal();
        let (first_side, first_live) = (self.sides.len(), self.live.len());
        self.one_way[place] += usize::from(one_way);
        for (port, &side) in part.sides.iter().enumerate() {
            let here = self.sides.len();
            match side {
                Side::Outlet(outlet) => self.side_of[outlet] = Some(here),
                Side::End(reflection) => {
                    if reflection != Complex64::ZERO {
                        self.live.push(port);
                    }
                }
                Side::Part(below) => {
                    self.above[below] = Some(here);
                    self.one_way[below] = self.one_way[place];
                    self.depth[below] = self.depth[place] + 1;
                    self.live.push(port);
                }
            }
            self.sides.push(side);
            self.part_of.push(place);
        }
        self.steps.push(Step {
            width,
            is_one_way: one_way,
            sides: first_side..self.sides.len(),
            live: first_live..self.live.len(),
            original: part.original,
        });
        self.widest = self.widest.max(width);
    }

    /// Numbers the outlets so that those below any side stand together.
    fn place_outlets(&mut self) {
        let mut count = vec![0_usize; self.steps.len()];
        let mut below = vec![0_usize; self.sides.len()];
        for place in (0..self.steps.len()).rev() {
            for side in self.steps[place].sides.clone() {
                below[side] = match self.sides[side] {
                    Side::Outlet(_) => 1,
                    Side::End(_) => 0,
                    Side::Part(part) => count[part],
                };
                count[place] += below[side];
            }
        }
        let mut first = vec![usize::from(self.root_outlet.is_some()); self.steps.len()];
        self.below = vec![0..0; self.sides.len()];
        for place in 0..self.steps.len() {
            let mut next = first[place];
            for side in self.steps[place].sides.clone() {
                self.below[side] = next..next + below[side];
                match self.sides[side] {
                    Side::Outlet(outlet) => self.outlets[next] = outlet,
                    Side::End(_) => {}
                    Side::Part(part) => first[part] = next,
                }
                next += below[side];
            }
        }
        if let Some(outlet) = self.root_outlet {
            self.outlets[0] = outlet;
        }
    }
}
