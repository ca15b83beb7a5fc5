//! What to take care of at each change.

use house::record::{ChangeKind, OutletCheck, Survey};

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
        | ChangeKind::NewerAdapter { .. } => cautions::UNSCREW,
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
