//! The surveys again, to put them in order: a row leads to what can be done with one.

use phrase::Phrase;

use crate::done::Done;
use crate::place::{Key, Move};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Session;
use crate::view::{ScreenBuilder, survey_list};

pub(crate) fn show(session: &Session) -> Screen {
    let title = Phrase::new("surveys-order-title");
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &title);
    builder.words(WordsRole::Lead, &Phrase::new("surveys-order-lead"));
    let none = Phrase::new("surveys-none");
    survey_list::list(session, &mut builder, &session.listing.surveys, Key::Survey, &none);
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Move {
    survey_list::take_in_list(session, done, |listing| &listing.surveys)
}
