//! Several placements, looked over once for all draws: which channels they have, each named once.

use crate::link::channel::{Channel, Placement};
use crate::link::version::Version;

/// Placements among which one is chosen.
#[derive(Debug, Clone)]
pub struct Candidates {
    placements: Vec<Placement>,
    by_version: Vec<(Version, Seen)>,
}

/// What a pair that speaks one version sees of them.
#[derive(Debug, Clone, Default)]
pub(crate) struct Seen {
    /// Every channel of any placement, once.
    pub channels: Vec<Channel>,
    /// For each placement which of them.
    pub of: Vec<Vec<usize>>,
}

impl Candidates {
    /// Looks these placements over.
    pub fn new(placements: Vec<Placement>) -> Self {
        let by_version = Version::ALL.map(|version| (version, Seen::by(version, &placements))).into();
        Self { placements, by_version }
    }

    /// The placements, in the order given.
    pub fn placements(&self) -> &[Placement] {
        &self.placements
    }

    pub(crate) fn seen_by(&self, version: Version) -> Option<&Seen> {
        self.by_version.iter().find(|(of, _)| *of == version).map(|(_, seen)| seen)
    }
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
