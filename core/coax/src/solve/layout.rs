//! Where what the walk over all pairs works out lies in memory: counted in groups of frequencies.

use std::ops::Range;

use num_complex::Complex64;

use super::group::{Group, Shape};
use super::plan::{Plan, Side, Step};

/// What is joined to a port away from the root.
#[derive(Debug, Clone, Copy)]
pub(super) enum Load {
    /// A fixed reflection: which of [`Layout::ends`].
    End(usize),
    /// A branch: where its part's matrix lies, of which the first entry is what the branch reflects.
    Branch(usize),
}

/// One part.
#[derive(Debug, Clone)]
pub(super) struct Place {
    /// All its ports: that towards the root, and the others.
    pub ports: usize,
    pub shape: Shape,
    /// Where its matrix lies.
    pub matrix: Range<usize>,
    /// What is joined to its ports away from the root: which of [`Layout::loads`].
    pub loads: Range<usize>,
    /// Whether any of those reflects something.
    pub is_live: bool,
    /// Where the entry of the part above lies that is what comes down into it; none at the root.
    pub above: Option<usize>,
    /// Parts of one output right above it, which all that comes up from it must pass, the next one first.
    pub passed: Range<usize>,
}

impl Place {
    /// Where the entry for a wave out of `to`, into `from`, lies.
    pub fn entry(&self, to: usize, from: usize) -> usize {
        self.matrix.start + self.shape.entry(self.ports, to, from)
    }
}

/// All of it for one shape of tree.
#[derive(Debug)]
pub(super) struct Layout {
    pub places: Vec<Place>,
    pub loads: Vec<Load>,
    /// Fixed reflections, the first of them nothing.
    pub ends: Vec<Complex64>,
    pub passed: Vec<usize>,
    /// All matrices together.
    pub size: usize,
    /// The entries of the largest.
    pub largest: usize,
}

impl Layout {
    pub fn of(plan: &Plan) -> Self {
        let mut layout = Self {
            places: Vec::with_capacity(plan.steps.len()),
            loads: Vec::with_capacity(plan.sides.len()),
            ends: vec![Complex64::ZERO],
            passed: Vec::new(),
            size: 0,
            largest: 0,
        };
        for (at, step) in plan.steps.iter().enumerate() {
            let place = layout.place(plan, at, step);
            layout.size = place.matrix.end;
            layout.largest = layout.largest.max(place.matrix.len());
            layout.places.push(place);
        }
        // A branch's part stands after the part that it hangs on.
        for side in &plan.sides {
            let load = match *side {
                Side::Outlet(_) => Load::End(0),
                Side::End(reflection) => Load::End(layout.end(reflection)),
                Side::Part(below) => Load::Branch(layout.places[below].matrix.start),
            };
            layout.loads.push(load);
        }
        layout
    }

    fn place(&mut self, plan: &Plan, at: usize, step: &Step) -> Place {
        let shape = if step.is_one_way { Shape::Full } else { Shape::Upper };
        let ports = step.width + 1;
        let first = self.passed.len();
        let up = |part: usize| plan.above[part].map(|side| plan.part_of[side]);
        // A part of one output before another part is passed by what passes that.
        let ends_here = step.sides.clone().any(|side| matches!(plan.sides[side], Side::Outlet(_)));
        let mut above = if step.width > 1 || ends_here { up(at) } else { None };
        while let Some(part) = above.filter(|part| plan.steps[*part].width == 1) {
            self.passed.push(part);
            above = up(part);
        }
        Place {
            ports,
            shape,
            matrix: self.size..self.size + shape.entries(ports),
            loads: step.sides.clone(),
            is_live: !step.live.is_empty(),
            above: plan.above[at].map(|side| {
                let part = plan.part_of[side];
                let port = side - plan.steps[part].sides.start + 1;
                self.places[part].entry(port, port)
            }),
            passed: first..self.passed.len(),
        }
    }

    fn end(&mut self, reflection: Complex64) -> usize {
        self.ends.iter().position(|end| *end == reflection).unwrap_or_else(|| {
            self.ends.push(reflection);
            self.ends.len() - 1
        })
    }

    /// The fixed reflections at every frequency of a group.
    pub fn ends(&self) -> Vec<Group> {
        self.ends.iter().map(|reflection| Group::of(*reflection)).collect()
    }
}
