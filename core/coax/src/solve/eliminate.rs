//! What becomes of one part and its branches, eight frequencies at a time: its rows `[x | g]`, and what is seen above and below it.
//! A sweep for a few pairs wants only some columns of `g`.

use num_complex::Complex64;

use super::wave::{LANES, Wave};

/// A pivot below this magnitude squared (1e-6) makes the elimination start again with exchanged rows.
pub(super) const SMALL_PIVOT_SQUARED: f64 = 1e-12;
/// A pivot below this magnitude squared (1e-9), with rows exchanged, leaves no digits worth having.
pub(super) const NO_PIVOT_SQUARED: f64 = 1e-18;

/// Which columns of `g` are worked out.
#[derive(Debug, Clone, Copy)]
pub(super) enum Columns<'a> {
    /// Those of all ports.
    All,
    /// Those of these ports.
    Of(&'a [usize]),
}

impl Columns<'_> {
    /// How many waves a row `[x | g]` has, of a part of so many ports away from the root.
    #[inline(always)]
    fn stride(self, width: usize) -> usize {
        match self {
            Self::All => width + 1,
            Self::Of(columns) => columns.len() + 1,
        }
    }

    /// Rows `[S_a0 | S_ac]`: just the right-hand side.
    #[inline(always)]
    fn copy(self, rows: &mut [Wave], matrix: &[Wave], n: usize) {
        match self {
            // Row a of S without its first row.
            Self::All => rows.copy_from_slice(&matrix[n..]),
            Self::Of(columns) => {
                for (row, from) in rows.chunks_exact_mut(1 + columns.len()).zip(matrix[n..].chunks_exact(n)) {
                    row[0] = from[0];
                    for (entry, column) in row[1..].iter_mut().zip(columns) {
                        *entry = from[column + 1];
                    }
                }
            }
        }
    }
}

/// Folds a part of so many ports away from the root, and its branches: its rows, with these columns of `g`, and what the part above
/// sees; none if that has no answer. `live` are its ports that reflect something, `loads` what is reflected at each.
#[inline(always)]
pub(super) fn fold(
    width: usize,
    matrix: &[Wave],
    columns: Columns<'_>,
    rows: &mut [Wave],
    (live, loads): (&[usize], &[Wave]),
    small: &mut [Wave],
) -> Option<Wave> {
    let (n, stride) = (width + 1, columns.stride(width));
    columns.copy(rows, matrix, n);
    let small = &mut small[..live.len() * live.len()];
    fill_small(small, live, matrix, loads, n);
    if !eliminate(small, rows, live, stride) {
        fill_small(small, live, matrix, loads, n);
        columns.copy(rows, matrix, n);
        if !eliminate_with_exchange(small, rows, live, stride) {
            return None;
        }
    }
    // Ports that reflect nothing only listen.
    let mut next_live = 0;
    for a in 0..width {
        if live.get(next_live) == Some(&a) {
            next_live += 1;
            continue;
        }
        for &l in live {
            let share = matrix[(a + 1) * n + l + 1].times(&loads[l]);
            for c in 0..stride {
                let from = rows[l * stride + c];
                rows[a * stride + c].add_product(&share, &from);
            }
        }
    }
    let mut reflected = matrix[0];
    for &l in live {
        let share = matrix[l + 1].times(&loads[l]);
        reflected.add_product(&share, &rows[l * stride]);
    }
    Some(reflected)
}

/// The `y` of a part that is not reciprocal, of which all columns are there.
#[inline(always)]
pub(super) fn turn_back(
    matrix: &[Wave],
    rows: &[Wave],
    (live, loads): (&[usize], &[Wave]),
    back: &mut [Wave],
) {
    let stride = back.len() + 1;
    back.copy_from_slice(&matrix[1..stride]);
    for &l in live {
        let share = matrix[l + 1].times(&loads[l]);
        for (c, y) in back.iter_mut().enumerate() {
            y.add_product(&share, &rows[l * stride + c + 1]);
        }
    }
}

/// What comes down into a part that reflects so much, where so much is reflected above it: `u / (1 - gin u)`; none if that has no
/// answer.
#[inline(always)]
pub(super) fn let_down(reflected: &Wave, up: &Wave) -> Option<Wave> {
    let (inverse, sound) = reflected.times(up).taken_from_one().inverse_above(NO_PIVOT_SQUARED);
    if sound { Some(up.times(&inverse)) } else { None }
}

/// What a branch that reflects so much sees above it, by the `B` of its port, in which its own reflection is: `b / (1 + G b)`; none
/// if that has no answer.
#[inline(always)]
pub(super) fn seen_from_branch(load: &Wave, own: &Wave) -> Option<Wave> {
    let mut whole = Wave::ONE;
    whole.add_product(load, own);
    let (inverse, sound) = whole.inverse_above(NO_PIVOT_SQUARED);
    if sound { Some(own.times(&inverse)) } else { None }
}

/// `I - S_cc G` over the ports that reflect something.
#[inline(always)]
fn fill_small(small: &mut [Wave], live: &[usize], matrix: &[Wave], loads: &[Wave], n: usize) {
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
fn eliminate(small: &mut [Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
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
fn eliminate_with_exchange(small: &[Wave], rows: &mut [Wave], live: &[usize], n: usize) -> bool {
    let r = live.len();
    for lane in 0..LANES {
        let mut left: Vec<Complex64> = small.iter().map(|wave| wave.lane(lane)).collect();
        let mut right: Vec<Complex64> =
            live.iter().flat_map(|&a| rows[a * n..(a + 1) * n].iter().map(|wave| wave.lane(lane))).collect();
        if !solve_with_exchange(&mut left, &mut right, r, n) {
            return false;
        }
        for (i, &a) in live.iter().enumerate() {
            for c in 0..n {
                rows[a * n + c].set_lane(lane, right[i * n + c]);
            }
        }
    }
    true
}

/// Solves `left x = right` at one frequency, of so many rows, and so many columns on the right, in place, with the largest pivot of
/// each column; false if the matrix is singular.
pub(super) fn solve_with_exchange(
    left: &mut [Complex64],
    right: &mut [Complex64],
    rows: usize,
    columns: usize,
) -> bool {
    let (r, n) = (rows, columns);
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
    true
}
