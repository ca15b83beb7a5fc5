//! DC that goes over the coax.

use house::record::{PowerPath, power_paths};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};

/// Every way that DC takes: what lies on it needs care. One with a part that is stated to hold DC back is told as the break
/// that it is.
pub(super) fn feeds(inspection: &Inspection<'_>) -> Vec<Finding> {
    power_paths(inspection.survey).iter().map(|path| told(inspection, path)).collect()
}

fn told(inspection: &Inspection<'_>, path: &PowerPath) -> Finding {
    let broken_at = path.broken_at(inspection.survey);
    let kind = match broken_at {
        Some(_) => FindingKind::DcBroken,
        None if path.between().next().is_none() => FindingKind::DcFeedDirect,
        None => FindingKind::DcFeed,
    };
    // Where the break is, one goes first.
    let at = broken_at.into_iter().chain(path.way.iter().copied().filter(|id| Some(*id) != broken_at));
    let finding = Finding::new(kind, at.map(Place::Part).collect())
        .phrase("from", inspection.name(path.feed.from))
        .phrase("to", inspection.name(path.feed.to))
        .with("over", inspection.names(path.between()));
    match broken_at {
        Some(part) => finding.phrase("part", inspection.name(part)),
        None => finding,
    }
}
