//! At the entry: is the filter there and in its place, is there a ground block, who shares the coax.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::record::{Asked, EntryKind, EntryState, Part, PartKind, Plugged, Reply, ServiceKind};

use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};

/// Whether signals from inside could leave by this entry unless a filter stops them. A dish's line never gets a
/// filter; a fibre box ends the coax.
fn wants_filter(entry: &Part) -> bool {
    entry.entry_state != EntryState::CutOff
        && matches!(entry.entry_kind, EntryKind::Cable | EntryKind::Antenna | EntryKind::Unknown)
}

/// How an entry stands towards its filter.
enum FilterPlace {
    /// Before the first split.
    InPlace,
    /// Behind a split.
    Misplaced,
    /// Nowhere on the tree.
    Missing,
}

fn filter_place(inspection: &Inspection<'_>, entry: SubjectId) -> FilterPlace {
    if inspection.entry_line(entry).into_iter().any(Part::is_entry_filter) {
        FilterPlace::InPlace
    } else if misplaced(inspection, entry).is_empty() {
        FilterPlace::Missing
    } else {
        FilterPlace::Misplaced
    }
}

/// Entry filters behind a split. One that keeps the network away from a single device (no adapter below it, something
/// plugged in there) is in its place; one in a dish's line has a finding of its own; one that parts no adapters
/// matters only where an entry waits for it.
fn misplaced<'a>(inspection: &Inspection<'a>, head: SubjectId) -> Vec<&'a Part> {
    let line = inspection.entry_line(head);
    let Some(top) = inspection.survey.parts.get(&head) else { return Vec::new() };
    if top.kind == PartKind::Entry && top.entry_kind == EntryKind::Satellite {
        return Vec::new();
    }
    let waited_for =
        top.kind == PartKind::Entry && wants_filter(top) && !line.iter().any(|part| part.is_entry_filter());
    inspection
        .tree(head)
        // A filter that heads a tree parts nothing: it ends a line that was cut off from the street.
        .filter(|part| part.id != head)
        .filter(|part| part.is_entry_filter() && !line.iter().any(|in_line| in_line.id == part.id))
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

/// The entry filter: missing, behind a split, or on the street side of the ground block.
pub(super) fn filters(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let boxes = inspection.parts(&[PartKind::Outlet]).filter(|outlet| has_plugged(outlet, Plugged::TvBox));
    let with_boxes = boxes.map(|outlet| inspection.survey.wiring.head_of(outlet.id));
    for head in inspection.heads_with_nodes().into_iter().chain(with_boxes).collect::<BTreeSet<_>>() {
        for filter in misplaced(inspection, head) {
            found.push(
                Finding::new(FindingKind::FilterAfterSplit, vec![Place::Part(filter.id), Place::Part(head)])
                    .phrase("filter", inspection.name(filter.id)),
            );
        }
    }
    for entry in inspection.entries_with_nodes() {
        if wants_filter(entry) && matches!(filter_place(inspection, entry.id), FilterPlace::Missing) {
            let known = entry.entry_kind != EntryKind::Unknown && entry.entry_state == EntryState::Connected;
            let looked = inspection.survey.reply(entry.id, Asked::EntryFilter);
            let kind = match (looked, known) {
                (Some(Reply::Unsure), _) => FindingKind::EntryFilterNotSeen,
                (_, true) => FindingKind::EntryFilterMissing,
                (_, false) => FindingKind::EntryFilterIfConnected,
            };
            found.push(
                Finding::new(kind, vec![Place::Part(entry.id)]).phrase("entry", inspection.name(entry.id)),
            );
        }
        found.extend(street_side(inspection, entry));
    }
    found
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
        .filter(|entry| entry.entry_state != EntryState::CutOff && entry.entry_kind != EntryKind::FibreBox)
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
    if !inspection.survey.building.is_some_and(|building| building.shared) {
        return Vec::new();
    }
    inspection
        .entries_with_nodes()
        .filter(|entry| wants_filter(entry))
        .map(|entry| {
            let kind = match filter_place(inspection, entry.id) {
                FilterPlace::InPlace => FindingKind::SharedBuilding,
                FilterPlace::Misplaced | FilterPlace::Missing => FindingKind::SharedBuildingOpen,
            };
            Finding::new(kind, vec![Place::Part(entry.id)]).phrase("entry", inspection.name(entry.id))
        })
        .collect()
}
