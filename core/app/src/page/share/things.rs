//! Everything that something was said about: a row leads to its story.

use survey::fact::{AuthorId, SubjectId};
use survey::record::Survey;
use survey::words::Phrase;

use super::SharePlace;
use super::act::thing_of;
use super::teller::Teller;
use crate::deed::Deed;
use crate::page::paging;
use crate::place::{Move, Place, key_of};
use crate::scene::Scene;
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(scene: &Scene<'_>) -> Screen {
    let title = Phrase::new("share-things");
    let mut sketch = Sketch::new(scene.language, scene.pending(), "share-things", &title);
    sketch.words(WordsRole::Lead, &Phrase::new("share-things-lead"));
    let teller = Teller::of(scene);
    let mut things = things(scene.survey);
    // Only where somebody said a name is there a story to tell.
    let named = |(subject, _): &(&SubjectId, &AuthorId)| scene.ledger.fields(**subject).next().is_some();
    things.extend(teller.authors().iter().filter(named).map(|(subject, _)| *subject));
    let rows: Vec<RowEntry> = things
        .iter()
        .skip(paging::first(scene.pending()))
        .take(paging::ROWS)
        .map(|subject| {
            let is_author = teller.authors().contains_key(subject);
            let says = is_author.then(|| Phrase::new("share-who-writes"));
            sketch.row(Some(key_of("thing", *subject)), &teller.thing(*subject), says.as_ref(), None)
        })
        .collect();
    sketch.rows(&Phrase::new("share-things-rows"), rows);
    paging::presses(&mut sketch, things.len());
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// The survey and all that is shown of it, kind by kind.
fn things(survey: &Survey) -> Vec<SubjectId> {
    let mut things = vec![survey.id];
    things.extend(survey.rooms.keys());
    things.extend(survey.services.keys());
    things.extend(survey.parts.keys());
    things.extend(survey.runs.keys());
    things.extend(survey.readings.keys());
    things.extend(survey.works.keys());
    things.extend(survey.notes.keys());
    things.extend(survey.photos.keys());
    things
}

pub(super) fn take(deed: &Deed) -> Move {
    thing_of(deed).map_or(Move::Stay, |thing| Move::Go(Place::Share(SharePlace::Thing(thing))))
}
