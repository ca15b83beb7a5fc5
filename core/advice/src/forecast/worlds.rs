//! Amplifiers of which nobody knows whether they have a by-pass: a house with one is two, and each draw is of either.

use coax::rated::{ByPass, Rating};
use coax::{Dice, Span};
use facts::fact::SubjectId;
use house::record::Wish;
use serde::{Deserialize, Serialize};

use super::circuit::{Circuit, Terminal};
use super::outcome::CostAt;
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

/// Whether nobody knows of a by-pass here.
fn is_unknown(rated: &Rating) -> bool {
    matches!(rated, Rating::Amplifier(rating) if matches!(rating.bypass, ByPass::Perhaps { .. }))
}

impl Circuit {
    /// The amplifiers on the way between two adapters of which nobody knows whether they have a by-pass.
    pub(super) fn unknown_by_passes(&self, from: SubjectId, to: SubjectId) -> Vec<SubjectId> {
        let way = self.way(Terminal::Adapter(from), Terminal::Adapter(to));
        let unknown = way.into_iter().filter(|step| self.rated(*step).is_some_and(is_unknown));
        unknown
            .filter_map(|step| match self.place_of(step) {
                CostAt::Part(id) => Some(id),
                CostAt::RunTo(_) => None,
            })
            .collect()
    }

    /// This circuit where every amplifier of which nobody knows it has a by-pass, or none has.
    pub(super) fn in_world(&self, there: bool) -> Self {
        let mut world = self.clone();
        for piece in &mut world.pieces {
            if let Rating::Amplifier(rating) = &mut piece.rated {
                rating.bypass = rating.bypass.in_world(there);
            }
        }
        world
    }

    /// Whether a piece is the same in both worlds, with the same dice.
    pub(super) fn is_alike_in_worlds(&self, piece: usize) -> bool {
        self.pieces.get(piece).is_some_and(|piece| !is_unknown(&piece.rated))
    }

    /// Which of the two worlds these dice show; `None` where some have one and some have not.
    pub(super) fn world_shown(&self, throw: impl Fn([u8; 16]) -> Dice) -> Option<bool> {
        let mut shown = self.pieces.iter().filter_map(|piece| match &piece.rated {
            Rating::Amplifier(rating) if is_unknown(&piece.rated) => {
                Some(rating.shows_by_pass(&throw(piece.key)))
            }
            _ => None,
        });
        let first = shown.next()?;
        shown.all(|other| other == first).then_some(first)
    }
}
