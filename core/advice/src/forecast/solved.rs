//! What a draw lets through.

use std::sync::Arc;

use coax::link::Placement;
use coax::{Megahertz, Powers, RootPowers};

use super::views::ByView;
use crate::error::AdviceError;

/// One draw, solved.
pub(super) enum SolvedDraw {
    /// Every by-pass on a way is known.
    One(Solved),
    /// One is not: the house with all of those, and with none.
    Worlds { with: Solved, without: Solved, shown: Shown },
}

/// Which world a draw shows.
pub(super) enum Shown {
    /// That with every by-pass of which nobody knows.
    With,
    /// That without.
    Without,
    /// One of several that are not known is there, another is not.
    Mixed(Solved),
}

/// Which house of a draw: as it is drawn, or with every by-pass of which nobody knows, or without.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum InWorld {
    AsDrawn,
    With,
    Without,
}

impl SolvedDraw {
    /// Both worlds of a house, each solved by `solved`; `shown` says which of them the draw shows, nothing where it shows neither.
    pub(super) fn of_worlds(
        shown: Option<bool>,
        mut solved: impl FnMut(InWorld) -> Result<Solved, AdviceError>,
    ) -> Result<Self, AdviceError> {
        let shown = match shown {
            Some(true) => Shown::With,
            Some(false) => Shown::Without,
            None => Shown::Mixed(solved(InWorld::AsDrawn)?),
        };
        Ok(Self::Worlds { with: solved(InWorld::With)?, without: solved(InWorld::Without)?, shown })
    }

    /// The house that the draw shows.
    pub(super) fn shown(&self) -> &Solved {
        match self {
            Self::One(solved)
            | Self::Worlds { with: solved, shown: Shown::With, .. }
            | Self::Worlds { without: solved, shown: Shown::Without, .. }
            | Self::Worlds { shown: Shown::Mixed(solved), .. } => solved,
        }
    }

    /// The house with all by-passes of which nobody knows, and with none.
    pub(super) fn worlds(&self) -> Option<[&Solved; 2]> {
        match self {
            Self::One(_) => None,
            Self::Worlds { with, without, .. } => Some([with, without]),
        }
    }

    /// Whether it shows none of them.
    pub(super) fn is_without_any(&self) -> bool {
        matches!(self, Self::Worlds { shown: Shown::Without, .. })
    }

    /// Whether it shows all of them.
    pub(super) fn is_with_all(&self) -> bool {
        matches!(self, Self::Worlds { shown: Shown::With, .. })
    }
}

/// The powers of each pair that was asked for.
pub(super) enum Pairs {
    /// Of one house alone.
    Swept(Powers),
    /// Of a house among others: view by view between where it is seen from and some outlets; where each pair is found in them,
    /// nothing where it is in none.
    Together(Vec<RootPowers>, Arc<[Option<ByView>]>),
}

impl Pairs {
    fn of(&self, pair: usize) -> &[f64] {
        match self {
            Self::Swept(powers) => powers.of(pair),
            Self::Together(powers, pairs) => {
                let found = pairs.get(pair).copied().flatten();
                found.zip(found.and_then(|found| powers.get(found.view))).map_or(&[], |(found, powers)| {
                    if found.leads { powers.from_root(found.outlet) } else { powers.to_root(found.outlet) }
                })
            }
        }
    }
}

/// The powers that a draw let through, pair by pair of those that were asked for.
pub(super) struct Solved {
    powers: Pairs,
    /// By what share of it each way differs from the model.
    shares: Vec<f64>,
}

impl Solved {
    /// What the model makes of each pair, of which one lets through so much more or less.
    pub(super) fn new(powers: Pairs, shares: Vec<f64>) -> Self {
        Self { powers, shares }
    }

    /// |S|^2 at each frequency of the grid; empty if the pair was not asked for.
    pub(super) fn power(&self, pair: Option<usize>) -> Vec<f64> {
        let Some(pair) = pair else { return Vec::new() };
        let share = self.shares.get(pair).copied().unwrap_or(1.0);
        self.powers.of(pair).iter().map(|power| power * share).collect()
    }

    /// The loss of the mean power over the frequencies used, dB.
    pub(super) fn mean_loss(&self, pair: Option<usize>, used: &[usize]) -> f64 {
        let share = pair.and_then(|pair| self.shares.get(pair)).copied().unwrap_or(1.0);
        let powers = pair.map_or(&[][..], |pair| self.powers.of(pair));
        let sum: f64 = used.iter().filter_map(|place| powers.get(*place)).map(|power| power * share).sum();
        -10.0 * (sum / used.len().max(1) as f64).log10()
    }

    /// Whether two pairs are one and the same way, there and back.
    pub(super) fn are_alike(&self, one: Option<usize>, other: Option<usize>) -> bool {
        let (Some(one), Some(other)) = (one, other) else { return false };
        std::ptr::eq(self.powers.of(one), self.powers.of(other))
            && self.shares.get(one) == self.shares.get(other)
    }

    /// The least loss in the band over any of some pairs, dB.
    pub(super) fn least_loss(&self, pairs: impl Iterator<Item = usize>) -> f64 {
        let most = pairs.flat_map(|pair| self.power(Some(pair))).fold(0.0, f64::max);
        -10.0 * most.log10()
    }
}

/// Which frequencies of a grid lie in the channels used.
pub(super) fn in_channels(frequencies: &[Megahertz], placement: &Placement) -> Vec<usize> {
    let is_used = |f: Megahertz| placement.channels().iter().any(|c| f >= c.low() && f <= c.high());
    frequencies.iter().enumerate().filter(|(_, f)| is_used(**f)).map(|(place, _)| place).collect()
}
