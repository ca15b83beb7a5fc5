//! What was put off, to be taken up again.

use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::Sketch;

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("put-off"));
    sketch.words(WordsRole::Lead, &Phrase::new("put-off-lead"));
    let standing = scene.memory.later.iter().enumerate().filter(|(_, question)| question.stands(scene));
    let rows: Vec<RowEntry> = standing
        .take(100)
        .map(|(place, question)| {
            let head = question.phrase(scene).attribute("title");
            sketch.row(Some(Key::AskNth(place)), &head, None, None).ticked(false)
        })
        .collect();
    sketch.rows(&Phrase::new("put-off-questions"), rows);
    sketch.press(&Key::All, &Phrase::new("put-off-all"), PressWeight::Main);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Some(key) = done.pressed() else { return Ok(Move::Stay) };
    let memory = &mut session.open_survey()?.memory;
    Ok(match key {
        Key::Overview => Move::Go(Place::Overview),
        Key::All => {
            memory.later.clear();
            Move::Next
        }
        Key::AskNth(place) => {
            let question = memory.later.iter().nth(*place).cloned();
            question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question)))
        }
        _ => Move::Stay,
    })
}
