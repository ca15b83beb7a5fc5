//! The outlet test, room by room; and whether TV and modem are still fine.

use advice::verdict::{is_a_test, is_tested};
use facts::fact::SubjectId;
use house::record::Asked;
use phrase::{Arg, Phrase};

use super::still_fine::StillFine;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, ResultPlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, shown, stages};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("tests"));
    let outlets = stages::outlets(snapshot.survey);
    let id = if outlets.is_empty() { "tests-none" } else { "tests-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(id));
    if !outlets.is_empty() {
        builder.words(WordsRole::Why, &Phrase::new("tests-why"));
    }
    let first = shown::page(snapshot, outlets.len()) * shown::ROWS;
    let rows =
        outlets.iter().skip(first).take(shown::ROWS).map(|outlet| row(snapshot, &builder, *outlet)).collect();
    builder.rows(&Phrase::new("tests-rooms"), rows);
    shown::turn(snapshot, &mut builder, outlets.len());
    builder.press(&Key::StillFine, &Phrase::new("tests-next"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

fn row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, outlet: SubjectId) -> RowEntry {
    let survey = snapshot.survey;
    let told: Vec<_> = survey
        .readings_at(outlet)
        .filter(|reading| is_a_test(reading.measured))
        .take(3)
        .map(|told| Arg::Phrase(Box::new(house::naming::reading(told.measured))))
        .collect();
    // What was measured before work on this way is shown, and waits for another test.
    let is_tested = is_tested(survey, outlet);
    let says = if told.is_empty() {
        Phrase::new("tests-open")
    } else {
        Phrase::new("tests-told").with("told", Arg::Several(told))
    };
    let head = shown::outlet(survey, outlet);
    builder.row(Some(Key::Test(outlet)), &head, Some(&says), None).ticked(is_tested)
}

pub(crate) fn show_still_fine(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("still-fine"));
    builder.words(WordsRole::Lead, &Phrase::new("still-fine-ask"));
    builder.words(WordsRole::Why, &Phrase::new("still-fine-why"));
    let now = snapshot.survey.reply(snapshot.survey.id, Asked::StillFine).and_then(StillFine::of_reply);
    StillFine::ask(&mut builder, &Phrase::new("still-fine-ask"), now);
    if now == Some(StillFine::No) {
        builder.words(WordsRole::Problem, &Phrase::new("still-fine-no"));
        builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    }
    // Not the main press: the answer itself leads on.
    builder.press(&Key::Compare, &Phrase::new("to-compare"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take_still_fine(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Pick(_, picked) = done else { return Ok(Move::Stay) };
    let Some(told) = StillFine::picked(picked) else { return Ok(Move::Stay) };
    let open = session.open_survey()?;
    open.write(&[Asked::StillFine.set(open.survey.id, told.reply())])?;
    let on = Move::Go(Place::Result(ResultPlace::Compare));
    Ok(if told == StillFine::No { Move::Stay } else { on })
}
