//! What comes in where: the one place that says which services an entry brings. Every rule that turns on it (levels,
//! filters, satellite, DC to a mast or a dish, the street's side) asks here.
//!
//! Said in three ways, which add up: what kind of entry it is, by which entry a service was said to come in, and where
//! nobody said that, which entry alone can bring it.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

use facts::fact::SubjectId;

use super::{EntryKind, Part, Plugged, Service, ServiceKind, Survey};

/// How sure it is that a service comes in at an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Sureness {
    /// Nobody said so, and nothing speaks against it.
    MayBe,
    /// It was said, or no other entry can bring it.
    Known,
}

/// What comes in at the head of one tree.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Incoming {
    services: BTreeMap<ServiceKind, Sureness>,
}

/// The services that come in by an entry; a network on the coax and DC do not.
const BY_ENTRY: [ServiceKind; 4] =
    [ServiceKind::CableTv, ServiceKind::CableInternet, ServiceKind::AntennaTv, ServiceKind::SatelliteTv];

/// Those that come from one source outside.
const SOURCES: [&[ServiceKind]; 3] = [
    &[ServiceKind::CableTv, ServiceKind::CableInternet],
    &[ServiceKind::AntennaTv],
    &[ServiceKind::SatelliteTv],
];

/// What an entry may bring of which nobody said anything: a dish is named by whoever has one.
const UNSAID: [ServiceKind; 3] = [ServiceKind::CableTv, ServiceKind::CableInternet, ServiceKind::AntennaTv];

impl Incoming {
    /// What comes in at the head of a tree: nothing where the head is no entry, or one that is cut off.
    pub fn at(survey: &Survey, head: SubjectId) -> Self {
        let Some(entry) = survey.parts.get(&head).filter(|part| part.is_joined_entry()) else {
            return Self::default();
        };
        let mut services = BTreeMap::new();
        for kind in BY_ENTRY {
            if brings(entry.entry_kind, kind) || is_said_of(survey, head, kind) {
                services.insert(kind, Sureness::Known);
            }
        }
        if entry.entry_kind == EntryKind::Unknown {
            for (kind, sure) in of_unknown(survey, head, services.is_empty()) {
                services.entry(kind).or_insert(sure);
            }
        }
        Self { services }
    }

    /// How sure it is that a service comes in here; `None` where it does not.
    pub fn brings(&self, kind: ServiceKind) -> Option<Sureness> {
        self.services.get(&kind).copied()
    }

    /// Whether a service is known to come in here.
    pub fn knows(&self, kind: ServiceKind) -> bool {
        self.brings(kind) == Some(Sureness::Known)
    }

    /// Whether a service comes in here, or may.
    pub fn may_bring(&self, kind: ServiceKind) -> bool {
        self.brings(kind).is_some()
    }

    /// Whether a cable company's signals come in here, or may.
    pub fn may_bring_cable(&self) -> bool {
        self.may_bring(ServiceKind::CableTv) || self.may_bring(ServiceKind::CableInternet)
    }

    /// Whether nothing is known to come in but what an antenna gives.
    pub fn is_antenna_only(&self) -> bool {
        self.knows(ServiceKind::AntennaTv) && self.services.len() == 1
    }
}

/// Whether satellite signals are on the tree of `head`: they come in there, or a receiver that hangs on it gets them from
/// somewhere.
pub fn satellite_on(survey: &Survey, head: SubjectId) -> Option<Sureness> {
    let receives = |id: &SubjectId| {
        let plugged = survey.parts.get(id).and_then(|part| part.plugged.as_ref());
        plugged.is_some_and(|plugged| plugged.contains(&Plugged::SatelliteReceiver))
    };
    if survey.wiring.below(head).iter().any(receives) {
        return Some(Sureness::Known);
    }
    Incoming::at(survey, head).brings(ServiceKind::SatelliteTv)
}

/// Whether a service comes in at the head of this tree, or may.
pub fn may_come_in(survey: &Survey, service: &Service, head: SubjectId) -> bool {
    match service.entry {
        Some(entry) => {
            survey.wiring.head_of(entry) == head && survey.parts.get(&head).is_some_and(Part::is_joined_entry)
        }
        None => Incoming::at(survey, head).may_bring(service.kind),
    }
}

/// What an entry brings by its kind alone.
fn brings(entry: EntryKind, kind: ServiceKind) -> bool {
    match entry {
        EntryKind::Cable | EntryKind::FibreBox => {
            matches!(kind, ServiceKind::CableTv | ServiceKind::CableInternet)
        }
        EntryKind::Antenna => kind == ServiceKind::AntennaTv,
        EntryKind::Satellite => kind == ServiceKind::SatelliteTv,
        EntryKind::Unknown => false,
    }
}

fn is_said_of(survey: &Survey, head: SubjectId, kind: ServiceKind) -> bool {
    let said = survey.services_of(kind).filter_map(|service| service.entry);
    said.into_iter().any(|entry| survey.wiring.head_of(entry) == head)
}

/// What may come in at an entry of unknown kind: services of which nobody said where they come in and that no other entry is
/// made for. If one kind of source is left over and one entry of which nothing is said, they belong together. Where nobody
/// named a service, it may be the street's cable or an antenna's.
fn of_unknown(
    survey: &Survey,
    head: SubjectId,
    nothing_said: bool,
) -> impl Iterator<Item = (ServiceKind, Sureness)> {
    let left = left_over(survey);
    let silent: Vec<_> = survey
        .parts
        .values()
        .filter(|part| part.is_joined_entry() && part.entry_kind == EntryKind::Unknown)
        .filter(|part| !BY_ENTRY.iter().any(|kind| is_said_of(survey, part.id, *kind)))
        .map(|part| part.id)
        .collect();
    let named: Vec<_> =
        SOURCES.iter().filter(|source| source.iter().any(|kind| left.contains(kind))).collect();
    let (kinds, sure) = match named.as_slice() {
        [source] if silent == [head] => (source.to_vec(), Sureness::Known),
        _ if nothing_said => (left.into_iter().chain(UNSAID).collect(), Sureness::MayBe),
        // What is left over comes in by an entry of which nothing is said, if there is one.
        _ if silent.is_empty() => (left, Sureness::MayBe),
        _ => (Vec::new(), Sureness::MayBe),
    };
    kinds.into_iter().map(move |kind| (kind, sure))
}

/// Services named without an entry that no joined entry is made for.
fn left_over(survey: &Survey) -> Vec<ServiceKind> {
    let has_home = |kind| {
        survey.parts.values().any(|part| {
            part.is_joined_entry() && (brings(part.entry_kind, kind) || is_said_of(survey, part.id, kind))
        })
    };
    let unplaced =
        |kind| survey.services_of(kind).any(|service: &Service| service.entry.is_none()) && !has_home(kind);
    BY_ENTRY.into_iter().filter(|kind| unplaced(*kind)).collect()
}
