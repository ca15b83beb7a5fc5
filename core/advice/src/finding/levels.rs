//! Levels measured at TVs and modems, against what these devices need.

use std::collections::BTreeMap;

use house::naming;
use house::record::{PartKind, ServiceKind};
use phrase::{Arg, Phrase};

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::forecast::MeteredAt;
use crate::level::{
    self, ANALOG_TV, LostAt, MODEM_SENDS, Served, Unexplained, Window, modem_sends_most, place_phrase,
    served_outlets,
};

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

/// Levels that the wiring does not explain, each with the stretch on which something is; what several places miss on what they
/// share is told once.
pub(super) fn against_wiring(inspection: &Inspection<'_>) -> Vec<Finding> {
    inspection.unexplained().iter().filter_map(|found| beside_wiring(inspection, found)).collect()
}

fn beside_wiring(inspection: &Inspection<'_>, found: &Unexplained) -> Option<Finding> {
    let survey = inspection.survey;
    let kind = if found.is_loss() { FindingKind::LevelBelowWiring } else { FindingKind::LevelAboveWiring };
    let held = found.readings.first()?;
    let shared = found.readings.len() > 1;
    let at = |place: MeteredAt| match place.port {
        Some(port) => Place::Port { part: place.part, port },
        None => Place::Part(place.part),
    };
    let suspect = match found.suspects.first() {
        Some((LostAt::Part(part), _)) => Place::Part(*part),
        Some((LostAt::Output(part, port), _)) => Place::Port { part: *part, port: *port },
        Some((LostAt::RunTo(part), _)) => Place::RunTo(*part),
        None => at(found.stretch.to),
    };
    // Where to go first: what several places share; else where it was measured.
    let first = if shared { suspect } else { at(found.stretch.to) };
    let places = found.readings.iter().map(|held| held.stretch.to);
    let mut all = vec![first];
    all.extend(places.clone().map(at).chain([at(found.stretch.from)]).filter(|place| *place != first));
    let is_amplifier = |(at, _): &(LostAt, f64)| match at {
        LostAt::Part(part) => survey.parts.get(part).is_some_and(|part| part.kind == PartKind::Amplifier),
        _ => false,
    };
    let told = places.map(|place| Arg::Phrase(Box::new(place_phrase(survey, place)))).collect();
    let finding = Finding::new(kind, all)
        .text("shared", if shared { "yes" } else { "no" })
        .phrase("place", place_phrase(survey, held.stretch.to))
        .with("places", Arg::Several(told))
        .phrase("known", place_phrase(survey, held.known_at))
        .phrase("stretch", found.stretch.phrase(survey))
        .text("whose", if found.stretch.street_side { "provider" } else { "house" })
        .phrase("first", suspect.phrase(survey)?)
        .text("amplifier", if found.suspects.iter().any(is_amplifier) { "yes" } else { "no" })
        .with("level", Arg::Level(held.measured_dbmv))
        .with("expected", Arg::Level(held.explained.likely))
        .with("apart", Arg::Loss(found.missing_db().abs()))
        .with("frequency", Arg::Frequency(held.mhz));
    Some(finding)
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
