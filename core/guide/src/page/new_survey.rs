//! A new survey: its name, and where the house is.

use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{Session, Working};
use crate::view::ScreenBuilder;

pub(crate) fn show(session: &Session) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("new-survey"));
    builder.words(WordsRole::Lead, &Phrase::new("new-survey-lead"));
    builder.words(WordsRole::Why, &Phrase::new("new-survey-why"));
    builder.writing(
        &Key::Name,
        &Phrase::new("new-survey-name"),
        Some(&Phrase::new("new-survey-hint")),
        WritingKind::Name,
        "",
    );
    builder.press(&Key::Make, &Phrase::new("new-survey-make"), PressWeight::Main);
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Make) => {
            let name = session.pending().written(&Key::Name).unwrap_or_default().to_owned();
            if name.is_empty() {
                session.tell(Phrase::new("new-survey-no-name"));
                return Ok(Move::Stay);
            }
            // Whoever works freely sees the whole job first.
            let step = if session.device().working() == Working::Freely { Move::Stay } else { Move::Next };
            session.send_make(name, step)?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Out) => Ok(Move::Outside(Outside::Surveys)),
        _ => {
            session.keep_outside(done);
            Ok(Move::Stay)
        }
    }
}
