//! Where parts are looked at: one frequency or eight neighbouring ones, and what of them many parts need.

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of what calls it"
)]

use crate::grid::FrequencyGrid;
use crate::lanes::{LANES, Lanes, Phasor, Real};

/// Blocks of eight frequencies from one exact wave of a delay to the next; those between are turned on from it.
pub(crate) const ANCHOR: usize = 8;

/// A grid as blocks of eight, with what belongs to the frequencies alone.
#[derive(Debug)]
pub(crate) struct Blocks {
    /// By block: the frequencies in MHz, and their square roots. A last block that is not full repeats its last frequency.
    pub at: Vec<(Lanes, Lanes)>,
    /// From a frequency to the one that stands in its lane one block on, in MHz, where that is the same all over the grid.
    pub step: Option<f64>,
}

impl Blocks {
    pub fn of(grid: &FrequencyGrid) -> Self {
        let frequencies = grid.frequencies();
        let mut at = Vec::with_capacity(frequencies.len().div_ceil(LANES));
        for block in frequencies.chunks(LANES) {
            let mut megahertz = Lanes::of(0.0);
            for (lane, value) in megahertz.0.iter_mut().enumerate() {
                let frequency = block.get(lane).or(block.last());
                *value = frequency.map_or(1.0, |frequency| frequency.value());
            }
            at.push((megahertz, megahertz.sqrt()));
        }
        Self { at, step: even_step(grid).map(|step| step * LANES as f64) }
    }
}

/// The distance of neighbouring frequencies where it is the same all over a grid, but for the rounding of each of them.
fn even_step(grid: &FrequencyGrid) -> Option<f64> {
    let frequencies = grid.frequencies();
    let (first, last) = (frequencies.first()?.value(), frequencies.last()?.value());
    let step = (last - first) / frequencies.len().checked_sub(1).filter(|steps| *steps > 0)? as f64;
    let rounding = 2.0 * f64::EPSILON * last;
    let is_even = |(place, frequency): (usize, &crate::quantity::Megahertz)| {
        (frequency.value() - (first + step * place as f64)).abs() <= rounding
    };
    frequencies.iter().enumerate().all(is_even).then_some(step)
}

/// One frequency, or eight.
#[derive(Debug)]
pub(crate) struct Look<R> {
    pub megahertz: R,
    /// Its square root, with which the loss of a cable rises.
    pub root: R,
    /// On an even grid a delay turns its wave from each block to the next by the same angle: no sine is taken for it.
    turning: Option<Turning<R>>,
}

/// The waves of a part's delays, in the order in which the part asks for them: the same at every block.
#[derive(Debug)]
struct Turning<R> {
    step: f64,
    next: usize,
    /// Each wave where it was last asked for, and what turns it on by one block.
    waves: Vec<(Phasor<R>, Phasor<R>)>,
}

impl<R: Real> Look<R> {
    /// At one place, or one block of them.
    #[inline(always)]
    pub fn at(megahertz: R) -> Self {
        Self { megahertz, root: megahertz.sqrt(), turning: None }
    }

    /// Over blocks of which the frequencies are told by [`Look::go_to`], each `step` MHz above the last.
    #[inline(always)]
    pub fn over(step: Option<f64>) -> Self {
        let turning = step.map(|step| Turning { step, next: 0, waves: Vec::with_capacity(16) });
        Self { megahertz: R::of(1.0), root: R::of(1.0), turning }
    }

    /// Goes to another part: the next block is anchored anew.
    #[inline(always)]
    pub fn begin(&mut self) {
        if let Some(turning) = &mut self.turning {
            turning.waves.clear();
        }
    }

    /// Goes to a block, the one after the last since [`Look::begin`].
    #[inline(always)]
    pub fn go_to(&mut self, megahertz: R, root: R) {
        self.megahertz = megahertz;
        self.root = root;
        if let Some(turning) = &mut self.turning {
            turning.next = 0;
        }
    }

    /// The factor by which a delay of so many nanoseconds turns a wave: `exp(-j 2 pi f t)`.
    #[inline(always)]
    pub fn delayed(&mut self, nanoseconds: f64) -> Phasor<R> {
        let turns = nanoseconds * -1e-3;
        let Some(turning) = &mut self.turning else { return (self.megahertz * R::of(turns)).turns() };
        let at = turning.next;
        turning.next += 1;
        if let Some((wave, step)) = turning.waves.get_mut(at) {
            *wave = *wave * *step;
            return *wave;
        }
        let wave = (self.megahertz * R::of(turns)).turns();
        turning.waves.push((wave, R::of(turning.step * turns).turns()));
        wave
    }
}
