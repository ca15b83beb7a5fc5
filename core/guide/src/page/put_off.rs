//! What was put off, to be taken up again.

use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place};
use crate::question::{is_answered, said};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("put-off"));
    builder.words(WordsRole::Lead, &Phrase::new("put-off-lead"));
    let standing = snapshot.memory.later.iter().enumerate().filter(|(_, question)| question.stands(snapshot));
    let rows: Vec<RowEntry> = standing
        .take(100)
        .map(|(place, question)| {
            let head = question.phrase(snapshot).attribute("title");
            let answered = is_answered(snapshot, question);
            let row = builder.row(Some(Key::AskNth(place)), &head, None, None).ticked(answered);
            RowEntry { says: said(snapshot, question, answered), ..row }
        })
        .collect();
    builder.rows(&Phrase::new("put-off-questions"), rows);
    builder.press(&Key::All, &Phrase::new("put-off-all"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Some(key) = done.pressed() else { return Ok(Move::Stay) };
    let memory = &mut session.open_survey()?.memory;
    Ok(match key {
        Key::Overview => Move::Go(Place::Overview),
        Key::All => {
            memory.later.clear();
            // Nothing is left on this list to come back to.
            memory.swap(Place::Overview);
            Move::Next
        }
        Key::AskNth(place) => {
            let question = memory.later.iter().nth(*place).cloned();
            question.map_or(Move::Stay, |question| Move::Go(Place::Ask(question)))
        }
        _ => Move::Stay,
    })
}
