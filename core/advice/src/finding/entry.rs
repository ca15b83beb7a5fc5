//! At the entry: is the filter there and in its place, is there a ground block, who shares the coax.

use facts::fact::SubjectId;
use house::record::{
    Asked, ChangeKind, EntryKind, EntryState, Incoming, Part, PartKind, Plugged, Reply, ServiceKind,
    is_shared,
};
use indexmap::IndexSet;

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::entry_filter::{EntryFilter, NotWanted, entry_filter, guards_own_branch, stands_in_line};

/// Entry filters behind a split. One that keeps the network away from a single device (no adapter below it, something
/// plugged in there) is in its place, and so is one before all that is one's own where other homes share the coax; one in a
/// dish's line has a finding of its own; one that parts no adapters matters only where an entry waits for it.
fn misplaced<'a>(inspection: &Inspection<'a>, head: SubjectId) -> Vec<&'a Part> {
    let decided = entry_filter(inspection.survey, head);
    if decided == EntryFilter::NotWanted(NotWanted::Satellite) {
        return Vec::new();
    }
    let line = inspection.entry_line(head);
    let waited_for = matches!(decided, EntryFilter::Wanted { .. } | EntryFilter::Elsewhere);
    let in_line = |part: &Part| {
        line.iter().any(|in_line| in_line.id == part.id) || stands_in_line(inspection.survey, head, part.id)
    };
    inspection
        .tree(head)
        // A filter that heads a tree parts nothing: it ends a line that was cut off from the street.
        .filter(|part| part.id != head)
        .filter(|part| part.is_entry_filter() && !in_line(part))
        .filter(|part| !guards_own_branch(inspection.survey, head, part))
        .filter(|part| {
            let adapters = inspection
                .tree(part.id)
                .any(|below| inspection.nodes.iter().any(|node| node.outlet == below.id));
            let devices =
                inspection.tree(part.id).any(|below| below.plugged.as_ref().is_some_and(|p| !p.is_empty()));
            // The provider's TV boxes speak to each other over the coax, and a filter parts them as it parts adapters. No
            // box needs a filter of its own more than the entry needs it.
            let boxes = inspection.tree(part.id).any(|below| has_plugged(below, Plugged::TvBox));
            let parts_boxes = boxes && inspection.survey.has_service(ServiceKind::ProviderNetwork);
            adapters || parts_boxes || (waited_for && (boxes || !devices))
        })
        .collect()
}

/// What is to be done about an entry filter, as it was decided: what speaks against it, whether DC goes where it stands,
/// and where it goes.
pub(super) fn as_decided(inspection: &Inspection<'_>, finding: Finding, decided: EntryFilter) -> Finding {
    let EntryFilter::Wanted { change, against } = decided else {
        let call = if decided == EntryFilter::Elsewhere { "several" } else { "none" };
        return finding.text("call", call);
    };
    let power = if change.meets_power(inspection.survey) { "yes" } else { "no" };
    let finding = finding.text("power", power);
    let finding = match change {
        ChangeKind::AddEntryFilter { behind } | ChangeKind::MoveEntryFilter { behind, .. } => {
            let (place, name) = house::naming::filter_place(inspection.survey, behind);
            finding.text("place", place).phrase("behind", name)
        }
        _ => finding,
    };
    match against {
        Some(against) => finding.text("call", "leave").phrase("reason", against.why(inspection.survey)),
        None => finding.text("call", "do"),
    }
}

/// The entry filter: missing, behind a split, or on the street side of the ground block.
pub(super) fn filters(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let boxes = inspection.parts(&[PartKind::Outlet]).filter(|outlet| has_plugged(outlet, Plugged::TvBox));
    let with_boxes = boxes.map(|outlet| inspection.survey.wiring.head_of(outlet.id));
    for head in inspection.heads_with_nodes().into_iter().chain(with_boxes).collect::<IndexSet<_>>() {
        let decided = entry_filter(inspection.survey, head);
        for filter in misplaced(inspection, head) {
            let finding =
                Finding::new(FindingKind::FilterAfterSplit, vec![Place::Part(filter.id), Place::Part(head)])
                    .phrase("filter", inspection.name(filter.id));
            found.push(as_decided(inspection, finding, decided));
        }
    }
    for entry in inspection.entries_with_nodes() {
        found.extend(missing(inspection, entry));
        found.extend(street_side(inspection, entry));
    }
    found
}

/// An entry that wants a filter and has none. One on a feed that several homes share is there, and parts none of them:
/// that is told of the building.
fn missing(inspection: &Inspection<'_>, entry: &Part) -> Option<Finding> {
    let decided = entry_filter(inspection.survey, entry.id);
    let wanted = matches!(decided, EntryFilter::Wanted { change: ChangeKind::AddEntryFilter { .. }, .. });
    let on_shared_feed = || inspection.entry_line(entry.id).into_iter().any(Part::is_entry_filter);
    if !wanted || on_shared_feed() {
        return None;
    }
    let incoming = Incoming::at(inspection.survey, entry.id);
    let said = [ServiceKind::CableTv, ServiceKind::CableInternet, ServiceKind::AntennaTv];
    let known =
        entry.entry_state == EntryState::Connected && said.into_iter().any(|kind| incoming.knows(kind));
    let looked = inspection.survey.reply(entry.id, Asked::EntryFilter);
    let kind = match (looked, known) {
        (Some(Reply::Unsure), _) => FindingKind::EntryFilterNotSeen,
        (_, true) => FindingKind::EntryFilterMissing,
        (_, false) => FindingKind::EntryFilterIfConnected,
    };
    let finding = Finding::new(kind, vec![Place::Part(entry.id)]).phrase("entry", inspection.name(entry.id));
    Some(as_decided(inspection, finding, decided))
}

fn street_side(inspection: &Inspection<'_>, entry: &Part) -> Option<Finding> {
    let line = inspection.entry_line(entry.id);
    let block = line.iter().position(|part| part.kind == PartKind::GroundBlock)?;
    let filter = line.iter().take(block).find(|part| part.is_entry_filter())?;
    Some(
        Finding::new(FindingKind::FilterStreetSide, vec![Place::Part(filter.id), Place::Part(entry.id)])
            .phrase("filter", inspection.name(filter.id)),
    )
}

/// Entries that feed something and have no ground block noted. A fibre box needs none.
pub(super) fn ground_block(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Entry])
        .filter(|entry| entry.is_joined_entry() && entry.entry_kind != EntryKind::FibreBox)
        .filter(|entry| !inspection.survey.wiring.fed_from(entry.id).is_empty())
        .filter(|entry| !inspection.tree(entry.id).any(|part| part.kind == PartKind::GroundBlock))
        .map(|entry| {
            Finding::new(FindingKind::GroundBlockNotSeen, vec![Place::Part(entry.id)])
                .phrase("entry", inspection.name(entry.id))
        })
        .collect()
}

/// A building whose coax other homes share: open to them, or with a filter that must sit in the right place.
pub(super) fn shared_building(inspection: &Inspection<'_>) -> Vec<Finding> {
    if !is_shared(inspection.survey) {
        return Vec::new();
    }
    let told = |entry: &Part| {
        let decided = entry_filter(inspection.survey, entry.id);
        // A filter that does not stop the band has a finding of its own.
        let kind = match decided {
            EntryFilter::NotWanted(_) => return None,
            EntryFilter::InPlace { .. }
            | EntryFilter::Unread { .. }
            | EntryFilter::Wanted { change: ChangeKind::SwapEntryFilter { .. }, .. } => {
                FindingKind::SharedBuilding
            }
            EntryFilter::Wanted { .. } | EntryFilter::Elsewhere => FindingKind::SharedBuildingOpen,
        };
        let finding =
            Finding::new(kind, vec![Place::Part(entry.id)]).phrase("entry", inspection.name(entry.id));
        Some(as_decided(inspection, finding, decided))
    };
    inspection.entries_with_nodes().filter_map(told).collect()
}
