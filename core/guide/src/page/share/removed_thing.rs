//! One thing that was removed: bringing it back, or, where others changed it since, removing it again or leaving it.

use facts::fact::{Edit, Removal, SubjectId};
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, Teller};

pub(crate) fn show(scene: &Scene<'_>, subject: SubjectId) -> Screen {
    let teller = Teller::of(scene);
    let title = teller.thing(subject);
    let mut sketch = Sketch::new(scene.language, scene.pending(), &title);
    match scene.ledger.removal(subject) {
        Removal::Present => sketch.words(WordsRole::Lead, &Phrase::new("share-is-there")),
        Removal::Removed { fact, .. } => {
            let by = Phrase::new("share-removed-by").phrase("by", teller.by(fact));
            sketch.words(WordsRole::Lead, &by);
            sketch.words(WordsRole::Plain, &Phrase::new("share-bring-back-how"));
            sketch.press(&Key::Back, &Phrase::new("share-bring-back"), PressWeight::Main);
        }
        Removal::ChangedSince { removed, changed } => {
            sketch.words(WordsRole::Lead, &Phrase::new("share-changed-since"));
            let rows: Vec<RowEntry> = removed
                .into_iter()
                .chain(changed)
                .take(100)
                .map(|fact| sketch.row(None, &teller.by(fact), Some(&teller.fact(fact)), None))
                .collect();
            sketch.rows(&Phrase::new("share-changed-rows"), rows);
            sketch.press(&Key::Back, &Phrase::new("share-keep-it"), PressWeight::Main);
            sketch.press(&Key::Remove, &Phrase::new("share-remove-again"), PressWeight::Other);
        }
    }
    sketch.press(&Key::Story, &Phrase::new("share-whole-thing"), PressWeight::Other);
    sketch.press(&Key::List, &Phrase::new("share-removed"), PressWeight::Quiet);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, subject: SubjectId, done: &Done) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    let (edit, done) = match key {
        Key::Back => (Edit::bring_back(subject), "share-was-brought-back"),
        Key::Remove => (session.open_survey()?.store.ledger().remove(subject), "share-was-removed"),
        Key::Story => return Ok(Move::Go(Place::Share(SharePlace::Thing(subject)))),
        Key::List => return Ok(Move::Swap(Place::Share(SharePlace::Removed))),
        _ => return Ok(Move::Stay),
    };
    session.open_survey()?.write(&[edit])?;
    let thing = session.with_scene(|scene| Teller::of(scene).thing(subject))?;
    session.tell_done(Phrase::new(done).phrase("thing", thing));
    Ok(Move::Swap(Place::Share(SharePlace::Removed)))
}
