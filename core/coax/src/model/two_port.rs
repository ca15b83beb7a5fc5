//! Reciprocal parts of two ports, one after the other.

use crate::lanes::{Phasor, Real};
use crate::multiport::Multiport;

/// The scattering of a reciprocal part of two ports at one frequency.
#[derive(Debug, Clone, Copy)]
pub(super) struct TwoPort<R> {
    /// What port 0 sends back.
    pub near: Phasor<R>,
    /// What passes, the same both ways.
    pub through: Phasor<R>,
    /// What port 1 sends back.
    pub far: Phasor<R>,
}

impl<R: Real> TwoPort<R> {
    /// This part with `next` on its port 1; the same as [`Multiport::joined`].
    #[inline(always)]
    pub fn then(self, next: Self) -> Self {
        let echoes = (Phasor::real(R::of(1.0)) - self.far * next.near).inverse();
        let passes = self.through * echoes;
        Self {
            near: self.near + passes * next.near * self.through,
            through: passes * next.through,
            far: next.far + next.through * self.far * echoes * next.through,
        }
    }

    /// Writes its four entries row by row, perhaps with its ports exchanged.
    #[inline(always)]
    pub fn write_turned(self, is_turned: bool, into: &mut [Phasor<R>]) {
        if let [near, back, through, far] = into {
            (*near, *far) = if is_turned { (self.far, self.near) } else { (self.near, self.far) };
            (*back, *through) = (self.through, self.through);
        }
    }

    /// Writes it as a matrix of two ports.
    #[inline(always)]
    pub fn write(self, into: &mut Multiport<R>) {
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
        let c = |re: f64, im: f64| Phasor { re, im };
        let part = |near, through, far| TwoPort { near, through, far };
        let one = part(c(0.1, -0.2), c(0.3, 0.7), c(-0.25, 0.1));
        let two = part(c(-0.3, 0.05), c(0.6, -0.4), c(0.2, 0.2));
        let [mut first, mut second, mut both] = [0; 3].map(|_| Multiport::new(2));
        one.write(&mut first);
        two.write(&mut second);
        one.then(two).write(&mut both);
        let joined = first.joined(1, &second, 0);
        for (to, from) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            let apart = joined.at(to, from) - both.at(to, from);
            assert!(apart.re.hypot(apart.im) < 1e-15, "{to} {from}");
        }
    }
}
