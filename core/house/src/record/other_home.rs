//! Legs that lead to another home. Nobody unscrews, caps or swaps what other people's signals come through.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use super::{Part, PartKind, PortEnd, Sureness, Survey};

/// An output whose cable is another home's, or may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct OtherHomesLeg {
    /// The part.
    pub part: SubjectId,
    /// Its output.
    pub port: u8,
    /// Whether somebody said so, or it may be so: an output that nobody looked at or whose cable leads nobody knows where,
    /// in a building that shares its coax, with neither an entry filter nor another home's leg above it.
    pub sureness: Sureness,
}

/// Whether other homes share the coax: it was said of the building, or a leg leads to one.
pub fn is_shared(survey: &Survey) -> bool {
    survey.building.is_some_and(|building| building.shared)
        || survey.parts.values().any(|part| part.ends.values().any(|end| *end == PortEnd::AnotherHome))
}

/// A leg at or below a part that is another home's; else one that may be.
pub fn other_homes_leg(survey: &Survey, from: SubjectId) -> Option<OtherHomesLeg> {
    let below = survey.wiring.below(from);
    let legs: Vec<_> = below.iter().filter_map(|id| leg_of(survey, survey.parts.get(id)?)).collect();
    let known = legs.iter().find(|leg| leg.sureness == Sureness::Known);
    known.or(legs.first()).copied()
}

/// The same of one part alone.
pub fn leg_of(survey: &Survey, part: &Part) -> Option<OtherHomesLeg> {
    let free = |port: &u8| survey.wiring.on_port(part.id, *port).next().is_none();
    let leg = |port, sureness| OtherHomesLeg { part: part.id, port, sureness };
    let known = (1..=part.outputs()).find(|port| free(port) && part.end(*port) == Some(PortEnd::AnotherHome));
    if let Some(port) = known {
        return Some(leg(port, Sureness::Known));
    }
    // Behind a filter, or the split that was said to part the homes, all is one's own.
    let parts_homes =
        |part: &Part| part.is_entry_filter() || part.ends.values().any(|end| *end == PortEnd::AnotherHome);
    let way = survey.wiring.way_up(part.id);
    let mut above = way.iter().skip(1).filter_map(|id| survey.parts.get(id));
    if !is_shared(survey) || above.any(parts_homes) {
        return None;
    }
    let splits = matches!(part.kind, PartKind::Splitter | PartKind::Tap | PartKind::Amplifier);
    let may_be = |port: &u8| match part.end(*port) {
        Some(PortEnd::LooseEnd) => true,
        None => splits && part.rating.legs > 0,
        _ => false,
    };
    (1..=part.outputs()).find(|port| free(port) && may_be(port)).map(|port| leg(port, Sureness::MayBe))
}
