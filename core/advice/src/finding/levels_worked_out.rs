//! Levels that nobody measured, worked out from what was measured elsewhere, against what the devices need; and what of a
//! service gets lost on the way.

use house::naming;
use phrase::Arg;

use super::inspection::Inspection;
use super::levels::needs;
use super::{Finding, FindingKind, Place, amplifiers, filters};
use crate::level::{Broken, DownLevel, Fit, OutletLevels, Window};

/// Levels worked out as outside their window, the one furthest outside for each service at each outlet. Where one measured
/// there is outside, that is told instead.
pub(super) fn outside(inspection: &Inspection<'_>) -> Vec<Finding> {
    // It takes a solution of the house, as a forecast does.
    if inspection.forecast.is_none() {
        return Vec::new();
    }
    // What the physics refuses is told by the forecast of the same house.
    let Some(levels) = inspection.levels() else { return Vec::new() };
    let reasons = Reasons::of(inspection);
    let lost = levels.outlets.iter().filter_map(|found| {
        let broken = found.broken.filter(|broken| broken.fit() == Fit::Outside)?;
        (!reasons.tell_of(inspection, found, &broken)).then(|| does_not_arrive(inspection, found, &broken))
    });
    levels.outlets.iter().filter_map(|found| at_outlet(inspection, found)).chain(lost).collect()
}

fn does_not_arrive(inspection: &Inspection<'_>, found: &OutletLevels, broken: &Broken) -> Finding {
    Finding::new(FindingKind::ServiceDoesNotArrive, vec![Place::Part(found.outlet), Place::Part(found.entry)])
        .text("way", if broken.back { "back" } else { "here" })
        .phrase("outlet", inspection.name(found.outlet))
        .phrase("service", naming::service(found.service))
        .with("loss", Arg::Loss(broken.loss_db))
        .with("frequency", Arg::Frequency(broken.mhz))
}

/// What is told of a part that ends before a service does: where one of these stands on the way, it tells of the break.
struct Reasons {
    down: Vec<Finding>,
    back: Vec<Finding>,
}

impl Reasons {
    fn of(inspection: &Inspection<'_>) -> Self {
        let mut down = amplifiers::forward_band(inspection);
        down.extend(filters::passed_services(inspection));
        down.extend(filters::satellite_line(inspection));
        Self { down, back: amplifiers::return_band(inspection) }
    }

    fn tell_of(&self, inspection: &Inspection<'_>, found: &OutletLevels, broken: &Broken) -> bool {
        let way = inspection.survey.wiring.way_up(found.outlet);
        let reasons = if broken.back { &self.back } else { &self.down };
        reasons.iter().any(|reason| {
            let on_way =
                reason.at.first().and_then(|place| place.part()).is_some_and(|part| way.contains(&part));
            let of_another = match reason.at.get(1) {
                Some(Place::Part(outlet)) => !broken.back && *outlet != found.outlet,
                Some(Place::Service(service)) => inspection
                    .survey
                    .services
                    .get(service)
                    .is_some_and(|service| service.kind != found.service),
                _ => false,
            };
            on_way && !of_another
        })
    }
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
