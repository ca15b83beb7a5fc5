//! The channels that the network runs on: chosen over all draws, for the weakest room's sake.
//!
//! Real networks look for a good place by themselves; on one throw of phases the best place is chance, and a change would seem
//! to gain what is only a hop to other channels.

use coax::link::{LinkRate, Placement};

use super::percentile::{LIKELY, LOW, quantile};

/// Placements that reach at least so much of the best count as its equals.
pub(crate) const NEAR: f64 = 0.99;

/// So do those that are short of it by so much at most, Mb/s.
pub(crate) const NEAR_MBPS: f64 = 1.0;

/// What one draw gives at every placement.
#[derive(Debug, Default)]
pub(super) struct Tried {
    /// Each way of each pair.
    pub(super) shown: Ways,
    /// The same with every by-pass of which nobody knows, for the rooms over one.
    pub(super) with_by_passes: Ways,
}

/// What some ways give at every placement.
#[derive(Debug, Clone, Default)]
pub(super) struct Ways {
    count: usize,
    /// Those of the first placement, then those of the next.
    rates: Vec<LinkRate>,
}

impl Ways {
    /// So many ways at so many placements, with nothing on them yet.
    pub(super) fn new(count: usize, placements: usize) -> Self {
        Self { count, rates: vec![LinkRate::NONE; count * placements] }
    }

    /// Writes down what one way gives, placement by placement.
    pub(super) fn writes(&mut self, way: usize) -> impl FnMut(LinkRate) + use<'_> {
        let mut places = self.rates.iter_mut().skip(way).step_by(self.count.max(1));
        move |rate| {
            if let Some(place) = places.next() {
                *place = rate;
            }
        }
    }

    /// A pair of ways as it is among others.
    pub(super) fn take_pair(&mut self, way: usize, others: &Self, other: usize) {
        let pairs = others.rates.chunks_exact(others.count.max(1)).map(|all| all.get(other..other + 2));
        for (here, pair) in self.rates.chunks_exact_mut(self.count.max(1)).zip(pairs) {
            if let (Some(here), Some(pair)) = (here.get_mut(way..way + 2), pair) {
                here.copy_from_slice(pair);
            }
        }
    }

    /// How many there are.
    pub(super) fn count(&self) -> usize {
        self.count
    }

    /// What they give at one placement.
    pub(super) fn at(&self, placement: usize) -> &[LinkRate] {
        self.rates.get(placement * self.count..(placement + 1) * self.count).unwrap_or(&[])
    }

    /// What each pair gives at one placement, there and back.
    pub(super) fn pairs_at(&self, placement: usize) -> impl Iterator<Item = [LinkRate; 2]> + use<'_> {
        self.at(placement).as_chunks().0.iter().copied()
    }
}

/// The placement that serves the weakest room best: by what the slowest way of all reaches nine times in ten; then by the same
/// with every by-pass of which nobody knows, since without it little is left to choose; then by what all ways together reach
/// nine times in ten; then by what the coax is likely to carry, whatever the network sockets let through. Of near-equals in all
/// of this the one that lies lowest, by its place among the candidates. `None` without any.
pub(super) fn chosen(candidates: &[Placement], draws: &[Tried]) -> Option<usize> {
    let mut left: Vec<usize> = (0..candidates.len()).collect();
    let shown: Which = |draw| &draw.shown;
    let with_by_passes: Which = |draw| &draw.with_by_passes;
    let nets = |at, ways| each_way(at, ways, draws, LOW, |rate| rate.net.value());
    let phys = |at| each_way(at, shown, draws, LIKELY, |rate| rate.phy.value());
    // Whatever falls below what is near enough to the best so far need not be known.
    let worths: [&dyn Fn(usize, f64) -> f64; 4] = [
        &|at, enough| least(nets(at, shown), enough),
        &|at, enough| least(nets(at, with_by_passes), enough),
        &|at, _| nets(at, shown).sum(),
        &|at, _| phys(at).sum(),
    ];
    for worth in worths {
        let near = |best: f64| (best * NEAR).min(best - NEAR_MBPS);
        let mut best = f64::NEG_INFINITY;
        let mut worths: Vec<(usize, f64)> = Vec::with_capacity(left.len());
        for at in left {
            let worth = worth(at, near(best));
            best = best.max(worth);
            worths.push((at, worth));
        }
        // Where there is no way to look at, every worth is infinite, and all are equal.
        let is_near = |worth: f64| worth >= best || worth >= near(best);
        left = worths.into_iter().filter(|(_, worth)| is_near(*worth)).map(|(at, _)| at).collect();
    }
    let edges = |at: &usize| candidates.get(*at).map(|place| (place.low().value(), place.high().value()));
    left.into_iter().min_by(|a, b| edges(a).partial_cmp(&edges(b)).unwrap_or(std::cmp::Ordering::Equal))
}

/// The least of some rates; where one is nothing or less than what is enough, the others do not matter.
fn least(rates: impl Iterator<Item = f64>, enough: f64) -> f64 {
    let mut least = f64::INFINITY;
    for rate in rates {
        least = least.min(rate);
        if least <= 0.0 || least < enough {
            break;
        }
    }
    least
}

/// Some of the ways of a draw.
type Which = fn(&Tried) -> &Ways;

/// What each way gives at a placement: so large a share of the draws gives less.
fn each_way<'a>(
    at: usize,
    which: Which,
    draws: &'a [Tried],
    share: f64,
    value: impl Fn(&LinkRate) -> f64 + 'a,
) -> impl Iterator<Item = f64> + 'a {
    let count = draws.first().map_or(0, |draw| which(draw).count());
    let mut values = Vec::with_capacity(draws.len());
    (0..count).map(move |way| {
        values.clear();
        values.extend(draws.iter().filter_map(|draw| which(draw).at(at).get(way)).map(&value));
        quantile(&mut values, share)
    })
}

#[cfg(test)]
mod tests {
    use coax::link::{BitLoading, Candidates, EthernetPort, LinkDraw, Node, Version, placements};
    use coax::{Decibels, Megahertz};

    use super::*;

    /// One draw of a network of 2.x nodes whose pairs lose so much at a frequency, dB.
    fn draw(version: Version, losses: &[&dyn Fn(f64) -> f64]) -> Tried {
        let grid: Vec<Megahertz> =
            (0..512).map(|n| Megahertz(1125.0 + 550.0 * f64::from(n) / 511.0)).collect();
        let node = Node { version, port: EthernetPort::TenGigabit };
        let candidates = Candidates::new(placements(version));
        let mut shown = Ways::new(losses.len(), candidates.placements().len());
        for (way, loss) in losses.iter().enumerate() {
            let path: Vec<f64> = grid.iter().map(|f| Decibels(-loss(f.value())).power()).collect();
            let load = BitLoading::new(&grid, path, node, node, &LinkDraw::likely()).unwrap();
            load.each_rate(&candidates, losses.len() + 1, shown.writes(way)).unwrap();
        }
        Tried { shown, ..Tried::default() }
    }

    fn chosen_of(version: Version, draws: &[Tried]) -> Placement {
        let candidates = placements(version);
        candidates[chosen(&candidates, draws).unwrap()].clone()
    }

    #[test]
    fn it_goes_round_a_notch_and_else_lies_lowest() {
        // Nothing passes below 1225 MHz: two touching channels must lie above.
        let notch = draw(Version::V2_0Bonded, &[&|f| if f < 1225.0 { 200.0 } else { 30.0 }]);
        let place = chosen_of(Version::V2_0Bonded, &[notch]);
        assert!(place.low().value() >= 1225.0 && place.channels().len() == 2);
        let flat = draw(Version::V2_0Bonded, &[&|_| 30.0]);
        assert!((chosen_of(Version::V2_0Bonded, &[flat]).low().value() - 1125.0).abs() < 1e-9);
        assert!(chosen(&[], &[]).is_none());
    }

    #[test]
    fn the_weakest_pair_goes_before_the_sum() {
        // One pair hears nothing above 1400 MHz, the other is strong everywhere and a little stronger above.
        let weak = |f: f64| if f < 1400.0 { 60.0 } else { 300.0 };
        let strong = |f: f64| if f < 1400.0 { 55.0 } else { 20.0 };
        let place = chosen_of(Version::V2_0, &[draw(Version::V2_0, &[&weak, &strong])]);
        assert!(place.high().value() <= 1400.0);
    }

    #[test]
    fn one_throw_in_a_hundred_decides_nothing() {
        // Most draws are a little better below 1300 MHz; one has a deep notch there, which the lowest tenth does not see.
        let usual = |f: f64| if f < 1300.0 { 55.0 } else { 58.0 };
        let notched = |f: f64| if f < 1300.0 { 90.0 } else { 58.0 };
        let with = |notches: usize| -> Vec<Tried> {
            (0..100).map(|n| draw(Version::V2_0, &[if n < notches { &notched } else { &usual }])).collect()
        };
        assert!(chosen_of(Version::V2_0, &with(1)).high().value() <= 1300.0);
        // As near as can be, and not: in a fifth of the draws it counts.
        assert!(chosen_of(Version::V2_0, &with(20)).low().value() >= 1300.0);
    }
}
