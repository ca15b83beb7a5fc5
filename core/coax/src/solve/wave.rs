//! Eight frequencies at once: the lane of all arithmetic of the solver.

use num_complex::Complex64;

pub(crate) use crate::lanes::LANES;
use crate::lanes::{Lanes, Phasor};

/// A complex value at each of eight neighbouring frequencies.
pub(crate) type Wave = Phasor<Lanes>;

impl Wave {
    pub const ZERO: Self = Self { re: Lanes([0.0; LANES]), im: Lanes([0.0; LANES]) };
    pub const ONE: Self = Self { re: Lanes([1.0; LANES]), im: Lanes([0.0; LANES]) };

    pub fn lane(&self, lane: usize) -> Complex64 {
        Complex64::new(self.re.0[lane], self.im.0[lane])
    }

    pub fn set_lane(&mut self, lane: usize, value: Complex64) {
        self.re.0[lane] = value.re;
        self.im.0[lane] = value.im;
    }

    #[inline(always)]
    pub fn times(&self, other: &Self) -> Self {
        let mut out = Self::ZERO;
        for k in 0..LANES {
            out.re.0[k] = self.re.0[k] * other.re.0[k] - self.im.0[k] * other.im.0[k];
            out.im.0[k] = self.re.0[k] * other.im.0[k] + self.im.0[k] * other.re.0[k];
        }
        out
    }

    #[inline(always)]
    pub fn add_product(&mut self, a: &Self, b: &Self) {
        for k in 0..LANES {
            self.re.0[k] += a.re.0[k] * b.re.0[k] - a.im.0[k] * b.im.0[k];
            self.im.0[k] += a.re.0[k] * b.im.0[k] + a.im.0[k] * b.re.0[k];
        }
    }

    #[inline(always)]
    pub fn subtract_product(&mut self, a: &Self, b: &Self) {
        for k in 0..LANES {
            self.re.0[k] -= a.re.0[k] * b.re.0[k] - a.im.0[k] * b.im.0[k];
            self.im.0[k] -= a.re.0[k] * b.im.0[k] + a.im.0[k] * b.re.0[k];
        }
    }

    /// `1 - self`.
    #[inline(always)]
    pub fn taken_from_one(&self) -> Self {
        let mut out = Self::ZERO;
        for k in 0..LANES {
            out.re.0[k] = 1.0 - self.re.0[k];
            out.im.0[k] = -self.im.0[k];
        }
        out
    }

    /// `1 / self`, and whether every magnitude squared is above `least` (so also that none is not a number).
    #[inline(always)]
    pub fn inverse_above(&self, least: f64) -> (Self, bool) {
        let mut out = Self::ZERO;
        let mut sound = true;
        for k in 0..LANES {
            let square = self.re.0[k] * self.re.0[k] + self.im.0[k] * self.im.0[k];
            sound &= square > least;
            let inverse = 1.0 / square;
            out.re.0[k] = self.re.0[k] * inverse;
            out.im.0[k] = -self.im.0[k] * inverse;
        }
        (out, sound)
    }
}
