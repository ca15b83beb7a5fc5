//! What was put off, to be taken up again.

use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place};
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
            sketch.row(Some(format!("ask:{place}")), &head, None, None).ticked(false)
        })
        .collect();
    sketch.rows(&Phrase::new("put-off-questions"), rows);
    sketch.press("all", &Phrase::new("put-off-all"), PressWeight::Main);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Result<Move> {
    let Some(key) = deed.key() else { return Ok(Move::Stay) };
    let memory = &mut session.open_survey()?.memory;
    Ok(match key {
        "overview" => Move::Go(Place::Overview),
        "all" => {
            memory.later.clear();
            Move::Next
        }
        key => {
            let place = key.strip_prefix("ask:").and_then(|place| place.parse::<usize>().ok());
            let question = place.and_then(|place| memory.later.iter().nth(place).cloned());
            question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question)))
        }
    })
}
