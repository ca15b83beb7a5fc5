//! What speaks against a change: a service that it would cut.

use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

use coax::estimates::house::AMPLIFIER_GAIN;
use facts::fact::SubjectId;
use house::naming;
use house::record::{
    ChangeKind, Named, OutcomeKind, PartKind, Plugged, ServiceKind, Sureness, Survey, Without, satellite_on,
};
use phrase::{Arg, Phrase};

use super::care::not_wanted;
use super::effect::applied;
use crate::entry_filter::{Against, EntryFilter, NotWanted, against, entry_filter, other_home_at};
use crate::forecast::nodes_of;
use crate::level::{self, MovedOut, levels};

/// Why a change is not offered.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Refusal {
    /// The filter would stand in a satellite line and cut it off.
    FilterInSatelliteLine {
        /// The entry.
        entry: SubjectId,
    },
    /// An amplifier in the line lets nothing of the network out: no filter is needed.
    AmplifierIsolates {
        /// The amplifier.
        amplifier: SubjectId,
    },
    /// An antenna's preamplifier outside does so.
    PreamplifierOutside {
        /// The entry.
        entry: SubjectId,
    },
    /// What the decision on the entry filter, or another home's leg, says against it.
    Against(Against),
    /// Satellite signals come to the outlet, in the band of the adapters: the two cannot share it.
    SharesWithSatellite {
        /// The outlet.
        outlet: SubjectId,
    },
    /// Without the amplifier a TV or modem may have too little signal; nobody has measured how much there is.
    LevelsUnknown {
        /// The outlet with the TV or modem.
        outlet: SubjectId,
        /// What it would lose, dB.
        loss_db: f64,
    },
    /// The filter would cut a device off a network that the provider runs over the coax.
    CutsProviderNetwork {
        /// The outlet with the device.
        outlet: SubjectId,
        /// Which network.
        service: ServiceKind,
    },
    /// Something would no longer get the DC that comes to it over the coax.
    CutsPower {
        /// The amplifier, or the entry behind which a preamplifier or dish stands.
        powered: SubjectId,
    },
    /// A service would no longer arrive.
    CutsService {
        /// The outlet with the TV or modem.
        outlet: SubjectId,
        /// What it is.
        service: ServiceKind,
    },
    /// A modem's way back to the street would be cut.
    CutsReturn {
        /// The outlet with the modem.
        outlet: SubjectId,
    },
    /// A level there would leave its window.
    LevelOut {
        /// The outlet.
        outlet: SubjectId,
        /// The service.
        service: ServiceKind,
        /// What it is in the house as found, dBmV.
        before: f64,
        /// Whether that was measured there, or worked out.
        measured: bool,
        /// What it would be, with the steps before this one, dBmV.
        after: f64,
    },
    /// The modem would have to send more than is good.
    SendsTooMuch {
        /// The outlet.
        outlet: SubjectId,
        /// At what level it sends now, dBmV.
        before: f64,
        /// At what level it would have to, dBmV.
        after: f64,
    },
    /// Something that works hangs there.
    CutsDevice {
        /// The outlet.
        outlet: SubjectId,
    },
    /// The cable is on the street's side, where only the provider works.
    StreetSide {
        /// The part that it leads to.
        to: SubjectId,
    },
    /// The wiring belongs to somebody else: ask first.
    NotYours,
    /// What such a splitter passes ends below what a satellite receiver behind it gets.
    NarrowsSatellite {
        /// The outlet with the receiver.
        outlet: SubjectId,
    },
    /// All rooms together gain something by it, and less than it is worth.
    NotWorth {
        /// What they gain, towards them, once all steps are done, Mb/s.
        gain_mbps: f64,
        /// How long it takes.
        minutes: u64,
    },
    /// It is work of a kind that is not wanted in this house.
    NotWanted {
        /// Which kind.
        without: Without,
    },
    /// A room that has the network would lose it: no cable leads from the bridge's new place to it.
    CutsNetwork {
        /// The outlet of that room.
        outlet: SubjectId,
    },
}

impl Refusal {
    /// A level that leaves its window.
    pub(super) fn level(moved: MovedOut) -> Self {
        let MovedOut { outlet, service, sends, level, .. } = moved;
        let (before, after) = (level.now_dbmv, level.level.likely);
        if sends {
            Self::SendsTooMuch { outlet, before, after }
        } else {
            Self::LevelOut { outlet, service, before, measured: level.measured, after }
        }
    }

    /// The reason in words.
    pub fn why(self, survey: &Survey) -> Phrase {
        match self {
            Self::FilterInSatelliteLine { entry } => {
                Phrase::new("refusal-filter-in-satellite-line").phrase("entry", naming::part(survey, entry))
            }
            Self::AmplifierIsolates { amplifier } => {
                Phrase::new("refusal-amplifier-isolates").phrase("amplifier", naming::part(survey, amplifier))
            }
            Self::PreamplifierOutside { entry } => {
                Phrase::new("refusal-preamplifier-outside").phrase("entry", naming::part(survey, entry))
            }
            Self::Against(against) => against.why(survey),
            Self::SharesWithSatellite { outlet } => {
                Phrase::new("refusal-shares-with-satellite").phrase("outlet", naming::part(survey, outlet))
            }
            Self::LevelsUnknown { outlet, loss_db } => Phrase::new("refusal-levels-unknown")
                .phrase("outlet", naming::part(survey, outlet))
                .with("loss", Arg::Loss(loss_db)),
            Self::CutsProviderNetwork { outlet, service } => Phrase::new("refusal-cuts-provider-network")
                .phrase("outlet", naming::part(survey, outlet))
                .phrase("service", naming::service(service)),
            Self::CutsPower { powered } => {
                let entry = survey.parts.get(&powered).is_some_and(|part| part.kind == PartKind::Entry);
                let id = if entry { "refusal-cuts-power-outside" } else { "refusal-cuts-power" };
                Phrase::new(id).phrase("powered", naming::part(survey, powered))
            }
            Self::CutsService { outlet, service } => Phrase::new("refusal-cuts-service")
                .phrase("outlet", naming::part(survey, outlet))
                .phrase("service", naming::service(service)),
            Self::CutsReturn { outlet } => {
                Phrase::new("refusal-cuts-return").phrase("outlet", naming::part(survey, outlet))
            }
            Self::LevelOut { outlet, service, before, measured, after } => {
                let id = if measured { "refusal-level-out" } else { "refusal-level-out-worked-out" };
                Phrase::new(id)
                    .phrase("outlet", naming::part(survey, outlet))
                    .phrase("service", naming::service(service))
                    .with("before", Arg::Level(before))
                    .with("after", Arg::Level(after))
            }
            Self::SendsTooMuch { outlet, before, after } => Phrase::new("refusal-sends-too-much")
                .phrase("outlet", naming::part(survey, outlet))
                .with("before", Arg::Level(before))
                .with("after", Arg::Level(after)),
            Self::CutsDevice { outlet } => {
                Phrase::new("refusal-cuts-device").phrase("outlet", naming::part(survey, outlet))
            }
            Self::StreetSide { to } => {
                Phrase::new("refusal-street-side").phrase("run", naming::run_to(survey, to))
            }
            Self::NotYours => Phrase::new("refusal-not-yours"),
            Self::NarrowsSatellite { outlet } => {
                Phrase::new("refusal-narrows-satellite").phrase("outlet", naming::part(survey, outlet))
            }
            Self::NotWorth { gain_mbps, minutes } => Phrase::new("left-out-not-worth")
                .with("gain", Arg::Rate(gain_mbps))
                .with("minutes", Arg::Minutes(minutes)),
            Self::NotWanted { without } => Phrase::new(format!("refusal-without-{}", without.name())),
            Self::CutsNetwork { outlet } => {
                Phrase::new("refusal-cuts-network").phrase("outlet", naming::part(survey, outlet))
            }
        }
    }
}

/// Changes that somebody tried and could not make, or took back.
pub(super) fn given_up(survey: &Survey) -> BTreeSet<ChangeKind> {
    let is_given_up = |end| matches!(end, OutcomeKind::CouldNot | OutcomeKind::PutBack);
    survey.works.values().filter(|work| is_given_up(work.outcome.end)).map(|work| work.change).collect()
}

/// What speaks against this change but for what it does to the other services' levels, bands and DC.
pub(super) fn own_refusal(change: ChangeKind, survey: &Survey) -> Option<Refusal> {
    of_itself(change, survey)
        .or_else(|| not_wanted(change, survey).map(|without| Refusal::NotWanted { without }))
}

fn of_itself(change: ChangeKind, survey: &Survey) -> Option<Refusal> {
    let others = other_home_at(survey, change).map(|leg| Refusal::Against(Against::OtherHome(leg)));
    if others.is_some() {
        return others;
    }
    match change {
        ChangeKind::AddEntryFilter { behind } | ChangeKind::MoveEntryFilter { behind, .. } => {
            filter_refusal(survey, behind, change)
        }
        ChangeKind::SwapEntryFilter { filter } => filter_refusal(survey, filter, change),
        ChangeKind::FilterAtDevice { outlet } => {
            provider_network_refusal(survey, outlet).or_else(|| filter_refusal(survey, outlet, change))
        }
        ChangeKind::ShareOutlet { outlet } => satellite_on(survey, survey.wiring.head_of(outlet))
            .filter(|sure| *sure == Sureness::Known)
            .map(|_| Refusal::SharesWithSatellite { outlet }),
        ChangeKind::RemoveAmplifier { amplifier } => amplifier_refusal(survey, amplifier),
        ChangeKind::Cap { part, port } => cap_refusal(survey, part, port),
        ChangeKind::ReplaceRun { to } | ChangeKind::RenewConnectors { to } if survey.is_street_side(to) => {
            Some(Refusal::StreetSide { to })
        }
        ChangeKind::ReplaceRun { .. } | ChangeKind::NewRun { .. } if not_own(survey) => {
            Some(Refusal::NotYours)
        }
        ChangeKind::MoveBridge { from, to } => network_refusal(survey, from, to),
        ChangeKind::SwapSplitter { splitter: at, .. } | ChangeKind::MergeSplitters { upper: at, .. } => {
            satellite_refusal(survey, at)
        }
        _ => None,
    }
}

/// Whatever stands in a dish's line now, a splitter made for the room network ends below 2,150 MHz (EN 50494:2007).
fn satellite_refusal(survey: &Survey, splitter: SubjectId) -> Option<Refusal> {
    if satellite_on(survey, survey.wiring.head_of(splitter)) != Some(Sureness::Known) {
        return None;
    }
    let mut below = survey.wiring.below(splitter).into_iter();
    let outlet = below.find(|id| plugged(survey, *id, &[Plugged::SatelliteReceiver]))?;
    Some(Refusal::NarrowsSatellite { outlet })
}

/// Where the bridge goes to another tree, the rooms of the tree that it leaves get no network any more; and the network is
/// not brought where satellite signals are.
fn network_refusal(survey: &Survey, from: SubjectId, to: SubjectId) -> Option<Refusal> {
    let (left, joined) = (survey.wiring.head_of(from), survey.wiring.head_of(to));
    if left == joined {
        return None;
    }
    if satellite_on(survey, joined) == Some(Sureness::Known) {
        return Some(Refusal::SharesWithSatellite { outlet: to });
    }
    let after = nodes_of(&applied(ChangeKind::MoveBridge { from, to }, survey));
    let mut left = after.iter().map(|node| node.outlet).filter(|id| survey.wiring.head_of(*id) == left);
    left.next().map(|outlet| Refusal::CutsNetwork { outlet })
}

fn not_own(survey: &Survey) -> bool {
    survey.building.is_some_and(|building| building.ownership == house::record::Ownership::Rented)
}

fn filter_refusal(survey: &Survey, at: SubjectId, change: ChangeKind) -> Option<Refusal> {
    let head = survey.wiring.head_of(at);
    match entry_filter(survey, head) {
        EntryFilter::NotWanted(NotWanted::Satellite) => {
            return Some(Refusal::FilterInSatelliteLine { entry: head });
        }
        // What keeps the network from a device may stand wherever it lets the device's own signals through.
        EntryFilter::NotWanted(reason) if !matches!(change, ChangeKind::FilterAtDevice { .. }) => {
            match reason {
                NotWanted::AmplifierIsolates { amplifier } => {
                    return Some(Refusal::AmplifierIsolates { amplifier });
                }
                NotWanted::PreamplifierOutside => return Some(Refusal::PreamplifierOutside { entry: head }),
                NotWanted::Satellite | NotWanted::CutOff | NotWanted::FibreBox => {}
            }
        }
        _ => {}
    }
    against(survey, head, change).map(Refusal::Against)
}

/// A box of the provider's may be a member of the provider's own network, and a fibre box of its link to the router.
fn provider_network_refusal(survey: &Survey, outlet: SubjectId) -> Option<Refusal> {
    let boxed =
        plugged(survey, outlet, &[Plugged::TvBox]) && survey.has_service(ServiceKind::ProviderNetwork);
    let fibre = plugged(survey, outlet, &[Plugged::FibreBox]);
    let service = match (fibre, boxed) {
        (true, _) => ServiceKind::FibreLink,
        (_, true) => ServiceKind::ProviderNetwork,
        _ => return None,
    };
    Some(Refusal::CutsProviderNetwork { outlet, service })
}

/// An amplifier stands where somebody once found it needed. Where a TV or modem hangs below, taking it out is only
/// sound once the level there is known, measured or worked out; whether it then stays in its window is looked at like any
/// other change.
fn amplifier_refusal(survey: &Survey, amplifier: SubjectId) -> Option<Refusal> {
    let gain = survey
        .parts
        .get(&amplifier)
        .and_then(|part| part.rating.gain_db)
        .unwrap_or(AMPLIFIER_GAIN.span.likely);
    let levels =
        levels(survey, &level::Options { draws: 1, ..level::Options::default() }).unwrap_or_default();
    let outlet = survey
        .wiring
        .below(amplifier)
        .into_iter()
        .filter(|id| {
            plugged(survey, *id, &[Plugged::Tv, Plugged::TvBox, Plugged::Modem, Plugged::MocaGateway])
        })
        .find(|id| !levels.is_known_at(*id))?;
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
        Some(powered) if powers => Some(Refusal::CutsPower { powered }),
        _ => Some(Refusal::CutsDevice { outlet: child }),
    }
}

fn plugged(survey: &Survey, id: SubjectId, which: &[Plugged]) -> bool {
    let devices = survey.parts.get(&id).and_then(|part| part.plugged.as_ref());
    devices.is_some_and(|devices| devices.iter().any(|device| which.contains(device)))
}
