//! The small elimination in each part.

use num_complex::Complex64;

use super::wave::{LANES, Wave};

/// A pivot below this magnitude squared (1e-6) makes the elimination start again with exchanged rows.
const SMALL_PIVOT_SQUARED: f64 = 1e-12;
/// A pivot below this magnitude squared (1e-9), with rows exchanged, leaves no digits worth having.
pub(super) const NO_PIVOT_SQUARED: f64 = 1e-18;

/// `I - S_cc G` over the ports that reflect something.
#[inline(always)]
pub(super) fn fill_small(small: &mut [Wave], live: &[usize], matrix: &[Wave], loads: &[Wave], n: usize) {
    let r = live.len();
    for (i, &a) in live.iter().enumerate() {
        for (j, &b) in live.iter().enumerate() {
            let mut entry = if i == j { Wave::ONE } else { Wave::ZERO };
            entry.subtract_product(&matrix[(a + 1) * n + b + 1], &loads[b]);
            small[i * r + j] = entry;
        }
    }
}

/// Gauss-Jordan without exchange of rows; false if a pivot is small.
#[inline(always)]
pub(super) fn eliminate(small: &mut [Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
    let r = live.len();
    for (p, &a) in live.iter().enumerate() {
        let (inverse, sound) = small[p * r + p].inverse_above(SMALL_PIVOT_SQUARED);
        if !sound {
            return false;
        }
        for j in p + 1..r {
            small[p * r + j] = small[p * r + j].times(&inverse);
        }
        for c in 0..n {
            rows[a * n + c] = rows[a * n + c].times(&inverse);
        }
        for (i, &b) in live.iter().enumerate() {
            if i == p {
                continue;
            }
            let factor = small[i * r + p];
            for j in p + 1..r {
                let pivot = small[p * r + j];
                small[i * r + j].subtract_product(&factor, &pivot);
            }
            for c in 0..n {
                let pivot = rows[a * n + c];
                rows[b * n + c].subtract_product(&factor, &pivot);
            }
        }
    }
    true
}

/// The same, one frequency after the other, with the largest pivot of each column; false if the matrix is singular.
#[cold]
pub(super) fn eliminate_with_exchange(small: &[Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
    let r = live.len();
    for lane in 0..LANES {
        let mut left: Vec<Complex64> = small.iter().map(|wave| wave.lane(lane)).collect();
        let mut right: Vec<Complex64> =
            live.iter().flat_map(|&a| rows[a * n..(a + 1) * n].iter().map(|wave| wave.lane(lane))).collect();
        for p in 0..r {
            let size = |i: usize| left[i * r + p].norm_sqr();
            let best = (p..r).max_by(|&i, &j| size(i).total_cmp(&size(j))).unwrap_or(p);
            let square = size(best);
            // Written so that a value that is not a number fails too.
            if !(square > NO_PIVOT_SQUARED && square.is_finite()) {
                return false;
            }
            for j in 0..r {
                left.swap(p * r + j, best * r + j);
            }
            for c in 0..n {
                right.swap(p * n + c, best * n + c);
            }
            let inverse = left[p * r + p].inv();
            for j in p..r {
                left[p * r + j] *= inverse;
            }
            for c in 0..n {
                right[p * n + c] *= inverse;
            }
            for i in (0..r).filter(|&i| i != p) {
                let factor = left[i * r + p];
                for j in p..r {
                    let pivot = left[p * r + j];
                    left[i * r + j] -= factor * pivot;
                }
                for c in 0..n {
                    let pivot = right[p * n + c];
                    right[i * n + c] -= factor * pivot;
                }
            }
        }
        for (i, &a) in live.iter().enumerate() {
            for c in 0..n {
                rows[a * n + c].set_lane(lane, right[i * n + c]);
            }
        }
    }
    true
}
