//! What one way carries in several draws, all draws' figures of a channel side by side: looked at again and again to choose where a
//! network runs.

use crate::link::candidates::Candidates;
use crate::link::carried::{Carried, Pair};
use crate::link::rate::LinkRate;

/// What a way between two nodes carries on each channel of some placements, draw by draw.
#[derive(Debug, Clone, Default)]
pub struct CarriedInDraws {
    pairs: Vec<Pair>,
    /// Channel by channel, of each the draws.
    bits: Vec<f64>,
}

impl CarriedInDraws {
    /// Of the same way in several draws; of the same placements in each.
    pub fn of(draws: &[&Carried]) -> Self {
        let pairs: Vec<Pair> = draws.iter().map(|carried| carried.pair()).collect();
        let channels = draws.iter().map(|carried| carried.bits().len()).min().unwrap_or(0);
        let mut bits = Vec::with_capacity(channels * pairs.len());
        for channel in 0..channels {
            bits.extend(draws.iter().filter_map(|carried| carried.bits().get(channel)));
        }
        Self { pairs, bits }
    }

    /// Writes, draw by draw, what is wanted of the rates at one of the placements when the network has `nodes_in_network` nodes: as
    /// [`Carried::rate`] has them.
    pub fn rates(
        &self,
        candidates: &Candidates,
        placement: usize,
        nodes_in_network: usize,
        wanted: impl Fn(LinkRate) -> f64,
        into: &mut Vec<f64>,
    ) {
        into.clear();
        // Both nodes are the same in every draw, and so is the version that they speak.
        let seen = self.pairs.first().and_then(|pair| candidates.seen_by(pair.version));
        let Some(channels) = seen.and_then(|seen| seen.of.get(placement)) else {
            into.extend(self.pairs.iter().map(|_| wanted(LinkRate::NONE)));
            return;
        };
        into.resize(self.pairs.len(), 0.0);
        for channel in channels {
            let of_draws = self.bits.get(channel * self.pairs.len()..).unwrap_or(&[]);
            into.iter_mut().zip(of_draws).for_each(|(sum, bits)| *sum += bits);
        }
        for (pair, sum) in self.pairs.iter().zip(into) {
            *sum = wanted(pair.rate_of(*sum, channels.len(), nodes_in_network));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::link::{BitLoading, EthernetPort, LinkDraw, Node, Version, placements};
    use crate::quantity::{Decibels, Megahertz};
    use crate::{Dice, FrequencyGrid};

    #[test]
    fn side_by_side_the_draws_give_what_each_gives_alone() {
        let grid = FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 111).unwrap();
        let mut differ = 0;
        for version in Version::ALL {
            let candidates = Candidates::new(placements(version));
            let node = Node { version, port: EthernetPort::Gigabit };
            let carried: Vec<Carried> = (0..9_u32)
                .map(|draw| {
                    let loss =
                        |f: &Megahertz| Decibels(-(30.0 + 3.0 * f64::from(draw) + f.value() / 50.0)).power();
                    let path: Vec<f64> = grid.frequencies().iter().map(loss).collect();
                    let draw = LinkDraw::draw(&mut Dice::thrown(1, u64::from(draw), [7; 16]));
                    let loading = BitLoading::new(grid.frequencies(), path, node, node, &draw).unwrap();
                    loading.carried(&candidates).unwrap()
                })
                .collect();
            let together = CarriedInDraws::of(&carried.iter().collect::<Vec<_>>());
            let mut rates = Vec::new();
            // One beyond the last has none.
            for placement in 0..=candidates.placements().len() {
                together.rates(&candidates, placement, 5, |rate| rate.net.value(), &mut rates);
                let alone = carried.iter().map(|one| one.rate(&candidates, placement, 5).net.value());
                assert!(alone.eq(rates.iter().copied()), "{version:?} {placement}");
                differ += usize::from(rates.windows(2).any(|pair| pair.first() != pair.last()));
            }
        }
        assert!(differ > 10, "{differ}");
    }
}
