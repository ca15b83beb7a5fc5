//! Levels in words: what gets to each TV and modem, whether that is within what it needs, and what work changes.

use coax::Span;
use facts::fact::SubjectId;
use house::naming;
use house::record::{ServiceKind, Survey};
use phrase::{Arg, Phrase};

use super::change::{NOTICEABLE_DB, OutletChange};
use super::done::{DoneLevel, OutletDone};
use super::fit::Fit;
use super::found::{DownLevel, Levels, OutletLevels};
use super::held::place_phrase;
use super::missing::Missed;
use super::moved::MovedOut;
use super::window::{Window, european_windows_of};

/// Above this chance a loss is told as one that is on the way.
const SURE: f64 = 0.95;

impl DownLevel {
    /// What is known of the level here: what was measured goes before what was worked out.
    fn known(&self) -> Option<Span> {
        self.measured.map(|dbmv| Span { low: dbmv, likely: dbmv, high: dbmv }).or(self.level)
    }

    fn phrase(&self) -> Option<Phrase> {
        let at = |id, dbmv| {
            Phrase::new(id).with("level", Arg::Level(dbmv)).with("frequency", Arg::Frequency(self.mhz))
        };
        if let Some(dbmv) = self.measured {
            return Some(at("levels-measured", dbmv));
        }
        let level = self.level?;
        let likely = at("levels-worked-out", level.likely);
        Some(likely.with("low", Arg::Level(level.low)).with("high", Arg::Level(level.high)))
    }
}

impl OutletLevels {
    /// At what level the modem sends, dBmV, by its own page.
    pub fn sends(&self) -> Option<f64> {
        self.up.iter().find_map(|up| up.sends)
    }

    /// How the worst of the levels known here lies to its window.
    pub fn fits(&self) -> Fit {
        let down = self.down.iter().filter_map(|down| Some(Fit::of(&down.window?, down.known()?)));
        let up = self.up.iter().filter_map(|up| {
            let dbmv = up.sends?;
            Some(Fit::of(&up.window, Span { low: dbmv, likely: dbmv, high: dbmv }))
        });
        let broken = self.broken.map(|broken| broken.fit());
        down.chain(up).chain(self.is_clean()).chain(broken).max().unwrap_or(Fit::NotKnown)
    }

    /// Whether every error ratio read here is enough.
    pub(super) fn is_clean(&self) -> Option<Fit> {
        let need = self.clean_need?;
        let of = |db: f64| match () {
            () if !need.holds(db) => Fit::Outside,
            () if !need.has_margin(db) => Fit::Marginal,
            () => Fit::Inside,
        };
        self.ratios.iter().map(|(_, db)| of(*db)).max()
    }

    /// What is told of how clean it arrives.
    fn ratios_told(&self) -> impl Iterator<Item = Phrase> {
        self.ratios.iter().map(|(mhz, db)| {
            Phrase::new("levels-ratio").with("ratio", Arg::Loss(*db)).with("frequency", Arg::Frequency(*mhz))
        })
    }

    /// The windows of what is told here.
    fn windows(&self) -> impl Iterator<Item = Window> {
        let down = self.down.iter().find_map(|down| down.window);
        let up = self.up.iter().find(|up| up.sends.is_some()).map(|up| up.window);
        down.into_iter().chain(up)
    }
}

impl OutletChange {
    /// What is lost or gained, in a few words.
    pub fn phrase(&self) -> Phrase {
        if self.cut_off {
            return Phrase::new("levels-then-nothing");
        }
        // A loss is told before a gain elsewhere in the band.
        let (worst, largest) = (self.worst_db(), self.largest_db());
        if worst <= -NOTICEABLE_DB {
            Phrase::new("levels-then-less").with("loss", Arg::Loss(-worst))
        } else if largest >= NOTICEABLE_DB {
            Phrase::new("levels-then-more").with("gain", Arg::Loss(largest))
        } else {
            Phrase::new("levels-then-same")
        }
    }
}

impl DoneLevel {
    fn phrase(&self) -> Phrase {
        ranged("levels-then-level", self.level).with("frequency", Arg::Frequency(self.mhz))
    }
}

impl OutletDone {
    /// Each level that is known, as it will be.
    pub fn phrases(&self) -> Vec<Phrase> {
        let sends = self.sends.iter().map(|sends| ranged("levels-then-sends", sends.level));
        self.down.iter().map(DoneLevel::phrase).chain(sends).collect()
    }
}

impl MovedOut {
    /// What the step does to it, what that means, and that the choice is theirs.
    pub fn phrase(&self, survey: &Survey) -> Phrase {
        self.says(survey, if self.sends { "levels-moved-sends" } else { "levels-moved-out" })
    }

    /// The same of one that stays within what the device needs, without the margin that it had.
    pub fn narrowed_phrase(&self, survey: &Survey) -> Phrase {
        self.says(survey, if self.sends { "levels-narrowed-sends" } else { "levels-narrowed" })
    }

    fn says(&self, survey: &Survey, id: &'static str) -> Phrase {
        Phrase::new(id)
            .phrase("outlet", naming::part(survey, self.outlet))
            .phrase("service", naming::service(self.service))
            .with("before", Arg::Level(self.level.now_dbmv))
            .with("after", Arg::Level(self.level.level.likely))
    }
}

impl Missed {
    /// What is counted as lost, and by what reading.
    fn phrase(&self, survey: &Survey) -> Phrase {
        let places = self.measured_at.iter().map(|place| Arg::Phrase(Box::new(place_phrase(survey, *place))));
        Phrase::new("levels-missing")
            .text("sure", if self.chance < SURE { "no" } else { "yes" })
            .with("loss", Arg::Loss(self.db))
            .with("places", Arg::Several(places.collect()))
    }
}

fn ranged(id: &'static str, level: Span) -> Phrase {
    let likely = Phrase::new(id).with("level", Arg::Level(level.likely));
    likely.with("low", Arg::Level(level.low)).with("high", Arg::Level(level.high))
}

/// What is told of one service at one outlet.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelTold {
    /// The outlet.
    pub outlet: SubjectId,
    /// The service.
    pub service: ServiceKind,
    /// Each level that is known, or why none is.
    pub now: Vec<Phrase>,
    /// What the device needs, and from where that is known; empty where no figure is known here.
    pub needs: Vec<Phrase>,
    /// How the one lies to the other.
    pub fits: Fit,
    /// What the work changes; `None` where it was not looked at.
    pub change: Option<Phrase>,
    /// Each level that is known, as it will be when the work is done.
    pub then: Vec<Phrase>,
    /// How that will lie to what the device needs; `None` where no work was looked at.
    pub fits_then: Option<Fit>,
}

impl LevelTold {
    /// Whether the levels are enough, in words; also where that is not known.
    pub fn fits_phrase(&self) -> Phrase {
        self.fits.phrase()
    }

    /// Of what it tells: the service and where.
    pub fn of(&self, survey: &Survey) -> Phrase {
        Phrase::new("levels-of")
            .phrase("service", naming::service(self.service))
            .phrase("outlet", naming::part(survey, self.outlet))
    }

    /// Now and when the work is done, in one line.
    pub fn in_short(&self) -> Phrase {
        let then = self.fits_then.unwrap_or(self.fits);
        let change = self.change.clone().unwrap_or_else(|| Phrase::new("levels-then-same"));
        if (self.fits, then) == (Fit::NotKnown, Fit::NotKnown) {
            return Phrase::new("levels-short-not-known").phrase("change", change);
        }
        let short = Phrase::new("levels-short").phrase("now", self.fits.phrase());
        short.phrase("then", then.phrase()).phrase("change", change)
    }

    /// Whether they will be when the work is done; `None` where no work was looked at, or nothing is known.
    pub fn fits_then_phrase(&self) -> Option<Phrase> {
        let known = self.fits_then.filter(|fits| *fits != Fit::NotKnown)?;
        Some(Phrase::new("levels-fits-then").phrase("fits", known.phrase()))
    }
}

/// Levels in words; `changes` are those that some work brings, for instance a whole work list.
pub fn told(survey: &Survey, levels: &Levels, changes: &[OutletChange]) -> Vec<LevelTold> {
    let one = |found: &OutletLevels| {
        let mut now: Vec<_> = found.down.iter().filter_map(DownLevel::phrase).collect();
        if now.is_empty() {
            let entry = naming::part(survey, found.entry);
            now.push(Phrase::new("levels-not-known").phrase("entry", entry));
        }
        now.extend(found.sends().map(|dbmv| Phrase::new("levels-sends").with("level", Arg::Level(dbmv))));
        now.extend(found.ratios_told());
        now.extend(found.broken.map(|broken| broken.phrase(survey)));
        now.extend(found.missing.iter().map(|missed| missed.phrase(survey)));
        let mut needs: Vec<_> = found.windows().flat_map(|window| window.told()).collect();
        needs.extend(european_windows_of(survey, found.service).iter().map(Window::phrase));
        needs.extend(found.clean_need.filter(|_| !found.ratios.is_empty()).map(|need| need.phrase()));
        let change =
            changes.iter().find(|change| change.outlet == found.outlet && change.service == found.service);
        let done = change.map(|change| found.when_done(change));
        LevelTold {
            outlet: found.outlet,
            service: found.service,
            now,
            needs,
            fits: found.fits(),
            change: change.map(OutletChange::phrase),
            then: done.as_ref().map(OutletDone::phrases).unwrap_or_default(),
            fits_then: done.as_ref().map(OutletDone::fits),
        }
    };
    levels.outlets.iter().map(one).collect()
}
