//! Real arithmetic for one frequency or for eight at once, from one formula.
//!
//! A part's matrix is written once over [`Real`]. Over [`f64`] it is plain arithmetic with the standard library's functions; over
//! [`Lanes`] every loop becomes vector instructions, and the functions are polynomials of nothing but sums, products and moved
//! bits, so that they give the same bits with every instruction set.

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of what calls it"
)]

use std::ops::{Add, Div, Mul, Neg, Sub};

use multiversion::multiversion;
use num_complex::Complex64;

/// Frequencies in one [`Lanes`].
pub(crate) const LANES: usize = 8;

/// A real number at one frequency, or one at each of several.
pub(crate) trait Real:
    Copy + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self> + Div<Output = Self> + Neg<Output = Self>
{
    /// At how many frequencies.
    const COUNT: usize;
    /// The same number at every frequency.
    fn of(value: f64) -> Self;
    /// The number at one of them.
    fn lane(self, lane: usize) -> f64;
    /// Sets the number at one of them.
    fn set_lane(&mut self, lane: usize, value: f64);
    /// The greater of two at each.
    fn max(self, other: Self) -> Self;
    /// The lesser of two at each.
    fn min(self, other: Self) -> Self;
    /// At each frequency one of two numbers: `yes` where this is below another, else `no`.
    fn below(self, other: Self, yes: Self, no: Self) -> Self;
    /// The square root.
    fn sqrt(self) -> Self;
    /// `e` to this power; at most `1e307`, and exactly 0 below `e^-700`.
    fn exp(self) -> Self;
    /// A wave of magnitude 1 that has made so many turns, at most 2^40 of them.
    fn turns(self) -> Phasor<Self>;
    /// Whether it is above a number at any frequency.
    fn any_above(self, least: f64) -> bool;

    /// This many decibels as an amplitude.
    #[inline(always)]
    fn amplitude(self) -> Self {
        (self * Self::of(std::f64::consts::LN_10 / 20.0)).exp()
    }

    /// 0 far below, 1 far above, and in between a curve without a corner: `1/(1 + exp(-x))`.
    #[inline(always)]
    fn logistic(self) -> Self {
        Self::of(1.0) / (Self::of(1.0) + (-self).exp())
    }
}

/// A complex number over [`Real`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Phasor<R> {
    pub re: R,
    pub im: R,
}

impl<R: Real> Phasor<R> {
    #[inline(always)]
    pub fn of(value: Complex64) -> Self {
        Self { re: R::of(value.re), im: R::of(value.im) }
    }

    #[inline(always)]
    pub fn real(re: R) -> Self {
        Self { re, im: R::of(0.0) }
    }

    /// `j` times a real number.
    #[inline(always)]
    pub fn imaginary(im: R) -> Self {
        Self { re: R::of(0.0), im }
    }

    #[inline(always)]
    pub fn scaled(self, factor: R) -> Self {
        Self { re: self.re * factor, im: self.im * factor }
    }

    /// This number where one real number is below another, elsewhere `other`.
    #[inline(always)]
    pub fn where_below(self, low: R, high: R, other: Self) -> Self {
        Self { re: low.below(high, self.re, other.re), im: low.below(high, self.im, other.im) }
    }

    #[inline(always)]
    pub fn conjugate(self) -> Self {
        Self { re: self.re, im: -self.im }
    }

    #[inline(always)]
    pub fn inverse(self) -> Self {
        let size = R::of(1.0) / (self.re * self.re + self.im * self.im);
        Self { re: self.re * size, im: -self.im * size }
    }
}

impl<R: Real> Add for Phasor<R> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        Self { re: self.re + other.re, im: self.im + other.im }
    }
}

impl<R: Real> Sub for Phasor<R> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        Self { re: self.re - other.re, im: self.im - other.im }
    }
}

impl<R: Real> Mul for Phasor<R> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        Self { re: self.re * other.re - self.im * other.im, im: self.re * other.im + self.im * other.re }
    }
}

impl<R: Real> Neg for Phasor<R> {
    type Output = Self;
    #[inline(always)]
    fn neg(self) -> Self {
        Self { re: -self.re, im: -self.im }
    }
}

impl Real for f64 {
    const COUNT: usize = 1;
    fn of(value: f64) -> Self {
        value
    }
    fn lane(self, _: usize) -> f64 {
        self
    }
    fn set_lane(&mut self, _: usize, value: f64) {
        *self = value;
    }
    fn max(self, other: Self) -> Self {
        f64::max(self, other)
    }
    fn min(self, other: Self) -> Self {
        f64::min(self, other)
    }
    fn below(self, other: Self, yes: Self, no: Self) -> Self {
        if self < other { yes } else { no }
    }
    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }
    fn exp(self) -> Self {
        f64::exp(self)
    }
    fn turns(self) -> Phasor<Self> {
        let (im, re) = (std::f64::consts::TAU * (self - self.round())).sin_cos();
        Phasor { re, im }
    }
    fn any_above(self, least: f64) -> bool {
        self > least
    }
}

/// A real number at each of eight neighbouring frequencies.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(align(64))]
pub(crate) struct Lanes(pub [f64; LANES]);

/// Added to a number below 2^51 it leaves the nearest whole one in the low bits.
const WHOLE: f64 = 6_755_399_441_055_744.0; // 1.5 * 2^52

impl Lanes {
    #[inline(always)]
    fn map(self, function: impl Fn(f64) -> f64) -> Self {
        let mut out = self;
        for value in &mut out.0 {
            *value = function(*value);
        }
        out
    }

    #[inline(always)]
    fn with(self, other: Self, function: impl Fn(f64, f64) -> f64) -> Self {
        let mut out = self;
        for (value, other) in out.0.iter_mut().zip(other.0) {
            *value = function(*value, other);
        }
        out
    }
}

macro_rules! lane_by_lane {
    ($trait:ident, $method:ident) => {
        impl $trait for Lanes {
            type Output = Self;
            #[inline(always)]
            fn $method(self, other: Self) -> Self {
                self.with(other, |a, b| $trait::$method(a, b))
            }
        }
    };
}

lane_by_lane!(Add, add);
lane_by_lane!(Sub, sub);
lane_by_lane!(Mul, mul);
lane_by_lane!(Div, div);

impl Neg for Lanes {
    type Output = Self;
    #[inline(always)]
    fn neg(self) -> Self {
        self.map(|value| -value)
    }
}

impl Real for Lanes {
    const COUNT: usize = LANES;
    #[inline(always)]
    fn lane(self, lane: usize) -> f64 {
        self.0[lane]
    }
    #[inline(always)]
    fn set_lane(&mut self, lane: usize, value: f64) {
        self.0[lane] = value;
    }
    #[inline(always)]
    fn of(value: f64) -> Self {
        Self([value; LANES])
    }
    #[inline(always)]
    fn max(self, other: Self) -> Self {
        self.with(other, |a, b| if a > b { a } else { b })
    }
    #[inline(always)]
    fn min(self, other: Self) -> Self {
        self.with(other, |a, b| if a < b { a } else { b })
    }
    #[inline(always)]
    fn below(self, other: Self, yes: Self, no: Self) -> Self {
        let mut out = no;
        for k in 0..LANES {
            out.0[k] = if self.0[k] < other.0[k] { yes.0[k] } else { no.0[k] };
        }
        out
    }
    #[inline(always)]
    fn sqrt(self) -> Self {
        self.map(f64::sqrt)
    }
    #[inline(always)]
    fn exp(self) -> Self {
        exp(self)
    }
    #[inline(always)]
    fn turns(self) -> Phasor<Self> {
        turned(self)
    }
    #[inline(always)]
    fn any_above(self, least: f64) -> bool {
        self.0.iter().any(|value| *value > least)
    }
}

/// `e^x`: `2^n e^r` with `|r| <= ln 2 / 2`, the second factor by its Taylor series (error below 5e-18 of it). Step by step in all
/// lanes, here and below: one lane's whole formula after the other's would not become vector instructions. A copy for each
/// instruction set, in place of one wherever it is asked for: it is long.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn exp(x: Lanes) -> Lanes {
    // ln 2 in two parts, the first with trailing zeros, so that n times it is exact (Cody and Waite, "Software Manual for the
    // Elementary Functions", 1980, chapter 6).
    const LN_2_HIGH: f64 = 0.693_147_180_369_123_8;
    const LN_2_LOW: f64 = 1.908_214_929_270_587_7e-10;
    let c = Lanes::of;
    // What is not a number stays so.
    let within = c(-707.0).max(c(707.0).min(x));
    let whole = within * c(std::f64::consts::LOG2_E) + c(WHOLE);
    let n = whole - c(WHOLE);
    let r = (within - n * c(LN_2_HIGH)) - n * c(LN_2_LOW);
    // Terms in pairs, and pairs of those (Estrin's scheme): a short chain of steps, since each step waits for the one before. The
    // two largest terms come last, so that they are rounded least.
    let (square, fourth) = (r * r, (r * r) * (r * r));
    let first = (c(0.5) + r * c(1.0 / 6.0)) + square * (c(1.0 / 24.0) + r * c(1.0 / 120.0));
    let second =
        (c(1.0 / 720.0) + r * c(1.0 / 5_040.0)) + square * (c(1.0 / 40_320.0) + r * c(1.0 / 362_880.0));
    let third = (c(1.0 / 3_628_800.0) + r * c(1.0 / 39_916_800.0))
        + square * (c(1.0 / 479_001_600.0) + r * c(1.0 / 6_227_020_800.0));
    let rest = first + fourth * (second + fourth * third);
    let sum = c(1.0) + (r + square * rest);
    // The power of two goes straight into the exponent's bits.
    let mut power = whole;
    for value in &mut power.0 {
        *value = f64::from_bits((value.to_bits() << 52).wrapping_add(1023 << 52));
    }
    x.below(c(-700.0), c(0.0), sum * power)
}

/// Cosine and sine of so many turns: the whole turns and the quarters are taken off exactly, the rest is at most an eighth of a
/// turn and goes by its Taylor series (errors below 5e-17).
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn turned(turns: Lanes) -> Phasor<Lanes> {
    let c = Lanes::of;
    let quarters = turns * c(4.0) + c(WHOLE);
    let x = (turns - (quarters - c(WHOLE)) * c(0.25)) * c(std::f64::consts::TAU);
    let square = x * x;
    let mut sine = c(-1.0 / 1_307_674_368_000.0);
    for factor in
        [1.0 / 6_227_020_800.0, -1.0 / 39_916_800.0, 1.0 / 362_880.0, -1.0 / 5_040.0, 1.0 / 120.0, -1.0 / 6.0]
    {
        sine = sine * square + c(factor);
    }
    let sine = x + x * square * sine;
    let mut cosine = c(1.0 / 20_922_789_888_000.0);
    for factor in [
        -1.0 / 87_178_291_200.0,
        1.0 / 479_001_600.0,
        -1.0 / 3_628_800.0,
        1.0 / 40_320.0,
        -1.0 / 720.0,
        1.0 / 24.0,
        -0.5,
        1.0,
    ] {
        cosine = cosine * square + c(factor);
    }
    let mut wave = Phasor { re: cosine, im: sine };
    for k in 0..LANES {
        // An odd quarter exchanges the two; the second and third turn the cosine's sign, the third and fourth the sine's.
        let quarter = quarters.0[k].to_bits();
        let swapped = 0_u64.wrapping_sub(quarter & 1);
        let (c, s) = (cosine.0[k].to_bits(), sine.0[k].to_bits());
        let (re, im) = ((c & !swapped) | (s & swapped), (s & !swapped) | (c & swapped));
        wave.re.0[k] = f64::from_bits(re ^ ((quarter.wrapping_add(1) & 2) << 62));
        wave.im.0[k] = f64::from_bits(im ^ ((quarter & 2) << 62));
    }
    wave
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Lane by lane, each with its own neighbour's value beside it.
    fn exp(x: f64) -> f64 {
        let mut all = Lanes([x - 1.0, x, 0.5 * x, -x, 0.0, 1.0, x + 3.0, 700.0]);
        all = super::exp(all);
        all.0[1]
    }

    fn turned(turns: f64) -> (f64, f64) {
        let wave = super::turned(Lanes([0.1, 0.3, turns, 0.6, -turns, 0.9, 1e9, turns + 0.25]));
        (wave.re.0[2], wave.im.0[2])
    }

    /// Against the standard library's functions, which are within an ulp or two (glibc manual, "Errors in Math Functions").
    #[test]
    fn the_functions_are_those_of_the_standard_library() {
        let mut x = -730.0;
        while x < 700.0 {
            let (ours, theirs) = (exp(x), if x < -700.0 { 0.0 } else { x.exp() });
            assert!((ours - theirs).abs() <= theirs * 1e-15, "exp {x}: {ours:e} {theirs:e}");
            x += 0.037_1;
        }
        assert_eq!((exp(0.0), exp(f64::NEG_INFINITY)), (1.0, 0.0));
        let mut turns = -4_000.0;
        while turns < 4_000.0 {
            let (re, im) = turned(turns);
            let plain = Real::turns(turns);
            assert!(
                (re - plain.re).abs() < 5e-16 && (im - plain.im).abs() < 5e-16,
                "{turns} turns: {re} {im}"
            );
            turns += 0.013_7;
        }
        for (turns, exact) in
            [(0.0, (1.0, 0.0)), (0.25, (0.0, 1.0)), (-0.5, (-1.0, 0.0)), (0.75, (0.0, -1.0))]
        {
            let (re, im) = turned(turns);
            assert!((re - exact.0).abs() < 1e-16 && (im - exact.1).abs() < 1e-16, "{turns}: {re} {im}");
        }
    }

    /// Far from zero the turns themselves are all that limits it: 3 MHz a kilometre away are some ten thousand.
    #[test]
    fn many_turns_keep_their_digits() {
        for turns in [12_345.678_9, 1e9 + 0.125] {
            let (re, im) = turned(turns);
            let part = turns - turns.floor();
            let (sine, cosine) = (std::f64::consts::TAU * part).sin_cos();
            assert!((re - cosine).abs() < 1e-15 && (im - sine).abs() < 1e-15, "{turns}");
        }
    }
}
