//! Several placements, looked over once for all draws: which channels they have, each named once.

use crate::link::channel::{Channel, Placement};
use crate::link::used::Used;
use crate::link::version::Version;
use crate::quantity::Megahertz;

/// Placements among which one is chosen.
#[derive(Debug, Clone)]
pub struct Candidates {
    placements: Vec<Placement>,
    by_version: Vec<(Version, Seen)>,
    /// The grid on which it is known where their channels lie; empty where it is on none.
    grid: Vec<Megahertz>,
}

/// What a pair that speaks one version sees of them.
#[derive(Debug, Clone, Default)]
pub(crate) struct Seen {
    /// Every channel of any placement, once.
    pub channels: Vec<Channel>,
    /// For each placement which of them.
    pub of: Vec<Vec<usize>>,
    /// Where each channel lies on the grid.
    used: Vec<Used>,
}

impl Candidates {
    /// Those of these placements between which pairs that speak these versions can tell: of several on which every one of them
    /// uses the same channels, the one that lies lowest.
    pub fn told_apart_by(placements: Vec<Placement>, versions: &[Version]) -> Self {
        let mut kept: Vec<Placement> = Vec::new();
        for placement in placements {
            let is_same = |known: &&mut Placement| {
                let channels = |of: &Placement, version| sorted(of.channels_for(version));
                versions.iter().all(|version| channels(known, *version) == channels(&placement, *version))
            };
            match kept.iter_mut().find(is_same) {
                Some(known) if edges(&placement) < edges(known) => *known = placement,
                Some(_) => {}
                None => kept.push(placement),
            }
        }
        Self::new(kept)
    }

    /// Looks these placements over.
    pub fn new(placements: Vec<Placement>) -> Self {
        let by_version = Version::ALL.map(|version| (version, Seen::by(version, &placements))).into();
        Self { placements, by_version, grid: Vec::new() }
    }

    /// The same, of which it is looked up once where their channels lie on a grid. They can be asked for on any other too.
    #[must_use]
    pub fn on(mut self, grid: &[Megahertz]) -> Self {
        for (version, seen) in &mut self.by_version {
            let used = seen.channels.iter().map(|channel| Used::by(*version, *channel, grid));
            // Why a channel does not lie on it is told to whoever asks for that channel.
            seen.used = used.collect::<Result<_, _>>().unwrap_or_default();
        }
        self.grid = grid.to_vec();
        self
    }

    /// The placements, in the order given.
    pub fn placements(&self) -> &[Placement] {
        &self.placements
    }

    #[inline]
    pub(crate) fn seen_by(&self, version: Version) -> Option<&Seen> {
        // They stand in the order of the versions.
        let found = self.by_version.get(version as usize).filter(|(of, _)| *of == version);
        found.map(|(_, seen)| seen)
    }

    /// Where those channels lie on a grid, if that is the one on which it was looked up.
    pub(crate) fn used_on<'s>(&self, grid: &[Megahertz], seen: &'s Seen) -> Option<&'s [Used]> {
        (seen.used.len() == seen.channels.len() && self.grid == grid).then_some(&seen.used)
    }
}

/// Channels from the lowest to the highest, by their edges in MHz.
fn sorted(channels: &[Channel]) -> Vec<(f64, f64)> {
    let mut edges: Vec<_> =
        channels.iter().map(|channel| (channel.low().value(), channel.high().value())).collect();
    edges.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    edges
}

fn edges(placement: &Placement) -> (f64, f64) {
    (placement.low().value(), placement.high().value())
}

impl Seen {
    fn by(version: Version, placements: &[Placement]) -> Self {
        let mut seen = Self::default();
        for placement in placements {
            let mut places = Vec::new();
            for channel in placement.channels_for(version) {
                let known = seen.channels.iter().position(|known| known == channel);
                places.push(known.unwrap_or_else(|| {
                    seen.channels.push(*channel);
                    seen.channels.len() - 1
                }));
            }
            seen.of.push(places);
        }
        seen
    }
}
