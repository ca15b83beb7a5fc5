//! The questions of one stage with what they are answered with, in pages. A touch on one leads to it, and its answer back.

use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, Stage};
use crate::question::{journey, said};
use crate::screen::{PressWeight, RowEntry, Screen};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, stage: Stage) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &stage.phrase());
    let questions: Vec<_> =
        journey(snapshot).into_iter().filter(|on_way| on_way.question.stage() == stage).collect();
    let first = paging::first(snapshot.pending());
    let rows: Vec<RowEntry> = questions
        .iter()
        .enumerate()
        .skip(first)
        .take(paging::ROWS)
        .map(|(place, on_way)| {
            let head = on_way.question.phrase(snapshot).attribute("title");
            let row = builder.row(Some(Key::AskNth(place)), &head, None, None).ticked(on_way.answered);
            RowEntry { says: said(snapshot, &on_way.question, on_way.answered), ..row }
        })
        .collect();
    builder.rows(&Phrase::new("stage-questions"), rows);
    paging::presses(&mut builder, questions.len());
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, stage: Stage, done: &Done) -> Result<Move> {
    let Some(key) = done.pressed() else { return Ok(Move::Stay) };
    match key {
        Key::Overview => Ok(Move::Go(Place::Overview)),
        Key::AskNth(place) => {
            let question = session.with_snapshot(|snapshot| {
                let mut questions =
                    journey(snapshot).into_iter().filter(|on_way| on_way.question.stage() == stage);
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
