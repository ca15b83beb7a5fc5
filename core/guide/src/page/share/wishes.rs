//! What files asked to be forgotten here: it waits until somebody answers. Authors are names and no keys, so nobody can tell
//! whose wish it is.

use facts::fact::Wish;
use facts::store::Store;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::{Result, Trouble};
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{After, Keep, Session, SurveySnapshot, WorkKind};
use crate::view::{ScreenBuilder, StoryTeller, paging};

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
                let by = by(&teller, wish);
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

/// By whose word.
fn by(teller: &StoryTeller<'_>, wish: &Wish) -> Phrase {
    match wish.by {
        Some(author) => Phrase::new("wish-by").phrase("author", teller.author(author)),
        None => Phrase::new("wish-by-nobody"),
    }
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Forget) => {
            let open = session.open_survey()?;
            if open.wishes.is_empty() {
                return Ok(Move::Stay);
            }
            // What it said may stand among what is half answered.
            open.memory.drop_given();
            session.remember(Keep::Now)?;
            send(session)?;
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

/// Sends the long work that forgets what was asked for: the database is written anew, and every copy on this device is told.
fn send(session: &mut Session) -> Result<()> {
    let open = session.open_survey()?;
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    let home = session.home().clone();
    session.send(WorkKind::Forget, move |work| {
        if !work.goes_on(0.0) {
            return Err(Trouble::Stopped.into());
        }
        let mut store = Store::open(&folder, author)?;
        let done = store.agree_to_wishes()?;
        // It is forgotten here; that a copy could not be told is said after that.
        let told = home.forget_elsewhere(&store);
        Ok(After::new(move |session| {
            super::forget::tell(session, &done, told)?;
            Ok(Move::Swap(Place::Share(SharePlace::TakeIn)))
        }))
    });
    Ok(())
}
