//! While a file is read or written, which takes a while, and when that is over.

use phrase::Phrase;
use telling::words::error::InWords;

use crate::error::{GuideError, Trouble};
use crate::place::{Key, Place};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{SentWork, Session};
use crate::view::{ScreenBuilder, trail};

pub(crate) fn show(session: &Session, sent_work: &SentWork) -> Screen {
    let kind = sent_work.kind.phrase();
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &kind);
    match sent_work.outcome() {
        None => {
            let (work, stop) = (sent_work.work(), Phrase::new("long-work-stop"));
            builder.how_far(&kind, work.progress(), (&Key::WorkStop, &stop), work.is_stopped());
            let says =
                if work.is_stopped() { Phrase::new("long-work-stopping") } else { kind.attribute("stop") };
            builder.words(WordsRole::Why, &says);
        }
        Some(outcome) => {
            let id = match outcome {
                Ok(_) => "long-work-over",
                Err(GuideError::Trouble(Trouble::Stopped)) => "long-work-is-stopped",
                Err(_) => "long-work-failed",
            };
            builder.words(WordsRole::Lead, &Phrase::new(id));
            if let Err(error) = outcome
                && !matches!(error, GuideError::Trouble(Trouble::Stopped))
            {
                builder.words(WordsRole::Problem, &error.phrase());
            }
            builder.press(&Key::WorkOn, &Phrase::new("long-work-on"), PressWeight::Main);
        }
    }
    let mut screen = builder.screen;
    // Outside any survey there is none.
    screen.trail = session.with_snapshot(|snapshot| trail(snapshot, &Place::Overview)).unwrap_or_default();
    screen.back = true;
    screen
}
