//! The rows of the overview that lead to what is about other people.

use phrase::{Arg, Phrase};

use super::Doors;
use crate::place::{Place, SharePlace};
use crate::session::Scene;

/// The rows of the overview that lead here: key, name, and what stands beside it.
pub(in crate::page) fn doors(scene: &Scene<'_>) -> Doors {
    let open = scene.ledger.disagreements().len();
    let count = Phrase::new("share-to-settle").with("count", Arg::Count(open as u64));
    let row = |key, id: &str| (key, Phrase::new(id), None);
    vec![
        row("pack", "share-pack"),
        row("take-in", "share-take-in"),
        ("disagreements", Phrase::new("share-disagreements"), Some(count)),
        row("acts", "share-acts"),
        row("things", "share-things"),
        row("removed", "share-removed"),
    ]
}

/// Where such a row leads.
pub(in crate::page) fn door(key: &str) -> Option<Place> {
    let place = match key {
        "pack" => SharePlace::Pack,
        "take-in" => SharePlace::TakeIn,
        "disagreements" => SharePlace::Disagreements,
        "acts" => SharePlace::Acts,
        "things" => SharePlace::Things,
        "removed" => SharePlace::Removed,
        _ => return None,
    };
    Some(Place::Share(place))
}
