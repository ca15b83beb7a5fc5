//! DC that goes over the coax.

use house::record::power_paths;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};

/// Every way that DC takes: what lies on it needs care.
pub(super) fn feeds(inspection: &Inspection<'_>) -> Vec<Finding> {
    power_paths(inspection.survey)
        .into_iter()
        .map(|path| {
            let between = path.way.iter().copied().filter(|id| *id != path.feed.from && *id != path.feed.to);
            let between: Vec<_> = between.collect();
            let kind = if between.is_empty() { FindingKind::DcFeedDirect } else { FindingKind::DcFeed };
            Finding::new(kind, path.way.iter().copied().map(Place::Part).collect())
                .phrase("from", inspection.name(path.feed.from))
                .phrase("to", inspection.name(path.feed.to))
                .with("over", inspection.names(between))
        })
        .collect()
}
