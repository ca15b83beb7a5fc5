//! All that was ever said about one field, oldest first.

use facts::fact::SubjectId;
use phrase::Phrase;
use telling::words::date_and_time;

use super::acts::act_of;
use super::thing_story::can_forget;
use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, subject: SubjectId, name: &str) -> Screen {
    let teller = StoryTeller::of(snapshot);
    let title = teller.about(subject, name);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let story = facts::act::of_field(snapshot.ledger, subject, name);
    let lead = if story.is_empty() { "share-nothing-said" } else { "share-field-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = story
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .map(|said| {
            let until = said.replaced_by.last().map(|later| {
                Phrase::new("share-until")
                    .phrase("author", teller.author(later.by()))
                    .text("when", date_and_time(later.id().ms()))
            });
            let key = Some(Key::Act(said.fact.act()));
            let says = teller.fact(said.fact);
            builder.row(key, &teller.by(said.fact), Some(&says), until.as_ref())
        })
        .collect();
    builder.rows(&Phrase::new("share-field-rows"), rows);
    paging::presses(&mut builder, story.len());
    if snapshot.ledger.disagreement(subject, name).is_some() {
        builder.press(&Key::Settle, &Phrase::new("share-go-settle"), PressWeight::Main);
    }
    builder.press(&Key::Thing(subject), &Phrase::new("share-whole-thing"), PressWeight::Other);
    // Without its kind nobody would know what it is: that goes only with the whole.
    if name != house::record::field::IS && can_forget(snapshot, subject, Some(name)) {
        builder.press(&Key::Forget, &Phrase::new("forget-field"), PressWeight::Quiet);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(subject: SubjectId, name: &str, done: &Done) -> Move {
    if let Some(act) = act_of(done) {
        return Move::Go(Place::Share(SharePlace::Act(act)));
    }
    let Done::Press(key) = done else { return Move::Stay };
    let place = match key {
        Key::Settle => SharePlace::Disagreement(subject, name.to_owned()),
        Key::Forget => SharePlace::Forget(subject, Some(name.to_owned())),
        Key::Thing(thing) if *thing == subject => SharePlace::Thing(subject),
        _ => return Move::Stay,
    };
    Move::Go(Place::Share(place))
}
