//! What was said about one thing: a row for each field, as it stands, by whom.

use facts::fact::{FORGET, REMOVED, SubjectId};
use house::record::field;
use house::story;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::Scene;
use crate::view::{Sketch, Teller, paging};

pub(crate) fn show(scene: &Scene<'_>, subject: SubjectId) -> Screen {
    let teller = Teller::of(scene);
    let mut sketch = Sketch::new(scene.language, scene.pending(), &teller.thing(subject));
    let mut fields: Vec<&str> = scene.ledger.fields(subject).filter(|name| *name != FORGET).collect();
    // What it is stands first.
    fields.sort_by_key(|name| *name != field::IS);
    let lead = if fields.is_empty() { "share-nothing-said" } else { "share-thing-lead" };
    sketch.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = fields
        .iter()
        .skip(paging::first(scene.pending()))
        .take(paging::ROWS)
        .filter_map(|name| row(scene, &sketch, &teller, subject, name))
        .collect();
    sketch.rows(&Phrase::new("share-thing-rows"), rows);
    paging::presses(&mut sketch, fields.len());
    // A survey as a whole is deleted, not forgotten.
    if subject != scene.survey.id && can_forget(scene, subject, None) {
        sketch.press(&Key::Forget, &Phrase::new("forget-thing"), PressWeight::Quiet);
    }
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// Whether anything stands there that could be forgotten.
pub(super) fn can_forget(scene: &Scene<'_>, subject: SubjectId, name: Option<&str>) -> bool {
    forgettable(scene, subject, name) > 0
}

/// How many facts would be forgotten, at least: a picture that was taken in twice goes twice.
pub(super) fn forgettable(scene: &Scene<'_>, subject: SubjectId, name: Option<&str>) -> usize {
    let fields = scene.ledger.fields(subject).filter(|field| name.is_none_or(|name| name == *field));
    let facts = fields.flat_map(|field| scene.ledger.history(subject, field));
    facts.filter(|fact| !fact.is_forgotten() && fact.field() != FORGET).count()
}

fn row(
    scene: &Scene<'_>,
    sketch: &Sketch<'_>,
    teller: &Teller<'_>,
    subject: SubjectId,
    name: &str,
) -> Option<RowEntry> {
    let shown = scene.ledger.shown(subject, name)?;
    let (head, says) = match name {
        field::IS | REMOVED => (teller.fact(shown), None),
        _ if scene.ledger.disagreement(subject, name).is_some() => {
            (story::field_name(name), Some(Phrase::new("share-said-differently")))
        }
        _ if shown.is_forgotten() => (story::field_name(name), Some(Phrase::new("share-is-forgotten"))),
        _ => (story::field_name(name), Some(teller.value(name, shown.value()))),
    };
    let before = scene.ledger.history(subject, name).len().saturating_sub(1);
    let remark = Phrase::new("share-by-and-before")
        .phrase("by", teller.by(shown))
        .with("before", Arg::Count(before as u64));
    Some(sketch.row(Some(Key::FieldOf(name.to_owned())), &head, says.as_ref(), Some(&remark)))
}

pub(crate) fn take(subject: SubjectId, done: &Done) -> Move {
    let Done::Press(key) = done else { return Move::Stay };
    let place = match key {
        Key::FieldOf(name) => SharePlace::Field(subject, name.clone()),
        Key::Forget => SharePlace::Forget(subject, None),
        _ => return Move::Stay,
    };
    Move::Go(Place::Share(place))
}
