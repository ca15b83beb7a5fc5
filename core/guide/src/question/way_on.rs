//! Where one comes back to after a question.

use super::about;
use crate::place::{FieldPlace, Place};
use crate::session::SurveySnapshot;

/// After a question: who came to it from a list of questions or from field work comes back there, or to the next
/// question about the part in front of them.
pub(crate) fn way_on(snapshot: &SurveySnapshot<'_>) -> Option<Vec<Place>> {
    let mut way = snapshot.memory.way.clone();
    let before = way.len();
    while matches!(way.last(), Some(Place::Ask(_))) {
        way.pop();
    }
    let asked = way.len() < before;
    match way.last()? {
        Place::Field(FieldPlace::Stand(part)) => {
            let part = *part;
            if let Some(question) = about::next(snapshot, part) {
                way.push(Place::Ask(question));
            } else {
                way.pop();
                way.push(Place::Field(FieldPlace::Part(part)));
            }
            Some(way)
        }
        Place::Field(_) | Place::Stage(_) | Place::PutOff if asked => Some(way),
        _ => None,
    }
}
