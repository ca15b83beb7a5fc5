//! While a file is read or written, which takes a while, and when that is over.

use phrase::Phrase;
use telling::words::error::InWords;

use crate::error::{GuideError, Trouble};
use crate::place::{Key, Place};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Errand, Session};
use crate::view::{Sketch, trail};

pub(crate) fn show(session: &Session, errand: &Errand) -> Screen {
    let doing = errand.doing.phrase();
    let mut sketch = Sketch::new(session.language(), session.pending(), &doing);
    match errand.outcome() {
        None => {
            let (work, stop) = (errand.work(), Phrase::new("errand-stop"));
            sketch.how_far(&doing, work.progress(), (&Key::ErrandStop, &stop), work.is_stopped());
            let says =
                if work.is_stopped() { Phrase::new("errand-stopping") } else { doing.attribute("stop") };
            sketch.words(WordsRole::Why, &says);
        }
        Some(outcome) => {
            let id = match outcome {
                Ok(_) => "errand-over",
                Err(GuideError::Trouble(Trouble::Stopped)) => "errand-is-stopped",
                Err(_) => "errand-failed",
            };
            sketch.words(WordsRole::Lead, &Phrase::new(id));
            if let Err(error) = outcome
                && !matches!(error, GuideError::Trouble(Trouble::Stopped))
            {
                sketch.words(WordsRole::Problem, &error.phrase());
            }
            sketch.press(&Key::ErrandOn, &Phrase::new("errand-on"), PressWeight::Main);
        }
    }
    let mut screen = sketch.screen;
    // Outside any survey there is none.
    screen.trail = session.with_scene(|scene| trail(scene, &Place::Overview)).unwrap_or_default();
    screen.back = true;
    screen
}
