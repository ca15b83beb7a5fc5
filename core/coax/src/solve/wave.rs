//! Eight frequencies at once: the lane of all arithmetic of the solver.

use num_complex::Complex64;

pub(crate) use crate::lanes::LANES;

/// A complex value at each of eight neighbouring frequencies, real and imaginary parts apart, so that the compiler turns
/// every loop into vector instructions.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(align(64))]
pub(crate) struct Wave {
    pub re: [f64; LANES],
    pub im: [f64; LANES],
}

impl Wave {
    pub const ZERO: Self = Self { re: [0.0; LANES], im: [0.0; LANES] };
    pub const ONE: Self = Self { re: [1.0; LANES], im: [0.0; LANES] };

    pub fn all(value: Complex64) -> Self {
        Self { re: [value.re; LANES], im: [value.im; LANES] }
    }

    pub fn lane(&self, lane: usize) -> Complex64 {
        Complex64::new(self.re[lane], self.im[lane])
    }

    pub fn set_lane(&mut self, lane: usize, value: Complex64) {
        self.re[lane] = value.re;
        self.im[lane] = value.im;
    }

    #[inline(always)]
    pub fn times(&self, other: &Self) -> Self {
        let mut out = Self::ZERO;
        for k in 0..LANES {
            out.re[k] = self.re[k] * other.re[k] - self.im[k] * other.im[k];
            out.im[k] = self.re[k] * other.im[k] + self.im[k] * other.re[k];
        }
        out
    }

    #[inline(always)]
    pub fn add_product(&mut self, a: &Self, b: &Self) {
        for k in 0..LANES {
            self.re[k] += a.re[k] * b.re[k] - a.im[k] * b.im[k];
            self.im[k] += a.re[k] * b.im[k] + a.im[k] * b.re[k];
        }
    }

    #[inline(always)]
    pub fn subtract_product(&mut self, a: &Self, b: &Self) {
        for k in 0..LANES {
            self.re[k] -= a.re[k] * b.re[k] - a.im[k] * b.im[k];
            self.im[k] -= a.re[k] * b.im[k] + a.im[k] * b.re[k];
        }
    }

    /// `1 - self`.
    #[inline(always)]
    pub fn taken_from_one(&self) -> Self {
        let mut out = Self::ZERO;
        for k in 0..LANES {
            out.re[k] = 1.0 - self.re[k];
            out.im[k] = -self.im[k];
        }
        out
    }

    /// `1 / self`, and whether every magnitude squared is above `least` (so also that none is not a number).
    #[inline(always)]
    pub fn inverse(&self, least: f64) -> (Self, bool) {
        let mut out = Self::ZERO;
        let mut sound = true;
        for k in 0..LANES {
            let square = self.re[k] * self.re[k] + self.im[k] * self.im[k];
            sound &= square > least;
            let inverse = 1.0 / square;
            out.re[k] = self.re[k] * inverse;
            out.im[k] = -self.im[k] * inverse;
        }
        (out, sound)
    }
}
