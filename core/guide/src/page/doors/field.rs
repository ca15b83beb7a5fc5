//! The rows of the overview that lead to field work.

use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{FieldPlace, Place};
use crate::session::Scene;

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(in crate::page) fn doors(scene: &Scene<'_>) -> Doors {
    let survey = scene.survey;
    let count = |number: usize| Phrase::new("free-count").with("count", Arg::Count(number as u64));
    let door = |key: &'static str, says: Option<Phrase>| (key, Phrase::new(key), says);
    let unassigned = survey.photos_of(None).count();
    vec![
        door("free-here", None),
        door("free-burst", None),
        door(
            "free-assign",
            Some(Phrase::new("free-unassigned").with("count", Arg::Count(unassigned as u64))),
        ),
        door("free-parts", Some(count(survey.parts.len()))),
        door("free-runs", Some(count(survey.runs.len()))),
        door("free-rooms", Some(count(survey.rooms.len()))),
        door("free-services", Some(count(survey.services.len()))),
        door("free-meter", Some(count(survey.readings.len()))),
    ]
}

/// Where such a row leads.
pub(in crate::page) fn door(key: &str) -> Option<Place> {
    let place = match key {
        "free-here" => FieldPlace::Here,
        "free-burst" => FieldPlace::Burst,
        "free-assign" => FieldPlace::Assign,
        "free-parts" => FieldPlace::Parts,
        "free-runs" => FieldPlace::Runs,
        "free-rooms" => FieldPlace::Rooms,
        "free-services" => FieldPlace::Services,
        "free-meter" => FieldPlace::MeterAt,
        _ => return None,
    };
    Some(Place::Field(place))
}
