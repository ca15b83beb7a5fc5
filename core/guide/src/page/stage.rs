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
    let legs: Vec<_> = journey(scene).into_iter().filter(|leg| leg.question.stage() == stage).collect();
    let first = paging::first(scene.pending());
    let rows: Vec<RowEntry> = legs
        .iter()
        .enumerate()
        .skip(first)
        .take(paging::ROWS)
        .map(|(place, leg)| {
            let says = Phrase::new(if leg.answered { "answered" } else { "open" });
            let head = leg.question.phrase(scene).attribute("title");
            sketch.row(Some(Key::AskNth(place)), &head, Some(&says), None).to_do(leg.answered)
        })
        .collect();
    sketch.rows(&Phrase::new("stage-questions"), rows);
    paging::presses(&mut sketch, legs.len());
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, stage: Stage, done: &Done) -> Result<Move> {
    let Some(key) = done.pressed() else { return Ok(Move::Stay) };
    match key {
        Key::Overview => Ok(Move::Go(Place::Overview)),
        Key::AskNth(place) => {
            let question = session.with_scene(|scene| {
                let mut legs = journey(scene).into_iter().filter(|leg| leg.question.stage() == stage);
                legs.nth(*place).map(|leg| leg.question)
            })?;
            Ok(question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question))))
        }
        key => {
            paging::turn(&mut session.open_survey()?.memory.pending, key);
            Ok(Move::Stay)
        }
    }
}
