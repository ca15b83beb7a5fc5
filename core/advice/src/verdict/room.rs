//! What the readings at one outlet say together.

use facts::fact::SubjectId;
use house::record::{Reading, ReadingKind, Survey};

use super::fault::{self, Fault};
use super::reading::Verdict;
use super::tells::is_from_before;
use super::wish::{Met, WishMeasured};
use crate::beside::HeldOf;
use crate::forecast::Forecast;

/// Whether something was measured at an outlet that tells how fast it is, or that it has no link.
pub fn is_tested(survey: &Survey, outlet: SubjectId) -> bool {
    let told = |reading: &Reading| is_a_test(reading.measured) && !is_from_before(survey, reading);
    survey.readings_at(outlet).any(told)
}

/// Whether a reading makes an outlet a tested one: a speed, or how the link stands.
pub const fn is_a_test(measured: ReadingKind) -> bool {
    is_a_speed(measured) || matches!(measured, ReadingKind::Link { .. })
}

/// Whether a reading tells how fast it is: throughput or a PHY rate.
pub const fn is_a_speed(measured: ReadingKind) -> bool {
    matches!(measured, ReadingKind::Throughput { .. } | ReadingKind::PhyRate { .. })
}

/// A throughput that was measured over the coax.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Throughput {
    /// Towards the room, Mb/s.
    pub down_mbps: f64,
    /// From the room, Mb/s.
    pub up_mbps: f64,
    /// Whether a network socket of the test held the way towards the room, not the coax.
    pub is_capped: bool,
}

/// All that was tested at one outlet.
#[derive(Debug, Clone, PartialEq)]
pub struct RoomVerdict<'a> {
    /// The outlet.
    pub outlet: SubjectId,
    /// Each reading of a test there with its verdict, by the readings' identities.
    pub readings: Vec<(&'a Reading, Verdict)>,
    /// Whether the wish there is met, as measured; `None` where nothing is wished, or no test tells of it.
    pub wish: Option<WishMeasured>,
    /// Whether anything is wished there.
    pub is_wished: bool,
    /// What the tests show to be wrong on the way there, what is graver first.
    pub faults: Vec<Fault>,
}

impl<'a> RoomVerdict<'a> {
    /// What the readings at an outlet say.
    pub fn at(survey: &'a Survey, outlet: SubjectId, forecast: Option<&Forecast>) -> Self {
        let readings: Vec<_> = survey
            .readings_at(outlet)
            .filter_map(|reading| Some((reading, Verdict::on(survey, reading, forecast)?)))
            .collect();
        let wished = survey.wish_at(outlet);
        let path = forecast.and_then(|forecast| forecast.path(outlet));
        Self {
            outlet,
            faults: fault::all(survey, outlet, &readings, path),
            readings,
            wish: wished.and_then(|wish| WishMeasured::at(survey, wish, outlet)),
            is_wished: wished.is_some(),
        }
    }

    /// Whether its test failed: something is wrong on the way, if more than speed that nobody misses, or the wish was measured
    /// not to be met.
    pub fn has_failed(&self) -> bool {
        let is_missed = |fault: &Fault| !fault.is_only_speed() || !self.is_as_wished();
        self.faults.iter().any(is_missed) || self.wish.is_some_and(|wish| wish.met == Met::Unlikely)
    }

    /// Whether it was tested over the coax and nothing was found wrong.
    pub fn is_well(&self) -> bool {
        let tells =
            |reading: &Reading| is_a_test(reading.measured) || reading.measured.path_loss_db().is_some();
        let tested =
            self.readings.iter().any(|(reading, verdict)| tells(reading) && verdict.tells.is_of_coax());
        tested && self.faults.is_empty()
    }

    /// Whether anything measured there is worse than was to be expected: of the rates, PHY rates, losses and what was seen of
    /// the link one is enough.
    pub fn falls_short(&self) -> bool {
        self.readings.iter().any(|(_, verdict)| verdict.is_worse())
    }

    /// Whether a speed was measured over the coax.
    pub fn is_measured_over_coax(&self) -> bool {
        let speed = |reading: &Reading| is_a_speed(reading.measured);
        self.readings.iter().any(|(reading, verdict)| speed(reading) && verdict.tells.is_of_coax())
    }

    /// The throughput to show for it, if any was measured over the coax: the one that tells of the wish, else the fastest.
    pub fn throughput(&self) -> Option<Throughput> {
        let of_coax = self.readings.iter().filter(|(_, verdict)| verdict.tells.is_of_coax());
        let rates = of_coax.filter_map(|(reading, verdict)| match reading.measured {
            ReadingKind::Throughput { down_mbps, up_mbps } => {
                let down = verdict.held.iter().find(|held| held.of == HeldOf::Down);
                let is_capped = down.is_some_and(|held| held.beside.socket_mbps().is_some());
                Some(Throughput { down_mbps, up_mbps, is_capped })
            }
            _ => None,
        });
        let tells_of_wish = |rates: &Throughput| {
            self.wish.is_some_and(|wish| {
                wish.down_mbps.total_cmp(&rates.down_mbps).is_eq()
                    && wish.up_mbps.total_cmp(&rates.up_mbps).is_eq()
            })
        };
        rates.max_by(|a, b| tells_of_wish(a).cmp(&tells_of_wish(b)).then(a.down_mbps.total_cmp(&b.down_mbps)))
    }

    /// Whether a test over the coax gives what is wished there.
    pub fn is_as_wished(&self) -> bool {
        self.wish.is_some_and(|wish| wish.met == Met::Yes)
    }
}
