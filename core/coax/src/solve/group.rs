//! The arithmetic of the walk over all pairs: 64 neighbouring frequencies at a time.
//!
//! Every formula is written once, for one frequency, in a loop over the 64: the compiler makes vector instructions of it, eight
//! frequencies or four or two at a step, and what a formula needs on its way stays in the core's registers. Each function is
//! compiled for several instruction sets, the best of which is chosen at run time; all give the same bits, for none may fuse a
//! product and a sum.

use multiversion::multiversion;
use num_complex::Complex64;

use super::eliminate::SMALL_PIVOT_SQUARED;
use super::wave::{LANES, Wave};
use crate::look::ANCHOR;

/// Frequencies in one [`Group`]: from one exact wave of a delay to the next.
pub(super) const GROUP: usize = LANES * ANCHOR;

/// A complex value at each of 64 neighbouring frequencies.
#[derive(Debug, Clone, Copy)]
#[repr(align(64))]
pub(crate) struct Group {
    re: [f64; GROUP],
    im: [f64; GROUP],
}

/// One of them.
#[derive(Debug, Clone, Copy)]
struct One {
    re: f64,
    im: f64,
}

impl One {
    const ZERO: Self = Self { re: 0.0, im: 0.0 };

    #[inline(always)]
    fn times(self, other: Self) -> Self {
        Self { re: self.re * other.re - self.im * other.im, im: self.re * other.im + self.im * other.re }
    }

    #[inline(always)]
    fn plus(self, other: Self) -> Self {
        Self { re: self.re + other.re, im: self.im + other.im }
    }

    /// `1 - self`.
    #[inline(always)]
    fn taken_from_one(self) -> Self {
        Self { re: 1.0 - self.re, im: -self.im }
    }

    /// `1 / self`, and its magnitude squared.
    #[inline(always)]
    fn inverse(self) -> (Self, f64) {
        let square = self.re * self.re + self.im * self.im;
        let inverse = 1.0 / square;
        (Self { re: self.re * inverse, im: -self.im * inverse }, square)
    }
}

impl Group {
    pub const ZERO: Self = Self { re: [0.0; GROUP], im: [0.0; GROUP] };

    /// The same value at all.
    pub fn of(value: Complex64) -> Self {
        Self { re: [value.re; GROUP], im: [value.im; GROUP] }
    }

    /// Gathers blocks of eight, each so many waves after the last; where there are too few the last stands for the rest.
    pub fn gather(&mut self, waves: &[Wave], apart: usize) {
        let mut blocks = waves.iter().step_by(apart);
        let mut last = &Wave::ZERO;
        for (re, im) in self.re.chunks_exact_mut(LANES).zip(self.im.chunks_exact_mut(LANES)) {
            last = blocks.next().unwrap_or(last);
            re.copy_from_slice(&last.re.0);
            im.copy_from_slice(&last.im.0);
        }
    }

    /// The value at one of them.
    pub fn value(&self, at: usize) -> Complex64 {
        Complex64::new(self.re[at], self.im[at])
    }

    /// Sets the value at one of them.
    pub fn set_value(&mut self, at: usize, value: Complex64) {
        (self.re[at], self.im[at]) = (value.re, value.im);
    }

    #[inline(always)]
    fn at(&self, k: usize) -> One {
        One { re: self.re[k], im: self.im[k] }
    }

    #[inline(always)]
    fn set(&mut self, k: usize, value: One) {
        (self.re[k], self.im[k]) = (value.re, value.im);
    }
}

/// How a part's matrix lies in memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// Row by row, of each only what stands on the diagonal and right of it: the part is alike both ways.
    Upper,
    /// Row by row.
    Full,
}

impl Shape {
    /// Entries of a matrix of so many ports.
    pub fn entries(self, ports: usize) -> usize {
        match self {
            Self::Upper => ports * (ports + 1) / 2,
            Self::Full => ports * ports,
        }
    }

    /// Where the entry for a wave out of `to`, into `from`, lies.
    #[inline(always)]
    pub fn entry(self, ports: usize, to: usize, from: usize) -> usize {
        match self {
            Self::Upper => upper(ports, to, from),
            Self::Full => to * ports + from,
        }
    }
}

#[inline(always)]
const fn upper(ports: usize, a: usize, b: usize) -> usize {
    let (row, column) = if a < b { (a, b) } else { (b, a) };
    row * (2 * ports - row - 1) / 2 + column
}

/// The same for each of some numbers, written out: a loop inside the loop over the frequencies would keep that from becoming vector
/// instructions.
macro_rules! each {
    ($name:ident in $($number:literal)* => $body:expr) => { $( { const $name: usize = $number; $body } )* };
}

/// The most ports of a part that is folded in one go.
pub(super) const MOST_AT_ONCE: usize = 5;

/// Folds a part that is alike both ways, of 2 to 5 ports: what its matrix becomes where every port but the first is joined to
/// what reflects so much. False where a pivot is small, or a size is not one of these.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn fold_upper(
    ports: usize,
    matrix: &[Group],
    loads: &[&Group; MOST_AT_ONCE - 1],
    into: &mut [Group],
) -> bool {
    match ports {
        2 => fold::<2, 3>(matrix, loads, into),
        3 => fold::<3, 6>(matrix, loads, into),
        4 => fold::<4, 10>(matrix, loads, into),
        5 => fold::<5, 15>(matrix, loads, into),
        _ => false,
    }
}

#[inline(always)]
fn fold<const N: usize, const ENTRIES: usize>(
    matrix: &[Group],
    loads: &[&Group; MOST_AT_ONCE - 1],
    into: &mut [Group],
) -> bool {
    let (Some(matrix), Some(into)) = (matrix.first_chunk::<ENTRIES>(), into.first_chunk_mut::<ENTRIES>())
    else {
        return false;
    };
    let mut sound = 0_u64;
    for k in 0..GROUP {
        let mut m = [One::ZERO; ENTRIES];
        for (entry, from) in m.iter_mut().zip(matrix) {
            *entry = from.at(k);
        }
        each!(P in 1 2 3 4 => if P < N {
            let load = loads[P - 1].at(k);
            let (inverse, square) = load.times(m[upper(N, P, P)]).taken_from_one().inverse();
            // Counted so that a value that is not a number fails too.
            sound += u64::from(square > SMALL_PIVOT_SQUARED);
            let back = load.times(inverse);
            each!(A in 0 1 2 3 4 => if A < N && A != P {
                let share = back.times(m[upper(N, P, A)]);
                each!(B in 0 1 2 3 4 => if A < B + 1 && B < N && B != P {
                    m[upper(N, A, B)] = m[upper(N, A, B)].plus(share.times(m[upper(N, P, B)]));
                });
            });
            each!(A in 0 1 2 3 4 => if A < N {
                m[upper(N, P, A)] = m[upper(N, P, A)].times(inverse);
            });
        });
        for (entry, to) in m.iter().zip(into.iter_mut()) {
            to.set(k, *entry);
        }
    }
    sound == ((N - 1) * GROUP) as u64
}

/// Adds what comes down into a folded part that is alike both ways, of 2 to 5 ports: `h x x`, over all ports but the first.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn let_down_upper(ports: usize, h: &Group, folded: &mut [Group]) {
    match ports {
        2 => let_down::<2, 3>(h, folded),
        3 => let_down::<3, 6>(h, folded),
        4 => let_down::<4, 10>(h, folded),
        5 => let_down::<5, 15>(h, folded),
        _ => {}
    }
}

#[inline(always)]
fn let_down<const N: usize, const ENTRIES: usize>(h: &Group, folded: &mut [Group]) {
    let Some(folded) = folded.first_chunk_mut::<ENTRIES>() else { return };
    for k in 0..GROUP {
        let h = h.at(k);
        each!(A in 1 2 3 4 => if A < N {
            let share = h.times(folded[A].at(k));
            each!(B in 1 2 3 4 => if A < B + 1 && B < N {
                let x = folded[B].at(k);
                let entry = &mut folded[upper(N, A, B)];
                entry.set(k, entry.at(k).plus(share.times(x)));
            });
        });
    }
}

/// `1 / (1 - a b)`; false where what is divided by is no more than `least`, squared, at any frequency.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn echoes(a: &Group, b: &Group, least: f64, into: &mut Group) -> bool {
    let mut sound = 0_u64;
    for k in 0..GROUP {
        let (inverse, square) = a.at(k).times(b.at(k)).taken_from_one().inverse();
        sound += u64::from(square > least);
        into.set(k, inverse);
    }
    sound == GROUP as u64
}

/// The product of two.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn multiply(a: &Group, b: &Group, into: &mut Group) {
    for k in 0..GROUP {
        into.set(k, a.at(k).times(b.at(k)));
    }
}

/// Multiplies one by another.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn multiply_by(into: &mut Group, by: &Group) {
    for k in 0..GROUP {
        into.set(k, into.at(k).times(by.at(k)));
    }
}

/// Adds the product of two.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn add_product(into: &mut Group, a: &Group, b: &Group) {
    for k in 0..GROUP {
        into.set(k, into.at(k).plus(a.at(k).times(b.at(k))));
    }
}

/// Writes the product of two as complex numbers.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn put_product(a: &Group, b: &Group, to: &mut [Complex64; GROUP]) {
    for (k, to) in to.iter_mut().enumerate() {
        let value = a.at(k).times(b.at(k));
        *to = Complex64::new(value.re, value.im);
    }
}

/// Writes one as complex numbers.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
pub(super) fn put(a: &Group, to: &mut [Complex64; GROUP]) {
    for (k, to) in to.iter_mut().enumerate() {
        *to = a.value(k);
    }
}
