//! The surveys that were set aside.

use facts::home::Home;
use phrase::Phrase;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::Move;
use crate::screen::{PressWeight, Screen};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let title = Phrase::new("surveys-aside");
    let mut sketch = Sketch::new(session.language(), session.pending(), &title);
    let none = Phrase::new("surveys-aside-none");
    survey_list::list(session, &mut sketch, session.home().set_aside_list(), "survey", &none);
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, deed: &Deed) -> Result<Move> {
    survey_list::take_in_list(session, deed, Home::set_aside_list)
}
