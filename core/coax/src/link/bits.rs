//! Bits a subcarrier carries for its signal to noise ratio.

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of what calls it"
)]

use multiversion::multiversion;

use crate::quantity::Decibels;

/// The most bits any version loads on one subcarrier.
const MOST_BITS: usize = 10;

/// Bits on one subcarrier: `floor(log2(1 + snr / gap))`, at most `most`. `snr` and `gap` are power ratios.
///
/// The gap approximation: on-line telecom book "The Gap Approximation", clause 5.8, eq. 5.18 (ai6g.org). Found by comparing with
/// the ratio each number of bits needs, so no logarithm is taken and the steps are exact.
pub fn bits(snr: f64, gap: f64, most: u32) -> u32 {
    (1..=most).take_while(|&b| snr >= gap * ratio_for(b)).last().unwrap_or(0)
}

/// The signal to noise ratio that `bits` bits need: Shannon's `2^bits - 1`, raised by the gap.
pub fn snr_for_bits(bits: u32, gap: Decibels) -> Decibels {
    Decibels::of_power(ratio_for(bits)) + gap
}

/// `2^bits - 1`.
fn ratio_for(bits: u32) -> f64 {
    f64::from(bits).exp2() - 1.0
}

/// The mean of [`bits`] over subcarriers whose noise lies evenly between `spread` below and above the channel's.
///
/// With noise factors even over `u0..u1`, the share of subcarriers with at least b bits is
/// `(s / (2^b - 1) - u0) / (u1 - u0)` held within 0 and 1, where s is the channel's ratio over the gap.
/// The mean number of bits is the sum of these shares: one multiplication and two comparisons a bit.
#[derive(Debug, Clone, Copy)]
pub struct MeanBits {
    slopes: [f64; MOST_BITS],
    offset: f64,
}

impl MeanBits {
    /// The curve for at most `most` bits (10 or fewer) and a spread in decibels to either side.
    pub fn new(most: u32, spread: Decibels) -> Self {
        // A spread of nothing would need an infinite slope; a hundredth of a decibel is as good as none.
        let spread = Decibels(spread.value().max(0.01));
        let (low, width) = ((-spread).power(), spread.power() - (-spread).power());
        let mut slopes = [0.0; MOST_BITS];
        for (slope, b) in slopes.iter_mut().zip(1..=most) {
            *slope = 1.0 / (ratio_for(b) * width);
        }
        Self { slopes, offset: low / width }
    }

    /// Mean bits a subcarrier for a channel whose ratio of signal to noise, over the gap, is `snr_over_gap`.
    pub fn at(&self, snr_over_gap: f64) -> f64 {
        mean_bits(&self.slopes, self.offset, snr_over_gap)
    }

    /// The same at each of several frequencies where so much power gets through.
    pub(crate) fn over(&self, power_transfer: &[f64], hearing: Hearing, into: &mut [f64]) {
        over(self.slopes, self.offset, power_transfer, hearing, into);
    }
}

/// What is heard of what is sent, all over the gap: `scale` times what gets through, over the noise `floor` and `own` times what
/// is heard.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Hearing {
    pub scale: f64,
    pub floor: f64,
    pub own: f64,
}

#[inline(always)]
fn mean_bits(slopes: &[f64; MOST_BITS], offset: f64, snr_over_gap: f64) -> f64 {
    let mut sum = 0.0;
    for slope in slopes {
        let share = snr_over_gap * slope - offset;
        let share = if share > 0.0 { share } else { 0.0 };
        sum += if share < 1.0 { share } else { 1.0 };
    }
    sum
}

/// Compiled for several instruction sets, as the solver is; the same bits with all.
#[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl", "x86_64+avx2"))]
fn over(slopes: [f64; MOST_BITS], offset: f64, power_transfer: &[f64], hearing: Hearing, into: &mut [f64]) {
    let Hearing { scale, floor, own } = hearing;
    for (bits, transfer) in into.iter_mut().zip(power_transfer) {
        let heard = scale * transfer;
        *bits = mean_bits(&slopes, offset, heard / (floor + own * heard));
    }
}
