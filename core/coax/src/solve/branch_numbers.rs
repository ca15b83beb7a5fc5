//! Which branches of several trees are one and the same, told once, whatever is drawn of their parts.

use std::collections::HashMap;
use std::hash::BuildHasher;
use std::ops::Range;

use foldhash::fast::FixedState;

use super::plan::Side;
use super::tree::Tree;
use crate::error::CoaxError;

/// Numbers for branches of trees whose parts and ends somebody numbered: parts of one number are the same, and so are ends. All
/// sides lie one after the other: so many branches are met that memory for each by itself would cost more than to fold it.
#[derive(Debug, Default)]
pub struct BranchNumbers {
    branches: Vec<Branch>,
    sides: Vec<Under>,
    /// The last branch of a hash.
    by_hash: HashMap<u64, usize, FixedState>,
    hasher: FixedState,
}

#[derive(Debug)]
struct Branch {
    root: Root,
    /// Where its sides lie.
    sides: Range<usize>,
    /// The branch of the same hash that was met before it.
    before: Option<usize>,
}

/// A branch's first part, by its number, and which of its ports faces the root.
type Root = (usize, usize);

/// What is on another port of that.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Under {
    Outlet,
    /// An end, by its number.
    End(usize),
    /// A branch, by its number.
    Branch(usize),
}

/// The branches of one tree by their numbers.
#[derive(Debug, Clone)]
pub struct NumberedBranches {
    /// In the order of work on the tree: the branch that begins with each part.
    pub(super) of: Vec<NumberedBranch>,
}

/// A branch of a tree.
#[derive(Debug, Clone, Copy)]
pub(super) struct NumberedBranch {
    pub number: usize,
    /// Which of the tree's ends is the first of its first part, if that has any.
    pub first_end: usize,
}

impl BranchNumbers {
    /// The numbers of a tree's branches. `parts` has the number of each part of the network, in the order in which they were added to
    /// it, `ends` that of each of [`Tree::ends`].
    ///
    /// # Errors
    /// [`CoaxError::NoSuchPart`] where a part has no number, [`CoaxError::BadCount`] where an end has none.
    pub fn of(
        &mut self,
        tree: &Tree,
        parts: &[usize],
        ends: &[usize],
    ) -> Result<NumberedBranches, CoaxError> {
        let all_ends = tree.plan.sides.iter().filter(|side| matches!(side, Side::End(_))).count();
        if ends.len() != all_ends {
            let (what, must) = ("the numbers of a tree's ends", "one for each of them");
            return Err(CoaxError::BadCount { what, given: ends.len(), must });
        }
        let mut of = vec![NumberedBranch { number: 0, first_end: 0 }; tree.parts.len()];
        let mut under = Vec::new();
        let mut first_end = ends.len();
        for (place, (step, part)) in tree.plan.steps.iter().zip(tree.parts.iter()).enumerate().rev() {
            let sides = &tree.plan.sides[step.sides.clone()];
            first_end -= sides.iter().filter(|side| matches!(side, Side::End(_))).count();
            let mut next_end = first_end;
            under.clear();
            under.extend(sides.iter().map(|side| match side {
                Side::Outlet(_) => Under::Outlet,
                Side::Part(below) => Under::Branch(of[*below].number),
                Side::End(_) => {
                    next_end += 1;
                    Under::End(ends[next_end - 1])
                }
            }));
            let Some(number) = parts.get(part.original) else {
                return Err(CoaxError::NoSuchPart { part: part.original, parts: parts.len() });
            };
            of[place] = NumberedBranch { number: self.number((*number, part.up_port), &under), first_end };
        }
        Ok(NumberedBranches { of })
    }

    /// The number of a branch: the one that it was given before, or else the next.
    fn number(&mut self, root: Root, sides: &[Under]) -> usize {
        let Self { branches, sides: all, by_hash, hasher } = self;
        let hash = hasher.hash_one((root, sides));
        let mut met = by_hash.get(&hash).copied();
        while let Some(number) = met {
            let branch = &branches[number];
            if branch.root == root && all[branch.sides.clone()] == *sides {
                return number;
            }
            met = branch.before;
        }
        let (number, first) = (branches.len(), all.len());
        all.extend_from_slice(sides);
        branches.push(Branch { root, sides: first..all.len(), before: by_hash.insert(hash, number) });
        number
    }
}
