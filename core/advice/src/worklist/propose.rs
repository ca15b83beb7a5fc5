//! Which changes are worth a look in a house.

use std::collections::BTreeSet;

use coax::trade::smallest_splitter;
use facts::fact::SubjectId;
use house::record::{CableKind, ChangeKind, Part, PartKind, PortEnd, Survey, breaks_power};

use super::effort::is_known_throughout;
use super::propose_more;
use crate::entry_filter::{EntryFilter, entry_filter};
use crate::forecast::nodes_of;

/// From here on a cable of an old or unknown series is worth replacing, metres: ten of 59 series lose 0.6 dB more than of 6 at the
/// top of the band (common practice, no source).
const WORTH_REPLACING_METRES: f64 = 10.0;

/// Every change worth working out for this house, by the part it is done at, refused ones included.
pub(crate) fn proposals(survey: &Survey) -> Vec<ChangeKind> {
    let mut found = Vec::new();
    let nodes = nodes_of(survey);
    let concerned: Vec<SubjectId> = nodes.iter().map(|node| survey.wiring.head_of(node.outlet)).collect();
    for part in survey.parts.values() {
        if !concerned.contains(&survey.wiring.head_of(part.id)) {
            continue;
        }
        match part.kind {
            PartKind::Entry => found.extend(entry_filter_change(survey, part)),
            PartKind::Splitter => found.extend(splitter(survey, part)),
            PartKind::Amplifier if part.rating.by_pass() != Some(true) => {
                found.push(ChangeKind::SwapAmplifier { amplifier: part.id });
                if is_known_throughout(survey, part) {
                    found.push(ChangeKind::RemoveAmplifier { amplifier: part.id });
                }
            }
            _ => {}
        }
        let has_node = nodes.iter().any(|node| node.outlet == part.id);
        found.extend(caps(survey, part, has_node));
        found.extend(run_to(survey, part));
    }
    found.extend(propose_more::proposals(survey, &nodes));
    found.sort_by_cached_key(|change| change.in_order(survey));
    found.dedup();
    found
}

/// What may be done to a house next.
pub(super) fn candidates(house: &Survey, given_up: &BTreeSet<ChangeKind>) -> Vec<ChangeKind> {
    let mut candidates: Vec<_> =
        proposals(house).into_iter().filter(|change| !given_up.contains(change)).collect();
    // What a by-pass gives is known before the amplifier's absence is weighed.
    candidates.sort_by_key(|change| matches!(change, ChangeKind::RemoveAmplifier { .. }));
    candidates
}

fn entry_filter_change(survey: &Survey, entry: &Part) -> Option<ChangeKind> {
    match entry_filter(survey, entry.id) {
        EntryFilter::Wanted { change, .. } => Some(change),
        EntryFilter::NotWanted(_)
        | EntryFilter::InPlace { .. }
        | EntryFilter::Unread { .. }
        | EntryFilter::Elsewhere => None,
    }
}

fn splitter(survey: &Survey, part: &Part) -> Vec<ChangeKind> {
    let used = survey.wiring.fed_from(part.id).len();
    let mut found = Vec::new();
    let known = is_known_throughout(survey, part);
    if breaks_power(survey, part.id) && used >= 2 {
        let legs = if known { smallest(used) } else { None };
        found.push(ChangeKind::SwapSplitter { splitter: part.id, legs: legs.unwrap_or(part.outputs()) });
    }
    if !known {
        // Nobody knows what hangs there: a smaller splitter might leave it without signal. While the outputs were never
        // counted nobody can say which one to buy.
        if part.rating.made_for_moca() != Some(true) && part.rating.legs > 0 {
            found.push(ChangeKind::SwapSplitter { splitter: part.id, legs: part.outputs() });
        }
        return found;
    }
    if used == 1 {
        found.push(ChangeKind::RemoveSplitter { splitter: part.id });
    }
    if let Some(legs) = smallest(used).filter(|_| used >= 2)
        && (legs < part.outputs() || part.rating.made_for_moca() != Some(true))
    {
        found.push(ChangeKind::SwapSplitter { splitter: part.id, legs });
    }
    if let Some(feed) = survey.wiring.feed(part.id)
        && let Some(upper) = survey.parts.get(&feed.part).filter(|upper| upper.kind == PartKind::Splitter)
        && survey.hang_side_by_side(upper, part)
        && is_known_throughout(survey, upper)
    {
        let together = survey.wiring.fed_from(upper.id).len() - 1 + used;
        if let Some(legs) = smallest(together).filter(|_| together >= 2) {
            found.push(ChangeKind::MergeSplitters { upper: upper.id, lower: part.id, legs });
        }
    }
    found
}

fn smallest(used: usize) -> Option<u8> {
    smallest_splitter(used).map(|(legs, _)| legs)
}

fn caps(survey: &Survey, part: &Part, has_node: bool) -> Vec<ChangeKind> {
    match part.kind {
        PartKind::Outlet => {
            let empty = part.plugged.as_ref().is_some_and(Vec::is_empty) && !has_node;
            let onward = !survey.wiring.fed_from(part.id).is_empty();
            let capped = part.end(1) == Some(PortEnd::Capped);
            (empty && !onward && !capped)
                .then_some(ChangeKind::Cap { part: part.id, port: 1 })
                .into_iter()
                .collect()
        }
        PartKind::Splitter | PartKind::Tap | PartKind::Amplifier => (1..=part.outputs())
            .filter(|port| part.end(*port) == Some(PortEnd::Open))
            .filter(|port| survey.wiring.on_port(part.id, *port).next().is_none())
            .map(|port| ChangeKind::Cap { part: part.id, port })
            .collect(),
        _ => Vec::new(),
    }
}

fn run_to(survey: &Survey, part: &Part) -> Option<ChangeKind> {
    let run = survey.wiring.feed(part.id).and_then(|feed| survey.runs.get(&feed.run?))?;
    let old = matches!(run.cable, CableKind::FiftyNine | CableKind::Unknown);
    let long = run.length.is_some_and(|length| length.metres >= WORTH_REPLACING_METRES);
    if run.has_poor_connector() {
        Some(ChangeKind::RenewConnectors { to: part.id })
    } else if old && long {
        Some(ChangeKind::ReplaceRun { to: part.id })
    } else {
        None
    }
}
