//! What has to be worked out of a tree where only some pairs of outlets are asked for.
//!
//! Of a part that no asked way bends in, only `x` is wanted, one column of the elimination in place of one for each port. What
//! is seen from below is wanted on the way from the root to the bends alone. The products of `x` along the ways are those of a
//! tree of their own: what two ways share is multiplied once.

use std::collections::HashMap;
use std::ops::Range;

use super::index::OutletIndex;
use super::pairs::Meet;
use super::plan::{Plan, Side};
use super::tree::Tree;
use crate::error::CoaxError;

/// One part's place in the arrays of a [`super::sweep::Sweep`]: all counted in waves of one block.
#[derive(Debug)]
pub(super) struct Piece {
    /// Ports away from the root.
    pub width: usize,
    /// All ports, that towards the root first: which of [`Course::orders`].
    pub order: Range<usize>,
    /// Where its matrix lies.
    pub matrix: usize,
    /// Where its rows `[x | g]` lie, with only those columns of `g` that are wanted.
    pub fold: usize,
    /// Its ports whose column of `g` is wanted: which of [`Course::columns`].
    pub columns: Range<usize>,
    /// Where its columns of `B` lie, row by row.
    pub bend: usize,
    /// Where its `y` lies, if it is not `x` and is wanted.
    pub back: Option<usize>,
    pub sides: Range<usize>,
    /// Its ports that reflect something: which of the plan's.
    pub live: Range<usize>,
    /// Whether what is seen above it is wanted: a way bends in it or below it.
    pub is_carried: bool,
}

impl Piece {
    /// Columns of its rows.
    pub fn stride(&self) -> usize {
        1 + self.columns.len()
    }
}

/// A factor along a way: an `x`, or a `y`.
#[derive(Debug, Clone, Copy)]
pub(super) enum Factor {
    /// Where the rows of its part begin, how many waves they are, and which of them.
    Down { first: usize, size: usize, at: usize },
    /// The same of `y`.
    Up { first: usize, size: usize, at: usize },
}

/// A product: of an earlier one, if any, and a factor.
#[derive(Debug)]
pub(super) struct Product {
    pub before: Option<usize>,
    pub factor: Factor,
}

/// What a pair is, between the products of its two ways.
#[derive(Debug)]
pub(super) enum Bend {
    /// Where the `B` of its part begin, how many waves they are, and which of them.
    In { first: usize, size: usize, at: usize },
    /// The ways do not bend: one end is at the root.
    Straight,
    /// What the root's outlet sees of the house.
    AtRoot,
}

#[derive(Debug)]
pub(super) struct Wanting {
    pub bend: Bend,
    pub to: Option<usize>,
    pub from: Option<usize>,
}

/// All of it for one shape of tree.
#[derive(Debug, Default)]
pub(super) struct Course {
    pub pieces: Vec<Piece>,
    pub orders: Vec<usize>,
    pub columns: Vec<usize>,
    pub products: Vec<Product>,
    pub pairs: Vec<Wanting>,
    /// By what was asked: which of the pairs.
    pub slots: Vec<usize>,
    pub matrix_size: usize,
    pub fold_size: usize,
    pub bend_size: usize,
    pub back_size: usize,
}

impl Course {
    pub fn of(tree: &Tree, wanted: &[(OutletIndex, OutletIndex)]) -> Result<Self, CoaxError> {
        let plan = &*tree.plan;
        let outlets = plan.outlets.len();
        let named = wanted.iter().flat_map(|(to, from)| [to.0, from.0]);
        if let Some(outlet) = named.into_iter().find(|outlet| *outlet >= outlets) {
            return Err(CoaxError::NoSuchOutlet { outlet, outlets });
        }
        let mut course = Self::default();
        course.lay(tree, &Needs::of(plan, wanted));
        let mut maker = Maker { plan, course, known: HashMap::new() };
        let mut found: HashMap<(usize, usize), usize> = HashMap::with_capacity(2 * wanted.len());
        for (to, from) in wanted {
            let slot = found.get(&(to.0, from.0)).copied().unwrap_or_else(|| {
                let (pair, is_two_way) = maker.pair(to.0, from.0);
                let slot = maker.course.pairs.len();
                maker.course.pairs.push(pair);
                found.insert((to.0, from.0), slot);
                if is_two_way {
                    found.insert((from.0, to.0), slot);
                }
                slot
            });
            maker.course.slots.push(slot);
        }
        Ok(maker.course)
    }

    fn lay(&mut self, tree: &Tree, needs: &Needs) {
        for (place, (step, part)) in tree.plan.steps.iter().zip(tree.parts.iter()).enumerate() {
            let is_one_way = step.is_one_way;
            let (width, first) = (step.width, self.columns.len());
            let is_wanted = |port: usize| needs.columns.contains(&(step.sides.start + port));
            // All columns make up `y`.
            self.columns.extend((0..width).filter(|port| is_one_way || is_wanted(*port)));
            let columns = first..self.columns.len();
            let first = self.orders.len();
            self.orders.extend(part.order());
            let (rows, bends) = (width * (1 + columns.len()), width * columns.len());
            self.pieces.push(Piece {
                width,
                order: first..self.orders.len(),
                matrix: self.matrix_size,
                fold: self.fold_size,
                columns,
                bend: self.bend_size,
                back: is_one_way.then_some(self.back_size),
                sides: step.sides.clone(),
                live: step.live.clone(),
                is_carried: needs.carried[place],
            });
            self.matrix_size += (width + 1).pow(2);
            self.fold_size += rows;
            self.bend_size += bends;
            self.back_size += if is_one_way { width } else { 0 };
        }
    }

    /// Where `B[to, from]` of a part lies; its column is wanted.
    fn bend(&self, place: usize, to: usize, from: usize) -> Option<Bend> {
        let piece = self.pieces.get(place)?;
        let columns = piece.columns.len();
        let column = self.columns.get(piece.columns.clone())?.iter().position(|port| *port == from)?;
        Some(Bend::In { first: piece.bend, size: piece.width * columns, at: to * columns + column })
    }
}

/// Which parts see what is above them, and which columns of `g` that takes.
struct Needs {
    carried: Vec<bool>,
    columns: std::collections::HashSet<usize>,
}

impl Needs {
    fn of(plan: &Plan, wanted: &[(OutletIndex, OutletIndex)]) -> Self {
        let mut needs =
            Self { carried: vec![false; plan.steps.len()], columns: std::collections::HashSet::new() };
        for (to, from) in wanted {
            let Meet::In { part, from_port, .. } = plan.meet(to.0, from.0) else { continue };
            let first = plan.steps[part].sides.start;
            needs.columns.insert(first + from_port);
            let mut place = Some(part);
            while let Some(part) = place.filter(|part| !std::mem::replace(&mut needs.carried[*part], true)) {
                place = plan.above[part].map(|side| plan.part_of[side]);
            }
        }
        // A part of one output is passed by its matrix alone.
        for (place, step) in plan.steps.iter().enumerate().filter(|(_, step)| step.width > 1) {
            if needs.carried[place] {
                let leads =
                    |side: &usize| matches!(plan.sides[*side], Side::Part(below) if needs.carried[below]);
                needs.columns.extend(step.sides.clone().filter(leads));
            }
        }
        needs
    }
}

struct Maker<'a> {
    plan: &'a Plan,
    course: Course,
    /// Products by the side they begin below (none: the root), the side they end at, and whether they are of `y`.
    known: HashMap<(Option<usize>, usize, bool), usize>,
}

impl Maker<'_> {
    /// A pair, and whether it is alike in both directions.
    fn pair(&mut self, to: usize, from: usize) -> (Wanting, bool) {
        let plan = self.plan;
        match plan.meet(to, from) {
            Meet::In { part, to_port, from_port } => {
                let first = plan.steps[part].sides.start;
                let is_two_way = plan.is_two_way(part, to, from);
                let bend = self.course.bend(part, to_port, from_port);
                let to = self.way(Some(first + to_port), to, false);
                let from = self.way(Some(first + from_port), from, !is_two_way);
                (Wanting { bend: bend.unwrap_or(Bend::Straight), to, from }, is_two_way)
            }
            Meet::FromRoot => {
                let to_way = self.way(None, to, false);
                (Wanting { bend: Bend::Straight, to: to_way, from: None }, plan.is_two_way_to_root(to))
            }
            Meet::ToRoot => {
                let is_two_way = plan.is_two_way_to_root(from);
                let way = self.way(None, from, !is_two_way);
                (Wanting { bend: Bend::Straight, to: None, from: way }, is_two_way)
            }
            Meet::AtRoot => (Wanting { bend: Bend::AtRoot, to: None, from: None }, true),
        }
    }

    /// The product from below a side, or from the root, down to an outlet; none where nothing lies between.
    fn way(&mut self, begin: Option<usize>, outlet: usize, is_up: bool) -> Option<usize> {
        let end = self.plan.side_of[outlet]?;
        let above = |side: &usize| self.plan.above[self.plan.part_of[*side]];
        let mut sides: Vec<usize> =
            std::iter::successors(Some(end), above).take_while(|side| Some(*side) != begin).collect();
        sides.reverse();
        let mut before = None;
        for side in sides {
            let key = (begin, side, is_up);
            let known = self.known.get(&key).copied();
            before = Some(known.unwrap_or_else(|| {
                let product = self.course.products.len();
                self.course.products.push(Product { before, factor: self.factor(side, is_up) });
                self.known.insert(key, product);
                product
            }));
        }
        before
    }

    fn factor(&self, side: usize, is_up: bool) -> Factor {
        let place = self.plan.part_of[side];
        let piece = &self.course.pieces[place];
        let port = side - piece.sides.start;
        if let Some(back) = piece.back.filter(|_| is_up) {
            return Factor::Up { first: back, size: piece.width, at: port };
        }
        let stride = piece.stride();
        Factor::Down { first: piece.fold, size: piece.width * stride, at: port * stride }
    }
}
