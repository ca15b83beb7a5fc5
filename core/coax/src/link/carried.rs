//! What a pair of nodes carries on each channel, and the rates that come of it on several channels together.

use crate::link::candidates::Candidates;
use crate::link::mac::mac_rate;
use crate::link::rate::{Limit, LinkRate, USABLE};
use crate::link::version::Version;
use crate::quantity::MegabitsPerSecond;

/// A shortfall below this share of what the nodes reach with no cable between them is not blamed on the path.
const NOT_WORTH_BLAMING: f64 = 0.02;

/// What is known of two nodes, whatever the path between them.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pair {
    /// Mean bits with no loss between the nodes.
    pub unhindered: f64,
    pub version: Version,
    pub port: MegabitsPerSecond,
    pub mac_efficiency: f64,
    /// PHY rate of one channel with every subcarrier at its most bits.
    pub full_phy: MegabitsPerSecond,
}

impl Pair {
    /// The rates on so many channels that together carry so many mean bits.
    #[inline]
    pub fn rate_of(&self, bits: f64, channels: usize, nodes_in_network: usize) -> LinkRate {
        let phy = MegabitsPerSecond(self.full_phy.value() * bits / f64::from(self.version.most_bits().value));
        let mac = mac_rate(self.version, phy, channels, nodes_in_network, self.mac_efficiency);
        if channels == 0 {
            return LinkRate { limit: Limit::Band, ..LinkRate::NONE };
        }
        if mac < USABLE {
            return LinkRate::NONE;
        }
        let is_clean = bits >= (1.0 - NOT_WORTH_BLAMING) * self.unhindered * channels as f64;
        let limit = if self.port < mac {
            Limit::EthernetPort
        } else if !is_clean {
            Limit::Path
        } else if channels < self.version.most_channels().value {
            Limit::Band
        } else {
            Limit::Version
        };
        let net = if self.port < mac { self.port } else { mac };
        LinkRate { phy, mac, net, limit, is_clean }
    }
}

/// Mean bits a subcarrier on each channel of some placements, from one node to another in one draw.
#[derive(Debug, Clone)]
pub struct Carried {
    pair: Pair,
    /// Channel by channel, as the placements have them.
    bits: Vec<f64>,
}

impl Carried {
    pub(crate) fn new(pair: Pair, bits: Vec<f64>) -> Self {
        Self { pair, bits }
    }

    pub(super) fn pair(&self) -> Pair {
        self.pair
    }

    pub(super) fn bits(&self) -> &[f64] {
        &self.bits
    }

    /// The rates when the network, of `nodes_in_network` nodes, runs at one of those placements, by its place among them; none beyond
    /// the last.
    pub fn rate(&self, candidates: &Candidates, placement: usize, nodes_in_network: usize) -> LinkRate {
        let seen = candidates.seen_by(self.pair.version).and_then(|seen| seen.of.get(placement));
        let Some(channels) = seen else { return LinkRate::NONE };
        let bits = channels.iter().filter_map(|channel| self.bits.get(*channel));
        self.pair.rate_of(bits.fold(0.0, |sum, bits| sum + bits), channels.len(), nodes_in_network)
    }
}
