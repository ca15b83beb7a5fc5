//! From the reference resistances of a file to 75 ohm.

use num_complex::Complex64;

use super::error::TouchstoneError;
use crate::model::REFERENCE_OHM;
use crate::quantity::Megahertz;
use crate::scatter::ScatterMatrix;

/// The same parts seen from 75 ohm at every port.
///
/// With `V = sqrt(Z)(a + b)` and `I = (a - b)/sqrt(Z)` at every port (the definition of waves of a real reference; Pozar,
/// "Microwave Engineering", section on generalised scattering parameters) the waves at 75 ohm are `a' = P a`, `b' = Q a`,
/// `P = ((c + 1/c) I + (c - 1/c) S)/2`, `Q = ((c - 1/c) I + (c + 1/c) S)/2`, `c = sqrt(Z/75)` by row; so `S' = Q P^-1`.
pub(super) fn to_75_ohm(
    frequencies: &[Megahertz],
    matrices: Vec<ScatterMatrix>,
    resistances: &[f64],
) -> Result<Vec<ScatterMatrix>, TouchstoneError> {
    if resistances.iter().all(|&ohm| ohm.to_bits() == REFERENCE_OHM.to_bits()) {
        return Ok(matrices);
    }
    frequencies
        .iter()
        .zip(matrices)
        .map(|(frequency, s)| {
            converted(&s, resistances).ok_or(TouchstoneError::NotConvertible { megahertz: frequency.value() })
        })
        .collect()
}

/// `None` if `P` has no inverse or the result is not finite.
fn converted(s: &ScatterMatrix, resistances: &[f64]) -> Option<ScatterMatrix> {
    let n = s.ports();
    // S' P = Q, transposed: P^T X = Q^T with X = S'^T. One row of the augmented system: a row of P^T, then of Q^T.
    let mut rows = vec![vec![Complex64::ZERO; 2 * n]; n];
    for (port, ohm) in resistances.iter().enumerate() {
        let c = (ohm / REFERENCE_OHM).sqrt();
        let (sum, difference) = (f64::midpoint(c, 1.0 / c), f64::midpoint(c, -1.0 / c));
        for (column, row) in rows.iter_mut().enumerate() {
            let here = s.at(port, column);
            let unit = if port == column { 1.0 } else { 0.0 };
            if let Some(p) = row.get_mut(port) {
                *p = sum * unit + difference * here;
            }
            if let Some(q) = row.get_mut(n + port) {
                *q = difference * unit + sum * here;
            }
        }
    }
    solve(&mut rows)?;
    let mut out = ScatterMatrix::new(n);
    for (from, row) in rows.iter().enumerate() {
        for (to, &value) in row.iter().skip(n).enumerate() {
            out.set(to, from, Some(value).filter(|value| value.is_finite())?);
        }
    }
    Some(out)
}

/// Gauss-Jordan elimination with exchange of rows: the left half becomes the unit matrix.
fn solve(rows: &mut [Vec<Complex64>]) -> Option<()> {
    let n = rows.len();
    for p in 0..n {
        let best = (p..n).max_by(|&a, &b| rows[a][p].norm().total_cmp(&rows[b][p].norm()))?;
        rows.swap(p, best);
        let pivot = rows[p][p];
        if !pivot.is_finite() || pivot.norm() < 1e-12 {
            return None;
        }
        for value in &mut rows[p] {
            *value /= pivot;
        }
        let row = rows[p].clone();
        for (index, other) in rows.iter_mut().enumerate() {
            if index != p {
                let factor = other[p];
                for (value, &from) in other.iter_mut().zip(&row) {
                    *value -= factor * from;
                }
            }
        }
    }
    Some(())
}
