//! What a change does to the levels of the other services.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{ServiceKind, Survey};
use indexmap::IndexMap;
use serde::{Deserialize, Serialize};

use super::Options;
use super::entry_levels::metered_on;
use super::found::{frequencies, measured_mhz};
use super::outlets::{Served, served_outlets};
use super::solve::{Gains, solve};
use crate::error::AdviceError;
use crate::forecast::spread;

/// A change of level below this is lost in what the estimate itself is worth, dB.
pub(crate) const NOTICEABLE_DB: f64 = 0.3;

/// How much the level of one service at one outlet changes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct OutletChange {
    /// The outlet.
    pub outlet: SubjectId,
    /// The service.
    pub service: ServiceKind,
    /// Whether the change takes the outlet off the entry altogether; the figures are then empty.
    pub cut_off: bool,
    /// Towards the house: low, middle and high in the service's band.
    pub down: Vec<BandChange>,
    /// Towards the street, for a modem: low and high in its band.
    pub up: Vec<BandChange>,
    /// Towards the house, wherever else a level was measured on the tree.
    pub read: Vec<BandChange>,
}

impl OutletChange {
    /// The change towards the house at a frequency that was looked at, MHz.
    pub(super) fn at(&self, mhz: f64) -> Option<&BandChange> {
        self.down.iter().chain(&self.read).find(|band| (band.mhz - mhz).abs() < 1e-9)
    }

    /// The change that hurts most, dB (negative: signal lost): the least likely value over all bands; minus infinity
    /// where it is cut off.
    pub fn worst_db(&self) -> f64 {
        if self.cut_off {
            return f64::NEG_INFINITY;
        }
        self.down.iter().chain(&self.up).map(|band| band.db.likely).fold(f64::INFINITY, f64::min)
    }

    /// The greatest change in either direction, dB, with its sign.
    pub fn largest_db(&self) -> f64 {
        if self.cut_off {
            return f64::NEG_INFINITY;
        }
        let all = self.down.iter().chain(&self.up).map(|band| band.db.likely);
        all.fold(0.0, |largest: f64, db| if db.abs() > largest.abs() { db } else { largest })
    }
}

/// A change at one frequency.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BandChange {
    /// The frequency, MHz.
    pub mhz: f64,
    /// The gain from entry to outlet (or back) before, dB, likely.
    pub before_db: f64,
    /// The gain afterwards, dB, one a draw.
    pub(super) after_db: Vec<f64>,
    /// By how much the gain changes, dB: positive is more signal. 10th percentile, median, 90th.
    pub db: Span,
}

/// What the services at each TV and modem gain or lose from one house to another, draw by draw with the same dice.
/// Outlets that only the later house has are left out.
///
/// # Errors
/// Whatever the physics refuses about a part.
pub fn change(before: &Survey, after: &Survey, options: &Options) -> Result<Vec<OutletChange>, AdviceError> {
    Beside::new(before, options)?.then(after)
}

/// A house solved once, to hold several others beside it.
pub(crate) struct Beside {
    options: Options,
    trees: Vec<SolvedTree>,
}

/// What comes in by one entry.
struct SolvedTree {
    entry: SubjectId,
    served: Vec<Served>,
    /// Every frequency looked at, and those of them at which a level was measured on the tree.
    mhz: Vec<f64>,
    read_mhz: Vec<f64>,
    gains: Gains,
}

impl Beside {
    /// # Errors
    /// Whatever the physics refuses about a part.
    pub(crate) fn new(survey: &Survey, options: &Options) -> Result<Self, AdviceError> {
        let mut by_entry: IndexMap<SubjectId, Vec<Served>> = IndexMap::new();
        for served in served_outlets(survey) {
            by_entry.entry(served.entry).or_default().push(served);
        }
        let mut trees = Vec::new();
        for (entry, served) in by_entry {
            let metered = metered_on(survey, entry);
            let mhz = frequencies(&served, &metered);
            let mut read_mhz = measured_mhz(&metered);
            read_mhz.sort_by(f64::total_cmp);
            read_mhz.dedup();
            let gains = solve(survey, entry, &mhz, options)?;
            trees.push(SolvedTree { entry, served, mhz, read_mhz, gains });
        }
        Ok(Self { options: *options, trees })
    }

    /// What the services gain or lose where another house comes in this one's place.
    ///
    /// # Errors
    /// Whatever the physics refuses about a part.
    pub(crate) fn then(&self, after: &Survey) -> Result<Vec<OutletChange>, AdviceError> {
        let mut changes = Vec::new();
        for tree in &self.trees {
            let later = solve(after, tree.entry, &tree.mhz, &self.options)?;
            changes.extend(tree.served.iter().map(|served| tree.at_outlet(served, &later)));
        }
        Ok(changes)
    }
}

impl SolvedTree {
    fn at_outlet(&self, served: &Served, later: &Gains) -> OutletChange {
        let (outlet, service) = (served.outlet, served.service);
        let band = |mhz: f64, before: Vec<f64>, after: Vec<f64>| {
            let rises = before.iter().zip(&after).map(|(before, after)| after - before).collect();
            BandChange { mhz, before_db: spread(before).likely, after_db: after, db: spread(rises) }
        };
        let down = |mhz: f64| band(mhz, self.gains.down(outlet, mhz), later.down(outlet, mhz));
        let up = |mhz: f64| band(mhz, self.gains.up(outlet, mhz), later.up(outlet, mhz));
        let cut_off = served.down_mhz.iter().any(|mhz| later.down(outlet, *mhz).is_empty());
        if cut_off {
            return OutletChange { outlet, service, cut_off, down: vec![], up: vec![], read: vec![] };
        }
        let mut read = self.read_mhz.clone();
        read.retain(|mhz| !served.down_mhz.iter().any(|band| (band - mhz).abs() < 1e-9));
        OutletChange {
            outlet,
            service,
            cut_off,
            down: served.down_mhz.into_iter().map(down).collect(),
            up: served.up_mhz.into_iter().flatten().map(up).collect(),
            read: read.into_iter().map(down).collect(),
        }
    }
}
