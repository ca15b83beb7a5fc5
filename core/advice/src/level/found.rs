//! What arrives at every TV and modem of a house.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{ReadingKind, ServiceKind, Survey};
use indexmap::IndexMap;

use super::Options;
use super::broken::{Broken, broken};
use super::clean::{CleanNeed, clean_need_of, ratios_at};
use super::entry_levels::{EntryLevels, Metered, metered_on};
use super::missing::{Missed, Unexplained, on_tree};
use super::outlets::{Served, measured_at, served_outlets};
use super::solve::{Gains, solve};
use super::window::{MODEM_SENDS, Window, window_of};
use crate::error::AdviceError;
use crate::forecast::{MeteredAt, spread};

/// The levels of a house. Every [`Span`] holds percentiles over the draws: 10th, median, 90th.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Levels {
    /// One for each service at each outlet.
    pub outlets: Vec<OutletLevels>,
    /// What was measured and the wiring does not explain.
    pub unexplained: Vec<Unexplained>,
}

impl Levels {
    /// What a service brings to an outlet.
    pub fn of(&self, outlet: SubjectId, service: ServiceKind) -> Option<&OutletLevels> {
        self.outlets.iter().find(|levels| levels.outlet == outlet && levels.service == service)
    }

    /// Whether the level of any service is known anywhere, measured or worked out.
    pub(crate) fn is_any_known(&self) -> bool {
        self.outlets.iter().any(|at| at.is_down_known() || at.sends().is_some())
    }

    /// Whether what arrives at an outlet is known, measured or worked out, for every service there.
    pub(crate) fn is_known_at(&self, outlet: SubjectId) -> bool {
        let mut here = self.outlets.iter().filter(|at| at.outlet == outlet).peekable();
        here.peek().is_some() && here.all(OutletLevels::is_down_known)
    }
}

/// One service at one outlet.
#[derive(Debug, Clone, PartialEq)]
pub struct OutletLevels {
    /// The outlet.
    pub outlet: SubjectId,
    /// The entry by which the service comes in.
    pub entry: SubjectId,
    /// The service.
    pub service: ServiceKind,
    /// Towards the house: low, middle and high in its band, and wherever a level was measured; by frequency.
    pub down: Vec<DownLevel>,
    /// Towards the street, for a modem: low and high in its band.
    pub up: Vec<UpLevel>,
    /// Where nothing gets through, or the modem is not heard.
    pub broken: Option<Broken>,
    /// How clean it arrives: each error ratio read here, MHz and dB, by frequency.
    pub ratios: Vec<(f64, f64)>,
    /// What the service needs of these.
    pub clean_need: Option<CleanNeed>,
    /// What is counted in the levels here as lost on the way, since readings elsewhere, or here at another frequency, show it.
    pub missing: Vec<Missed>,
}

impl OutletLevels {
    fn is_down_known(&self) -> bool {
        self.down.iter().any(|down| down.measured.is_some() || down.level.is_some())
    }
}

/// What arrives at one frequency.
#[derive(Debug, Clone, PartialEq)]
pub struct DownLevel {
    /// The frequency, MHz.
    pub mhz: f64,
    /// Gain from the entry to here, dB; negative: a loss.
    pub gain: Span,
    /// The level here, dBmV; `None` where nobody measured on this tree around this frequency.
    ///
    /// Readings made here at this very frequency do not count for it: it is what the wiring explains.
    pub level: Option<Span>,
    /// What comes in at the entry, dBmV, one a draw; empty where nobody knows.
    pub(super) comes_in: Vec<f64>,
    /// The level measured here, dBmV.
    pub measured: Option<f64>,
    /// What the device needs.
    pub window: Option<Window>,
}

/// The way back of a modem at one frequency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UpLevel {
    /// The frequency, MHz.
    pub mhz: f64,
    /// Gain from here to the entry, dB; negative: a loss, which the modem makes up by sending more.
    pub gain: Span,
    /// At what level the modem sends now, dBmV, by its own page.
    pub sends: Option<f64>,
    /// At what level it may send.
    pub window: Window,
}

/// The levels of a house as found.
///
/// # Errors
/// Whatever the physics refuses about a part.
pub fn levels(survey: &Survey, options: &Options) -> Result<Levels, AdviceError> {
    let mut by_entry: IndexMap<SubjectId, Vec<Served>> = IndexMap::new();
    for served in served_outlets(survey) {
        by_entry.entry(served.entry).or_default().push(served);
    }
    let mut found = Levels::default();
    // Where nothing is plugged in, what does not fit is told all the same.
    for entry in survey.parts.values().filter(|part| part.is_joined_entry()) {
        by_entry.entry(entry.id).or_default();
    }
    for (entry, served) in by_entry {
        let metered = metered_on(survey, entry);
        if served.is_empty() && metered.len() < 2 {
            continue;
        }
        let incoming = EntryLevels::of(survey, entry, &metered, options)?;
        let unexplained = on_tree(survey, &incoming, &metered);
        if !served.is_empty() {
            let gains = solve(survey, entry, &frequencies(&served, &metered), options)?;
            let tree = Known {
                survey,
                options,
                measured: measured_mhz(&metered),
                incoming: &incoming,
                unexplained: &unexplained,
            };
            found.outlets.extend(served.iter().map(|served| tree.at_outlet(served, &gains)));
        }
        found.unexplained.extend(unexplained);
    }
    Ok(found)
}

/// Every frequency that any of these outlets is looked at, and each that was measured on the tree.
pub(super) fn frequencies(served: &[Served], metered: &[Metered]) -> Vec<f64> {
    let mut all = measured_mhz(metered);
    for served in served {
        all.extend(served.down_mhz);
        all.extend(served.up_mhz.into_iter().flatten());
    }
    sorted(all)
}

/// Every frequency at which a level was measured on the tree.
pub(super) fn measured_mhz(metered: &[Metered]) -> Vec<f64> {
    metered.iter().flat_map(|metered| metered.levels.iter().map(|(mhz, _)| *mhz)).collect()
}

fn sorted(mut mhz: Vec<f64>) -> Vec<f64> {
    mhz.sort_by(f64::total_cmp);
    mhz.dedup();
    mhz
}

/// What is known of the levels on one tree.
struct Known<'a> {
    survey: &'a Survey,
    options: &'a Options,
    measured: Vec<f64>,
    incoming: &'a EntryLevels,
    unexplained: &'a [Unexplained],
}

impl Known<'_> {
    fn at_outlet(&self, served: &Served, gains: &Gains) -> OutletLevels {
        let survey = self.survey;
        let here = measured_at(survey, served.outlet);
        let window = window_of(survey, served.service);
        let mut missing = Vec::new();
        let mhz = sorted(served.down_mhz.into_iter().chain(self.measured.iter().copied()).collect());
        let down = mhz.into_iter().map(|mhz| {
            let drawn = gains.down(served.outlet, mhz);
            let measured = here.iter().find(|(at, _)| (at - mhz).abs() < 1e-9).map(|(_, dbmv)| *dbmv);
            let (level, comes_in) = if let Some(dbmv) = measured {
                (self.explained(served.outlet, mhz, dbmv), Vec::new())
            } else {
                let comes_in = self.comes_in(served.outlet, mhz, &mut missing);
                ((!comes_in.is_empty()).then(|| through(&comes_in, &drawn)), comes_in)
            };
            DownLevel { mhz, gain: spread(drawn), level, comes_in, measured, window }
        });
        let down = down.collect();
        let sends = sends(survey, served.outlet);
        let up = served.up_mhz.into_iter().flatten().map(|mhz| UpLevel {
            mhz,
            gain: spread(gains.up(served.outlet, mhz)),
            sends,
            window: MODEM_SENDS,
        });
        OutletLevels {
            outlet: served.outlet,
            entry: served.entry,
            service: served.service,
            down,
            up: up.collect(),
            broken: broken(survey, served, gains),
            ratios: ratios_at(survey, served.outlet),
            clean_need: clean_need_of(survey, served.service),
            missing: missing.into_iter().map(|found| found.missed_at(survey, place(served.outlet))).collect(),
        }
    }

    /// What the wiring explains of a level that was read at an outlet: nothing that is missing is counted in it.
    fn explained(&self, outlet: SubjectId, mhz: f64, dbmv: f64) -> Option<Span> {
        let known = self.incoming.by_others(self.survey, place(outlet), mhz)?;
        self.incoming.explained(place(outlet), mhz, dbmv, &known)
    }

    /// What comes in as seen from an outlet, one a draw, less what is missing on the way here; empty where nobody knows. What was
    /// counted goes to `missing`.
    fn comes_in<'b>(&'b self, outlet: SubjectId, mhz: f64, missing: &mut Vec<&'b Unexplained>) -> Vec<f64> {
        let Some(mut known) = self.incoming.seen_from(self.survey, outlet, mhz) else { return Vec::new() };
        let losses = self.unexplained.iter().filter(|found| found.is_loss());
        for loss in losses {
            let between = (known.by, place(outlet));
            let Some(lost) = loss.lost_between(self.survey, between, mhz, self.options) else { continue };
            for (dbmv, lost) in known.dbmv.iter_mut().zip(lost) {
                *dbmv -= lost;
            }
            if !missing.contains(&loss) {
                missing.push(loss);
            }
        }
        known.dbmv
    }
}

/// The place of the device at an outlet.
fn place(outlet: SubjectId) -> MeteredAt {
    MeteredAt { part: outlet, port: None }
}

/// At what level the modem at an outlet sends, by its own page.
pub(crate) fn sends(survey: &Survey, outlet: SubjectId) -> Option<f64> {
    survey.levels_read_at(outlet).find_map(|reading| match reading.measured {
        ReadingKind::ModemSends { dbmv } => Some(dbmv),
        _ => None,
    })
}

/// What arrives of what comes in over these gains, draw by draw.
pub(super) fn through(comes_in: &[f64], gains: &[f64]) -> Span {
    spread(comes_in.iter().zip(gains).map(|(dbmv, gain)| dbmv + gain).collect())
}
