//! What files asked to be forgotten here: it waits until somebody answers. Authors are names and no keys, so nobody can tell
//! whose wish it is.

use facts::store::Store;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, StoryTeller, paging, wished_by};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("share-wishes"));
    let wishes = snapshot.wishes;
    if wishes.is_empty() {
        builder.words(WordsRole::Lead, &Phrase::new("share-wishes-none"));
    } else {
        let lead = Phrase::new("share-wishes-lead").with("count", Arg::Count(wishes.len() as u64));
        builder.words(WordsRole::Lead, &lead);
        let teller = StoryTeller::of(snapshot);
        let rows: Vec<RowEntry> = wishes
            .iter()
            .skip(paging::first(snapshot.pending()))
            .take(paging::ROWS)
            .map(|wish| {
                let by = wished_by(&teller, wish).unwrap_or_else(|| Phrase::new("wish-by-nobody"));
                builder.row(None, &teller.about(wish.subject, &wish.field), Some(&by), None)
            })
            .collect();
        builder.rows(&Phrase::new("share-wishes-rows"), rows);
        paging::presses(&mut builder, wishes.len());
        builder.confirm_loss(&Key::Forget, &Phrase::new("share-wishes-forget"));
        builder.press(&Key::Keep, &Phrase::new("share-wishes-keep"), PressWeight::Main);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Forget) => {
            let open = session.open_survey()?;
            if open.wishes.is_empty() {
                return Ok(Move::Stay);
            }
            super::forget::send(session, SharePlace::TakeIn, Store::agree_to_wishes)?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Keep) => {
            let open = session.open_survey()?;
            open.store.refuse_wishes()?;
            open.read()?;
            session.tell_done(Phrase::new("share-wishes-kept"));
            Ok(Move::Go(Place::Share(SharePlace::TakeIn)))
        }
        _ => Ok(Move::Stay),
    }
}
