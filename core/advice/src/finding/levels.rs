//! Levels measured at TVs and modems, against what these devices need.

use house::naming;
use house::record::ServiceKind;
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::level::{self, ANALOG_TV, MODEM_SENDS, Served, Window, served_outlets};

/// Measured levels outside their window, the one furthest outside for each service at each outlet.
pub(super) fn measured(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut found = Vec::new();
    for served in served_outlets(survey) {
        let Some(window) = level::window_of(survey, served.service) else { continue };
        let furthest = level::measured_at(survey, served.outlet)
            .into_iter()
            .filter(|(_, dbmv)| !window.holds(*dbmv))
            .max_by(|a, b| window.outside_by(a.1).total_cmp(&window.outside_by(b.1)));
        if let Some((mhz, dbmv)) = furthest {
            found.push(
                Finding::new(kind_for(&served, &window), vec![Place::Part(served.outlet)])
                    .phrase("outlet", inspection.name(served.outlet))
                    .phrase("service", naming::service(served.service))
                    .phrase("needs", needs(&window))
                    .with("level", Arg::Level(dbmv))
                    .with("frequency", Arg::Frequency(mhz)),
            );
        }
    }
    found
}

fn kind_for(served: &Served, window: &Window) -> FindingKind {
    match served.service {
        ServiceKind::CableInternet => FindingKind::ModemLevelOutside,
        _ if window.name == ANALOG_TV.name => FindingKind::LevelBelowRule,
        _ => FindingKind::LevelOutsideGuide,
    }
}

pub(super) fn needs(window: &Window) -> Phrase {
    match (window.low_dbmv, window.high_dbmv) {
        (Some(low), Some(high)) => {
            Phrase::new("level-between").with("low", Arg::Level(low)).with("high", Arg::Level(high))
        }
        (Some(low), None) => Phrase::new("level-at-least").with("low", Arg::Level(low)),
        (_, high) => Phrase::new("level-at-most").with("high", Arg::Level(high.unwrap_or_default())),
    }
}

/// Modems that send near the most they can.
pub(super) fn modem_sends(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    served_outlets(survey)
        .into_iter()
        .filter(|served| served.service == ServiceKind::CableInternet)
        .filter_map(|served| {
            let sends = level::sends(survey, served.outlet).filter(|dbmv| !MODEM_SENDS.holds(*dbmv))?;
            Some(
                Finding::new(FindingKind::ModemSendsHigh, vec![Place::Part(served.outlet)])
                    .phrase("outlet", inspection.name(served.outlet))
                    .phrase("needs", needs(&MODEM_SENDS))
                    .with("level", Arg::Level(sends)),
            )
        })
        .collect()
}
