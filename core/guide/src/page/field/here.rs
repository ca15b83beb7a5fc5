//! Starting where one stands: a locked cupboard keeps nobody from the rest.

use facts::fact::SubjectId;
use house::naming;
use house::record::PartKind;
use phrase::Phrase;

use super::{add, builder, gone, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place, Question, StandsAt};
use crate::question::about;
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::ScreenBuilder;

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new("free-here"));
    builder.words(WordsRole::Lead, &Phrase::new("free-here-lead"));
    builder.words(WordsRole::Why, &Phrase::new("free-here-why"));
    let row = |at: &StandsAt| {
        let words = Phrase::new(format!("free-at-{}", at.word()));
        let about = words.attribute("about");
        let about = snapshot.language.knows(&about.id).then_some(about);
        builder.row(Some(Key::At(*at)), &words, about.as_ref(), None)
    };
    let rows = StandsAt::ALL.iter().map(row).collect();
    builder.rows(&Phrase::new("free-here-rows"), rows);
    builder
}

pub(crate) fn pressed(session: &mut Session, key: &Key) -> Result<Move> {
    let Key::At(at) = key else { return Ok(Move::Stay) };
    let kind = match at {
        StandsAt::Entry => {
            session.open_survey()?.memory.later.remove(&Question::WaysIn);
            return Ok(Move::Swap(Place::Ask(Question::WaysIn)));
        }
        StandsAt::Outlet => PartKind::Outlet,
        StandsAt::Splitter => PartKind::Splitter,
        StandsAt::Amplifier => PartKind::Amplifier,
        StandsAt::Other => PartKind::Unknown,
    };
    let (answer, part) = session.with_snapshot(|snapshot| add::loose(snapshot, kind))?;
    write(session, Ok(answer))?;
    session.open_survey()?.memory.go(Place::Field(FieldPlace::Stand(part)));
    Ok(Move::Next)
}

pub(crate) fn show_stand<'a>(snapshot: &SurveySnapshot<'a>, part: SubjectId) -> ScreenBuilder<'a> {
    if !snapshot.survey.parts.contains_key(&part) {
        return gone(snapshot, "free-part");
    }
    let mut builder =
        builder(snapshot, &Phrase::new("free-stand").phrase("part", naming::part(snapshot.survey, part)));
    about::rows(snapshot, &mut builder, part);
    builder.press(&Key::Next, &Phrase::new("go-on"), PressWeight::Main);
    builder
}

pub(crate) fn pressed_stand(session: &mut Session, part: SubjectId, key: &Key) -> Result<Move> {
    if *key == Key::Next {
        return Ok(Move::Next);
    }
    let asked = session.with_snapshot(|snapshot| about::pressed(snapshot, part, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}
