//! One capacity for all: at any time one node of a network sends, so all pairs and directions share its time.

use crate::link::rate::LinkRate;
use crate::quantity::MegabitsPerSecond;

/// What is wanted from one node to another, and what the two reach with the network to themselves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// What is wanted.
    pub wanted: MegabitsPerSecond,
    /// What they reach alone.
    pub alone: LinkRate,
}

/// How demands share the network's time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Time all demands together take, as a share of what there is; above 1 they do not fit. Infinite if something is
    /// wanted over a pair that does not link.
    pub airtime: f64,
    /// The factor, 0 to 1, to which all demands alike would have to come down to fit the time and every pair's ports.
    pub factor: f64,
}

impl Load {
    /// Whether all demands fit.
    pub fn fits(&self) -> bool {
        self.factor >= 1.0
    }
}

/// Airtime of demands: the sum of each demand over its pair's MAC rate. A pair held back by an Ethernet port takes less
/// time than its net rate suggests, hence the MAC rate; that its demand stays below its net rate counts beside.
///
/// Several demands that pass one node's port are not added up here: one entry holds what passes between two nodes.
pub fn share(demands: &[Demand]) -> Load {
    let wanted = || demands.iter().filter(|demand| demand.wanted.value() > 0.0);
    let airtime = wanted().map(|demand| demand.wanted.value() / demand.alone.mac.value()).sum::<f64>();
    let ports = wanted().map(|demand| demand.alone.net.value() / demand.wanted.value()).fold(1.0, f64::min);
    Load { airtime, factor: if airtime > 1.0 { ports.min(1.0 / airtime) } else { ports } }
}

/// The MAC rate at which one node reaches all others at once: that of the listener that hears it least. Zero if there
/// is no listener.
pub fn broadcast_rate(to_each: &[LinkRate]) -> MegabitsPerSecond {
    let weakest = to_each.iter().map(|rate| rate.mac.value()).fold(f64::INFINITY, f64::min);
    MegabitsPerSecond(if weakest.is_finite() { weakest } else { 0.0 })
}
