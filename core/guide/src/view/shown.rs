//! Long lists in pages, and names of rooms and outlets.

use facts::fact::SubjectId;
use house::naming;
use house::record::Survey;
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::screen::PressWeight;
use crate::session::{Scene, Session};
use crate::view::Sketch;

/// Rows of one page.
pub(crate) const ROWS: usize = 100;

/// Which page of a long list is shown, 0 first.
pub(crate) fn page(scene: &Scene<'_>, of: usize) -> usize {
    let page = scene.pending().written("page").and_then(|page| page.parse().ok()).unwrap_or(0);
    page.min(of.saturating_sub(1) / ROWS)
}

/// The presses that turn the page of a list of so many rows.
pub(crate) fn turn(scene: &Scene<'_>, sketch: &mut Sketch<'_>, of: usize) {
    let page = page(scene, of);
    if of > (page + 1) * ROWS {
        sketch.press("more", &Phrase::new("more-rows"), PressWeight::Other);
    }
    if page > 0 {
        sketch.press("first", &Phrase::new("first-rows"), PressWeight::Other);
    }
}

/// Turns the page.
pub(crate) fn turned(guide: &mut Session, key: &str) -> Result<()> {
    let now = guide.with_scene(|scene| page(scene, usize::MAX))?;
    let page = if key == "more" { now + 1 } else { 0 };
    let words = page.to_string();
    guide.open_survey()?.memory.pending.keep(&Deed::Write { key: "page".into(), words });
    Ok(())
}

/// An outlet by its room's name, where that is the only one of the room; else by its own.
pub(crate) fn outlet(survey: &Survey, outlet: SubjectId) -> Phrase {
    let Some(part) = survey.parts.get(&outlet) else { return naming::part(survey, outlet) };
    let alone = survey.parts.values().filter(|other| other.kind == part.kind && other.room == part.room);
    match survey.room_of(part) {
        Some(room) if !room.name.trim().is_empty() && alone.count() == 1 => {
            Phrase::new("text").text("text", &room.name)
        }
        _ => naming::of_part(survey, part),
    }
}
