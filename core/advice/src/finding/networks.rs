//! Several networks on one wire, and what an adapter sees of its own.

use coax::Megahertz;
use coax::link::Version;
use house::rating::EXTENDED_D;
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::channels_left;
use crate::verdict::{NodesBeside, NodesTold, other_networks};

/// Trees on which another network leaves ours fewer channels than it could use, or nobody knows how many.
pub(super) fn channels(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for head in inspection.heads_with_nodes() {
        let Some(newest) = inspection.nodes_on(head).iter().map(|node| node.link.version).max() else {
            continue;
        };
        let full = newest.most_channels().value;
        for service in other_networks(inspection.survey, head) {
            let bands = service.network.as_ref().map_or(&[][..], |network| &network.bands);
            let taken: Vec<_> =
                bands.iter().map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz))).collect();
            let at = vec![Place::Service(service.id)];
            let finding = |kind| {
                Finding::new(kind, at.clone())
                    .phrase("service", house::naming::service(service.kind))
                    .with("full", Arg::Count(full as u64))
                    .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz))
            };
            let left = channels_left(newest, &taken);
            if taken.is_empty() {
                // A network on one or two channels finds room beside another; one that wants the whole band may not.
                if newest == Version::V2_5 {
                    found.push(finding(FindingKind::NetworkChannelsUnknown));
                }
            } else if left < full {
                found.push(finding(FindingKind::NetworksOverlap).with("left", Arg::Count(left as u64)));
            }
        }
    }
    found
}

/// Adapters that see more nodes than are known, fewer than are there, or none but themselves.
pub(super) fn nodes_seen(inspection: &Inspection<'_>) -> Vec<Finding> {
    NodesTold::all(inspection.survey).iter().filter_map(|told| told_by(inspection, told)).collect()
}

fn told_by(inspection: &Inspection<'_>, told: &NodesTold) -> Option<Finding> {
    let (kind, known) = match told.beside {
        NodesBeside::More => (FindingKind::NodesMoreThanKnown, told.known),
        NodesBeside::Alone => (FindingKind::NodeAlone, told.there),
        NodesBeside::Fewer => (FindingKind::NodesFewer, told.there),
        NodesBeside::AsMany | NodesBeside::MoreWithProvider | NodesBeside::FewerToCome => return None,
    };
    let missing = told.missing.iter().filter(|outlet| **outlet != told.outlet);
    let at = std::iter::once(&told.outlet).chain(missing.clone()).map(|outlet| Place::Part(*outlet));
    let finding = Finding::new(kind, at.collect())
        .phrase("outlet", inspection.name(told.outlet))
        .with("seen", Arg::Count(told.seen as u64))
        .with("known", Arg::Count(known as u64));
    Some(match kind {
        FindingKind::NodesFewer => finding
            .with("count", Arg::Count(missing.clone().count() as u64))
            .with("missing", inspection.names(missing.copied())),
        _ => finding,
    })
}
