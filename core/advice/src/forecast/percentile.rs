//! Percentiles over draws.

use coax::Span;

/// Which share of the draws lies below what is called low, likely and high.
pub(super) const LOW: f64 = 0.1;
pub(super) const LIKELY: f64 = 0.5;
pub(super) const HIGH: f64 = 0.9;

/// The 10th percentile, the median and the 90th percentile of drawn values, by linear interpolation between ranks
/// (definition 7 of R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American Statistician
/// 50 (1996) 361). All zero without values.
pub(crate) fn spread(mut values: Vec<f64>) -> Span {
    spread_of(&mut values, |value| value)
}

/// The same of what rising values stand for, which rises with them; the values are left in another order.
pub(super) fn spread_of(values: &mut [f64], stands_for: impl Fn(f64) -> f64) -> Span {
    Span {
        low: quantile_of(values, LOW, &stands_for),
        likely: quantile_of(values, LIKELY, &stands_for),
        high: quantile_of(values, HIGH, &stands_for),
    }
}

/// One of the three, or that of any other share; the values are left in another order.
pub(super) fn quantile(values: &mut [f64], share: f64) -> f64 {
    quantile_of(values, share, |value| value)
}

fn quantile_of(values: &mut [f64], share: f64, stands_for: impl Fn(f64) -> f64) -> f64 {
    let rank = share * values.len().saturating_sub(1) as f64;
    // The rank lies between 0 and the greatest index, so the cast neither cuts nor wraps.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 <= rank < values.len()")]
    let below = rank.floor() as usize;
    if below >= values.len() {
        return 0.0;
    }
    // Only the two values about the rank are wanted, not all in order.
    let (_, at, above) = values.select_nth_unstable_by(below, f64::total_cmp);
    let next = above.iter().copied().min_by(f64::total_cmp).unwrap_or(*at);
    let (at, next) = (stands_for(*at), stands_for(next));
    let between = rank - rank.floor();
    // Infinite losses (exact zeros) must not turn into a difference of infinities.
    if between <= 0.0 || at >= next { at } else { at + between * (next - at) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_of_the_whole_numbers() {
        // R: quantile(0:10, c(.1, .5, .9), type = 7) gives 1, 5, 9; of 1:4 it gives 1.3, 2.5, 3.7 (from memory).
        let whole = spread((0..=10).rev().map(f64::from).collect());
        assert_eq!((whole.low, whole.likely, whole.high), (1.0, 5.0, 9.0));
        let four = spread(vec![4.0, 1.0, 3.0, 2.0]);
        assert!(
            (four.low - 1.3).abs() < 1e-12
                && (four.likely - 2.5).abs() < 1e-12
                && (four.high - 3.7).abs() < 1e-12
        );
    }

    #[test]
    fn infinities_stay_infinite_and_nothing_gives_nothing() {
        let lost = spread(vec![f64::INFINITY; 3]);
        assert!(lost.low.is_infinite() && lost.high.is_infinite());
        assert_eq!(spread(Vec::new()).likely.to_bits(), 0.0_f64.to_bits());
    }
}
