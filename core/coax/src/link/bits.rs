//! Bits a subcarrier carries for its signal to noise ratio.

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
        self.slopes.iter().map(|slope| (snr_over_gap * slope - self.offset).clamp(0.0, 1.0)).sum()
    }
}
