//! Where a service does not get through at all, or a modem is not heard: a loss that no device makes up.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, PartKind, ServiceKind, Survey};
use phrase::{Arg, Phrase};

use super::change::OutletChange;
use super::entry_levels::STILL_ON_THE_WAY_DB;
use super::fit::Fit;
use super::outlets::Served;
use super::solve::Gains;
use crate::forecast::spread;

/// A frequency that a service uses and the way does not carry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Broken {
    /// Whether it is the way from the device to the street.
    pub back: bool,
    /// The frequency, MHz.
    pub mhz: f64,
    /// What is likely lost there, dB.
    pub loss_db: f64,
    /// The amplifier that is the reason, where one is.
    pub amplifier: Option<SubjectId>,
    /// Whether its label says so; else it is only taken to end there, as most do.
    pub stated: bool,
    /// Whether the service is known to use the frequency; else nobody said how far it reaches, and it may end below.
    pub reach_stated: bool,
}

impl Broken {
    /// How this counts among what is known of a service at an outlet.
    pub(crate) fn fit(&self) -> Fit {
        if self.stated && self.reach_stated { Fit::Outside } else { Fit::Marginal }
    }

    /// The same after work that brings this change; `None` where that mends it.
    pub(super) fn fit_after(&self, change: &OutletChange) -> Option<Fit> {
        let bands = if self.back { &change.up } else { &change.down };
        let band = bands.iter().find(|band| (band.mhz - self.mhz).abs() < 1e-9);
        band.is_none_or(|band| spread(band.after_db.clone()).likely < STILL_ON_THE_WAY_DB).then(|| self.fit())
    }

    /// It in words.
    pub(super) fn phrase(&self, survey: &Survey) -> Phrase {
        let id = match (self.amplifier, self.stated) {
            (Some(_), false) => "levels-broken-perhaps",
            _ if !self.reach_stated => "levels-broken-if-used",
            (None, _) => "levels-broken",
            (Some(_), true) => "levels-broken-by",
        };
        let phrase = Phrase::new(id)
            .text("way", if self.back { "back" } else { "here" })
            .with("loss", Arg::Loss(self.loss_db))
            .with("frequency", Arg::Frequency(self.mhz));
        match self.amplifier {
            Some(amplifier) => phrase.phrase("amplifier", naming::part(survey, amplifier)),
            None => phrase,
        }
    }
}

/// The worst break on the ways of a service: what is sure first, then what loses most.
pub(super) fn broken(survey: &Survey, served: &Served, gains: &Gains) -> Option<Broken> {
    let down = served.down_mhz.iter().map(|mhz| (false, *mhz, gains.down(served.outlet, *mhz)));
    let up = served.up_mhz.iter().flatten().map(|mhz| (true, *mhz, gains.up(served.outlet, *mhz)));
    let at = |(back, mhz, gain): (bool, f64, Vec<f64>)| {
        let gain = if gain.is_empty() { return None } else { spread(gain).likely };
        let reason = amplifier_that_ends(survey, served, back, mhz);
        (gain < STILL_ON_THE_WAY_DB).then(|| Broken {
            back,
            mhz,
            loss_db: -gain,
            amplifier: reason.map(|(amplifier, _)| amplifier),
            stated: reason.is_none_or(|(_, stated)| stated),
            reach_stated: is_known_to_use(survey, served, back, mhz),
        })
    };
    let order = |a: &Broken, b: &Broken| a.fit().cmp(&b.fit()).then(a.loss_db.total_cmp(&b.loss_db));
    down.chain(up).filter_map(at).max_by(order)
}

/// Whether a service is known to use a frequency: its upper end only where somebody said how far it reaches, or where that
/// is the same everywhere.
fn is_known_to_use(survey: &Survey, served: &Served, back: bool, mhz: f64) -> bool {
    let top = if back { served.up_mhz.map(|up| up[1]) } else { Some(served.down_mhz[2]) };
    let below_top = top.is_none_or(|top| mhz < top);
    let mut services = survey.services_of(served.service);
    below_top
        || served.service == ServiceKind::SatelliteTv
        || services.any(|service| if back { service.upstream_top_mhz() } else { service.top_mhz }.is_some())
}

/// An amplifier on the way whose band ends before this frequency, by its label or as it is taken to, and whether by its
/// label.
fn amplifier_that_ends(survey: &Survey, served: &Served, back: bool, mhz: f64) -> Option<(SubjectId, bool)> {
    let way = survey.wiring.way_up(served.outlet);
    let amplifiers = way
        .iter()
        .filter_map(|id| survey.parts.get(id))
        .filter(|part| part.kind == PartKind::Amplifier && part.measured.is_none());
    let ends = |part: &Part| {
        let edge =
            if back { part.rating.return_high_mhz } else { part.rating.band.map(|band| band.high_mhz) };
        match edge {
            Some(edge) => (edge < mhz).then_some((part.id, true)),
            None => Some((part.id, false)),
        }
    };
    amplifiers.filter_map(ends).max_by_key(|(_, stated)| *stated)
}
