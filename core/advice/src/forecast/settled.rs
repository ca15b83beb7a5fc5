//! When draws and frequencies are enough: how near the three figures of a rate stand to what many more of them would give.

use coax::Span;

use super::percentile::{HIGH, LIKELY, LOW, spread};

/// As near as nobody would do any work for (our own choice).
const CLOSE_MBPS: f64 = 15.0;

/// Where what may come of a rate lies far apart, so large a share of what lies between low and high is near (our own choice).
const CLOSE_SHARE: f64 = 0.05;

/// Standard deviations to either side within which nine tenths of a normal distribution lie (any table of it).
const NINE_TENTHS: f64 = 1.645;

/// How far each of the three figures may be off.
pub(super) fn close_to(rate: Span) -> f64 {
    CLOSE_MBPS.max(CLOSE_SHARE * (rate.high - rate.low))
}

/// Whether the three figures of what the draws gave are likely, nine times in ten each, as near as [`close_to`] says.
///
/// Of n draws, so many lie below a quantile p as of n throws that each succeed with p: within n p and 1.645 roots of
/// n p (1 - p) in nine cases of ten, whatever the distribution; the values at these ranks hold the quantile between them
/// (H. A. David and H. N. Nagaraja, "Order Statistics", 3rd edition, 2003, section 7.1; clause from memory). Draws that are
/// spread evenly over each range, as these are, lie nearer.
pub(super) fn draws_do(mut rates: Vec<f64>) -> bool {
    let near = close_to(spread(rates.clone()));
    rates.sort_by(f64::total_cmp);
    let last = rates.len().saturating_sub(1);
    let value = |rank: f64| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 <= rank <= last")]
        let rank = rank.clamp(0.0, last as f64) as usize;
        rates.get(rank).copied().unwrap_or_default()
    };
    [LOW, LIKELY, HIGH].into_iter().all(|share| {
        let (rank, draws) = (share * last as f64, rates.len() as f64);
        let either_side = NINE_TENTHS * (draws * share * (1.0 - share)).sqrt();
        0.5 * (value((rank + either_side).ceil()) - value((rank - either_side).floor())) <= near
    })
}

/// Whether the frequencies do: leaving out every second of them moves none of the three figures further than [`close_to`] says.
/// What is still to come from more of them is about a quarter of that: the bits of a channel are a sum over straight pieces, whose
/// error falls with the square of the step (the trapezoidal rule: Handbook of Mathematical Functions, 1964, 25.4.2).
pub(super) fn frequencies_do(all: Vec<f64>, every_second: Vec<f64>) -> bool {
    let (all, half) = (spread(all), spread(every_second));
    let near = close_to(all);
    [(all.low, half.low), (all.likely, half.likely), (all.high, half.high)]
        .into_iter()
        .all(|(all, half)| (all - half).abs() <= near)
}

#[cfg(test)]
mod tests {
    use houses::random::seeds;

    use super::super::options::Options;
    use super::super::run::forecast;
    use super::*;

    #[test]
    fn what_never_differs_stands_at_once_and_what_scatters_takes_more() {
        assert!(draws_do(vec![900.0; 16]));
        let even =
            |draws: u32| (0..draws).map(|n| 1000.0 * (f64::from(n) + 0.5) / f64::from(draws)).collect();
        // Of an even distribution over 1000 Mb/s the median of 64 lies within 103 nine times in ten, that of 1000 within 26.
        assert!(!draws_do(even(64)));
        assert!(draws_do(even(1000)));
    }

    #[test]
    fn two_heaps_whose_gap_lies_at_a_figure_are_not_settled() {
        let heaps = |below: usize| (0..200).map(|n| if n < below { 100.0 } else { 700.0 }).collect();
        assert!(!draws_do(heaps(100)));
        assert!(draws_do(heaps(60)));
    }

    #[test]
    fn a_figure_that_moves_with_every_second_frequency_takes_more_of_them() {
        assert!(frequencies_do(vec![500.0; 20], vec![510.0; 20]));
        assert!(!frequencies_do(vec![500.0; 20], vec![530.0; 20]));
    }

    /// So many draws are as good as any number, and so many frequencies.
    const MANY: u32 = 20_000;
    const ALL: usize = 881;

    /// Of the three figures of every rate of a house: how many stand as near as is said to what many draws at all frequencies
    /// give, of how many, and how far off the others are at the most, in so many times what is said. Nothing where the draws
    /// ended before the figures stood.
    fn against_many(seed: u64) -> Option<(usize, usize, f64)> {
        let survey = houses::random::survey(seed);
        let options = Options::default();
        let told = forecast(&survey, &options).expect("a sound house");
        if told.channels.is_empty() || told.draws == options.draws || survey.parts.len() > 30 {
            return None;
        }
        let many = Options { draws: MANY, points: ALL, seed: 77, settles: false };
        let many = forecast(&survey, &many).expect("a sound house");
        let paths = told.rooms.iter().filter_map(|room| told.path(room.outlet).zip(many.path(room.outlet)));
        let rates = paths.flat_map(|(told, many)| [(told.down, many.down), (told.up, many.up)]);
        let off = rates.flat_map(|(told, many)| {
            let near = close_to(many);
            [told.low - many.low, told.likely - many.likely, told.high - many.high]
                .map(|off| off.abs() / near)
        });
        let off: Vec<f64> = off.collect();
        let stand = off.iter().filter(|off| **off <= 1.0).count();
        Some((stand, off.len(), off.iter().copied().fold(0.0, f64::max)))
    }

    /// `LEGWORK_HOUSES` says how many houses are looked at; each takes some seconds.
    #[test]
    fn figures_that_settled_stand_where_twenty_thousand_draws_put_them() {
        let all = (0..seeds::asked("LEGWORK_HOUSES", HOUSES)).filter_map(against_many);
        let sum = |a: (usize, usize, f64), b: (usize, usize, f64)| (a.0 + b.0, a.1 + b.1, a.2.max(b.2));
        let (stand, figures, worst) = all.fold((0, 0, 0.0), sum);
        println!("{stand} of {figures} figures stand; the worst is off {worst:.2} times as far as is said");
        assert!(figures > 0 && stand as f64 >= 0.9 * figures as f64, "{stand} of {figures}");
    }

    /// So many houses are looked at where nobody says how many.
    const HOUSES: u64 = 6;
}
