//! What was removed, to be brought back.

use survey::fact::Edit;
use survey::story;
use survey::words::Phrase;

use super::{finder::ROWS, sketch, undo, write};
use crate::ask::Answer;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, key_of, subject_of};
use crate::scene::Scene;
use crate::screen::WordsRole;
use crate::sketch::Sketch;

pub(super) fn show<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let mut sketch = sketch(scene, &Phrase::new("free-removed"));
    let removed = story::removed(scene.ledger);
    let lead = if removed.is_empty() { "free-removed-none" } else { "free-removed-lead" };
    sketch.words(WordsRole::Lead, &Phrase::new(lead));
    let row = |thing: &story::RemovedThing<'_>| {
        let words = story::removal(scene.ledger, undo::named(scene, thing.subject), thing.fact, scene.me);
        sketch.row(Some(key_of("back", thing.subject)), &words, None, None)
    };
    let rows = removed.iter().take(ROWS).map(row).collect();
    sketch.rows(&Phrase::new("free-removed-rows"), rows);
    sketch
}

pub(super) fn pressed(guide: &mut Guide, key: &str) -> Result<Move> {
    if let Some(subject) = subject_of(key, "back") {
        let there = guide
            .with_scene(|scene| story::removed(scene.ledger).iter().any(|thing| thing.subject == subject))?;
        if there {
            write(guide, Ok(Answer { edits: vec![Edit::bring_back(subject)], then: None }))?;
        }
    }
    Ok(Move::Stay)
}
