//! The exact solution of a wiring tree: every echo counted, all pairs of outlets at the cost of one walk.
//!
//! Each branch is folded to one reflection coefficient from its ends up; then waves are carried down from the root. With
//! `S` a part's matrix (0: towards the root, `c`: away from it) and `G` what its branches reflect:
//!
//! - up: `(I - S_cc G) [x | g] = [S_c0 | S_cc]`, `gin = S_00 + S_0c G x`, `y = S_0c (I + G g)`;
//! - down: `h = u/(1 - gin u)` with `u` what is reflected from above, `B = g + h x y`, and the branch at port `c` sees
//!   `B_cc/(1 + G_c B_cc)` above it;
//! - a pair whose ways meet in a part: `S_ij = D_i B[a, b] E_j`, `D` the product of the `x` below `a`, `E` of the `y` below `b`.
//!
//! This is Gauss elimination of the whole house's wave equations in an order without fill-in (signal-flow graphs: Pozar,
//! "Microwave Engineering"; elimination on trees: any text on sparse matrices). It is exact, not an approximation.

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of the walk"
)]

mod any_part;
mod arena;
mod branch_numbers;
mod branches;
mod cores;
mod course;
mod eliminate;
mod evaluate;
mod fold;
mod group;
mod index;
mod layout;
mod network;
mod pairs;
mod plan;
mod samples;
mod solution;
mod sweep;
mod tables;
mod tree;
mod wave;

pub use branch_numbers::{BranchNumbers, NumberedBranches};
pub use branches::{Branches, RootPowers};
pub use cores::cores;
pub use index::{OutletIndex, PartIndex};
pub use network::{End, Network};
pub use pairs::Wanted;
pub use samples::{Sampled, Samples};
pub use solution::Solution;
pub use sweep::{Powers, Sweep};
pub use tree::Tree;
