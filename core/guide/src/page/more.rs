//! What is wanted more rarely than what stands on the overview: lists of things, and what was said when.

use phrase::Phrase;

use super::doors::{Doors, field, share};
use crate::done::Done;
use crate::place::{Key, Move, Place};
use crate::screen::{PressWeight, Screen};
use crate::session::Scene;
use crate::view::Sketch;

/// The rows that stand here rather than on the overview; what is to be settled stands there as long as there is any.
pub(super) fn is_rare(scene: &Scene<'_>, key: &Key) -> bool {
    match key {
        Key::FreeRuns | Key::FreeRooms | Key::FreeServices | Key::Acts | Key::Things | Key::Removed => true,
        Key::Disagreements => scene.ledger.disagreements().is_empty(),
        _ => false,
    }
}

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("more"));
    for (name, doors) in [("more-things", field::doors(scene)), ("overview-share", share::doors(scene))] {
        rows(&mut sketch, name, doors.into_iter().filter(|(key, ..)| is_rare(scene, key)).collect());
    }
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// Rows that lead to screens, under their name.
pub(super) fn rows(sketch: &mut Sketch<'_>, name: &str, doors: Doors) {
    let row =
        |(key, head, says): (Key, Phrase, Option<Phrase>)| sketch.row(Some(key), &head, says.as_ref(), None);
    let rows = doors.into_iter().map(row).collect();
    sketch.rows(&Phrase::new(name), rows);
}

pub(crate) fn take(done: &Done) -> Move {
    let Some(key) = done.pressed() else { return Move::Stay };
    if *key == Key::Overview {
        return Move::Go(Place::Overview);
    }
    field::door(key).or_else(|| share::door(key)).map_or(Move::Stay, Move::Go)
}
