//! The questions of one stage, answered or not, in pages.

use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Place, Stage};
use crate::question::journey;
use crate::screen::{PressWeight, RowEntry, Screen};
use crate::session::{Scene, Session};
use crate::view::Sketch;

/// Rows of one page.
const ROWS: usize = 100;

pub(crate) fn show(scene: &Scene<'_>, stage: Stage) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &stage.phrase());
    let legs: Vec<_> = journey(scene).into_iter().filter(|leg| leg.question.stage() == stage).collect();
    let first = page(scene);
    let rows: Vec<RowEntry> = legs
        .iter()
        .enumerate()
        .skip(first * ROWS)
        .take(ROWS)
        .map(|(place, leg)| {
            let says = Phrase::new(if leg.answered { "answered" } else { "open" });
            let head = leg.question.phrase(scene).attribute("title");
            sketch.row(Some(format!("ask:{place}")), &head, Some(&says), None).ticked(leg.answered)
        })
        .collect();
    sketch.rows(&Phrase::new("stage-questions"), rows);
    if legs.len() > (first + 1) * ROWS {
        sketch.press("more", &Phrase::new("more-rows"), PressWeight::Other);
    }
    if first > 0 {
        sketch.press("first", &Phrase::new("first-rows"), PressWeight::Other);
    }
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

fn page(scene: &Scene<'_>) -> usize {
    scene.pending().written("page").and_then(|page| page.parse().ok()).unwrap_or(0)
}

pub(crate) fn take(session: &mut Session, stage: Stage, deed: &Deed) -> Result<Move> {
    let Some(key) = deed.key() else { return Ok(Move::Stay) };
    match key {
        "overview" => Ok(Move::Go(Place::Overview)),
        "more" | "first" => {
            let page = session.with_scene(page)?;
            let page = if key == "more" { page + 1 } else { 0 };
            session
                .open_survey()?
                .memory
                .pending
                .keep(&Deed::Write { key: "page".into(), words: page.to_string() });
            Ok(Move::Stay)
        }
        key => {
            let place = key.strip_prefix("ask:").and_then(|place| place.parse::<usize>().ok());
            let question = session.with_scene(|scene| {
                let mut legs = journey(scene).into_iter().filter(|leg| leg.question.stage() == stage);
                place.and_then(|place| legs.nth(place)).map(|leg| leg.question)
            })?;
            Ok(question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question))))
        }
    }
}
