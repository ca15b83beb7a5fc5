//! The questions of one stage, answered or not, in pages.

use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, Stage};
use crate::question::journey;
use crate::screen::{PressWeight, RowEntry, Screen};
use crate::session::{Scene, Session};
use crate::view::{Sketch, paging};

pub(crate) fn show(scene: &Scene<'_>, stage: Stage) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &stage.phrase());
    let questions: Vec<_> =
        journey(scene).into_iter().filter(|on_way| on_way.question.stage() == stage).collect();
    let first = paging::first(scene.pending());
    let rows: Vec<RowEntry> = questions
        .iter()
        .enumerate()
        .skip(first)
        .take(paging::ROWS)
        .map(|(place, on_way)| {
            let says = Phrase::new(if on_way.answered { "answered" } else { "open" });
            let head = on_way.question.phrase(scene).attribute("title");
            sketch.row(Some(Key::AskNth(place)), &head, Some(&says), None).ticked(on_way.answered)
        })
        .collect();
    sketch.rows(&Phrase::new("stage-questions"), rows);
    paging::presses(&mut sketch, questions.len());
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, stage: Stage, done: &Done) -> Result<Move> {
    let Some(key) = done.pressed() else { return Ok(Move::Stay) };
    match key {
        Key::Overview => Ok(Move::Go(Place::Overview)),
        Key::AskNth(place) => {
            let question = session.with_scene(|scene| {
                let mut questions =
                    journey(scene).into_iter().filter(|on_way| on_way.question.stage() == stage);
                questions.nth(*place).map(|on_way| on_way.question)
            })?;
            Ok(question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question))))
        }
        key => {
            paging::turn(&mut session.open_survey()?.memory.pending, key);
            Ok(Move::Stay)
        }
    }
}
