//! The best place in the band for a network.

use crate::link::channel::Placement;
use crate::link::error::LinkError;
use crate::link::loading::BitLoading;
use crate::link::rate::LinkRate;

/// A placement and what the network's pairs reach there.
#[derive(Debug, Clone, PartialEq)]
pub struct Best {
    /// The placement.
    pub placement: Placement,
    /// Rates of the pairs, in the order they were given.
    pub rates: Vec<LinkRate>,
}

/// The best of `candidates` for a network whose pairs (each direction by itself) have these loadings.
///
/// The weakest room goes first, since every room is to be served: most pairs that link at all, then the highest net
/// rate of the weakest pair, then the highest sum of PHY rates (ports hide what spare a path has). Of equals, the
/// first given. `None` without candidates.
pub fn best_placement(
    candidates: &[Placement],
    pairs: &[BitLoading<'_>],
    nodes_in_network: usize,
) -> Result<Option<Best>, LinkError> {
    let mut best: Option<(Worth, Best)> = None;
    for placement in candidates {
        let rates = pairs
            .iter()
            .map(|pair| pair.rate(placement, nodes_in_network))
            .collect::<Result<Vec<LinkRate>, LinkError>>()?;
        let worth = Worth::of(&rates);
        if best.as_ref().is_none_or(|(highest, _)| worth > *highest) {
            best = Some((worth, Best { placement: placement.clone(), rates }));
        }
    }
    Ok(best.map(|(_, best)| best))
}

/// Compared field by field, the first first.
#[derive(PartialEq, PartialOrd)]
struct Worth {
    linked: usize,
    weakest_net: f64,
    total_phy: f64,
}

impl Worth {
    fn of(rates: &[LinkRate]) -> Self {
        Self {
            linked: rates.iter().filter(|rate| rate.links()).count(),
            weakest_net: rates.iter().map(|rate| rate.net.value()).fold(f64::INFINITY, f64::min),
            total_phy: rates.iter().map(|rate| rate.phy.value()).sum(),
        }
    }
}
