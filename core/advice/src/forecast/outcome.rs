//! What a forecast says.

use coax::Span;
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use super::by_pass_worlds::ByPassWorlds;

/// What limits a path.
pub use coax::link::Limit;

/// A forecast for a house. Every [`Span`] here holds percentiles over the draws: `low` is the 10th, `likely` the
/// median, `high` the 90th; a value lies below `low` in a tenth of the draws.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Forecast {
    /// The seed of the draws.
    pub seed: u64,
    /// How many draws were made.
    pub draws: u32,
    /// At how many frequencies over Extended D.
    pub frequencies: usize,
    /// The outlet whose adapter bridges the coax to the router; `None` while nobody chose one.
    pub bridge: Option<SubjectId>,
    /// The channels used: centre and width, MHz. Empty where no room can be reached.
    pub channels: Vec<(f64, f64)>,
    /// Number of adapters counted.
    pub nodes: usize,
    /// One for each outlet that has or shall have an adapter, except the bridge; by room name.
    pub rooms: Vec<RoomForecast>,
    /// How much of an adapter's signal would leave by the entry.
    pub street: Vec<StreetLeak>,
    /// Whether all wishes together fit in the one capacity that all pairs share; `None` without a wish, and where one hangs on
    /// a by-pass of which nobody knows.
    pub shared: Option<SharedCapacity>,
    /// Round trip that the coax adds, ms.
    pub round_trip_ms: Span,
}

impl Forecast {
    /// The forecast of an outlet.
    pub fn room(&self, outlet: SubjectId) -> Option<&RoomForecast> {
        self.rooms.iter().find(|room| room.outlet == outlet)
    }

    /// The path to an outlet, where its rates were worked out.
    pub fn path(&self, outlet: SubjectId) -> Option<&PathForecast> {
        match &self.room(outlet)?.reach {
            Reach::Estimated(path) => Some(path),
            _ => None,
        }
    }

    /// The likely rate towards an outlet, Mb/s; 0 where nothing gets there.
    pub fn likely_down(&self, outlet: SubjectId) -> f64 {
        self.path(outlet).map_or(0.0, |path| path.down.likely)
    }

    /// The estimated paths, weakest first (by the likely rate towards the room).
    pub fn weakest_first(&self) -> Vec<(&RoomForecast, &PathForecast)> {
        let mut paths: Vec<_> = self
            .rooms
            .iter()
            .filter_map(|room| match &room.reach {
                Reach::Estimated(path) => Some((room, path.as_ref())),
                _ => None,
            })
            .collect();
        paths.sort_by(|a, b| a.1.down.likely.total_cmp(&b.1.down.likely));
        paths
    }
}

/// The forecast for one outlet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RoomForecast {
    /// The outlet.
    pub outlet: SubjectId,
    /// Its room.
    pub room: Option<SubjectId>,
    /// What gets there.
    pub reach: Reach,
}

/// What gets from the bridge to an outlet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Reach {
    /// Rates and losses were worked out.
    Estimated(Box<PathForecast>),
    /// Nobody has said yet which outlet gets the bridge.
    NoBridge,
    /// The outlet, or something above it, is not yet traced to a feed.
    Loose(SubjectId),
    /// The outlet hangs on another tree than the bridge.
    OtherTree,
    /// Nothing feeds the outlet, or the bridge's: no cable leads there.
    FedByNothing(SubjectId),
    /// The two adapters have no channel in common that no other service uses.
    NoChannel,
}

/// The path between the bridge and an outlet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PathForecast {
    /// Net rate towards the room, Mb/s, after the Ethernet ports.
    pub down: Span,
    /// Net rate from the room, Mb/s.
    pub up: Span,
    /// PHY rate towards the room, Mb/s.
    pub phy_down: Span,
    /// PHY rate from the room, Mb/s.
    pub phy_up: Span,
    /// Mean loss over the channels used, dB.
    pub loss: Span,
    /// Share of the draws in which the two adapters hear each other at all, 0 to 1.
    pub links: f64,
    /// Share of the draws in which the coax lets through all that the two adapters can use, both ways, 0 to 1.
    pub clean: f64,
    /// What limits the rate towards the room in most draws.
    pub limit: Limit,
    /// Where loss arises, along the way from the bridge, in the draws about the median: they add up to the likely loss.
    pub costs: Vec<Cost>,
    /// Loss over frequency.
    pub curve: Curve,
    /// Where an amplifier on the way may have a by-pass or not: what gets through with it, and without. The rates and losses
    /// above are over both.
    pub by_pass: Option<Box<ByPassWorlds>>,
}

/// In fewer draws than this share the two adapters of a path may not hear each other at all, and it is told.
const SURELY_LINKS: f64 = 0.995;

impl PathForecast {
    /// Whether the two adapters may not hear each other at all, as far as is known.
    pub fn may_not_link(&self) -> bool {
        self.links < SURELY_LINKS
    }

    /// Whether the adapters are likelier than not to be what holds the PHY rate: a higher one, read off an adapter, tells of the
    /// adapters and not of the wiring.
    pub fn is_at_ceiling(&self) -> bool {
        self.clean > 0.5
    }

    /// The place on the way that costs most.
    pub fn dearest(&self) -> Option<&Cost> {
        self.costs.iter().max_by(|a, b| a.db.total_cmp(&b.db))
    }
}

/// A loss and where it arises.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Cost {
    /// Where.
    pub at: CostAt,
    /// How much, dB.
    pub db: f64,
}

/// A place on a path where loss arises.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum CostAt {
    /// In a part on the way.
    Part(SubjectId),
    /// In the run that feeds this part.
    RunTo(SubjectId),
}

/// Loss over frequency: three curves over the same frequencies, each frequency's own percentiles.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Curve {
    /// Frequencies, MHz, rising.
    pub mhz: Vec<f64>,
    /// Loss exceeded in nine draws of ten, dB.
    pub low: Vec<f64>,
    /// Median loss, dB.
    pub likely: Vec<f64>,
    /// Loss exceeded in one draw of ten, dB.
    pub high: Vec<f64>,
}

/// How much of one adapter's signal would leave the house at one entry.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct StreetLeak {
    /// The entry.
    pub entry: SubjectId,
    /// The least loss from any adapter to the street over the MoCA band, dB: the smaller, the more leaves.
    pub loss: Span,
}

/// Whether all wishes together fit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SharedCapacity {
    /// Share of the network's time that all wished rates at once would take: above 1 they do not fit.
    pub airtime: Span,
}
