//! Starting where one stands: a locked cupboard keeps nobody from the rest.

use facts::fact::SubjectId;
use house::naming;
use house::record::PartKind;
use phrase::Phrase;

use super::{FieldPlace, add, gone, questions, sketch, write};
use crate::ask::Question;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, Place};
use crate::scene::Scene;
use crate::screen::{PressWeight, WordsRole};
use crate::sketch::Sketch;

/// What one may stand in front of.
const AT: [(&str, PartKind); 4] = [
    ("outlet", PartKind::Outlet),
    ("splitter", PartKind::Splitter),
    ("amplifier", PartKind::Amplifier),
    ("other", PartKind::Unknown),
];

pub(super) fn show<'a>(scene: &Scene<'a>) -> Sketch<'a> {
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

pub(super) fn pressed(guide: &mut Guide, key: &str) -> Result<Move> {
    let Some(at) = key.strip_prefix("at:") else { return Ok(Move::Stay) };
    if at == "entry" {
        guide.open_survey()?.memory.later.remove(&Question::WaysIn);
        return Ok(Move::Swap(Place::Ask(Question::WaysIn)));
    }
    let Some((_, kind)) = AT.iter().find(|(of, _)| *of == at) else { return Ok(Move::Stay) };
    match guide.with_scene(|scene| add::loose(scene, *kind))? {
        Ok((answer, part)) => {
            write(guide, Ok(answer))?;
            guide.open_survey()?.memory.go(Place::Field(FieldPlace::Stand(part)));
            Ok(Move::Next)
        }
        Err(problem) => write(guide, Err(problem)).map(|_| Move::Stay),
    }
}

pub(super) fn show_stand<'a>(scene: &Scene<'a>, part: SubjectId) -> Sketch<'a> {
    if !scene.survey.parts.contains_key(&part) {
        return gone(scene, "free-part");
    }
    let mut sketch =
        sketch(scene, &Phrase::new("free-stand").phrase("part", naming::part(scene.survey, part)));
    questions::rows(scene, &mut sketch, part);
    sketch.press("next", &Phrase::new("go-on"), PressWeight::Main);
    sketch
}

pub(super) fn pressed_stand(guide: &mut Guide, part: SubjectId, key: &str) -> Result<Move> {
    if key == "next" {
        return Ok(Move::Next);
    }
    let asked = guide.with_scene(|scene| questions::pressed(scene, part, key))?;
    Ok(asked.unwrap_or(Move::Stay))
}
