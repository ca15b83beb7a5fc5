//! Which branches of several trees are one and the same, told once, whatever is drawn of their parts.

use std::collections::HashMap;
use std::hash::BuildHasher;
use std::ops::Range;

use foldhash::fast::FixedState;

use super::plan::Side;
use super::tree::Tree;

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
    /// it, `ends` that of each of [`Tree::ends`]; where one is missing it counts as number 0.
    pub fn of(&mut self, tree: &Tree, parts: &[usize], ends: &[usize]) -> NumberedBranches {
        let mut of = vec![NumberedBranch { number: 0, first_end: 0 }; tree.parts.len()];
        let mut under = Vec::new();
        let mut ends_left = ends.len();
        for (place, (step, part)) in tree.plan.steps.iter().zip(tree.parts.iter()).enumerate().rev() {
            let sides = &tree.plan.sides[step.sides.clone()];
            ends_left -= sides.iter().filter(|side| matches!(side, Side::End(_))).count().min(ends_left);
            let mut own_ends = ends.iter().skip(ends_left);
            under.clear();
            under.extend(sides.iter().map(|side| match side {
                Side::Outlet(_) => Under::Outlet,
                Side::Part(below) => Under::Branch(of[*below].number),
                Side::End(_) => Under::End(own_ends.next().copied().unwrap_or(0)),
            }));
            let root = (parts.get(part.original).copied().unwrap_or(0), part.up_port);
            of[place] = NumberedBranch { number: self.number(root, &under), first_end: ends_left };
        }
        NumberedBranches { of }
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
