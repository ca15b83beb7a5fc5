//! Plain dense linear algebra, written for the tests alone and independent of the solver.

use num_complex::Complex64;

/// A square matrix, row by row.
#[derive(Debug, Clone)]
pub struct Dense {
    pub n: usize,
    pub at: Vec<Complex64>,
}

impl Dense {
    pub fn zero(n: usize) -> Self {
        Self { n, at: vec![Complex64::ZERO; n * n] }
    }

    pub fn get(&self, row: usize, column: usize) -> Complex64 {
        self.at[row * self.n + column]
    }

    pub fn put(&mut self, row: usize, column: usize, value: Complex64) {
        self.at[row * self.n + column] = value;
    }

    pub fn times(&self, other: &Self) -> Self {
        let mut out = Self::zero(self.n);
        for i in 0..self.n {
            for k in 0..self.n {
                for j in 0..self.n {
                    out.at[i * self.n + j] += self.get(i, k) * other.get(k, j);
                }
            }
        }
        out
    }

    pub fn largest(&self) -> f64 {
        self.at.iter().map(|value| value.norm()).fold(0.0, f64::max)
    }

    /// The solution `x` of `self x = right`, by Gauss elimination with exchange of rows.
    pub fn solve(&self, right: &[Complex64]) -> Vec<Complex64> {
        let n = self.n;
        let mut left = self.at.clone();
        let mut x = right.to_vec();
        for p in 0..n {
            let best =
                (p..n).max_by(|&i, &j| left[i * n + p].norm().total_cmp(&left[j * n + p].norm())).unwrap();
            for j in 0..n {
                left.swap(p * n + j, best * n + j);
            }
            x.swap(p, best);
            for i in p + 1..n {
                let factor = left[i * n + p] / left[p * n + p];
                for j in p..n {
                    let pivot = left[p * n + j];
                    left[i * n + j] -= factor * pivot;
                }
                let pivot = x[p];
                x[i] -= factor * pivot;
            }
        }
        for p in (0..n).rev() {
            let known: Complex64 = (p + 1..n).map(|j| left[p * n + j] * x[j]).sum();
            x[p] = (x[p] - known) / left[p * n + p];
        }
        x
    }

    /// Whether the largest singular value is at most `bound`: `bound^2 I - S^H S` has an LDL factorisation without a negative
    /// pivot.
    pub fn is_bounded_by(&self, bound: f64) -> bool {
        let n = self.n;
        let mut left = vec![Complex64::ZERO; n * n];
        for i in 0..n {
            for j in 0..n {
                let product: Complex64 = (0..n).map(|k| self.get(k, i).conj() * self.get(k, j)).sum();
                left[i * n + j] = if i == j { bound * bound - product } else { -product };
            }
        }
        for p in 0..n {
            if left[p * n + p].re <= 0.0 {
                return false;
            }
            for i in p + 1..n {
                let factor = left[i * n + p] / left[p * n + p];
                for j in p..n {
                    let pivot = left[p * n + j];
                    left[i * n + j] -= factor * pivot;
                }
            }
        }
        true
    }
}
