//! Starting where one stands: a locked cupboard keeps nobody from the rest.

use facts::fact::SubjectId;
use house::naming;
use house::record::PartKind;
use phrase::Phrase;

use super::{add, gone, sketch, write};
use crate::error::Result;
use crate::place::{FieldPlace, Key, Move, Place, Question, StandsAt};
use crate::question::about;
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Scene, Session};
use crate::view::Sketch;

pub(crate) fn show<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let mut sketch = sketch(scene, &Phrase::new("free-here"));
    sketch.words(WordsRole::Lead, &Phrase::new("free-here-lead"));
    sketch.words(WordsRole::Why, &Phrase::new("free-here-why"));
    let row = |at: &StandsAt| {
        let words = Phrase::new(format!("free-at-{}", at.word()));
        let about = words.attribute("about");
        let about = scene.language.knows(&about.id).then_some(about);
        sketch.row(Some(Key::At(*at)), &words, about.as_ref(), None)
    };
    let rows = StandsAt::ALL.iter().map(row).collect();
    sketch.rows(&Phrase::new("free-here-rows"), rows);
    sketch
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
    let (answer, part) = session.with_scene(|scene| add::loose(scene, kind))?;
    write(session, Ok(answer))?;
    session.open_survey()?.memory.go(Place::Field(FieldPlace::Stand(part)));
    Ok(Move::Next)
}

pub(crate) fn show_stand<'a>(scene: &Scene<'a>, part: SubjectId) -> Sketch<'a> {
    if !scene.survey.parts.contains_key(&part) {
        return gone(scene, "free-part");
    }
    let mut sketch =
        sketch(scene, &Phrase::new("free-stand").phrase("part", naming::part(scene.survey, part)));
    about::rows(scene, &mut sketch, part);
    sketch.press(&Key::Next, &Phrase::new("go-on"), PressWeight::Main);
    sketch
}

pub(crate) fn pressed_stand(session: &mut Session, part: SubjectId, key: &Key) -> Result<Move> {
    if *key == Key::Next {
        return Ok(Move::Next);
    }
    let asked = session.with_scene(|scene| about::pressed(scene, part, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}
