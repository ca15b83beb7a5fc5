//! Where a level that was measured stands beside what the wiring explains, and on which stretch the two part.
//!
//! Each place is held against the nearest reading on the way to it, so that of a row of readings the first that does not
//! fit names the stretch: what lies behind it fits again. Where none is on the way, it is held against the reading on
//! another branch that tells of most; that shows only what is missing here.

use coax::Span;
use facts::fact::SubjectId;
use house::naming;
use house::record::{PartKind, Survey};
use phrase::Phrase;

use super::entry_levels::{ComesIn, EntryLevels, Metered, way_to};
use crate::beside::{Beside, LEEWAY_DB};
use crate::forecast::MeteredAt;

/// The same where the two readings were not made at one frequency: neighbours in a cable differ by up to 3 dB (47 CFR
/// 76.605(a)(4), from memory).
const LEEWAY_BETWEEN_DB: f64 = 3.0;

/// A level that does not fit, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelHeld {
    /// The frequency, MHz.
    pub mhz: f64,
    /// What was measured, dBmV.
    pub measured_dbmv: f64,
    /// What the wiring explains, dBmV. 10th percentile, median, 90th.
    pub explained: Span,
    /// [`Beside::Worse`] for too little, [`Beside::Better`] for too much.
    pub beside: Beside,
    /// Where the two part.
    pub stretch: Stretch,
    /// The reading that the explained level rests on.
    pub known_at: MeteredAt,
}

/// From the last place that fits to the first that does not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stretch {
    /// The last place that fits; where that lies on another branch, the part in which the two ways meet.
    pub from: MeteredAt,
    /// The first that does not: where it was measured; where several places miss the same, the end of what they share.
    pub to: MeteredAt,
    /// Whether the part at its end is on it as a whole, from its input to all its outputs.
    pub through: bool,
    /// Whether all of it is on the street's side, where only the provider works.
    pub street_side: bool,
}

impl LevelHeld {
    /// How much less than likely was measured, dB; negative where it is more.
    pub fn missing_db(&self) -> f64 {
        self.explained.likely - self.measured_dbmv
    }
}

/// What was measured on the tree of an entry, held against what its wiring explains.
pub(super) struct Tree<'a> {
    pub(super) survey: &'a Survey,
    pub(super) incoming: &'a EntryLevels,
    pub(super) metered: &'a [Metered],
}

impl Tree<'_> {
    /// What does not fit at a place, at the frequency where that shows most.
    pub(super) fn worst_at(&self, place: &Metered) -> Option<LevelHeld> {
        let off = place.levels.iter().filter_map(|(mhz, dbmv)| self.held(place.at, *mhz, *dbmv));
        off.max_by(|a, b| a.missing_db().abs().total_cmp(&b.missing_db().abs()))
    }

    /// The reading that one at a place is held against: the nearest on the way there, or else that on another branch which
    /// tells of most.
    pub(super) fn held_against(&self, place: MeteredAt, mhz: f64) -> Option<ComesIn> {
        let on_the_way = self.incoming.on_the_way(self.survey, place, mhz).into_iter().next();
        on_the_way.or_else(|| self.incoming.most_by_branches(self.survey, place, mhz))
    }

    /// What is missing at a place at each frequency that was read there, MHz and dB; negative where there is more.
    pub(super) fn missing_at<'b>(&'b self, place: &'b Metered) -> impl Iterator<Item = (f64, f64)> + 'b {
        place.levels.iter().filter_map(|(mhz, dbmv)| {
            let known = self.held_against(place.at, *mhz)?;
            let explained = self.incoming.explained(place.at, *mhz, *dbmv, &known)?;
            Some((*mhz, explained.likely - dbmv))
        })
    }

    fn held(&self, place: MeteredAt, mhz: f64, measured_dbmv: f64) -> Option<LevelHeld> {
        let above = self.incoming.on_the_way(self.survey, place, mhz);
        let Some(nearest) = above.first() else {
            return self.held_against_a_branch(place, mhz, measured_dbmv);
        };
        let sides = above.iter().map(|known| self.beside(place, mhz, measured_dbmv, known));
        let sides: Vec<_> = sides.collect::<Option<_>>()?;
        let (beside, explained) = sides.first().copied()?;
        // Where it fits what was read further up, it is the reading between that stands alone.
        let fits_further_up = sides.iter().any(|(beside, _)| *beside == Beside::AsExpected);
        (!fits_further_up && !self.passes_on(place, mhz, &above)).then(|| LevelHeld {
            mhz,
            measured_dbmv,
            explained,
            beside,
            stretch: self.stretch(nearest.by, place),
            known_at: nearest.by,
        })
    }

    fn held_against_a_branch(&self, place: MeteredAt, mhz: f64, measured_dbmv: f64) -> Option<LevelHeld> {
        let most = self.incoming.most_by_branches(self.survey, place, mhz)?;
        let (beside, explained) = self.beside(place, mhz, measured_dbmv, &most)?;
        let from = MeteredAt { part: self.meeting(place, most.by)?, port: None };
        (beside == Beside::Worse).then(|| LevelHeld {
            mhz,
            measured_dbmv,
            explained,
            beside,
            stretch: self.stretch(from, place),
            known_at: most.by,
        })
    }

    /// Whether something behind a place gets what was to come by the readings before it: then the stretch is sound, and
    /// only the reading at the place is not.
    fn passes_on(&self, place: MeteredAt, mhz: f64, above: &[ComesIn]) -> bool {
        self.metered.iter().filter(|other| way_to(self.survey, other.at).contains(&place)).any(|behind| {
            behind.at != place
                && behind.levels.iter().filter(|(at, _)| (at - mhz).abs() < f64::EPSILON).any(|(at, dbmv)| {
                    let fits = |known| self.beside(behind.at, *at, *dbmv, known).map(|(beside, _)| beside);
                    above.iter().any(|known| fits(known) == Some(Beside::AsExpected))
                })
        })
    }

    /// Where a reading stands beside what comes in by another one.
    fn beside(&self, place: MeteredAt, mhz: f64, dbmv: f64, known: &ComesIn) -> Option<(Beside, Span)> {
        let explained = self.incoming.explained(place, mhz, dbmv, known)?;
        let leeway = if known.at_frequency { LEEWAY_DB } else { LEEWAY_BETWEEN_DB };
        let beside = if dbmv < explained.low - leeway {
            Beside::Worse
        } else if dbmv > explained.high + leeway {
            Beside::Better
        } else {
            Beside::AsExpected
        };
        Some((beside, explained))
    }

    fn meeting(&self, one: MeteredAt, other: MeteredAt) -> Option<SubjectId> {
        let others = self.survey.wiring.way_up(other.part);
        self.survey.wiring.way_up(one.part).into_iter().find(|part| others.contains(part))
    }

    fn stretch(&self, from: MeteredAt, to: MeteredAt) -> Stretch {
        let one_run = self.survey.wiring.feed(to.part).is_some_and(|feed| feed.part == from.part);
        Stretch { from, to, through: false, street_side: one_run && self.survey.is_street_side(to.part) }
    }
}

impl Stretch {
    /// It in words.
    pub fn phrase(&self, survey: &Survey) -> Phrase {
        let Self { from, to, .. } = self;
        let fed_over =
            survey.wiring.feed(to.part).map(|feed| MeteredAt { part: feed.part, port: Some(feed.port) });
        if from.part == to.part {
            Phrase::new("stretch-in-part").phrase("part", naming::part(survey, to.part))
        } else if self.through {
            Phrase::new("stretch-through")
                .phrase("from", place_phrase(survey, *from))
                .phrase("to", naming::part(survey, to.part))
        } else if Some(*from) == fed_over && ends_at(survey, *to) {
            Phrase::new("stretch-run").phrase("run", naming::run_to(survey, to.part))
        } else {
            Phrase::new("stretch-between")
                .phrase("from", place_phrase(survey, *from))
                .phrase("to", place_phrase(survey, *to))
        }
    }
}

/// Whether a place is where the run to its part ends.
fn ends_at(survey: &Survey, place: MeteredAt) -> bool {
    place.port.is_none() || survey.parts.get(&place.part).is_some_and(|part| part.kind == PartKind::Outlet)
}

/// The phrase that names a place where a meter was.
pub fn place_phrase(survey: &Survey, place: MeteredAt) -> Phrase {
    match place.port {
        Some(port) => naming::port(survey, place.part, port),
        None => naming::part(survey, place.part),
    }
}
