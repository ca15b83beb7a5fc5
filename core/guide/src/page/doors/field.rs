//! The rows of the overview that lead to field work.

use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{FieldPlace, Key, Place};
use crate::session::SurveySnapshot;

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(in crate::page) fn doors(snapshot: &SurveySnapshot<'_>) -> Doors {
    let survey = snapshot.survey;
    let count = |number: usize| Phrase::new("free-count").with("count", Arg::Count(number as u64));
    let door = |key: Key, says: Option<Phrase>| {
        let name = Phrase::new(key.to_string());
        (key, name, says)
    };
    let unassigned = survey.photos_of(None).count();
    vec![
        door(Key::FreeHere, None),
        door(Key::FreeBurst, None),
        door(
            Key::FreeAssign,
            Some(Phrase::new("free-unassigned").with("count", Arg::Count(unassigned as u64))),
        ),
        door(Key::FreeParts, Some(count(survey.parts.len()))),
        door(Key::FreeRuns, Some(count(survey.runs.len()))),
        door(Key::FreeRooms, Some(count(survey.rooms.len()))),
        door(Key::FreeServices, Some(count(survey.services.len()))),
        door(Key::FreeMeter, Some(count(survey.readings.len()))),
    ]
}

/// Where such a row leads.
pub(in crate::page) fn door(key: &Key) -> Option<Place> {
    let place = match key {
        Key::FreeHere => FieldPlace::Here,
        Key::FreeBurst => FieldPlace::Burst,
        Key::FreeAssign => FieldPlace::Assign,
        Key::FreeParts => FieldPlace::Parts,
        Key::FreeRuns => FieldPlace::Runs,
        Key::FreeRooms => FieldPlace::Rooms,
        Key::FreeServices => FieldPlace::Services,
        Key::FreeMeter => FieldPlace::MeterAt,
        _ => return None,
    };
    Some(Place::Field(place))
}
