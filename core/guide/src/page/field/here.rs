//! Starting where one stands: a locked cupboard keeps nobody from the rest.

use facts::fact::SubjectId;
use house::naming;
use house::record::PartKind;
use phrase::Phrase;

use super::{add, gone, sketch, write};
use crate::error::Result;
use crate::place::{FieldPlace, Move, Place, Question};
use crate::question::about;
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Scene, Session};
use crate::view::Sketch;

/// What one may stand in front of.
const AT: [(&str, PartKind); 4] = [
    ("outlet", PartKind::Outlet),
    ("splitter", PartKind::Splitter),
    ("amplifier", PartKind::Amplifier),
    ("other", PartKind::Unknown),
];

pub(crate) fn show<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let mut sketch = sketch(scene, &Phrase::new("free-here"));
    sketch.words(WordsRole::Lead, &Phrase::new("free-here-lead"));
    sketch.words(WordsRole::Why, &Phrase::new("free-here-why"));
    let row = |key: &str| {
        let words = Phrase::new(format!("free-at-{key}"));
        let about = scene.language.knows(&format!("free-at-{key}.about")).then(|| words.attribute("about"));
        sketch.row(Some(format!("at:{key}")), &words, about.as_ref(), None)
    };
    let rows = AT.iter().map(|(key, _)| row(key)).chain([row("entry")]).collect();
    sketch.rows(&Phrase::new("free-here-rows"), rows);
    sketch
}

pub(crate) fn pressed(session: &mut Session, key: &str) -> Result<Move> {
    let Some(at) = key.strip_prefix("at:") else { return Ok(Move::Stay) };
    if at == "entry" {
        session.open_survey()?.memory.later.remove(&Question::WaysIn);
        return Ok(Move::Swap(Place::Ask(Question::WaysIn)));
    }
    let Some((_, kind)) = AT.iter().find(|(of, _)| *of == at) else { return Ok(Move::Stay) };
    match session.with_scene(|scene| add::loose(scene, *kind))? {
        Ok((answer, part)) => {
            write(session, Ok(answer))?;
            session.open_survey()?.memory.go(Place::Field(FieldPlace::Stand(part)));
            Ok(Move::Next)
        }
        Err(problem) => write(session, Err(problem)).map(|_| Move::Stay),
    }
}

pub(crate) fn show_stand<'a>(scene: &Scene<'a>, part: SubjectId) -> Sketch<'a> {
    if !scene.survey.parts.contains_key(&part) {
        return gone(scene, "free-part");
    }
    let mut sketch =
        sketch(scene, &Phrase::new("free-stand").phrase("part", naming::part(scene.survey, part)));
    about::rows(scene, &mut sketch, part);
    sketch.press("next", &Phrase::new("go-on"), PressWeight::Main);
    sketch
}

pub(crate) fn pressed_stand(session: &mut Session, part: SubjectId, key: &str) -> Result<Move> {
    if key == "next" {
        return Ok(Move::Next);
    }
    let asked = session.with_scene(|scene| about::pressed(scene, part, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}
