//! What arrives at every TV and modem of a house.

use coax::Span;
use facts::fact::SubjectId;
use house::record::{ReadingKind, ServiceKind, Survey};
use indexmap::IndexMap;

use super::Options;
use super::broken::{Broken, broken};
use super::clean::{CleanNeed, clean_need_of, ratios_at};
use super::entry_levels::{EntryLevels, Metered, metered_on};
use super::outlets::{Served, measured_at, served_outlets};
use super::solve::{Gains, solve};
use super::window::{MODEM_SENDS, Window, window_of};
use crate::error::AdviceError;
use crate::forecast::spread;

/// The levels of a house. Every [`Span`] holds percentiles over the draws: 10th, median, 90th.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Levels {
    /// One for each service at each outlet.
    pub outlets: Vec<OutletLevels>,
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
    let mut outlets = Vec::new();
    for (entry, served) in by_entry {
        let metered = metered_on(survey, entry);
        let mhz = frequencies(&served, &metered);
        let gains = solve(survey, entry, &mhz, options)?;
        let incoming = EntryLevels::of(survey, entry, &metered, options)?;
        let measured = measured_mhz(&metered);
        outlets.extend(served.iter().map(|served| at_outlet(survey, served, &measured, &incoming, &gains)));
    }
    Ok(Levels { outlets })
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

fn at_outlet(
    survey: &Survey,
    served: &Served,
    measured: &[f64],
    incoming: &EntryLevels,
    gains: &Gains,
) -> OutletLevels {
    let here = measured_at(survey, served.outlet);
    let window = window_of(survey, served.service);
    let mhz = sorted(served.down_mhz.into_iter().chain(measured.iter().copied()).collect());
    let down = mhz.into_iter().map(|mhz| {
        let drawn = gains.down(served.outlet, mhz);
        let gain = spread(drawn.clone());
        let comes_in =
            incoming.seen_from(survey, served.outlet, mhz).map(|found| found.dbmv).unwrap_or_default();
        let level = (!comes_in.is_empty()).then(|| through(&comes_in, &drawn));
        let measured = here.iter().find(|(at, _)| (at - mhz).abs() < 1e-9).map(|(_, dbmv)| *dbmv);
        DownLevel { mhz, gain, level, comes_in, measured, window }
    });
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
        down: down.collect(),
        up: up.collect(),
        broken: broken(survey, served, gains),
        ratios: ratios_at(survey, served.outlet),
        clean_need: clean_need_of(survey, served.service),
    }
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
