//! What comes in at an entry, worked out from every place on its tree where somebody measured a level.
//!
//! A level measured anywhere fixes what comes in: it is taken back to the entry by the solved gain, draw by draw with the
//! same dice, so that what is unknown on the way that two places share cancels.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{PartKind, ReadingKind, Survey};

use super::Options;
use super::solve::solve_to_meter;
use crate::error::AdviceError;
use crate::forecast::{MeteredAt, spread};

/// A reading at one frequency answers for the channels next to it, MHz: an 8 MHz channel to either side. Neighbours in a
/// cable differ by at most 3 dB (47 CFR 76.605(a)(4), from memory).
pub(crate) const NEIGHBOUR_MHZ: f64 = 8.0;

/// Frequencies that are the same to a meter, MHz.
const SAME_MHZ: f64 = 1e-9;

/// Where less than this arrives the way is broken, and a level behind it says nothing of what comes in, dB.
pub(super) const STILL_ON_THE_WAY_DB: f64 = -45.0;

/// One place on a tree at which levels were measured.
pub(crate) struct Metered {
    /// Where.
    pub(crate) at: MeteredAt,
    /// Frequency, MHz, and level, dBmV; by rising frequency.
    pub(crate) levels: Vec<(f64, f64)>,
}

/// Every place on the tree of an entry at which levels were measured.
pub(crate) fn metered_on(survey: &Survey, entry: SubjectId) -> Vec<Metered> {
    let mut found: Vec<Metered> = Vec::new();
    for part in survey.wiring.below(entry) {
        for reading in survey.levels_read_at(part) {
            let ReadingKind::Level { mhz, dbmv } = reading.measured else { continue };
            if !(mhz > 0.0 && mhz.is_finite() && dbmv.is_finite()) {
                continue;
            }
            let at = place(survey, part, reading.port);
            match found.iter_mut().find(|known| known.at == at) {
                Some(known) => known.levels.push((mhz, dbmv)),
                None => found.push(Metered { at, levels: vec![(mhz, dbmv)] }),
            }
        }
    }
    for metered in &mut found {
        metered.levels.sort_by(|a, b| a.0.total_cmp(&b.0));
    }
    found
}

/// Where a reading was taken. An entry has one place only; so has an outlet, but where its cable goes on and nothing is
/// plugged in it was taken at that cable's end.
fn place(survey: &Survey, id: SubjectId, port: Option<u8>) -> MeteredAt {
    let Some(part) = survey.parts.get(&id) else { return MeteredAt { part: id, port } };
    let goes_on = survey.wiring.on_port(id, 1).next().is_some();
    let plugged = part.plugged.as_ref().is_some_and(|plugged| !plugged.is_empty());
    let port = match part.kind {
        PartKind::Outlet if goes_on => port.or((!plugged).then_some(1)),
        PartKind::Entry | PartKind::Outlet => None,
        _ => port,
    };
    MeteredAt { part: id, port }
}

/// What comes in at one entry, by each place at which it was measured.
pub(crate) struct EntryLevels {
    sources: Vec<Source>,
}

struct Source {
    at: MeteredAt,
    /// Frequency, MHz, and what comes in at the entry, dBmV, one a draw; by rising frequency.
    levels: Vec<(f64, Vec<f64>)>,
}

/// What comes in at a frequency, and who says so.
pub(crate) struct ComesIn {
    /// Where it was measured.
    pub(crate) by: MeteredAt,
    /// Whether that was at this very frequency.
    pub(crate) at_frequency: bool,
    /// dBmV at the entry, one a draw.
    pub(crate) dbmv: Vec<f64>,
}

impl EntryLevels {
    /// What comes in at an entry, by all that was measured on its tree.
    ///
    /// # Errors
    /// Whatever the physics refuses about a part.
    pub(crate) fn of(
        survey: &Survey,
        entry: SubjectId,
        metered: &[Metered],
        options: &Options,
    ) -> Result<Self, AdviceError> {
        let mut sources = Vec::new();
        for Metered { at, levels } in metered {
            let mhz: Vec<f64> = levels.iter().map(|(mhz, _)| *mhz).collect();
            let gains = if at.part == entry {
                vec![vec![0.0; mhz.len()]; options.draws.max(1) as usize]
            } else {
                solve_to_meter(survey, entry, *at, &mhz, options)?
            };
            let taken_back = levels.iter().enumerate().filter_map(|(place, (mhz, dbmv))| {
                let gain: Vec<f64> = gains.iter().filter_map(|draw| draw.get(place).copied()).collect();
                let arrives = !gain.is_empty() && spread(gain.clone()).likely > STILL_ON_THE_WAY_DB;
                arrives.then(|| (*mhz, gain.into_iter().map(|gain| dbmv - gain).collect()))
            });
            sources.push(Source { at: *at, levels: taken_back.collect() });
        }
        Ok(Self { sources })
    }

    /// What comes in at a frequency as seen from an outlet: the outlet's own readings count too.
    pub(crate) fn seen_from(&self, survey: &Survey, outlet: SubjectId, mhz: f64) -> Option<ComesIn> {
        let own = |source: &&Source| source.at.part == outlet && source.at.port.is_none();
        let measured_here = |source: &Source| source.levels.iter().any(|(at, _)| (at - mhz).abs() < SAME_MHZ);
        let here = self.sources.iter().find(own).filter(|source| !measured_here(source));
        here.and_then(|source| source.at(mhz))
            .or_else(|| self.by_others(survey, MeteredAt { part: outlet, port: None }, mhz))
    }

    /// What comes in at a frequency by the readings elsewhere: by the nearest on the way from the entry to a place, or else
    /// by the one that tells of most, since what is wrong on another branch takes away.
    pub(super) fn by_others(&self, survey: &Survey, place: MeteredAt, mhz: f64) -> Option<ComesIn> {
        let on_the_way = self.on_the_way(survey, place, mhz).into_iter().next();
        on_the_way.or_else(|| self.most(mhz, |at| at != place))
    }

    /// What comes in by each reading between the entry and a place, the nearest to that place first.
    pub(crate) fn on_the_way(&self, survey: &Survey, place: MeteredAt, mhz: f64) -> Vec<ComesIn> {
        let source = |at: MeteredAt| self.sources.iter().find(|source| source.at == at)?.at(mhz);
        way_to(survey, place).into_iter().skip(1).filter_map(source).collect()
    }

    /// What comes in by that reading on another branch than a place's which tells of most.
    pub(crate) fn most_by_branches(&self, survey: &Survey, place: MeteredAt, mhz: f64) -> Option<ComesIn> {
        self.most(mhz, |at| !way_to(survey, at).contains(&place))
    }

    fn most(&self, mhz: f64, counts: impl Fn(MeteredAt) -> bool) -> Option<ComesIn> {
        let told = self.sources.iter().filter(|source| counts(source.at)).filter_map(|source| source.at(mhz));
        let likely = |told: &ComesIn| spread(told.dbmv.clone()).likely;
        told.max_by(|a, b| likely(a).total_cmp(&likely(b)))
    }

    /// What the wiring explains of a level that was read at a place, dBmV, by another reading: what comes in by that, less the
    /// loss to here, which is what was read here less what that tells.
    pub(crate) fn explained(&self, place: MeteredAt, mhz: f64, dbmv: f64, known: &ComesIn) -> Option<Span> {
        let own = self.by_itself(place, mhz)?;
        Some(spread(known.dbmv.iter().zip(own).map(|(known, own)| known + dbmv - own).collect()))
    }

    /// What comes in by the reading at a place itself, at a frequency that was measured there, dBmV a draw.
    fn by_itself(&self, place: MeteredAt, mhz: f64) -> Option<Vec<f64>> {
        let source = self.sources.iter().find(|source| source.at == place)?;
        source.levels.iter().find(|(at, _)| (at - mhz).abs() < SAME_MHZ).map(|(_, dbmv)| dbmv.clone())
    }
}

/// The places at which one may measure on the way up from a place to the entry, that place first.
pub(crate) fn way_to(survey: &Survey, place: MeteredAt) -> Vec<MeteredAt> {
    let mut way = Vec::new();
    if place.port.is_some() {
        way.push(place);
    }
    let mut at = Some(place.part);
    while let Some(part) = at {
        way.push(MeteredAt { part, port: None });
        let feed = survey.wiring.feed(part);
        way.extend(feed.map(|feed| MeteredAt { part: feed.part, port: Some(feed.port) }));
        at = feed.map(|feed| feed.part);
    }
    way
}

impl Source {
    /// What comes in at a frequency: between two measured levels in a straight line, beyond them for the next channel only.
    fn at(&self, mhz: f64) -> Option<ComesIn> {
        let told = |at_frequency, dbmv| Some(ComesIn { by: self.at, at_frequency, dbmv });
        if let Some((_, dbmv)) = self.levels.iter().find(|(at, _)| (at - mhz).abs() < SAME_MHZ) {
            return told(true, dbmv.clone());
        }
        let pair = self.levels.windows(2).find_map(|pair| match pair {
            [below, above] if below.0 < mhz && mhz < above.0 => Some((below, above)),
            _ => None,
        });
        if let Some(((f0, below), (f1, above))) = pair {
            let share = (mhz - f0) / (f1 - f0);
            let line = below.iter().zip(above).map(|(l0, l1)| l0 + (l1 - l0) * share);
            return told(false, line.collect());
        }
        let nearest = self.levels.iter().min_by(|a, b| (a.0 - mhz).abs().total_cmp(&(b.0 - mhz).abs()))?;
        if (nearest.0 - mhz).abs() <= NEIGHBOUR_MHZ { told(false, nearest.1.clone()) } else { None }
    }
}
