//! The channels that the network runs on: chosen over all draws, for the weakest room's sake.
//!
//! Real networks look for a good place by themselves; on one throw of phases the best place is chance, and a change would seem
//! to gain what is only a hop to other channels.

use coax::link::{Candidates, Carried, CarriedInDraws, LinkRate};

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
    /// How many nodes the network has.
    nodes: usize,
    carried: Vec<Carried>,
}

impl Ways {
    /// In a network of so many nodes.
    pub(super) fn new(nodes: usize, carried: Vec<Carried>) -> Self {
        Self { nodes, carried }
    }

    /// How many there are.
    pub(super) fn count(&self) -> usize {
        self.carried.len()
    }

    /// A pair of them, there and back, by its place.
    pub(super) fn pair(&self, place: usize) -> &[Carried] {
        self.carried.get(2 * place..2 * place + 2).unwrap_or(&[])
    }

    /// What one gives at one of the candidates.
    pub(super) fn rate(&self, way: usize, candidates: &Candidates, at: usize) -> Option<LinkRate> {
        self.carried.get(way).map(|carried| carried.rate(candidates, at, self.nodes))
    }

    /// What each pair gives at one of the candidates, there and back.
    pub(super) fn pairs_at<'a>(
        &'a self,
        candidates: &'a Candidates,
        at: usize,
    ) -> impl Iterator<Item = [LinkRate; 2]> + use<'a> {
        let rate = move |carried: &Carried| carried.rate(candidates, at, self.nodes);
        self.carried.as_chunks().0.iter().map(move |pair: &[Carried; 2]| pair.each_ref().map(rate))
    }
}

/// The placement that serves the weakest room best: by what the slowest way of all reaches nine times in ten; then by the same
/// with every by-pass of which nobody knows, since without it little is left to choose; then by what all ways together reach
/// nine times in ten; then by what the coax is likely to carry, whatever the network sockets let through. Of near-equals in all
/// of this the one that lies lowest, by its place among the candidates. `None` without any.
pub(super) fn chosen(candidates: &Candidates, draws: &[Tried]) -> Option<usize> {
    let mut left: Vec<usize> = (0..candidates.placements().len()).collect();
    if left.len() < 2 {
        return left.pop();
    }
    let shown = InDraws::of(candidates, draws, |draw| &draw.shown);
    let with_by_passes = InDraws::of(candidates, draws, |draw| &draw.with_by_passes);
    let mut values = Vec::with_capacity(draws.len());
    // The way that was too slow last is likely so at the next placement, too.
    let mut slowest = 0;
    for worth in [Worth::Slowest, Worth::SlowestWithByPasses, Worth::All, Worth::Coax] {
        if left.len() < 2 {
            break;
        }
        let near = |best: f64| (best * NEAR).min(best - NEAR_MBPS);
        let mut best = f64::NEG_INFINITY;
        let mut worths: Vec<(usize, f64)> = Vec::with_capacity(left.len());
        for at in left {
            // Whatever falls below what is near enough to the best so far need not be known.
            let here = match worth {
                Worth::Slowest => shown.least(at, near(best), &mut slowest, &mut values),
                Worth::SlowestWithByPasses => with_by_passes.least(at, near(best), &mut slowest, &mut values),
                Worth::All => shown.sum(at, LOW, |rate| rate.net.value(), &mut values),
                Worth::Coax => shown.sum(at, LIKELY, |rate| rate.phy.value(), &mut values),
            };
            best = best.max(here);
            worths.push((at, here));
        }
        // Where there is no way to look at, every worth is infinite, and all are equal.
        let is_near = |worth: f64| worth >= best || worth >= near(best);
        left = worths.into_iter().filter(|(_, worth)| is_near(*worth)).map(|(at, _)| at).collect();
    }
    let edges = |at: &usize| {
        candidates.placements().get(*at).map(|place| (place.low().value(), place.high().value()))
    };
    left.into_iter().min_by(|a, b| edges(a).partial_cmp(&edges(b)).unwrap_or(std::cmp::Ordering::Equal))
}

/// By what placements are compared, one after the other.
#[derive(Clone, Copy)]
enum Worth {
    Slowest,
    SlowestWithByPasses,
    All,
    Coax,
}

/// What each way gives over all draws at a placement: so large a share of the draws gives less.
struct InDraws<'a> {
    candidates: &'a Candidates,
    nodes: usize,
    ways: Vec<CarriedInDraws>,
}

impl<'a> InDraws<'a> {
    fn of(candidates: &'a Candidates, draws: &[Tried], which: impl Fn(&Tried) -> &Ways) -> Self {
        let first = draws.first().map(&which);
        let ways = (0..first.map_or(0, Ways::count)).map(|way| {
            let carried: Vec<&Carried> =
                draws.iter().filter_map(|draw| which(draw).carried.get(way)).collect();
            CarriedInDraws::of(&carried)
        });
        Self { candidates, nodes: first.map_or(0, |ways| ways.nodes), ways: ways.collect() }
    }

    /// One of them; `values` is room to work in.
    fn by(
        &self,
        way: &CarriedInDraws,
        at: usize,
        share: f64,
        wanted: impl Fn(LinkRate) -> f64,
        values: &mut Vec<f64>,
    ) -> f64 {
        way.rates(self.candidates, at, self.nodes, wanted, values);
        quantile(values, share)
    }

    fn sum(
        &self,
        at: usize,
        share: f64,
        wanted: impl Fn(LinkRate) -> f64 + Copy,
        values: &mut Vec<f64>,
    ) -> f64 {
        self.ways.iter().map(|way| self.by(way, at, share, wanted, values)).sum()
    }

    /// The least of them nine times in ten; where one is nothing or less than what is enough, the others do not matter. The slowest so
    /// far goes first.
    fn least(&self, at: usize, enough: f64, slowest: &mut usize, values: &mut Vec<f64>) -> f64 {
        let (count, first) = (self.ways.len(), *slowest);
        let mut least = f64::INFINITY;
        for place in (0..count).filter(|way| *way == first).chain((0..count).filter(|way| *way != first)) {
            let Some(way) = self.ways.get(place) else { continue };
            let here = self.by(way, at, LOW, |rate| rate.net.value(), values);
            if here < least {
                (least, *slowest) = (here, place);
            }
            if least <= 0.0 || least < enough {
                break;
            }
        }
        least
    }
}

#[cfg(test)]
mod tests {
    use coax::link::{BitLoading, EthernetPort, LinkDraw, Node, Placement, Version, placements};
    use coax::{Decibels, Megahertz};

    use super::*;

    /// One draw of a network of 2.x nodes whose pairs lose so much at a frequency, dB.
    fn draw(version: Version, losses: &[&dyn Fn(f64) -> f64]) -> Tried {
        let grid: Vec<Megahertz> =
            (0..512).map(|n| Megahertz(1125.0 + 550.0 * f64::from(n) / 511.0)).collect();
        let node = Node { version, port: EthernetPort::TenGigabit };
        let candidates = Candidates::new(placements(version));
        let carried = losses.iter().map(|loss| {
            let path: Vec<f64> = grid.iter().map(|f| Decibels(-loss(f.value())).power()).collect();
            let load = BitLoading::new(&grid, path, node, node, &LinkDraw::likely()).unwrap();
            load.carried(&candidates).unwrap()
        });
        Tried { shown: Ways::new(losses.len() + 1, carried.collect()), ..Tried::default() }
    }

    fn chosen_of(version: Version, draws: &[Tried]) -> Placement {
        let candidates = Candidates::new(placements(version));
        candidates.placements()[chosen(&candidates, draws).unwrap()].clone()
    }

    #[test]
    fn it_goes_round_a_notch_and_else_lies_lowest() {
        // Nothing passes below 1225 MHz: two touching channels must lie above.
        let notch = draw(Version::V2_0Bonded, &[&|f| if f < 1225.0 { 200.0 } else { 30.0 }]);
        let place = chosen_of(Version::V2_0Bonded, &[notch]);
        assert!(place.low().value() >= 1225.0 && place.channels().len() == 2);
        let flat = draw(Version::V2_0Bonded, &[&|_| 30.0]);
        assert!((chosen_of(Version::V2_0Bonded, &[flat]).low().value() - 1125.0).abs() < 1e-9);
        assert!(chosen(&Candidates::new(Vec::new()), &[]).is_none());
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
