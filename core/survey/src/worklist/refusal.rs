//! What speaks against a change: a service that it would cut.

use super::change::ChangeKind;
use super::effect::entry_filter_rating;
use crate::fact::SubjectId;
use crate::naming;
use crate::record::{EntryKind, EntryState, PartKind, Plugged, Service, ServiceKind, Survey};
use crate::words::{Arg, Phrase};

/// Why a change is not offered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Refusal {
    /// The filter would stand in a satellite line and cut it off.
    FilterInSatelliteLine {
        /// The entry.
        entry: SubjectId,
    },
    /// The filter passes less than a service uses.
    FilterCutsService {
        /// What it is.
        service: ServiceKind,
        /// How far it reaches, MHz.
        top_mhz: f64,
        /// How far the filter passes, MHz.
        passes_mhz: f64,
    },
    /// Without the amplifier a TV or modem may have too little signal; nobody has measured how much there is.
    LevelsUnknown {
        /// The outlet with the TV or modem.
        outlet: SubjectId,
        /// What it would lose, dB.
        loss_db: f64,
    },
    /// The amplifier would no longer get its power, which comes through this part.
    CutsPower {
        /// The amplifier.
        amplifier: SubjectId,
    },
    /// Something that works hangs there.
    CutsDevice {
        /// The outlet.
        outlet: SubjectId,
    },
    /// The wiring belongs to somebody else: ask first.
    NotYours,
}

impl Refusal {
    /// The reason in words.
    pub fn why(self, survey: &Survey) -> Phrase {
        match self {
            Self::FilterInSatelliteLine { entry } => {
                Phrase::new("refusal-filter-in-satellite-line").phrase("entry", naming::part(survey, entry))
            }
            Self::FilterCutsService { service, top_mhz, passes_mhz } => {
                Phrase::new("refusal-filter-cuts-service")
                    .phrase("service", naming::service(service))
                    .with("top", Arg::Frequency(top_mhz))
                    .with("passes", Arg::Frequency(passes_mhz))
            }
            Self::LevelsUnknown { outlet, loss_db } => Phrase::new("refusal-levels-unknown")
                .phrase("outlet", naming::part(survey, outlet))
                .with("loss", Arg::Loss(loss_db)),
            Self::CutsPower { amplifier } => {
                Phrase::new("refusal-cuts-power").phrase("amplifier", naming::part(survey, amplifier))
            }
            Self::CutsDevice { outlet } => {
                Phrase::new("refusal-cuts-device").phrase("outlet", naming::part(survey, outlet))
            }
            Self::NotYours => Phrase::new("refusal-not-yours"),
        }
    }
}

impl ChangeKind {
    /// What speaks against this change in this house; `None` if nothing does.
    pub fn refusal(self, survey: &Survey) -> Option<Refusal> {
        match self {
            Self::AddEntryFilter { behind } | Self::MoveEntryFilter { behind, .. } => {
                filter_refusal(survey, behind)
            }
            Self::SwapEntryFilter { filter } => filter_refusal(survey, filter),
            Self::RemoveAmplifier { amplifier } => amplifier_refusal(survey, amplifier),
            Self::Cap { part, port } => cap_refusal(survey, part, port),
            Self::ReplaceRun { .. } if not_own(survey) => Some(Refusal::NotYours),
            _ => None,
        }
    }
}

fn not_own(survey: &Survey) -> bool {
    survey.building.is_some_and(|building| building.ownership == crate::record::Ownership::Rented)
}

fn filter_refusal(survey: &Survey, at: SubjectId) -> Option<Refusal> {
    let entry = survey.wiring.head_of(at);
    let below = survey.wiring.below(at);
    let satellite = survey.parts.get(&entry).is_some_and(|part| part.entry_kind == EntryKind::Satellite)
        || below.iter().any(|id| plugged(survey, *id, &[Plugged::SatelliteReceiver]));
    if satellite {
        return Some(Refusal::FilterInSatelliteLine { entry });
    }
    let passes = entry_filter_rating().band?.high_mhz;
    survey
        .services
        .values()
        .filter(|service| comes_by_street(service))
        .filter_map(|service| Some((service.kind, service.top_mhz?)))
        .find(|(_, top)| *top > passes)
        .map(|(service, top_mhz)| Refusal::FilterCutsService { service, top_mhz, passes_mhz: passes })
}

fn comes_by_street(service: &Service) -> bool {
    matches!(service.kind, ServiceKind::CableTv | ServiceKind::CableInternet | ServiceKind::AntennaTv)
}

/// An amplifier stands where somebody once found it needed. Unless no TV or modem hangs below, taking it out is only
/// sound once levels are known.
fn amplifier_refusal(survey: &Survey, amplifier: SubjectId) -> Option<Refusal> {
    let gain = survey.parts.get(&amplifier).and_then(|part| part.rating.gain_db).unwrap_or(12.0);
    let outlet = survey.wiring.below(amplifier).into_iter().find(|id| {
        plugged(survey, *id, &[Plugged::Tv, Plugged::TvBox, Plugged::Modem, Plugged::MocaGateway])
    })?;
    Some(Refusal::LevelsUnknown { outlet, loss_db: gain })
}

fn cap_refusal(survey: &Survey, part: SubjectId, port: u8) -> Option<Refusal> {
    let found = survey.parts.get(&part)?;
    if found.kind == PartKind::Outlet && found.plugged.as_ref().is_some_and(|plugged| !plugged.is_empty()) {
        return Some(Refusal::CutsDevice { outlet: part });
    }
    let child = survey.wiring.on_port(part, port).next()?;
    let amplifier = survey
        .wiring
        .way_up(part)
        .into_iter()
        .find(|id| survey.parts.get(id).is_some_and(|part| part.kind == PartKind::Amplifier));
    let powers = survey.wiring.below(child).into_iter().any(|id| {
        plugged(survey, id, &[Plugged::PowerSupply])
            || survey.parts.get(&id).is_some_and(|part| part.kind == PartKind::PowerInserter)
    });
    match amplifier {
        Some(amplifier) if powers => Some(Refusal::CutsPower { amplifier }),
        _ => Some(Refusal::CutsDevice { outlet: child }),
    }
}

fn plugged(survey: &Survey, id: SubjectId, which: &[Plugged]) -> bool {
    let devices = survey.parts.get(&id).and_then(|part| part.plugged.as_ref());
    devices.is_some_and(|devices| devices.iter().any(|device| which.contains(device)))
}

/// Whether an entry leads to the street, the antenna or nobody knows where.
pub(super) fn open_to_the_world(survey: &Survey, entry: SubjectId) -> bool {
    survey.parts.get(&entry).is_some_and(|part| {
        part.kind == PartKind::Entry
            && part.entry_state != EntryState::CutOff
            && !matches!(part.entry_kind, EntryKind::Satellite | EntryKind::FibreBox)
    })
}
