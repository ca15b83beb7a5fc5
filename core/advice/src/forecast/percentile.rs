//! Percentiles over draws.

use coax::Span;

/// The 10th percentile, the median and the 90th percentile of drawn values, by linear interpolation between ranks
/// (definition 7 of R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American Statistician
/// 50 (1996) 361). All zero without values.
pub(crate) fn spread(mut values: Vec<f64>) -> Span {
    values.sort_by(f64::total_cmp);
    Span { low: quantile(&values, 0.1), likely: quantile(&values, 0.5), high: quantile(&values, 0.9) }
}

fn quantile(sorted: &[f64], share: f64) -> f64 {
    let rank = share * sorted.len().saturating_sub(1) as f64;
    // The rank lies between 0 and the greatest index, so the cast neither cuts nor wraps.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 <= rank < sorted.len()")]
    let below = rank.floor() as usize;
    let Some(&at) = sorted.get(below) else { return 0.0 };
    let next = sorted.get(below + 1).copied().unwrap_or(at);
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
