//! How often the signal is split: more legs than used, two splitters where one would do, many splits in a row.

use std::collections::BTreeSet;

use coax::trade::smallest_splitter;
use facts::fact::SubjectId;
use house::record::{Part, PartKind, PortEnd};
use indexmap::IndexMap;
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::verdict::answers;

/// A saving below this is not worth a finding.
const LEAST_SAVING_DB: f64 = 1.5;

/// So many splits in a row make a room doubtful (common practice, no source).
const MANY_SPLITS: usize = 3;

/// The smallest splitter on sale with so many legs, and its loss, dB.
fn smallest(legs: usize) -> Option<(u8, f64)> {
    smallest_splitter(legs).map(|(legs, loss)| (legs, loss.value()))
}

/// How many legs of a splitter are used; `None` while its legs were not counted or one was not looked at.
fn used_legs(inspection: &Inspection<'_>, splitter: &Part) -> Option<usize> {
    if splitter.rating.legs == 0 {
        return None;
    }
    let free = inspection.free_ports(splitter);
    let mut idle = 0;
    for port in &free {
        match splitter.end(*port)? {
            PortEnd::Open | PortEnd::Capped => idle += 1,
            PortEnd::LooseEnd | PortEnd::AnotherHome => {}
        }
    }
    Some(usize::from(splitter.outputs()).saturating_sub(idle))
}

/// Splitters of which one leg is used, or with more legs than used.
pub(super) fn sizes(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for splitter in inspection.parts(&[PartKind::Splitter]) {
        let (Some(used), Some((_, loss))) =
            (used_legs(inspection, splitter), smallest(usize::from(splitter.rating.legs)))
        else {
            continue;
        };
        if !inspection.standing(splitter.id).is_on_a_path() && used > 1 {
            continue;
        }
        let finding = |kind| {
            Finding::new(kind, vec![Place::Part(splitter.id)])
                .phrase("part", inspection.name(splitter.id))
                .with("used", Arg::Count(used as u64))
        };
        if used == 1 {
            found.push(finding(FindingKind::SplitterNeedless).with("saving", Arg::Loss(loss)));
        } else if let Some((legs, smaller)) = smallest(used)
            && used > 1
            && loss - smaller >= LEAST_SAVING_DB
        {
            found.push(
                finding(FindingKind::SplitterTooLarge)
                    .with("legs", Arg::Count(u64::from(legs)))
                    .with("saving", Arg::Loss(loss - smaller)),
            );
        }
    }
    found
}

/// Two splitters side by side, one feeding the other, where one splitter would lose less to the weakest leg.
pub(super) fn cascades(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for lower in inspection.parts(&[PartKind::Splitter]) {
        let Some(upper) = inspection
            .survey
            .wiring
            .feed(lower.id)
            .and_then(|feed| inspection.survey.parts.get(&feed.part))
            .filter(|upper| {
                upper.kind == PartKind::Splitter && inspection.survey.hang_side_by_side(upper, lower)
            })
        else {
            continue;
        };
        let (Some(of_upper), Some(of_lower)) = (used_legs(inspection, upper), used_legs(inspection, lower))
        else {
            continue;
        };
        if of_upper < 2 || of_lower < 2 || !inspection.standing(lower.id).is_on_a_path() {
            continue;
        }
        let needed = of_upper - 1 + of_lower;
        let loss = |splitter: &Part| smallest(usize::from(splitter.rating.legs)).map(|(_, loss)| loss);
        let (Some(upper_loss), Some(lower_loss), Some((legs, one))) =
            (loss(upper), loss(lower), smallest(needed))
        else {
            continue;
        };
        let saving = upper_loss + lower_loss - one;
        if saving >= LEAST_SAVING_DB {
            found.push(
                Finding::new(
                    FindingKind::SplittersInCascade,
                    vec![Place::Part(upper.id), Place::Part(lower.id)],
                )
                .phrase("upper", inspection.name(upper.id))
                .phrase("lower", inspection.name(lower.id))
                .with("legs", Arg::Count(u64::from(legs)))
                .with("saving", Arg::Loss(saving)),
            );
        }
    }
    found
}

/// Outlets with an adapter below many splits in a row, one finding a tree. Where all of these splits are made for the band
/// and the room gets what is wished, it is no more than good to know.
pub(super) fn many(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let met: BTreeSet<_> = inspection
        .forecast
        .map(|forecast| answers(survey, forecast))
        .unwrap_or_default()
        .into_iter()
        .filter(|answer| answer.wished.met.is_met())
        .filter_map(|answer| answer.outlet.map(|outlet| outlet.outlet))
        .collect();
    let mut by_head: IndexMap<(SubjectId, FindingKind), (usize, Vec<SubjectId>)> = IndexMap::new();
    for node in &inspection.nodes {
        let way = survey.wiring.way_up(node.outlet);
        let splits: Vec<_> = way
            .iter()
            .filter_map(|id| survey.parts.get(id))
            .filter(|part| matches!(part.kind, PartKind::Splitter | PartKind::Tap))
            .collect();
        let rated = splits.iter().all(|part| part.rating.made_for_moca() == Some(true));
        let kind = if rated && (node.bridge || met.contains(&node.outlet)) {
            FindingKind::SplitsManyMet
        } else {
            FindingKind::SplitsMany
        };
        if let Some(head) = way.last().filter(|_| splits.len() >= MANY_SPLITS) {
            let (most, outlets) = by_head.entry((*head, kind)).or_default();
            *most = splits.len().max(*most);
            outlets.push(node.outlet);
        }
    }
    by_head
        .into_iter()
        .map(|((_, kind), (most, outlets))| {
            Finding::new(kind, outlets.iter().copied().map(Place::Part).collect())
                .with("splits", Arg::Count(most as u64))
                .with("outlets", inspection.names(outlets))
        })
        .collect()
}
