//! Levels measured at TVs and modems, against what these devices need.

use house::naming;
use house::record::ServiceKind;
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::level::{self, ANALOG_TV, MODEM_SENDS, Served, Window, served_outlets};

/// Measured levels outside their window, the one furthest outside for each service at each outlet; where all are inside,
/// the one that lacks most of the margin that is recommended.
pub(super) fn measured(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut found = Vec::new();
    for served in served_outlets(survey) {
        let Some(window) = level::window_of(survey, served.service) else { continue };
        let here = level::measured_at(survey, served.outlet);
        let outside = here.iter().filter(|(_, dbmv)| !window.holds(*dbmv));
        let furthest = outside.max_by(|a, b| window.outside_by(a.1).total_cmp(&window.outside_by(b.1)));
        let told = match furthest {
            Some(furthest) => Some((kind_for(&served, &window, furthest.1), *furthest)),
            None => least_margin(&window, &here).map(|least| (FindingKind::LevelNotRecommended, least)),
        };
        if let Some((kind, (mhz, dbmv))) = told {
            found.push(
                Finding::new(kind, vec![Place::Part(served.outlet)])
                    .phrase("outlet", inspection.name(served.outlet))
                    .phrase("service", naming::service(served.service))
                    .phrase("needs", needs_of(kind, &window))
                    .text("side", side(&window, dbmv))
                    .with("level", Arg::Level(dbmv))
                    .with("frequency", Arg::Frequency(mhz)),
            );
        }
    }
    found
}

fn least_margin(window: &Window, here: &[(f64, f64)]) -> Option<(f64, f64)> {
    let lacking = |dbmv: f64| {
        let margin = window.recommended?;
        (!window.has_margin(dbmv)).then(|| (margin.low_dbmv - dbmv).max(dbmv - margin.high_dbmv))
    };
    let all = here.iter().filter_map(|reading| Some((lacking(reading.1)?, *reading)));
    all.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, reading)| reading)
}

fn kind_for(served: &Served, window: &Window, dbmv: f64) -> FindingKind {
    let analog = window.low_dbmv == ANALOG_TV.low_dbmv && window.low_dbmv.is_some_and(|low| dbmv < low);
    match served.service {
        ServiceKind::CableInternet => FindingKind::ModemLevelOutside,
        ServiceKind::CableTv if analog => FindingKind::LevelBelowRule,
        _ => FindingKind::LevelOutsideGuide,
    }
}

/// Whether a level is towards the lower or the upper end of its window, for the words.
fn side(window: &Window, dbmv: f64) -> &'static str {
    let low = window.low_dbmv.or(window.recommended.map(|margin| margin.low_dbmv));
    let high = window.high_dbmv.or(window.recommended.map(|margin| margin.high_dbmv));
    match (low, high) {
        (Some(low), Some(high)) if dbmv > f64::midpoint(low, high) => "high",
        (None, Some(_)) => "high",
        _ => "low",
    }
}

fn needs_of(kind: FindingKind, window: &Window) -> Phrase {
    match (kind, window.recommended) {
        (FindingKind::LevelBelowRule, _) => needs(&ANALOG_TV),
        (FindingKind::LevelNotRecommended, Some(margin)) => Phrase::new("level-between")
            .with("low", Arg::Level(margin.low_dbmv))
            .with("high", Arg::Level(margin.high_dbmv)),
        _ => needs(window),
    }
}

fn needs(window: &Window) -> Phrase {
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
