//! Levels measured at TVs and modems, against what these devices need.

use std::collections::BTreeMap;

use house::naming;
use house::record::ServiceKind;
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::MeteredAt;
use crate::level::{self, ANALOG_TV, MODEM_SENDS, Options, Served, Window, modem_sends_most, served_outlets};
use crate::verdict::{Beside, LevelHeld, levels_beside, place_phrase};

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
        (FindingKind::LevelNotRecommended, Some(_)) => recommended(window),
        _ => needs(window),
    }
}

fn recommended(window: &Window) -> Phrase {
    window.recommended.map_or_else(
        || needs(window),
        |margin| {
            let between = Phrase::new("level-between").with("low", Arg::Level(margin.low_dbmv));
            between.with("high", Arg::Level(margin.high_dbmv))
        },
    )
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

/// Modems that send near the most they can, or less than is recommended.
pub(super) fn modem_sends(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut modems = survey.services_of(ServiceKind::CableInternet);
    let most = modems.find_map(|service| service.modem?.generation).map(modem_sends_most);
    served_outlets(survey)
        .into_iter()
        .filter(|served| served.service == ServiceKind::CableInternet)
        .filter_map(|served| {
            let sends = level::sends(survey, served.outlet)?;
            let kind = match () {
                () if !MODEM_SENDS.holds(sends) => FindingKind::ModemSendsHigh,
                () if !MODEM_SENDS.has_margin(sends) => FindingKind::ModemSendsLow,
                () => return None,
            };
            let finding = Finding::new(kind, vec![Place::Part(served.outlet)])
                .phrase("outlet", inspection.name(served.outlet))
                .phrase("needs", recommended(&MODEM_SENDS))
                .with("level", Arg::Level(sends));
            // What it is made for, where that is known, beside what is recommended.
            Some(match most {
                Some((most, _)) => finding.text("known", "yes").with("most", Arg::Level(most)),
                None => finding.text("known", "no").with("most", Arg::Level(0.0)),
            })
        })
        .collect()
}

/// How many draws a verdict on a level rests on: findings are told on every screen.
const DRAWS: u32 = 16;

/// Levels that the wiring does not explain, each with the stretch on which something is.
pub(super) fn against_wiring(inspection: &Inspection<'_>) -> Vec<Finding> {
    let options = Options { draws: DRAWS, ..Options::default() };
    // What the physics refuses is told by the forecast of the same house.
    let held = levels_beside(inspection.survey, &options).unwrap_or_default();
    held.iter().map(|held| beside_wiring(inspection, held)).collect()
}

fn beside_wiring(inspection: &Inspection<'_>, held: &LevelHeld) -> Finding {
    let survey = inspection.survey;
    let less = held.beside == Beside::Worse;
    let kind = if less { FindingKind::LevelBelowWiring } else { FindingKind::LevelAboveWiring };
    let at = |place: MeteredAt| match place.port {
        Some(port) => Place::Port { part: place.part, port },
        None => Place::Part(place.part),
    };
    Finding::new(kind, vec![at(held.stretch.to), at(held.stretch.from)])
        .phrase("place", place_phrase(survey, held.stretch.to))
        .phrase("known", place_phrase(survey, held.known_at))
        .phrase("stretch", held.stretch.phrase(survey))
        .text("whose", if held.stretch.street_side { "provider" } else { "house" })
        .with("level", Arg::Level(held.measured_dbmv))
        .with("expected", Arg::Level(held.explained.likely))
        .with("apart", Arg::Loss(held.missing_db().abs()))
        .with("frequency", Arg::Frequency(held.mhz))
}

/// Places where levels were measured before work was done on the way there: they tell of the wiring as it was.
pub(super) fn before_work(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let mut places = BTreeMap::new();
    for reading in survey.readings.values() {
        if let (Some(part), Some(work)) = (reading.about, survey.work_since_level(reading)) {
            places.insert((part, reading.port), work);
        }
    }
    // Where somebody measured since, nothing is left to do.
    places.retain(|(part, port), _| !survey.levels_read_at(*part).any(|since| since.port == *port));
    let told = places.into_iter().map(|((part, port), work)| {
        let at = port.map_or(Place::Part(part), |port| Place::Port { part, port });
        Finding::new(FindingKind::LevelBeforeWork, vec![at])
            .phrase("place", place_phrase(survey, MeteredAt { part, port }))
            .phrase("work", work.what(survey))
    });
    told.collect()
}
