//! What to take care of at each change, and which kinds of work it therefore is.

use house::record::{ChangeKind, OutletCheck, PartKind, Plugged, Survey, Without};

use crate::finding::{Caution, cautions};

/// What to take care of, most important first.
pub fn cautions_of(change: ChangeKind) -> &'static [Caution] {
    match change {
        ChangeKind::AddEntryFilter { .. }
        | ChangeKind::MoveEntryFilter { .. }
        | ChangeKind::SwapEntryFilter { .. }
        | ChangeKind::ModemOwnLine { .. } => cautions::ENTRY,
        ChangeKind::SwapSplitter { .. }
        | ChangeKind::RemoveSplitter { .. }
        | ChangeKind::MergeSplitters { .. }
        | ChangeKind::SwapAmplifier { .. }
        | ChangeKind::RemoveAmplifier { .. }
        | ChangeKind::FilterAtDevice { .. }
        | ChangeKind::ShareOutlet { .. }
        | ChangeKind::MoveBridge { .. }
        | ChangeKind::UseOutletNearby { .. }
        | ChangeKind::LookAtPart { .. }
        | ChangeKind::CheckAtOutlet { check: OutletCheck::ShortCable | OutletCheck::OtherAdapter, .. }
        | ChangeKind::NewerAdapter { .. }
        | ChangeKind::ExchangeAdapters { .. } => cautions::UNSCREW,
        ChangeKind::Cap { .. } => cautions::CAP,
        ChangeKind::RenewConnectors { .. } => cautions::CONNECTORS,
        ChangeKind::ReplaceRun { .. } | ChangeKind::NewRun { .. } => cautions::NEW_CABLE,
        ChangeKind::JoinLoose { .. } => cautions::TRACE,
        ChangeKind::LookAtRun { .. } => cautions::CABLE,
        ChangeKind::CheckAtOutlet { .. } => cautions::LOOK,
    }
}

/// Those of them that a house leaves open.
pub fn cautions_in(change: ChangeKind, survey: &Survey) -> Vec<Caution> {
    cautions_of(change).iter().copied().filter(|caution| caution.is_open_in(survey)).collect()
}

/// What to take care of where a change is made in a house, most important first: next to the entry that the street's side stays
/// closed, too, and beside a fibre box that the fibre stays in.
pub fn cautions_at(change: ChangeKind, house: &Survey) -> Vec<Caution> {
    let mut cautions = cautions_in(change, house);
    let at = change.at();
    let plugged = house.parts.get(&at).and_then(|part| part.plugged.as_ref());
    if plugged.is_some_and(|plugged| plugged.contains(&Plugged::FibreBox)) {
        cautions.push(Caution::Fibre);
    }
    let head = house.wiring.head_of(at);
    let entry = house.parts.get(&head).is_some_and(|part| part.kind == PartKind::Entry);
    let unscrews = !matches!(change, ChangeKind::Cap { .. } | ChangeKind::FilterAtDevice { .. });
    let is_before_split = || at == head || house.to_first_split(head).contains(&at);
    if entry && unscrews && is_before_split() {
        for caution in [Caution::HouseSideOnly, Caution::KeepGrounds] {
            let weather = cautions.iter().position(|caution| *caution == Caution::Thunderstorm);
            if !cautions.contains(&caution) {
                cautions.insert(weather.unwrap_or(cautions.len()), caution);
            }
        }
    }
    cautions
}

/// Whether cable is laid, replaced or traced.
pub(super) fn takes_cable(change: ChangeKind) -> bool {
    matches!(change, ChangeKind::NewRun { .. } | ChangeKind::ReplaceRun { .. } | ChangeKind::JoinLoose { .. })
}

/// Whether a change is such work in a house. What may need an attic, a ladder or a roof is what is cautioned of them.
pub fn is_such_work(change: ChangeKind, house: &Survey, without: Without) -> bool {
    match without {
        Without::NewCable => takes_cable(change),
        Without::Heights => cautions_at(change, house).contains(&Caution::Heights),
    }
}

/// The kind of work for which a change is left out, since it is not wanted in this house.
pub(super) fn not_wanted(change: ChangeKind, house: &Survey) -> Option<Without> {
    house.without().into_iter().find(|without| is_such_work(change, house, *without))
}
