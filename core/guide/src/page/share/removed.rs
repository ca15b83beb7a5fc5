//! What was removed, and what was changed by others after somebody removed it.

use facts::act::{changed_after_removal, removed};
use facts::fact::SubjectId;
use phrase::Phrase;

use super::act::thing_of;
use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let title = Phrase::new("share-removed");
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let teller = StoryTeller::of(snapshot);
    let (changed, gone) = (changed_after_removal(snapshot.ledger), removed(snapshot.ledger));
    let lead =
        if changed.is_empty() && gone.is_empty() { "share-removed-none" } else { "share-removed-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    let row = |builder: &ScreenBuilder<'_>, subject: SubjectId, by: Phrase| {
        builder.row(Some(Key::Thing(subject)), &teller.thing(subject), Some(&by), None)
    };
    // To be looked at first; more of them than a page holds are seen when the first are settled.
    let flagged: Vec<RowEntry> = changed
        .iter()
        .take(paging::ROWS / 2)
        .filter_map(|thing| {
            let (remover, changer) = (thing.removed.last()?, thing.changed.last()?);
            let by = Phrase::new("share-removed-and-changed")
                .phrase("remover", teller.author(remover.by()))
                .phrase("changer", teller.author(changer.by()));
            Some(row(&builder, thing.subject, by))
        })
        .collect();
    builder.rows(&Phrase::new("share-changed-after"), flagged);
    let rows: Vec<RowEntry> = gone
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .map(|thing| row(&builder, thing.subject, teller.by(thing.fact)))
        .collect();
    builder.rows(&Phrase::new("share-removed-rows"), rows);
    paging::presses(&mut builder, gone.len());
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(done: &Done) -> Move {
    thing_of(done).map_or(Move::Stay, |thing| Move::Go(Place::Share(SharePlace::RemovedThing(thing))))
}
