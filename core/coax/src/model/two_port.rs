//! Reciprocal parts of two ports, one after the other.

use num_complex::Complex64;

use crate::scatter::ScatterMatrix;

/// The scattering of a reciprocal part of two ports at one frequency.
#[derive(Debug, Clone, Copy)]
pub(super) struct TwoPort {
    /// What port 0 sends back.
    pub near: Complex64,
    /// What passes, the same both ways.
    pub through: Complex64,
    /// What port 1 sends back.
    pub far: Complex64,
}

impl TwoPort {
    /// This part with `next` on its port 1; the same as [`ScatterMatrix::joined`].
    pub fn then(self, next: Self) -> Self {
        let echoes = (1.0 - self.far * next.near).inv();
        let passes = self.through * echoes;
        Self {
            near: self.near + passes * next.near * self.through,
            through: passes * next.through,
            far: next.far + next.through * self.far * echoes * next.through,
        }
    }

    /// Writes it as a matrix of two ports.
    pub fn write(self, into: &mut ScatterMatrix) {
        into.set(0, 0, self.near);
        into.set(1, 1, self.far);
        into.set_both(0, 1, self.through);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_after_the_other_is_what_joined_matrices_are() {
        let c = Complex64::new;
        let part = |near, through, far| TwoPort { near, through, far };
        let one = part(c(0.1, -0.2), c(0.3, 0.7), c(-0.25, 0.1));
        let two = part(c(-0.3, 0.05), c(0.6, -0.4), c(0.2, 0.2));
        let [mut first, mut second, mut both] = [0; 3].map(|_| ScatterMatrix::new(2));
        one.write(&mut first);
        two.write(&mut second);
        one.then(two).write(&mut both);
        let joined = first.joined(1, &second, 0);
        for (to, from) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            assert!((joined.at(to, from) - both.at(to, from)).norm() < 1e-15, "{to} {from}");
        }
    }
}
