//! Splitters and taps: are they made for the band, and was their label read well.

use house::naming;
use house::rating::EXTENDED_D;
use house::record::PartKind;
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::CostAt;
use crate::suspect::Suspects;

/// Splitters and taps on a path whose label names a band that ends too low, or whose band is not known.
pub(super) fn band(inspection: &Inspection<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let tests = inspection.forecast.map(|forecast| Suspects::of(inspection.survey, forecast));
    for part in inspection.parts(&[PartKind::Splitter, PartKind::Tap]) {
        // What an instrument found is known better than any label says.
        if !inspection.standing(part.id).is_on_a_path() || part.measured_over(EXTENDED_D).is_some() {
            continue;
        }
        let finding = |kind| {
            Finding::new(kind, vec![Place::Part(part.id)])
                .phrase("part", inspection.name(part.id))
                .with("wanted", Arg::Band(EXTENDED_D.low_mhz, EXTENDED_D.high_mhz))
        };
        match (part.rating.made_for_moca(), part.rating.band) {
            (Some(false), Some(band)) => {
                // What it costs above its band is a guess, and so is the forecast, until a test was made over it.
                let is_tested = tests.as_ref().is_some_and(|tests| tests.is_cleared(CostAt::Part(part.id)));
                found.push(
                    finding(FindingKind::SplitterNotForBand)
                        .with("band", Arg::Band(band.low_mhz, band.high_mhz))
                        .text("tested", if is_tested { "yes" } else { "no" }),
                );
            }
            (None, _) => found.push(finding(FindingKind::SplitterLabelUnknown)),
            _ => {}
        }
    }
    found
}

/// Lowest edge of a band that only a satellite part has, MHz (common practice, no source).
const SATELLITE_FROM_MHZ: f64 = 800.0;

/// Splitters and taps on a path that are made for satellite signals too, where nobody said that a dish is on the tree: they
/// may be left over, or a dish may still be there.
pub(super) fn for_satellite(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .parts(&[PartKind::Splitter, PartKind::Tap])
        .filter(|part| inspection.standing(part.id).is_on_a_path() && part.is_for_satellite())
        .filter(|part| {
            let head = inspection.survey.wiring.head_of(part.id);
            !inspection.tree(head).any(|part| super::satellite::is_satellite(inspection.survey, part))
        })
        .map(|part| {
            let low = part.rating.band.map(|band| band.low_mhz).filter(|low| *low >= SATELLITE_FROM_MHZ);
            Finding::new(FindingKind::SplitterForSatellite, vec![Place::Part(part.id)])
                .phrase("part", inspection.name(part.id))
                .text("low", if low.is_some() { "yes" } else { "no" })
                .with("from", Arg::Frequency(low.unwrap_or_default()))
                .text("power", if part.rating.power_pass == Some(true) { "yes" } else { "no" })
        })
        .collect()
}

/// Labels that could be read in more than one way.
pub(super) fn doubtful_labels(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection
        .survey
        .parts
        .values()
        .filter(|part| part.rating.doubtful)
        .map(|part| {
            let read = naming::rated(&part.rating);
            Finding::new(FindingKind::LabelDoubtful, vec![Place::Part(part.id)])
                .phrase("part", inspection.name(part.id))
                .text("any", if read.is_empty() { "no" } else { "yes" })
                .with("read", Arg::Several(read.into_iter().map(|one| Arg::Phrase(Box::new(one))).collect()))
                .with("label", Arg::Text(part.label.clone().unwrap_or_default()))
        })
        .collect()
}
