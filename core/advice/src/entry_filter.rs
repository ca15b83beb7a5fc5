//! Whether an entry filter belongs at an entry, and where: one decision, which the work list's proposal, refusal and step,
//! the finding, the map and the page of privacy all tell.
//!
//! A filter belongs in the line of one's own home, before its first split. Not in a satellite line, not where an amplifier
//! already lets nothing of the band through, and not in front of what other homes get their signal by.

use coax::trade::FILTERS_PASS;
use facts::fact::SubjectId;
use house::naming;
use house::record::{
    ChangeKind, EntryKind, EntryState, Incoming, OtherHomesLeg, Part, PartKind, Plugged, ServiceKind,
    Sureness, Survey, breaks_power, is_shared, leg_of, may_come_in, other_homes_leg, power_paths,
    satellite_on,
};
use phrase::{Arg, Phrase};
use serde::{Deserialize, Serialize};

use crate::forecast::nodes_of;

/// What is decided of an entry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum EntryFilter {
    /// None belongs there.
    NotWanted(NotWanted),
    /// One is there, in its place.
    InPlace {
        /// The filter.
        filter: SubjectId,
    },
    /// One is in its place, and nobody knows yet what it stops.
    Unread {
        /// The filter.
        filter: SubjectId,
    },
    /// Several stand behind splits, none in its place.
    Elsewhere,
    /// One is missing, in the wrong place, or not up to its work.
    Wanted {
        /// What would put it right.
        change: ChangeKind,
        /// What speaks against doing it now.
        against: Option<Against>,
    },
}

/// Why no filter belongs at an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotWanted {
    /// It is no entry, or one that is cut off.
    CutOff,
    /// A fibre box ends the coax.
    FibreBox,
    /// Satellite signals use the band that the filter stops.
    Satellite,
    /// This amplifier, before the first split, has no by-pass: it lets next to nothing of the band through.
    AmplifierIsolates {
        /// The amplifier.
        amplifier: SubjectId,
    },
    /// An antenna's preamplifier stands outside and gets its power over the coax; such have no by-pass (common practice,
    /// no source).
    PreamplifierOutside,
}

/// What speaks against a filter, or against work on a part, as long as it stands.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Against {
    /// Satellite signals may come in there.
    SatelliteMayBe {
        /// The entry.
        entry: SubjectId,
    },
    /// The filter passes less than a service uses.
    CutsService {
        /// What it is.
        service: ServiceKind,
        /// How far it reaches, MHz.
        top_mhz: f64,
        /// How far the filter passes, MHz.
        passes_mhz: f64,
    },
    /// Another home gets its signal through it, or may.
    OtherHome(OtherHomesLeg),
}

impl Against {
    /// The reason in words.
    pub fn why(self, survey: &Survey) -> Phrase {
        match self {
            Self::SatelliteMayBe { entry } => {
                Phrase::new("refusal-filter-satellite-may-be").phrase("entry", naming::part(survey, entry))
            }
            Self::CutsService { service, top_mhz, passes_mhz } => Phrase::new("refusal-filter-cuts-service")
                .phrase("service", naming::service(service))
                .with("top", Arg::Frequency(top_mhz))
                .with("passes", Arg::Frequency(passes_mhz)),
            Self::OtherHome(leg) => {
                let id = match leg.sureness {
                    Sureness::Known => "refusal-another-home",
                    Sureness::MayBe => "refusal-another-home-may-be",
                };
                Phrase::new(id).phrase("port", naming::port(survey, leg.part, leg.port))
            }
        }
    }
}

/// What is decided of the entry filter at the head of a tree.
pub fn entry_filter(survey: &Survey, head: SubjectId) -> EntryFilter {
    let Some(entry) = survey.parts.get(&head).filter(|part| part.is_entry()) else {
        return EntryFilter::NotWanted(NotWanted::CutOff);
    };
    let line = OwnLine::behind(survey, head);
    if let Some(reason) = not_wanted(survey, entry, &line) {
        return EntryFilter::NotWanted(reason);
    }
    let behind = line.place(survey);
    let filters = filters_of(survey, head, &line);
    let wanted = |change| EntryFilter::Wanted { change, against: against(survey, head, change) };
    match filters.as_slice() {
        [] => wanted(ChangeKind::AddEntryFilter { behind }),
        [filter] if is_at_fault(survey, filter) => wanted(ChangeKind::SwapEntryFilter { filter: filter.id }),
        several => {
            let stands = |filter: &&&Part| line.holds(filter.id) || guards_own_branch(survey, head, filter);
            let sound = |filter: &&&Part| stands(filter) && !is_at_fault(survey, filter);
            let in_place = several.iter().find(sound).or_else(|| several.iter().find(stands));
            match (in_place, several) {
                (Some(filter), _) if is_at_fault(survey, filter) => {
                    wanted(ChangeKind::SwapEntryFilter { filter: filter.id })
                }
                (Some(filter), _) if filter.rating.stops_moca().is_none() => {
                    EntryFilter::Unread { filter: filter.id }
                }
                (Some(filter), _) => EntryFilter::InPlace { filter: filter.id },
                (None, [filter]) => wanted(ChangeKind::MoveEntryFilter { filter: filter.id, behind }),
                _ => EntryFilter::Elsewhere,
            }
        }
    }
}

/// What speaks against a filter at or behind a part, whatever is decided of the entry.
pub(crate) fn against(survey: &Survey, head: SubjectId, change: ChangeKind) -> Option<Against> {
    if satellite_on(survey, head) == Some(Sureness::MayBe) {
        return Some(Against::SatelliteMayBe { entry: head });
    }
    let cuts = || {
        let passes_mhz = FILTERS_PASS.value();
        let above = survey.services.values().filter(|service| may_come_in(survey, service, head));
        let (service, top_mhz) = above
            .filter_map(|service| Some((service.kind, service.top_mhz?)))
            .find(|(_, top)| *top > passes_mhz)?;
        Some(Against::CutsService { service, top_mhz, passes_mhz })
    };
    let stays = matches!(change, ChangeKind::FilterAtDevice { .. });
    let others = || other_home_at(survey, change).filter(|_| !stays).map(Against::OtherHome);
    others().or_else(cuts)
}

/// The leg of another home that a change would work on: one of a part that is unscrewed, or of what hangs on it.
pub(crate) fn other_home_at(survey: &Survey, change: ChangeKind) -> Option<OtherHomesLeg> {
    let on_port = |part, port| survey.wiring.on_port(part, port).collect::<Vec<_>>();
    let unscrewed = match change {
        ChangeKind::AddEntryFilter { behind } => on_port(behind, survey.port_in_use(behind)),
        ChangeKind::MoveEntryFilter { filter, behind } => {
            let mut both = on_port(behind, survey.port_in_use(behind));
            both.push(filter);
            both
        }
        // What is cut off from the street is the whole split.
        ChangeKind::ModemOwnLine { outlet } => {
            survey.wiring.feed(outlet).map(|feed| feed.part).into_iter().collect()
        }
        // A cap is screwed to an output that is free.
        ChangeKind::Cap { .. } => Vec::new(),
        ChangeKind::JoinLoose { to, .. } => vec![to],
        change => vec![change.at()],
    };
    unscrewed.into_iter().find_map(|part| other_homes_leg(survey, part))
}

fn not_wanted(survey: &Survey, entry: &Part, line: &OwnLine) -> Option<NotWanted> {
    let incoming = Incoming::at(survey, entry.id);
    if entry.entry_state == EntryState::CutOff {
        return Some(NotWanted::CutOff);
    }
    if satellite_on(survey, entry.id) == Some(Sureness::Known) {
        return Some(NotWanted::Satellite);
    }
    if entry.entry_kind == EntryKind::FibreBox {
        return Some(NotWanted::FibreBox);
    }
    // A mast preamplifier has no by-pass (common practice, no source); any other amplifier must be known to have none. Its
    // unamplified port, if it has one, is a way out.
    let antenna = incoming.is_antenna_only();
    let isolates = |part: &&Part| {
        let no_by_pass = part.rating.by_pass() == Some(false);
        let mast = antenna && part.rating.by_pass().is_none();
        part.kind == PartKind::Amplifier && (no_by_pass || mast) && !part.rating.modem_port
    };
    if let Some(amplifier) = line.parts(survey).find(isolates) {
        return Some(NotWanted::AmplifierIsolates { amplifier: amplifier.id });
    }
    let fed_outside = || power_paths(survey).iter().any(|path| path.feed.to == entry.id);
    (antenna && fed_outside()).then_some(NotWanted::PreamplifierOutside)
}

/// The parts in a row from an entry to the first split of one's own home, that split last. Where the entry feeds several
/// homes, one's own begins behind the split that has a leg of another, or may have one.
struct OwnLine {
    entry: SubjectId,
    row: Vec<SubjectId>,
    own: usize,
    /// Several of one's own legs leave the very split that feeds another home: no one place is before all of them.
    mixed: bool,
}

impl OwnLine {
    fn behind(survey: &Survey, entry: SubjectId) -> Self {
        let (mut row, mut own, mut at) = (vec![entry], 0, entry);
        for next in survey.wiring.in_row(entry) {
            let Some(part) = survey.parts.get(&at) else { break };
            let common = is_common(survey, part);
            if part.kind == PartKind::Outlet || (part.outputs() > 1 && !common) {
                break;
            }
            if common {
                own = row.len() - 1;
            }
            row.push(next);
            at = next;
        }
        let last = survey.parts.get(&at).filter(|part| is_common(survey, part));
        let mixed = last.is_some_and(|part| survey.wiring.fed_from(part.id).len() > 1);
        Self { entry, row, own, mixed }
    }

    fn parts<'a>(&'a self, survey: &'a Survey) -> impl Iterator<Item = &'a Part> {
        self.row.iter().filter_map(|id| survey.parts.get(id))
    }

    /// The part that a filter is screwed to: the ground block, else where one's own line begins; behind an antenna's
    /// amplifier.
    fn place(&self, survey: &Survey) -> SubjectId {
        let own = || self.row.iter().copied().skip(self.own);
        let of_kind = |kind| {
            own().find(|id| survey.parts.get(id).is_some_and(|part| part.kind == kind && part.outputs() == 1))
        };
        let first = own().next().unwrap_or(self.entry);
        let antenna = Incoming::at(survey, self.entry).is_antenna_only();
        let amplifier = of_kind(PartKind::Amplifier).filter(|_| antenna);
        amplifier.or_else(|| of_kind(PartKind::GroundBlock)).unwrap_or(first)
    }

    /// Whether a part stands in one's own line.
    fn holds(&self, part: SubjectId) -> bool {
        !self.mixed && self.row.iter().skip(self.own).any(|id| *id == part)
    }

    /// Whether a part stands in front of where one's own line begins.
    fn is_shared_feed(&self, part: SubjectId) -> bool {
        let shared = if self.mixed { self.row.len() } else { self.own };
        self.row.iter().take(shared).any(|id| *id == part)
    }
}

/// Whether a part also feeds another home, as was said; or may, and one leg alone is known to lead to one's own.
fn is_common(survey: &Survey, part: &Part) -> bool {
    let one_own = survey.wiring.fed_from(part.id).len() == 1;
    leg_of(survey, part).is_some_and(|leg| leg.sureness == Sureness::Known || one_own)
}

/// Whether a part stands in the line of one's own home, before its first split.
pub(crate) fn stands_in_line(survey: &Survey, head: SubjectId, part: SubjectId) -> bool {
    OwnLine::behind(survey, head).holds(part)
}

/// The entry filters that count for a home: not one that keeps the network from a single device, and not one on a feed
/// that several homes share, which parts none of them.
fn filters_of<'a>(survey: &'a Survey, head: SubjectId, line: &OwnLine) -> Vec<&'a Part> {
    let nodes = nodes_of(survey);
    let of_device = |id: SubjectId| {
        let below = survey.wiring.below(id);
        let has_node = below.iter().any(|id| nodes.iter().any(|node| node.outlet == *id));
        let plugged = || below.iter().filter_map(|id| survey.parts.get(id)?.plugged.as_ref()).flatten();
        // No TV box needs a filter of its own more than the entry needs it.
        let boxed = plugged().any(|device| *device == Plugged::TvBox);
        !has_node && !line.holds(id) && !boxed && plugged().next().is_some()
    };
    let below = survey.wiring.below(head).into_iter();
    below
        .filter(|id| !line.is_shared_feed(*id) && !of_device(*id))
        .filter_map(|id| survey.parts.get(&id))
        .filter(|part| part.is_entry_filter())
        .collect()
}

/// A label that does not say is given the benefit of the doubt.
fn is_at_fault(survey: &Survey, filter: &Part) -> bool {
    filter.rating.stops_moca() == Some(false) || breaks_power(survey, filter.id)
}

/// Whether a filter behind a common split stands before all that is one's own: it parts no adapter from another.
pub(crate) fn guards_own_branch(survey: &Survey, head: SubjectId, filter: &Part) -> bool {
    let nodes = nodes_of(survey);
    let mut here = nodes.iter().filter(|node| survey.wiring.head_of(node.outlet) == head).peekable();
    let any = here.peek().is_some();
    is_shared(survey) && any && here.all(|node| survey.wiring.way_up(node.outlet).contains(&filter.id))
}
