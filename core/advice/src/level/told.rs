//! Levels in words: what gets to each TV and modem, whether that is within what it needs, and what work changes.

use coax::Span;
use facts::fact::SubjectId;
use house::naming;
use house::record::{ServiceKind, Survey};
use phrase::{Arg, Phrase};

use super::change::{NOTICEABLE_DB, OutletChange};
use super::found::{DownLevel, Levels, OutletLevels};
use super::window::{MODEM_SENDS, Window};

/// Whether a level lies in its window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// Measured inside, or inside from the 10th percentile to the 90th.
    Inside,
    /// The likely level is inside, not all of the range.
    Likely,
    /// The measured or likely level is outside.
    Outside,
}

impl Fit {
    fn of(window: &Window, level: Span) -> Self {
        if !window.holds(level.likely) {
            Self::Outside
        } else if window.holds(level.low) && window.holds(level.high) {
            Self::Inside
        } else {
            Self::Likely
        }
    }

    /// Its word.
    pub fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::Inside => "fits-inside",
            Self::Likely => "fits-likely",
            Self::Outside => "fits-outside",
        })
    }
}

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

    /// Whether every level known here lies in its window; `None` where none is known, or no window.
    pub fn fits(&self) -> Option<Fit> {
        let down = self.down.iter().filter_map(|down| Some(Fit::of(&down.window?, down.known()?)));
        let up = self.sends().map(|dbmv| if MODEM_SENDS.holds(dbmv) { Fit::Inside } else { Fit::Outside });
        down.chain(up).chain(self.is_clean()).max()
    }

    /// Whether every error ratio read here is enough.
    fn is_clean(&self) -> Option<Fit> {
        let need = self.clean_need?;
        let of = |db: f64| match () {
            () if !need.holds(db) => Fit::Outside,
            () if !need.has_margin(db) => Fit::Likely,
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
        let up = self.sends().map(|_| MODEM_SENDS);
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
    /// Whether the one is within the other.
    pub fits: Option<Fit>,
    /// What the work changes; `None` where it was not looked at.
    pub change: Option<Phrase>,
}

impl LevelTold {
    /// Whether the levels are enough, in words; also where that is not known.
    pub fn fits_phrase(&self) -> Phrase {
        self.fits.map_or_else(|| Phrase::new("fits-not-known"), Fit::phrase)
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
        let mut needs: Vec<_> = found.windows().flat_map(|window| window.told()).collect();
        needs.extend(found.clean_need.filter(|_| !found.ratios.is_empty()).map(|need| need.phrase()));
        let change =
            changes.iter().find(|change| change.outlet == found.outlet && change.service == found.service);
        LevelTold {
            outlet: found.outlet,
            service: found.service,
            now,
            needs,
            fits: found.fits(),
            change: change.map(OutletChange::phrase),
        }
    };
    levels.outlets.iter().map(one).collect()
}
