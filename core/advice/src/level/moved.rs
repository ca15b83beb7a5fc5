//! Whether a step moves a level out of its window, added to what the steps before it did.

use facts::fact::SubjectId;
use house::record::ServiceKind;

use super::change::{NOTICEABLE_DB, OutletChange};
use super::done::{DoneLevel, OutletDone};
use super::fit::Fit;
use super::found::{Levels, OutletLevels};

/// A level already outside its window may move further by this much before it counts, dB: readings are no better.
const FURTHER_DB: f64 = 0.5;

/// A level that a step moves out of its window, or further out of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MovedOut {
    /// The outlet.
    pub outlet: SubjectId,
    /// The service.
    pub service: ServiceKind,
    /// Whether it is what a modem sends, not what arrives.
    pub sends: bool,
    /// The level in the house as found and after the step, with what the device needs.
    pub level: DoneLevel,
    /// Whether the step by itself shifts it by less than anybody would notice.
    pub hardly: bool,
}

/// The levels that the steps so far leave.
pub(crate) struct Moved<'a> {
    found: &'a Levels,
    now: Vec<OutletDone>,
    /// What earlier steps were let go over the edge.
    allowed: Vec<MovedOut>,
}

impl<'a> Moved<'a> {
    /// `so_far` is what all earlier steps together change of the house as found.
    pub(crate) fn new(found: &'a Levels, so_far: &[OutletChange], allowed: Vec<MovedOut>) -> Self {
        Self { found, now: found.when_done(so_far), allowed }
    }

    /// What a step moves out; `all` is what it and all earlier steps together change of the house as found. Of each service
    /// at each outlet the level furthest outside, for each way.
    pub(crate) fn out(&self, all: &[OutletChange]) -> Vec<MovedOut> {
        let then = self.found.when_done(all);
        let pairs = self.found.outlets.iter().filter_map(|found| {
            let same = |done: &&OutletDone| done.outlet == found.outlet && done.service == found.service;
            Some((found, self.now.iter().find(same)?, then.iter().find(same)?))
        });
        pairs.flat_map(|(found, now, then)| self.at_outlet(found, now, then)).collect()
    }

    /// What a step leaves within its window, but without the margin or the sureness that it had: of each service at each outlet
    /// that is all inside before, the level that lies worst, for each way. `all` as above.
    pub(crate) fn narrowed(&self, all: &[OutletChange]) -> Vec<MovedOut> {
        let then = self.found.when_done(all);
        let narrowed = then.iter().flat_map(|then| {
            let same = |done: &&OutletDone| done.outlet == then.outlet && done.service == then.service;
            let was_inside = self.now.iter().find(same).is_some_and(|now| now.fits() == Fit::Inside);
            let worst = |levels: &[DoneLevel], sends: bool| {
                let marginal = levels.iter().filter(|level| was_inside && level.fits() == Fit::Marginal);
                let lacks = |level: &&DoneLevel| level.window.map_or(0.0, |window| window.lacks(level.level));
                let worst = marginal.max_by(|a, b| lacks(a).total_cmp(&lacks(b)))?;
                let (outlet, service) = (then.outlet, then.service);
                Some(MovedOut { outlet, service, sends, level: *worst, hardly: false })
            };
            worst(&then.down, false).into_iter().chain(worst(then.sends.as_slice(), true))
        });
        narrowed.collect()
    }

    fn at_outlet(&self, found: &OutletLevels, now: &OutletDone, then: &OutletDone) -> Vec<MovedOut> {
        let furthest = |before: &[DoneLevel], after: &[DoneLevel], sends: bool| {
            let pairs = after.iter().filter_map(|after| {
                let before = before.iter().find(|before| sends || (before.mhz - after.mhz).abs() < 1e-9)?;
                Some((before, after))
            });
            let out = pairs.filter_map(|(before, after)| {
                let shifted = (after.level.likely - before.level.likely).abs();
                let moved = MovedOut {
                    outlet: found.outlet,
                    service: found.service,
                    sends,
                    level: *after,
                    hardly: shifted < NOTICEABLE_DB,
                };
                self.is_out(&moved, before).then_some(moved)
            });
            out.max_by(|a, b| a.level.outside_by().total_cmp(&b.level.outside_by()))
        };
        let down = furthest(&now.down, &then.down, false);
        let (before, after) = (now.sends.as_slice(), then.sends.as_slice());
        down.into_iter().chain(furthest(before, after, true)).collect()
    }

    fn is_out(&self, moved: &MovedOut, before: &DoneLevel) -> bool {
        let Some(window) = moved.level.window else { return false };
        let after = moved.level.outside_by();
        if window.holds(moved.level.level.likely) || after <= before.outside_by() {
            return false;
        }
        let same = |other: &&MovedOut| {
            (other.outlet, other.service, other.sends) == (moved.outlet, moved.service, moved.sends)
        };
        let allowed = self.allowed.iter().filter(same).map(|other| other.level.outside_by());
        let found = (!window.holds(moved.level.now_dbmv)).then(|| window.outside_by(moved.level.now_dbmv));
        let was_out_by = allowed.chain(found).max_by(f64::total_cmp);
        was_out_by.is_none_or(|by| after > by + FURTHER_DB)
    }
}
