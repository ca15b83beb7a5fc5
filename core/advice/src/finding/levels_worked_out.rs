//! Levels that nobody measured, worked out from what was measured elsewhere, against what the devices need.

use house::naming;
use phrase::Arg;

use super::inspection::Inspection;
use super::levels::needs;
use super::{Finding, FindingKind, Place};
use crate::level::{self, DownLevel, Fit, OutletLevels, Window, levels};

/// Levels worked out as outside their window, the one furthest outside for each service at each outlet. Where one measured
/// there is outside, that is told instead.
pub(super) fn outside(inspection: &Inspection<'_>) -> Vec<Finding> {
    // It takes a solution of the house, as a forecast does.
    if inspection.forecast.is_none() {
        return Vec::new();
    }
    // What the physics refuses is told by the forecast of the same house.
    let Ok(levels) = levels(inspection.survey, &level::Options::default()) else { return Vec::new() };
    levels.outlets.iter().filter_map(|found| at_outlet(inspection, found)).collect()
}

fn at_outlet(inspection: &Inspection<'_>, found: &OutletLevels) -> Option<Finding> {
    let measured = |down: &DownLevel| Some((down.measured?, down.window?));
    let is_out = |(dbmv, window): (f64, Window)| !window.holds(dbmv);
    if found.fits() < Fit::Outside || found.down.iter().filter_map(measured).any(is_out) {
        return None;
    }
    let worked_out = found.down.iter().filter(|down| down.measured.is_none()).filter_map(|down| {
        let (window, dbmv) = (down.window?, down.level?.likely);
        (!window.holds(dbmv)).then_some((down.mhz, dbmv, window))
    });
    let (mhz, dbmv, window) =
        worked_out.max_by(|a, b| a.2.outside_by(a.1).total_cmp(&b.2.outside_by(b.1)))?;
    let at = vec![Place::Part(found.outlet), Place::Part(found.entry)];
    let told = Finding::new(FindingKind::LevelWorkedOutOutside, at)
        .phrase("outlet", inspection.name(found.outlet))
        .phrase("service", naming::service(found.service))
        .phrase("needs", needs(&window))
        .with("level", Arg::Level(dbmv))
        .with("frequency", Arg::Frequency(mhz));
    Some(told)
}
