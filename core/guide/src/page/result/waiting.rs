//! While something is worked out that takes a while, and where it was stopped.

use phrase::Phrase;
use telling::words::error::InWords;

use crate::place::Key;
use crate::screen::{PressWeight, WordsRole};
use crate::session::{LongWork, Standing, SurveySnapshot, Worked};
use crate::view::ScreenBuilder;

/// What was worked out; else draws how far it is, or why it is not there, with a way on.
pub(super) fn worked<'a>(
    snapshot: &SurveySnapshot<'a>,
    builder: &mut ScreenBuilder<'_>,
) -> Option<&'a Worked> {
    match snapshot.standing {
        Standing::Ready(worked) => return Some(worked),
        Standing::Running(work) => how_far(builder, work),
        Standing::Stopped => again(builder, WordsRole::Lead, &Phrase::new("work-stopped")),
        Standing::NotBegun => again(builder, WordsRole::Lead, &Phrase::new("work-not-begun")),
        Standing::Failed(error) => {
            let phrase = Phrase::new("work-failed").phrase("what", error.phrase());
            again(builder, WordsRole::Problem, &phrase);
        }
    }
    None
}

fn how_far(builder: &mut ScreenBuilder<'_>, work: &LongWork) {
    let (name, stop) = (Phrase::new("work-running"), Phrase::new("work-stop"));
    builder.how_far(&name, work.progress(), (&Key::Stop, &stop), work.is_stopped());
    builder.words(WordsRole::Why, &Phrase::new("work-running-why"));
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}

fn again(builder: &mut ScreenBuilder<'_>, role: WordsRole, phrase: &Phrase) {
    builder.words(role, phrase);
    builder.press(&Key::WorkOut, &Phrase::new("work-out"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}
