//! What arrives at every TV and modem when some work is done: what is known now, and what the work changes of it.

use coax::Span;
use facts::fact::SubjectId;
use house::record::ServiceKind;

use super::change::OutletChange;
use super::fit::Fit;
use super::found::{DownLevel, Levels, OutletLevels, UpLevel, through};
use super::window::Window;

/// One service at one outlet when some work is done.
#[derive(Debug, Clone, PartialEq)]
pub struct OutletDone {
    /// The outlet.
    pub outlet: SubjectId,
    /// The service.
    pub service: ServiceKind,
    /// Whether the work takes the outlet off the entry altogether; nothing else is then told.
    pub cut_off: bool,
    /// Each level towards the house that is known now, as it will be, by frequency.
    pub down: Vec<DoneLevel>,
    /// At what level the modem will send, dBmV, where it is known at what level it sends now.
    pub sends: Option<DoneLevel>,
    /// How the error ratios read here lie to what is needed: work on the levels is not known to change it.
    pub clean: Option<Fit>,
    /// How a break on the way counts that the work leaves as it is.
    pub broken: Option<Fit>,
}

/// A level now and when some work is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DoneLevel {
    /// The frequency, MHz; of what a modem sends, the one at which the work costs it most.
    pub mhz: f64,
    /// The level now, dBmV: as measured, or worked out.
    pub now_dbmv: f64,
    /// Whether that was measured here.
    pub measured: bool,
    /// The level then, dBmV. 10th percentile, median, 90th.
    pub level: Span,
    /// What the device needs.
    pub window: Option<Window>,
}

impl DoneLevel {
    /// How it will lie to its window.
    pub fn fits(&self) -> Fit {
        self.window.map_or(Fit::NotKnown, |window| Fit::of(&window, self.level))
    }

    /// By how much it will lie outside its window, dB; 0 inside.
    pub(super) fn outside_by(&self) -> f64 {
        self.window.map_or(0.0, |window| window.outside_by(self.level.likely))
    }
}

impl OutletDone {
    /// How the worst of what is known will lie to its window.
    pub fn fits(&self) -> Fit {
        if self.cut_off {
            return Fit::Outside;
        }
        let levels = self.down.iter().chain(&self.sends).map(DoneLevel::fits);
        levels.chain(self.clean).chain(self.broken).max().unwrap_or(Fit::NotKnown)
    }
}

impl Levels {
    /// What is known of each service at each outlet, as it will be after work that brings these changes to this house.
    pub fn when_done(&self, changes: &[OutletChange]) -> Vec<OutletDone> {
        let then = |found: &OutletLevels| {
            let same =
                |change: &&OutletChange| change.outlet == found.outlet && change.service == found.service;
            changes.iter().find(same).map(|change| found.when_done(change))
        };
        self.outlets.iter().filter_map(then).collect()
    }
}

impl OutletLevels {
    /// The same after work that brings this change.
    pub fn when_done(&self, change: &OutletChange) -> OutletDone {
        OutletDone {
            outlet: self.outlet,
            service: self.service,
            cut_off: change.cut_off,
            down: self.down.iter().filter_map(|down| down_when_done(down, change)).collect(),
            sends: self.up.iter().find_map(|up| sends_when_done(up, change)),
            clean: self.is_clean(),
            broken: self.broken.and_then(|broken| broken.fit_after(change)),
        }
    }
}

/// What was measured is moved by the change; what was worked out comes in as before and is worked out anew.
fn down_when_done(down: &DownLevel, change: &OutletChange) -> Option<DoneLevel> {
    let band = change.at(down.mhz)?;
    let (now_dbmv, level) = match (down.measured, down.level) {
        (Some(dbmv), _) => (dbmv, raised(band.db, dbmv)),
        (None, Some(level)) => (level.likely, through(&down.comes_in, &band.after_db)),
        (None, None) => return None,
    };
    Some(DoneLevel { mhz: down.mhz, now_dbmv, measured: down.measured.is_some(), level, window: down.window })
}

fn raised(span: Span, by: f64) -> Span {
    Span { low: span.low + by, likely: span.likely + by, high: span.high + by }
}

/// What is lost on the way back the modem sends more. Nobody knows at which frequency its page was read, so that the one
/// which loses most counts.
fn sends_when_done(up: &UpLevel, change: &OutletChange) -> Option<DoneLevel> {
    let now_dbmv = up.sends?;
    let band = change.up.iter().min_by(|a, b| a.db.likely.total_cmp(&b.db.likely))?;
    let level = Span {
        low: now_dbmv - band.db.high,
        likely: now_dbmv - band.db.likely,
        high: now_dbmv - band.db.low,
    };
    Some(DoneLevel { mhz: band.mhz, now_dbmv, measured: true, level, window: Some(up.window) })
}
