//! What a draw lets through.

use std::collections::BTreeMap;

use coax::link::Placement;
use coax::{Decibels, Megahertz, Solution};
use facts::fact::SubjectId;

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

impl SolvedDraw {
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

    /// Whether it shows all of them.
    pub(super) fn is_with_all(&self) -> bool {
        matches!(self, Self::Worlds { shown: Shown::With, .. })
    }
}

/// The powers that a draw let through, by (from, to).
pub(super) struct Solved {
    pub(super) powers: BTreeMap<(SubjectId, SubjectId), Vec<f64>>,
}

impl Solved {
    /// The same where each of these ways loses so much more.
    pub(super) fn off_by(mut self, more: impl Fn(SubjectId, SubjectId) -> Decibels) -> Self {
        for ((from, to), power) in &mut self.powers {
            let share = (-more(*from, *to)).power();
            for power in power {
                *power *= share;
            }
        }
        self
    }

    /// |S|^2 at each frequency of the grid; empty if the pair was not asked for.
    pub(super) fn power(&self, from: SubjectId, to: SubjectId) -> Vec<f64> {
        self.powers.get(&(from, to)).cloned().unwrap_or_default()
    }

    /// The least loss in the band from any adapter to the street side of an entry, dB.
    pub(super) fn least_loss_to_street(&self, entry: SubjectId) -> f64 {
        let most = self
            .powers
            .iter()
            .filter(|((_, to), _)| *to == entry)
            .flat_map(|(_, power)| power.iter().copied())
            .fold(0.0, f64::max);
        -10.0 * most.log10()
    }
}

pub(super) fn power(solution: &Solution, to: coax::OutletIndex, from: coax::OutletIndex) -> Vec<f64> {
    solution.transfer(to, from).map(|s| s.iter().map(coax::Complex64::norm_sqr).collect()).unwrap_or_default()
}

/// The loss of the mean power over the channels used, dB.
pub(super) fn mean_loss(frequencies: &[Megahertz], power: &[f64], placement: &Placement) -> f64 {
    let used: Vec<f64> = frequencies
        .iter()
        .zip(power)
        .filter(|(f, _)| placement.channels().iter().any(|c| **f >= c.low() && **f <= c.high()))
        .map(|(_, power)| *power)
        .collect();
    -10.0 * (used.iter().sum::<f64>() / used.len().max(1) as f64).log10()
}
