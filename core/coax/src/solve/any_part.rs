//! A part of any size, alike both ways or not, joined to its branches: what the walk over all pairs does where `group.rs` has
//! nothing made for it, and with exchanged rows where a pivot is small.

use num_complex::Complex64;

use super::eliminate::{SMALL_PIVOT_SQUARED, solve_with_exchange};
use super::group::{GROUP, Group, Shape, add_product, echoes, multiply, multiply_by};

/// A part of so many ports, and how its matrices lie.
#[derive(Debug, Clone, Copy)]
pub(super) struct AnyPart {
    pub ports: usize,
    pub shape: Shape,
}

/// What joining needs on its way.
#[derive(Debug, Clone)]
pub(super) struct Aside {
    inverse: Group,
    entry: Group,
    share: Group,
    row: Vec<Group>,
}

impl Aside {
    /// For parts of at most so many ports.
    pub fn new(ports: usize) -> Self {
        let [inverse, entry, share] = [Group::ZERO; 3];
        Self { inverse, entry, share, row: vec![Group::ZERO; ports] }
    }
}

impl AnyPart {
    fn entry(self, to: usize, from: usize) -> usize {
        self.shape.entry(self.ports, to, from)
    }

    /// Joins port `p` of a part to what reflects so much: `S_ab + S_ap G S_pb / (1 - G S_pp)`. False where a pivot is small.
    pub fn join(self, p: usize, load: &Group, matrix: &mut [Group], aside: &mut Aside) -> bool {
        let Aside { inverse, entry, share, row } = aside;
        if !echoes(load, &matrix[self.entry(p, p)], SMALL_PIVOT_SQUARED, inverse) {
            return false;
        }
        for (b, row) in row.iter_mut().enumerate().take(self.ports) {
            *row = matrix[self.entry(p, b)];
        }
        for a in (0..self.ports).filter(|a| *a != p) {
            multiply(&matrix[self.entry(a, p)], inverse, entry);
            multiply(load, entry, share);
            let first = if self.shape == Shape::Upper { a } else { 0 };
            for b in (first..self.ports).filter(|b| *b != p) {
                add_product(&mut matrix[self.entry(a, b)], share, &row[b]);
            }
            matrix[self.entry(a, p)] = *entry;
            if self.shape == Shape::Full {
                multiply_by(&mut matrix[self.entry(p, a)], inverse);
            }
        }
        multiply_by(&mut matrix[self.entry(p, p)], inverse);
        true
    }

    /// Adds what comes down into a folded part: `h x y`, over all ports but the first.
    pub fn let_down(self, h: &Group, folded: &mut [Group], aside: &mut Aside) {
        for (b, row) in aside.row.iter_mut().enumerate().take(self.ports) {
            *row = folded[self.entry(0, b)];
        }
        for a in 1..self.ports {
            multiply(h, &folded[self.entry(a, 0)], &mut aside.share);
            let first = if self.shape == Shape::Upper { a } else { 1 };
            for b in first..self.ports {
                add_product(&mut folded[self.entry(a, b)], &aside.share, &aside.row[b]);
            }
        }
    }

    /// Joins all ports but the first at once, frequency by frequency, with exchanged rows.
    ///
    /// # Errors
    /// The place of the first frequency at which there is no answer.
    #[cold]
    pub fn fold_with_exchange(
        self,
        matrix: &[Group],
        loads: &[&Group],
        into: &mut [Group],
    ) -> Result<(), usize> {
        let (n, r) = (self.ports, self.ports - 1);
        let mut left = vec![Complex64::ZERO; r * r];
        let mut right = vec![Complex64::ZERO; r * n];
        for k in 0..GROUP {
            let s = |to: usize, from: usize| matrix[self.entry(to, from)].value(k);
            // (I - S_cc G) [x | g] = [S_c0 | S_cc]
            for a in 0..r {
                for b in 0..r {
                    let one = if a == b { Complex64::ONE } else { Complex64::ZERO };
                    left[a * r + b] = one - s(a + 1, b + 1) * loads[b].value(k);
                }
                for b in 0..n {
                    right[a * n + b] = s(a + 1, b);
                }
            }
            if !solve_with_exchange(&mut left, &mut right, r, n) {
                return Err(k);
            }
            for b in 0..n {
                // gin = S_00 + S_0c G x, y = S_0c (I + G g)
                let below = (0..r).map(|c| s(0, c + 1) * loads[c].value(k) * right[c * n + b]);
                into[self.entry(0, b)].set_value(k, s(0, b) + below.sum::<Complex64>());
                for a in 0..r {
                    if self.shape == Shape::Full || b > a {
                        into[self.entry(a + 1, b)].set_value(k, right[a * n + b]);
                    }
                }
            }
        }
        Ok(())
    }
}
