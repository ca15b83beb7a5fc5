//! The surveys that were set aside.

use phrase::Phrase;

use crate::done::Done;
use crate::place::{Key, Move};
use crate::screen::{PressWeight, Screen};
use crate::session::Session;
use crate::view::{ScreenBuilder, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let title = Phrase::new("surveys-aside");
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &title);
    let none = Phrase::new("surveys-aside-none");
    survey_list::list(session, &mut builder, &session.listing.set_aside, Key::Survey, &none);
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Move {
    survey_list::take_in_list(session, done, |listing| &listing.set_aside)
}
