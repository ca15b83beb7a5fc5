//! What a change does to the levels of the other services.

use std::collections::BTreeMap;

use coax::Span;
use facts::fact::SubjectId;
use house::record::{ServiceKind, Survey};

use super::Options;
use super::outlets::{Served, served_outlets};
use super::solve::{Gains, solve};
use crate::error::AdviceError;
use crate::forecast::spread;

/// A change of level below this is lost in what the estimate itself is worth, dB.
pub(crate) const NOTICEABLE_DB: f64 = 0.3;

/// How much the level of one service at one outlet changes.
#[derive(Debug, Clone, PartialEq)]
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
}

impl OutletChange {
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
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandChange {
    /// The frequency, MHz.
    pub mhz: f64,
    /// The gain from entry to outlet (or back) before, dB, likely.
    pub before_db: f64,
    /// By how much the gain changes, dB: positive is more signal. 10th percentile, median, 90th.
    pub db: Span,
}

/// What the services at each TV and modem gain or lose from one house to another, draw by draw with the same dice.
/// Outlets that only the later house has are left out.
///
/// # Errors
/// Whatever the physics refuses about a part.
pub fn change(before: &Survey, after: &Survey, options: &Options) -> Result<Vec<OutletChange>, AdviceError> {
    let mut by_entry: BTreeMap<SubjectId, Vec<Served>> = BTreeMap::new();
    for served in served_outlets(before) {
        by_entry.entry(served.entry).or_default().push(served);
    }
    let mut changes = Vec::new();
    for (entry, served) in by_entry {
        let mut mhz: Vec<f64> = served
            .iter()
            .flat_map(|served| served.down_mhz.into_iter().chain(served.up_mhz.into_iter().flatten()))
            .collect();
        mhz.sort_by(f64::total_cmp);
        mhz.dedup();
        let earlier = solve(before, entry, &mhz, options)?;
        let later = solve(after, entry, &mhz, options)?;
        changes.extend(served.iter().map(|served| at_outlet(served, &earlier, &later)));
    }
    Ok(changes)
}

fn at_outlet(served: &Served, earlier: &Gains, later: &Gains) -> OutletChange {
    let outlet = served.outlet;
    let band = |mhz: f64, before: Vec<f64>, after: Vec<f64>| {
        let rises = before.iter().zip(&after).map(|(before, after)| after - before).collect();
        BandChange { mhz, before_db: spread(before).likely, db: spread(rises) }
    };
    let cut_off = served.down_mhz.iter().any(|mhz| later.down(outlet, *mhz).is_empty());
    if cut_off {
        return OutletChange { outlet, service: served.service, cut_off, down: Vec::new(), up: Vec::new() };
    }
    let down =
        served.down_mhz.iter().map(|mhz| band(*mhz, earlier.down(outlet, *mhz), later.down(outlet, *mhz)));
    let up = served
        .up_mhz
        .iter()
        .flatten()
        .map(|mhz| band(*mhz, earlier.up(outlet, *mhz), later.up(outlet, *mhz)));
    OutletChange { outlet, service: served.service, cut_off, down: down.collect(), up: up.collect() }
}
