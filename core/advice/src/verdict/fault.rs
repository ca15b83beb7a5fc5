//! What tests show to be wrong on the way to an outlet.

use facts::fact::SubjectId;
use house::record::{LinkState, Reading, ReadingKind, Survey};
use serde::{Deserialize, Serialize};

use super::nodes::NodesTold;
use super::reading::{Verdict, is_coax_well};
use super::tells;
use crate::beside::{Beside, HeldOf};
use crate::forecast::PathForecast;

/// Loss of packets from which a network is not well, percent. The packet error target of MoCA 2.0 is 1 in 100 million (2.0
/// press release, June 2010): anything a person can measure is far above.
pub const LOSS_PERCENT: f64 = 0.1;

/// What tests show to be wrong on the way to an outlet, what is graver first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Fault {
    /// The adapter hears no other.
    NoLink,
    /// Fewer adapters are seen than are there, and this one is missing among them.
    NotSeen,
    /// The link is there at times and gone at others.
    ComesAndGoes,
    /// A piece of the network outside the coax that is made for 100 Mb/s holds it.
    HundredSomewhere,
    /// A rate is worse than was to be expected, and the coax itself was seen to be well: the cause lies outside it.
    SlowOutside,
    /// A rate is worse than was to be expected.
    Slow,
    /// More is lost on the way than was to be expected.
    Lossy,
    /// Packets get lost.
    LosesPackets,
}

impl Fault {
    /// Whether it is only about how much gets through: where the wish is met all the same, nothing needs to be done.
    pub const fn is_only_speed(self) -> bool {
        matches!(self, Self::HundredSomewhere | Self::SlowOutside | Self::Slow | Self::Lossy)
    }

    /// Its name in data: `no_link`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::NoLink => "no_link",
            Self::NotSeen => "not_seen",
            Self::ComesAndGoes => "comes_and_goes",
            Self::HundredSomewhere => "hundred_somewhere",
            Self::SlowOutside => "slow_outside",
            Self::Slow => "slow",
            Self::Lossy => "lossy",
            Self::LosesPackets => "loses_packets",
        }
    }
}

/// What a reading that tells of the coax says of the link itself, if it does; a rate of nothing both ways says that there is
/// none.
pub(super) fn link_told(measured: ReadingKind) -> Option<LinkState> {
    match measured {
        ReadingKind::Link { state } => Some(state),
        ReadingKind::Throughput { down_mbps, up_mbps } if down_mbps <= 0.0 && up_mbps <= 0.0 => {
            Some(LinkState::Absent)
        }
        ReadingKind::PhyRate { mbps } if mbps <= 0.0 => Some(LinkState::Absent),
        _ => None,
    }
}

/// Whether anything that was read at an outlet shows that its adapter hears another.
pub(super) fn hears_others(survey: &Survey, outlet: SubjectId) -> bool {
    let of_coax = |reading: &&Reading| tells::of(survey, reading).is_some_and(super::Tells::is_of_coax);
    survey.readings_at(outlet).filter(of_coax).any(|reading| match reading.measured {
        ReadingKind::Link { state } => state == LinkState::Steady,
        ReadingKind::Throughput { down_mbps, up_mbps } => down_mbps > 0.0 || up_mbps > 0.0,
        ReadingKind::PhyRate { mbps } => mbps > 0.0,
        ReadingKind::Power { .. } => true,
        _ => false,
    })
}

/// What one reading shows to be wrong. `is_coax_well` says that other readings there show the coax to be well.
fn of_reading(reading: &Reading, verdict: &Verdict, is_coax_well: bool) -> Option<Fault> {
    match verdict.link {
        Some(LinkState::Absent) => return Some(Fault::NoLink),
        Some(LinkState::ComesAndGoes) => return Some(Fault::ComesAndGoes),
        Some(LinkState::Steady) | None => {}
    }
    if let ReadingKind::PacketLoss { percent, .. } = reading.measured {
        let loses = verdict.tells.is_of_coax() && percent >= LOSS_PERCENT;
        return loses.then_some(Fault::LosesPackets);
    }
    let held = verdict.told_first()?;
    match (held.beside, held.of) {
        (Beside::NearHundred, _) => Some(Fault::HundredSomewhere),
        (Beside::Worse, HeldOf::Loss) => Some(Fault::Lossy),
        (Beside::Worse, HeldOf::Down | HeldOf::Up) if is_coax_well => Some(Fault::SlowOutside),
        (Beside::Worse, _) => Some(Fault::Slow),
        _ => None,
    }
}

/// All that the tests at an outlet show to be wrong, each once, what is graver first. `path` says what was to be expected.
pub(super) fn all(
    survey: &Survey,
    outlet: SubjectId,
    readings: &[(&Reading, Verdict)],
    path: Option<&PathForecast>,
) -> Vec<Fault> {
    let is_well = path.is_some_and(|path| is_coax_well(survey, outlet, path));
    let mut faults: Vec<_> =
        readings.iter().filter_map(|(reading, verdict)| of_reading(reading, verdict, is_well)).collect();
    if NodesTold::all(survey).iter().any(|told| told.is_surely_missing(outlet)) {
        faults.push(Fault::NotSeen);
    }
    faults.sort_unstable();
    faults.dedup();
    faults
}
