//! All that was ever said about one field, oldest first.

use facts::fact::SubjectId;
use phrase::Phrase;
use telling::words::date_and_time;

use super::acts::act_of;
use super::thing_story::can_forget;
use crate::deed::Deed;
use crate::place::{Move, Place, SharePlace, key_of};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::Scene;
use crate::view::{Sketch, Teller, paging};

pub(crate) fn show(scene: &Scene<'_>, subject: SubjectId, name: &str) -> Screen {
    let teller = Teller::of(scene);
    let title = teller.about(subject, name);
    let mut sketch = Sketch::new(scene.language, scene.pending(), &title);
    let story = facts::act::of_field(scene.ledger, subject, name);
    let lead = if story.is_empty() { "share-nothing-said" } else { "share-field-lead" };
    sketch.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = story
        .iter()
        .skip(paging::first(scene.pending()))
        .take(paging::ROWS)
        .map(|said| {
            let until = said.replaced_by.last().map(|later| {
                Phrase::new("share-until")
                    .phrase("author", teller.author(later.by()))
                    .text("when", date_and_time(later.id().ms()))
            });
            let key = Some(format!("act:{}", said.fact.act()));
            let says = teller.fact(said.fact);
            sketch.row(key, &teller.by(said.fact), Some(&says), until.as_ref())
        })
        .collect();
    sketch.rows(&Phrase::new("share-field-rows"), rows);
    paging::presses(&mut sketch, story.len());
    if scene.ledger.disagreement(subject, name).is_some() {
        sketch.press("settle", &Phrase::new("share-go-settle"), PressWeight::Main);
    }
    sketch.press(&key_of("thing", subject), &Phrase::new("share-whole-thing"), PressWeight::Other);
    // Without its kind nobody would know what it is: that goes only with the whole.
    if name != house::record::field::IS && can_forget(scene, subject, Some(name)) {
        sketch.press("forget", &Phrase::new("forget-field"), PressWeight::Quiet);
    }
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(subject: SubjectId, name: &str, deed: &Deed) -> Move {
    if let Some(act) = act_of(deed) {
        return Move::Go(Place::Share(SharePlace::Act(act)));
    }
    let Deed::Press { key } = deed else { return Move::Stay };
    let place = match key.as_str() {
        "settle" => SharePlace::Disagreement(subject, name.to_owned()),
        "forget" => SharePlace::Forget(subject, Some(name.to_owned())),
        key if *key == key_of("thing", subject) => SharePlace::Thing(subject),
        _ => return Move::Stay,
    };
    Move::Go(Place::Share(place))
}
