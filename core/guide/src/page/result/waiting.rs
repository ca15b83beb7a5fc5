//! While something is worked out that takes a while, and where it was stopped.

use phrase::Phrase;
use telling::words::error::InWords;

use crate::place::Key;
use crate::screen::{PressWeight, WordsRole};
use crate::session::{LongWork, Scene, Standing, Worked};
use crate::view::Sketch;

/// What was worked out; else draws how far it is, or why it is not there, with a way on.
pub(super) fn worked<'a>(scene: &Scene<'a>, sketch: &mut Sketch<'_>) -> Option<&'a Worked> {
    match scene.standing {
        Standing::Ready(worked) => return Some(worked),
        Standing::Running(work) => how_far(sketch, work),
        Standing::Stopped => again(sketch, WordsRole::Lead, &Phrase::new("work-stopped")),
        Standing::NotBegun => again(sketch, WordsRole::Lead, &Phrase::new("work-not-begun")),
        Standing::Failed(error) => {
            let phrase = Phrase::new("work-failed").phrase("what", error.phrase());
            again(sketch, WordsRole::Problem, &phrase);
        }
    }
    None
}

fn how_far(sketch: &mut Sketch<'_>, work: &LongWork) {
    let (name, stop) = (Phrase::new("work-running"), Phrase::new("work-stop"));
    sketch.how_far(&name, work.progress(), (&Key::Stop, &stop), work.is_stopped());
    sketch.words(WordsRole::Why, &Phrase::new("work-running-why"));
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}

fn again(sketch: &mut Sketch<'_>, role: WordsRole, phrase: &Phrase) {
    sketch.words(role, phrase);
    sketch.press(&Key::WorkOut, &Phrase::new("work-out"), PressWeight::Main);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
}
