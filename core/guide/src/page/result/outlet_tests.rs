//! The outlet test, room by room; and whether TV and modem are still fine.

use advice::verdict::is_a_speed;
use facts::fact::{Edit, SubjectId};
use house::record::field;
use phrase::{Arg, Phrase};

use super::still_fine::StillFine;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Choice, Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, shown, stages};

/// Whether TV and modem are still fine, as an answer about the survey.
const STILL_FINE: &str = "still-fine";

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("tests"));
    let outlets = stages::outlets(scene.survey);
    let id = if outlets.is_empty() { "tests-none" } else { "tests-lead" };
    sketch.words(WordsRole::Lead, &Phrase::new(id));
    if !outlets.is_empty() {
        sketch.words(WordsRole::Why, &Phrase::new("tests-why"));
    }
    let first = shown::page(scene, outlets.len()) * shown::ROWS;
    let rows =
        outlets.iter().skip(first).take(shown::ROWS).map(|outlet| row(scene, &sketch, *outlet)).collect();
    sketch.rows(&Phrase::new("tests-rooms"), rows);
    shown::turn(scene, &mut sketch, outlets.len());
    sketch.press(&Key::StillFine, &Phrase::new("tests-next"), PressWeight::Main);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

fn row(scene: &Scene<'_>, sketch: &Sketch<'_>, outlet: SubjectId) -> RowEntry {
    let survey = scene.survey;
    let told: Vec<_> = survey
        .readings_at(outlet)
        .filter(|reading| is_a_speed(reading.measured))
        .take(3)
        .map(|told| Arg::Phrase(Box::new(house::naming::reading(told.measured))))
        .collect();
    let is_tested = !told.is_empty();
    let says = if told.is_empty() {
        Phrase::new("tests-open")
    } else {
        Phrase::new("tests-told").with("told", Arg::Several(told))
    };
    let head = shown::outlet(survey, outlet);
    sketch.row(Some(Key::Test(outlet)), &head, Some(&says), None).ticked(is_tested)
}

pub(crate) fn show_still_fine(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("still-fine"));
    sketch.words(WordsRole::Lead, &Phrase::new("still-fine-ask"));
    sketch.words(WordsRole::Why, &Phrase::new("still-fine-why"));
    let asked = scene.survey.answer(scene.survey.id, STILL_FINE);
    let now = asked.and_then(|answer| StillFine::of(answer.as_str()?));
    StillFine::ask(&mut sketch, &Phrase::new("still-fine-ask"), now);
    if now == Some(StillFine::No) {
        sketch.words(WordsRole::Problem, &Phrase::new("still-fine-no"));
        sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    }
    // Not the main press: the answer itself leads on.
    sketch.press(&Key::Compare, &Phrase::new("to-compare"), PressWeight::Other);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take_still_fine(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Pick(_, picked) = done else { return Ok(Move::Stay) };
    let Some(told) = StillFine::picked(picked) else { return Ok(Move::Stay) };
    let open = session.open_survey()?;
    open.write(&[Edit::new(open.survey.id, field::asked_field(STILL_FINE), told.word())])?;
    let on = Move::Go(Place::Result(ResultPlace::Compare));
    Ok(if told == StillFine::No { Move::Stay } else { on })
}
