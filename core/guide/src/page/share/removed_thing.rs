//! One thing that was removed: bringing it back, or, where others changed it since, removing it again or leaving it.

use facts::fact::{Edit, Removal, SubjectId};
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, StoryTeller};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, subject: SubjectId) -> Screen {
    let teller = StoryTeller::of(snapshot);
    let title = teller.thing(subject);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    match snapshot.ledger.removal(subject) {
        Removal::Present => builder.words(WordsRole::Lead, &Phrase::new("share-is-there")),
        Removal::Removed { fact, .. } => {
            let by = Phrase::new("share-removed-by").phrase("by", teller.by(fact));
            builder.words(WordsRole::Lead, &by);
            builder.words(WordsRole::Plain, &Phrase::new("share-bring-back-how"));
            builder.press(&Key::Back, &Phrase::new("share-bring-back"), PressWeight::Main);
        }
        Removal::ChangedSince { removed, changed } => {
            builder.words(WordsRole::Lead, &Phrase::new("share-changed-since"));
            let rows: Vec<RowEntry> = removed
                .into_iter()
                .chain(changed)
                .take(100)
                .map(|fact| builder.row(None, &teller.by(fact), Some(&teller.fact(fact)), None))
                .collect();
            builder.rows(&Phrase::new("share-changed-rows"), rows);
            builder.press(&Key::Back, &Phrase::new("share-keep-it"), PressWeight::Main);
            builder.press(&Key::Remove, &Phrase::new("share-remove-again"), PressWeight::Other);
        }
    }
    builder.press(&Key::Story, &Phrase::new("share-whole-thing"), PressWeight::Other);
    builder.press(&Key::List, &Phrase::new("share-removed"), PressWeight::Quiet);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
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
    let thing = session.with_snapshot(|snapshot| StoryTeller::of(snapshot).thing(subject))?;
    session.tell_done(Phrase::new(done).phrase("thing", thing));
    Ok(Move::Swap(Place::Share(SharePlace::Removed)))
}
