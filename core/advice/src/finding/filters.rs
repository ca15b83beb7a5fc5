//! What the entry filter does: the band it stops, how well, and what it must let pass.

use coax::trade::FILTERS_STOP_BY;
use house::rating::EXTENDED_D;
use house::record::{ChangeKind, Incoming, Part, PartKind, Plugged, ServiceKind, may_come_in};
use phrase::Arg;

use super::entry::as_decided;
use super::inspection::{Inspection, has_plugged};
use super::{Finding, FindingKind, Place};
use crate::entry_filter::{EntryFilter, entry_filter};
use crate::level::UPSTREAM_MHZ;

/// Labels round the top of a service or pass band (1000 for 1002).
const TOP_TOLERANCE_MHZ: f64 = 5.0;

fn entry_filters<'a>(inspection: &'a Inspection<'_>) -> impl Iterator<Item = &'a Part> {
    inspection.survey.parts.values().filter(|part| part.is_entry_filter())
}

/// Filters that do not stop the band, do it weakly, or whose label says nothing of it.
pub(super) fn stop_band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let (mut found, with_nodes) = (Vec::new(), inspection.heads_with_nodes());
    for filter in entry_filters(inspection) {
        let finding = |kind| {
            Finding::new(kind, vec![Place::Part(filter.id)]).phrase("filter", inspection.name(filter.id))
        };
        match filter.rating.stops_moca() {
            Some(false) => {
                let head = inspection.survey.wiring.head_of(filter.id);
                let decided = entry_filter(inspection.survey, head);
                let told = finding(FindingKind::FilterNotForBand)
                    .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz));
                // Where no adapter hangs, none belongs, or another does the work, it need not stop the band.
                let swap = ChangeKind::SwapEntryFilter { filter: filter.id };
                let to_be_swapped = matches!(decided, EntryFilter::Wanted { change, .. } if change == swap);
                if to_be_swapped && with_nodes.contains(&head) {
                    found.push(as_decided(inspection, told, decided));
                }
            }
            Some(true) => {
                if let Some(weak) = filter.rating.rejection_db.filter(|db| *db < FILTERS_STOP_BY.value()) {
                    found.push(
                        finding(FindingKind::FilterWeak)
                            .with("rejection", Arg::Loss(weak))
                            .with("standard", Arg::Loss(FILTERS_STOP_BY.value())),
                    );
                }
            }
            None => found.push(
                finding(FindingKind::FilterLabelUnknown)
                    .with("band", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz)),
            ),
        }
    }
    found
}

/// Filters whose pass band ends below what a cable service uses.
pub(super) fn passed_services(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for entry in inspection.parts(&[PartKind::Entry]) {
        for filter in inspection.entry_line(entry.id).into_iter().filter(|part| part.is_entry_filter()) {
            let rating = &filter.rating;
            let pass_top =
                rating.band.map(|band| band.high_mhz).or(rating.stop_band.map(|stop| stop.low_mhz));
            let Some(pass_top) = pass_top else { continue };
            for service in inspection.survey.services.values() {
                let cable = matches!(service.kind, ServiceKind::CableTv | ServiceKind::CableInternet);
                let comes_in = cable && may_come_in(inspection.survey, service, entry.id);
                let Some(top) = service.top_mhz.filter(|top| comes_in && *top > pass_top + TOP_TOLERANCE_MHZ)
                else {
                    continue;
                };
                let at = vec![Place::Part(filter.id), Place::Service(service.id)];
                found.push(
                    Finding::new(FindingKind::FilterCutsService, at)
                        .phrase("filter", inspection.name(filter.id))
                        .phrase("service", house::naming::service(service.kind))
                        .with("ends", Arg::Frequency(pass_top))
                        .with("top", Arg::Frequency(top)),
                );
            }
        }
    }
    found
}

/// Filters whose label begins above where a cable modem sends, 5 MHz up (DOCSIS Radio Frequency Interface Specification:
/// upstream 5 to 42 MHz and more). Many labels name what comes in alone, so the internet itself tells.
pub(super) fn return_path(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let modems = || {
        let services = inspection.survey.services.values();
        services.filter(|service| service.kind == ServiceKind::CableInternet)
    };
    for entry in inspection.parts(&[PartKind::Entry]) {
        let sends = modems().any(|service| may_come_in(inspection.survey, service, entry.id));
        let (from_mhz, to_mhz) = UPSTREAM_MHZ;
        for filter in
            inspection.entry_line(entry.id).into_iter().filter(|part| sends && part.is_entry_filter())
        {
            let Some(band) = filter.rating.band.filter(|band| band.low_mhz > to_mhz) else {
                continue;
            };
            found.push(
                Finding::new(FindingKind::FilterMayHoldReturn, vec![Place::Part(filter.id)])
                    .phrase("filter", inspection.name(filter.id))
                    .with("begins", Arg::Frequency(band.low_mhz))
                    .with("return", Arg::Band(from_mhz, to_mhz)),
            );
        }
    }
    found
}

/// Entry filters in a dish's line or above a satellite receiver.
pub(super) fn satellite_line(inspection: &Inspection<'_>) -> Vec<Finding> {
    entry_filters(inspection)
        .filter(|filter| {
            let head = inspection.survey.wiring.head_of(filter.id);
            let dish = Incoming::at(inspection.survey, head).knows(ServiceKind::SatelliteTv);
            dish || inspection.tree(filter.id).any(|part| has_plugged(part, Plugged::SatelliteReceiver))
        })
        .map(|filter| {
            Finding::new(FindingKind::FilterInSatelliteLine, vec![Place::Part(filter.id)])
                .phrase("filter", inspection.name(filter.id))
        })
        .collect()
}
