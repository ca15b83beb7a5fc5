//! What a room gets with every by-pass of which nobody knows, and without.

use coax::Span;
use facts::fact::SubjectId;
use house::record::Wish;
use serde::{Deserialize, Serialize};

use super::percentile::spread;

/// What a room gets in each of the two worlds, over the same draws of all else.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ByPassWorlds {
    /// The amplifiers on its way of which nobody knows it, from the bridge on. Never empty.
    pub amplifiers: Vec<SubjectId>,
    /// Share of the draws in which all of them have one, 0 to 1.
    pub odds: f64,
    /// Where all of them have one.
    pub with: World,
    /// Where none has.
    pub without: World,
}

impl ByPassWorlds {
    /// Whether a wish is likely met in one of them, and not in the other.
    pub fn decide(&self, wish: Wish) -> bool {
        self.with.gives(wish) != self.without.gives(wish)
    }
}

/// What gets from the bridge to an outlet in one of them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct World {
    /// Net rate towards the room, Mb/s.
    pub down: Span,
    /// Net rate from the room, Mb/s.
    pub up: Span,
    /// Share of the draws in which the two adapters hear each other at all, 0 to 1.
    pub links: f64,
}

impl World {
    fn gives(&self, wish: Wish) -> bool {
        self.down.likely >= wish.down_mbps && self.up.likely >= wish.up_mbps
    }

    /// The likely rate of the slower way, Mb/s.
    pub fn both_ways(&self) -> f64 {
        self.down.likely.min(self.up.likely)
    }
}

/// The rates of one world, draw by draw.
#[derive(Default)]
pub(super) struct WorldDraws {
    down: Vec<f64>,
    up: Vec<f64>,
    links: u32,
}

impl WorldDraws {
    pub(super) fn add(&mut self, down_mbps: f64, up_mbps: f64, links: bool) {
        self.down.push(down_mbps);
        self.up.push(up_mbps);
        self.links += u32::from(links);
    }

    pub(super) fn summed_up(self) -> World {
        let draws = self.down.len().max(1) as f64;
        World { down: spread(self.down), up: spread(self.up), links: f64::from(self.links) / draws }
    }
}
