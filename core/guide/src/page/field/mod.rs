//! Field work without being led: parts, photos in a row, readings; any stage, any order.
//!
//! A screen here is a file with `show` and `pressed`. What is typed or chosen is kept by [`frame::take`]; the last act of
//! this device can be taken back from every one of them.

pub(crate) mod add;
pub(crate) mod assign;
pub(crate) mod burst;
mod card;
pub(crate) mod edit;
mod finder;
pub(crate) mod frame;
pub(crate) mod here;
pub(crate) mod meter;
pub(crate) mod part;
pub(crate) mod photo;
mod reading;
pub(crate) mod room;
pub(crate) mod run;
pub(crate) mod service;
mod service_edits;
mod undo;

use phrase::Phrase;

use crate::error::Result;
use crate::place::{FieldPlace, Move, Place};
use crate::question::{Answer, Told};
use crate::screen::WordsRole;
use crate::session::{Pending, Session, SurveySnapshot};
use crate::view::ScreenBuilder;

/// Writes an answer as one act, or says what is wrong with it; returns whether it was written.
fn write(session: &mut Session, told: Told<Answer>) -> Result<bool> {
    match told {
        Ok(answer) => {
            session.open_survey()?.write(&answer.edits)?;
            Ok(true)
        }
        Err(problem) => {
            session.tell(problem);
            Ok(false)
        }
    }
}

/// Forgets what the screen was given: it has become an answer.
fn clear(session: &mut Session) -> Result<()> {
    session.open_survey()?.memory.pending = Pending::default();
    Ok(())
}

fn go(place: FieldPlace) -> Move {
    Move::Go(Place::Field(place))
}

/// An empty screen of this folder.
fn builder<'a>(snapshot: &SurveySnapshot<'a>, title: &Phrase) -> ScreenBuilder<'a> {
    ScreenBuilder::new(snapshot.language, snapshot.pending(), title)
}

/// A screen about a thing that is not there any more.
fn gone<'a>(snapshot: &SurveySnapshot<'a>, id: &str) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new(format!("{id}.gone")));
    builder.words(WordsRole::Problem, &Phrase::new("free-gone"));
    builder
}

/// The words of an optional text.
fn text(words: &str) -> Phrase {
    Phrase::new("text").text("text", words)
}
