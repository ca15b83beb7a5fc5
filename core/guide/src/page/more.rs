//! What is wanted more rarely than what stands on the overview: lists of things, and what was said when.

use phrase::Phrase;

use super::doors::{Doors, field, share};
use crate::done::Done;
use crate::place::{Key, Move, Place};
use crate::screen::{PressWeight, Screen};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// The rows that stand here rather than on the overview; what is to be settled stands there as long as there is any.
pub(super) fn is_rare(snapshot: &SurveySnapshot<'_>, key: &Key) -> bool {
    match key {
        Key::FreeRuns | Key::FreeRooms | Key::FreeServices | Key::Acts | Key::Things | Key::Removed => true,
        Key::Disagreements => snapshot.ledger.disagreements().is_empty(),
        Key::Wishes => snapshot.wishes.is_empty(),
        _ => false,
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("more"));
    for (name, doors) in [("more-things", field::doors(snapshot)), ("overview-share", share::doors(snapshot))]
    {
        rows(&mut builder, name, doors.into_iter().filter(|(key, ..)| is_rare(snapshot, key)).collect());
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Rows that lead to screens, under their name.
pub(super) fn rows(builder: &mut ScreenBuilder<'_>, name: &str, doors: Doors) {
    let row =
        |(key, head, says): (Key, Phrase, Option<Phrase>)| builder.row(Some(key), &head, says.as_ref(), None);
    let rows = doors.into_iter().map(row).collect();
    builder.rows(&Phrase::new(name), rows);
}

pub(crate) fn take(done: &Done) -> Move {
    let Some(key) = done.pressed() else { return Move::Stay };
    if *key == Key::Overview {
        return Move::Go(Place::Overview);
    }
    field::door(key).or_else(|| share::door(key)).map_or(Move::Stay, Move::Go)
}
