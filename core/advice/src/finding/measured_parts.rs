//! Parts that an instrument measured, where what it found cannot be used.

use coax::Megahertz;
use house::rating::{Band, EXTENDED_D};
use house::record::{Part, Survey};
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::TV_AND_MODEM;
use crate::level::served_outlets;

/// Measured parts on a way that is worked out, whose file does not reach over all of the band looked at there.
pub(super) fn not_used(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let of = |part: &Part| {
        let measured = part.measured.as_ref()?;
        let unused = |band: Band, looked_at: bool| looked_at && part.measured_over(band).is_none();
        let network = unused(EXTENDED_D, inspection.standing(part.id).is_on_a_path());
        let levels = unused(TV_AND_MODEM, is_on_the_way_to_a_device(survey, part));
        let needed = match (network, levels) {
            (true, _) => EXTENDED_D,
            (false, true) => TV_AND_MODEM,
            (false, false) => return None,
        };
        let (low, high) = measured.range();
        let reaches = measured.covers(Megahertz(needed.low_mhz), Megahertz(needed.high_mhz));
        Some(
            Finding::new(FindingKind::MeasuredPartNotUsed, vec![Place::Part(part.id)])
                .phrase("part", inspection.name(part.id))
                .text(
                    "for",
                    match (network, levels) {
                        (true, true) => "both",
                        (true, false) => "network",
                        _ => "levels",
                    },
                )
                .text("lacks", if reaches { "ports" } else { "band" })
                .with("reaches", Arg::Band(low.value(), high.value()))
                .with("needed", Arg::Band(needed.low_mhz, needed.high_mhz)),
        )
    };
    survey.parts.values().filter_map(of).collect()
}

fn is_on_the_way_to_a_device(survey: &Survey, part: &Part) -> bool {
    served_outlets(survey).iter().any(|served| {
        served.outlet != part.id
            && served.entry != part.id
            && survey.wiring.way_up(served.outlet).contains(&part.id)
    })
}
