//! What people said differently: one row each.

use facts::fact::{Disagreement, Fact};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, Teller, paging};

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let title = Phrase::new("share-disagreements");
    let mut sketch = Sketch::new(scene.language, scene.pending(), &title);
    let teller = Teller::of(scene);
    let found = scene.ledger.disagreements();
    if found.is_empty() {
        sketch.words(WordsRole::Lead, &Phrase::new("share-all-settled"));
    } else {
        sketch.words(WordsRole::Lead, &Phrase::new("share-disagreements-lead"));
    }
    let rows: Vec<RowEntry> = found
        .iter()
        .enumerate()
        .skip(paging::first(scene.pending()))
        .take(paging::ROWS)
        .map(|(place, found)| {
            let key = Some(Key::SettleNth(place));
            let about = teller.about(found.subject, found.field);
            sketch.row(key, &about, Some(&said(&teller, found)), None).ticked(false)
        })
        .collect();
    sketch.rows(&Phrase::new("share-disagreements-rows"), rows);
    paging::presses(&mut sketch, found.len());
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// Who said what, side by side.
fn said(teller: &Teller<'_>, found: &Disagreement<'_>) -> Phrase {
    let side = |side: &&Fact| {
        let side = Phrase::new("disagreement-side")
            .phrase("author", teller.author(side.by()))
            .phrase("value", teller.value(found.field, side.value()));
        Arg::Phrase(Box::new(side))
    };
    let sides = found.sides.iter().map(side).collect();
    Phrase::new("value-several").with("several", Arg::Several(sides))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let Done::Press(Key::SettleNth(place)) = done else { return Ok(Move::Stay) };
    let about = session.with_scene(|scene| {
        let found = scene.ledger.disagreements().into_iter().nth(*place)?;
        Some((found.subject, found.field.to_owned()))
    })?;
    Ok(about.map_or(Move::Stay, |(subject, field)| {
        Move::Go(Place::Share(SharePlace::Disagreement(subject, field)))
    }))
}
