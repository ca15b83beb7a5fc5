//! The rows of the overview that lead to what is about other people.

use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{Key, Place, SharePlace};
use crate::session::SurveySnapshot;

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(in crate::page) fn doors(snapshot: &SurveySnapshot<'_>) -> Doors {
    let open = snapshot.ledger.disagreements().len();
    let count = Phrase::new("share-to-settle").with("count", Arg::Count(open as u64));
    let row = |key, id: &str| (key, Phrase::new(id), None);
    let asked = Phrase::new("share-wishes-open").with("count", Arg::Count(snapshot.wishes.len() as u64));
    vec![
        row(Key::Pack, "share-pack"),
        row(Key::TakeIn, "share-take-in"),
        (Key::Disagreements, Phrase::new("share-disagreements"), Some(count)),
        (Key::Wishes, Phrase::new("share-wishes"), Some(asked)),
        row(Key::Acts, "share-acts"),
        row(Key::Things, "share-things"),
        row(Key::Removed, "share-removed"),
    ]
}

/// Where such a row leads.
pub(in crate::page) fn door(key: &Key) -> Option<Place> {
    let place = match key {
        Key::Pack => SharePlace::Pack,
        Key::TakeIn => SharePlace::TakeIn,
        Key::Disagreements => SharePlace::Disagreements,
        Key::Wishes => SharePlace::Wishes,
        Key::Acts => SharePlace::Acts,
        Key::Things => SharePlace::Things,
        Key::Removed => SharePlace::Removed,
        _ => return None,
    };
    Some(Place::Share(place))
}
