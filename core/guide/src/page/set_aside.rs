//! The surveys that were set aside.

use facts::home::Home;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move};
use crate::screen::{PressWeight, Screen};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let title = Phrase::new("surveys-aside");
    let mut sketch = Sketch::new(session.language(), session.pending(), &title);
    let none = Phrase::new("surveys-aside-none");
    survey_list::list(session, &mut sketch, session.home().set_aside_list(), Key::Survey, &none);
    sketch.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    survey_list::take_in_list(session, done, Home::set_aside_list)
}
