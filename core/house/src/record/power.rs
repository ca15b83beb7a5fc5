//! DC on the coax: who powers whom, and over which parts. A service like any other: no change may cut it.

use facts::fact::SubjectId;

use super::{EntryKind, EntryState, Part, PartKind, Plugged, PowerFeed, Survey};

/// One way that DC takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PowerPath {
    /// Who powers whom.
    pub feed: PowerFeed,
    /// The parts on the way, from the supply to what it powers, both included.
    pub way: Vec<SubjectId>,
}

impl PowerPath {
    /// Whether it passes a part, or begins or ends there.
    pub fn passes(&self, part: SubjectId) -> bool {
        self.way.contains(&part)
    }
}

/// Every way that DC takes in a house: those stated as a service, and those that follow from what stands where. A
/// supply or inserter powers the nearest amplifier, or where there is none the mast preamplifier behind an antenna's
/// entry; a satellite receiver powers what stands behind the dish's entry (common practice, no source).
pub fn power_paths(survey: &Survey) -> Vec<PowerPath> {
    let stated = survey.services.values().filter_map(|service| service.power);
    let mut feeds: Vec<_> =
        stated.chain(survey.parts.values().filter_map(|part| inferred(survey, part))).collect();
    feeds.sort_unstable();
    feeds.dedup();
    let path =
        |feed: PowerFeed| survey.wiring.way_between(feed.from, feed.to).map(|way| PowerPath { feed, way });
    feeds.into_iter().filter_map(path).collect()
}

fn inferred(survey: &Survey, part: &Part) -> Option<PowerFeed> {
    let plugged = |device| part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&device));
    let from = part.id;
    let stated =
        || survey.services.values().any(|service| service.power.is_some_and(|power| power.from == from));
    if part.kind == PartKind::PowerInserter || plugged(Plugged::PowerSupply) {
        if stated() {
            return None;
        }
        let to = nearest_amplifier(survey, from).or_else(|| entry_of(survey, from, EntryKind::Antenna))?;
        return Some(PowerFeed { from, to });
    }
    if plugged(Plugged::SatelliteReceiver) && !stated() {
        return Some(PowerFeed { from, to: entry_of(survey, from, EntryKind::Satellite)? });
    }
    None
}

fn nearest_amplifier(survey: &Survey, from: SubjectId) -> Option<SubjectId> {
    let head = survey.wiring.head_of(from);
    let amplifiers = survey
        .wiring
        .below(head)
        .into_iter()
        .filter(|id| survey.parts.get(id).is_some_and(|part| part.kind == PartKind::Amplifier));
    amplifiers.min_by_key(|id| survey.wiring.way_between(from, *id).map_or(usize::MAX, |way| way.len()))
}

fn entry_of(survey: &Survey, from: SubjectId, kind: EntryKind) -> Option<SubjectId> {
    let head = survey.parts.get(&survey.wiring.head_of(from))?;
    let joined =
        head.kind == PartKind::Entry && head.entry_kind == kind && head.entry_state != EntryState::CutOff;
    joined.then_some(head.id)
}
