//! Amplifiers and the way between adapters.

use super::inspection::{Inspection, Standing};
use super::{Finding, FindingKind, Place};
use crate::record::PartKind;

/// Amplifiers without a by-pass, or of which that is not known, by where they stand towards the adapters.
pub(super) fn by_pass(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Amplifier])
        .filter_map(|amplifier| {
            let kind = match (inspection.standing(amplifier.id), amplifier.rating.moca_bypass) {
                (Standing::Between, Some(false)) => FindingKind::AmplifierNoBypass,
                (Standing::Between, None) => FindingKind::AmplifierBypassUnknown,
                (Standing::Meeting, Some(false) | None) => FindingKind::AmplifierOutputsApart,
                (Standing::Above, Some(false)) => FindingKind::AmplifierAbove,
                _ => return None,
            };
            Some(
                Finding::new(kind, vec![Place::Part(amplifier.id)])
                    .phrase("amplifier", inspection.name(amplifier.id)),
            )
        })
        .collect()
}
