//! Legs that lead to another home. Nobody unscrews, caps or swaps what other people's signals come through.

use facts::fact::SubjectId;

use super::{Part, PortEnd, Sureness, Survey};

/// An output whose cable is another home's, or may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OtherHomesLeg {
    /// The part.
    pub part: SubjectId,
    /// Its output.
    pub port: u8,
    /// Whether somebody said so, or it may be so: a cable that leads nobody knows where, in a building that shares its
    /// coax, with no entry filter above it.
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
    let parts: Vec<&Part> = below.iter().filter_map(|id| survey.parts.get(id)).collect();
    let leg = |part: &Part, wanted: PortEnd, sureness| {
        let is_free = |port: &u8| survey.wiring.on_port(part.id, *port).next().is_none();
        let mut ports = part.ends.iter().filter(|(_, end)| **end == wanted).map(|(port, _)| *port);
        ports.find(is_free).map(|port| OtherHomesLeg { part: part.id, port, sureness })
    };
    let known = || parts.iter().find_map(|part| leg(part, PortEnd::AnotherHome, Sureness::Known));
    let may_be = || {
        let open = parts.iter().filter(|part| !is_behind_filter(survey, part.id));
        open.into_iter().find_map(|part| leg(part, PortEnd::LooseEnd, Sureness::MayBe))
    };
    known().or_else(|| may_be().filter(|_| is_shared(survey)))
}

fn is_behind_filter(survey: &Survey, part: SubjectId) -> bool {
    let above = survey.wiring.way_up(part);
    above.iter().any(|id| survey.parts.get(id).is_some_and(Part::is_entry_filter))
}
