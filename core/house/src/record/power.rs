//! DC on the coax: who powers whom, and over which parts. A service like any other: no change may cut it.

use facts::fact::SubjectId;

use super::{ChangeKind, Incoming, Part, PartKind, Plugged, PowerFeed, ServiceKind, Survey, satellite_on};

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

    /// Whether it goes over the cable between two parts.
    pub fn goes_between(&self, one: SubjectId, other: SubjectId) -> bool {
        let pairs = self.way.iter().zip(self.way.iter().skip(1));
        pairs.into_iter().any(|(from, to)| (*from, *to) == (one, other) || (*from, *to) == (other, one))
    }

    /// The parts between the supply and what it powers, without these two.
    pub fn between(&self) -> impl Iterator<Item = SubjectId> + '_ {
        let (from, to) = (self.feed.from, self.feed.to);
        self.way.iter().copied().filter(move |id| *id != from && *id != to)
    }

    /// The first part on the way that is stated to hold DC back.
    pub fn broken_at(&self, survey: &Survey) -> Option<SubjectId> {
        self.between().find(|id| survey.parts.get(id).is_some_and(holds_back))
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
        let to =
            nearest_amplifier(survey, from).or_else(|| entry_of(survey, from, ServiceKind::AntennaTv))?;
        return Some(PowerFeed { from, to });
    }
    if plugged(Plugged::SatelliteReceiver) && !stated() {
        return Some(PowerFeed { from, to: entry_of(survey, from, ServiceKind::SatelliteTv)? });
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

fn entry_of(survey: &Survey, from: SubjectId, kind: ServiceKind) -> Option<SubjectId> {
    let head = survey.wiring.head_of(from);
    Incoming::at(survey, head).knows(kind).then_some(head)
}

fn holds_back(part: &Part) -> bool {
    part.rating.power_pass == Some(false)
}

/// Whether a part is stated to hold DC back on a way that DC takes, and is the first to do so.
pub fn breaks_power(survey: &Survey, part: SubjectId) -> bool {
    power_paths(survey).iter().any(|path| path.broken_at(survey) == Some(part))
}

/// Whether DC may stand on the free ports of a part: it lies on a way that DC takes, or hangs below one that does with
/// nothing between that holds DC back. An amplifier and an inserter send it one way only. On a tree with satellite signals
/// any receiver sends it (common practice, no source).
pub fn may_carry_power(survey: &Survey, part: SubjectId) -> bool {
    if satellite_on(survey, survey.wiring.head_of(part)).is_some() {
        return true;
    }
    let paths = power_paths(survey);
    for id in survey.wiring.way_up(part) {
        if paths.iter().any(|path| path.between().any(|between| between == id)) {
            return true;
        }
        let ends = survey.parts.get(&id).is_none_or(|part| {
            holds_back(part) || matches!(part.kind, PartKind::Amplifier | PartKind::PowerInserter)
        });
        if ends {
            return false;
        }
    }
    false
}

impl ChangeKind {
    /// Whether what is put in stands where DC goes or may stand: a filter or a splitter must then pass it, a cap hold it
    /// back.
    pub fn meets_power(self, survey: &Survey) -> bool {
        let passes = |part| power_paths(survey).iter().any(|path| path.passes(part));
        match self {
            Self::AddEntryFilter { behind } | Self::MoveEntryFilter { behind, .. } => {
                let port = survey.port_in_use(behind);
                let fed: Vec<_> = survey.wiring.on_port(behind, port).collect();
                let paths = power_paths(survey);
                paths.iter().any(|path| fed.iter().any(|child| path.goes_between(behind, *child)))
            }
            Self::SwapEntryFilter { filter } => passes(filter),
            Self::SwapSplitter { splitter, .. } => may_carry_power(survey, splitter),
            Self::MergeSplitters { upper, lower, .. } => {
                may_carry_power(survey, upper) || may_carry_power(survey, lower)
            }
            Self::Cap { part, .. } => may_carry_power(survey, part),
            Self::ShareOutlet { outlet } => passes(outlet),
            _ => false,
        }
    }
}
