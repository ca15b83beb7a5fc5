//! Taking in a file that somebody sent: a look first, then taking it in, then perhaps putting it back.

use facts::error::CannotPutBack;
use facts::file::{self, Limits, Taken};
use facts::store::Store;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside, Place, SharePlace};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{After, Session, SurveySnapshot, WorkKind, look};
use crate::view::{ScreenBuilder, StoryTeller, tell_look};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let title = Phrase::new("share-take-in");
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    builder.able(Ability::ChooseFile);
    let choose = Key::File(FileAsked::ToRead);
    match snapshot.looked {
        None => {
            builder.words(WordsRole::Lead, &Phrase::new("share-take-in-lead"));
            builder.press(&choose, &Phrase::new("share-choose"), PressWeight::Main);
        }
        Some(looked) if looked.revision != snapshot.revision => {
            builder.words(WordsRole::Lead, &Phrase::new("share-look-is-old"));
            builder.press(&Key::Again, &Phrase::new("share-look-again"), PressWeight::Main);
            builder.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
        Some(looked) => {
            let look = &looked.look;
            let teller = StoryTeller::of(snapshot);
            tell_look(&mut builder, look, snapshot.me, Some(&teller).filter(|_| look.same_survey));
            if !look.same_survey {
                builder.words(WordsRole::Lead, &Phrase::new("share-other-survey"));
                builder.press(&Key::Apart, &Phrase::new("share-take-apart"), PressWeight::Main);
            } else if look.new_facts + look.new_photos + look.forgotten.len() == 0 {
                builder.words(WordsRole::Lead, &Phrase::new("share-nothing-new"));
            } else {
                builder.words(WordsRole::Aside, &Phrase::new("share-look-only"));
                if look.forgotten.is_empty() {
                    builder.confirm(&Key::TakeIt, &Phrase::new("share-take"));
                } else {
                    builder.confirm_loss(&Key::TakeIt, &Phrase::new("share-take-and-forget"));
                }
            }
            builder.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    if snapshot.looked.is_none() {
        put_back_block(snapshot, &mut builder);
    }
    if !snapshot.ledger.disagreements().is_empty() {
        builder.press(&Key::Settle, &Phrase::new("share-go-settle"), PressWeight::Other);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Putting back what the last file brought, or why that cannot be.
fn put_back_block(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    match *snapshot.returnable {
        Ok(facts) => {
            let phrase = Phrase::new("share-put-back").with("count", Arg::Count(facts as u64));
            builder.confirm_loss(&Key::PutBack, &phrase);
        }
        Err(CannotPutBack::WrittenSince) => {
            builder.words(WordsRole::Aside, &Phrase::new("share-written-since"));
            builder.press(&Key::Acts, &Phrase::new("share-acts"), PressWeight::Other);
        }
        Err(CannotPutBack::Forgotten) => {
            builder.words(WordsRole::Aside, &Phrase::new("share-took-forgetting"));
        }
        Err(_) => {}
    }
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::File(Key::File(FileAsked::ToRead), file) => {
            session.open_survey()?.looked = None;
            look(session, file.into())?;
            Ok(Move::Stay)
        }
        Done::Press(key) => match key {
            Key::Again => {
                if let Some(looked) = &session.open_survey()?.looked {
                    let file = looked.file.clone();
                    look(session, file)?;
                }
                Ok(Move::Stay)
            }
            Key::TakeIt => take_in(session),
            Key::PutBack => put_back(session),
            Key::Apart => {
                // The file goes along to the screen outside.
                session.looked = session.open_survey()?.looked.take();
                Ok(Move::Outside(Outside::Sent))
            }
            Key::Settle => Ok(Move::Go(Place::Share(SharePlace::Disagreements))),
            Key::Acts => Ok(Move::Go(Place::Share(SharePlace::Acts))),
            Key::File(_) => {
                session.tell(Phrase::new("share-needs-file"));
                Ok(Move::Stay)
            }
            _ => Ok(Move::Stay),
        },
        _ => Ok(Move::Stay),
    }
}

/// Sends the long work that takes the file in that was looked into.
fn take_in(session: &mut Session) -> Result<Move> {
    let open = session.open_survey()?;
    let Some(looked) = open.looked.clone() else { return Ok(Move::Stay) };
    if looked.revision != open.revision || !looked.look.same_survey {
        return Ok(Move::Stay);
    }
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    session.send(WorkKind::Take, move |work| {
        let mut store = Store::open(&folder, author)?;
        let taken = file::take(&looked.file, &mut store, Limits::default(), &mut work.watch_file())?;
        Ok(After::new(move |session| was_taken(session, &taken)))
    });
    Ok(Move::Stay)
}

fn was_taken(session: &mut Session, taken: &Taken) -> Result<Move> {
    let open = session.open_survey()?;
    open.looked = None;
    open.store.refresh()?;
    open.read()?;
    session.tell_done(
        Phrase::new("share-taken")
            .with("facts", Arg::Count(taken.facts.len() as u64))
            .with("photos", Arg::Count(taken.photos.len() as u64)),
    );
    Ok(Move::Stay)
}

fn put_back(session: &mut Session) -> Result<Move> {
    let open = session.open_survey()?;
    let returned = file::put_back(&mut open.store)?;
    open.last_act = None;
    open.read()?;
    session
        .tell_done(Phrase::new("share-was-put-back").with("count", Arg::Count(returned.facts.len() as u64)));
    Ok(Move::Stay)
}
