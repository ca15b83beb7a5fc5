//! Taking in a file that somebody sent: a look first, then taking it in, then perhaps putting it back.

use facts::error::CannotPutBack;
use facts::file::{self, Consent, Limits, Taken, Upheaval};
use facts::store::Store;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside, Place, SharePlace};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{After, Session, SurveySnapshot, WorkKind, look};
use crate::view::{ScreenBuilder, tell_look};

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
            tell_look(&mut builder, look, snapshot.me);
            if !look.same_survey {
                builder.words(WordsRole::Lead, &Phrase::new("share-other-survey"));
                builder.press(&Key::Apart, &Phrase::new("share-take-apart"), PressWeight::Main);
            } else if look.new_facts + look.new_photos + look.forgotten.len() == 0 {
                builder.words(WordsRole::Lead, &Phrase::new("share-nothing-new"));
            } else {
                builder.words(WordsRole::Aside, &Phrase::new("share-look-only"));
                if look.upheaval.asks_first() {
                    builder.confirm_loss(&Key::TakeIt, &upheaval("share-take-upheaval", &look.upheaval));
                } else {
                    builder.confirm(&Key::TakeIt, &Phrase::new("share-take"));
                }
                if !look.forgotten.is_empty() {
                    builder.words(WordsRole::Aside, &Phrase::new("share-take-asks-to-forget"));
                }
            }
            builder.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    if snapshot.looked.is_none() {
        put_back_block(snapshot, &mut builder);
    }
    if !snapshot.wishes.is_empty() {
        builder.press(&Key::Wishes, &Phrase::new("share-wishes"), PressWeight::Other);
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
        Ok(brought) => {
            let message = if brought.without_trace { "share-put-back" } else { "share-put-back-later" };
            let phrase = Phrase::new(message).with("count", Arg::Count(brought.facts as u64));
            builder.confirm_loss(&Key::PutBack, &phrase);
            builder.confirm(&Key::KeepTaken, &Phrase::new("share-keep-taken"));
        }
        Err(CannotPutBack::NothingTaken) => {}
    }
}

/// How much of the survey a file would remove or move.
fn upheaval(message: &'static str, found: &Upheaval) -> Phrase {
    let count = |count: usize| Arg::Count(count as u64);
    Phrase::new(message)
        .with("gone", count(found.gone))
        .with("things", count(found.things))
        .with("changed", count(found.parts_changed))
        .with("parts", count(found.parts))
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
            Key::KeepTaken => {
                let open = session.open_survey()?;
                open.store.keep_what_was_taken()?;
                open.read()?;
                Ok(Move::Stay)
            }
            Key::Wishes => Ok(Move::Go(Place::Share(SharePlace::Wishes))),
            Key::Apart => {
                // The file goes along to the screen outside.
                session.looked = session.open_survey()?.looked.take();
                Ok(Move::Outside(Outside::Sent))
            }
            Key::Settle => Ok(Move::Go(Place::Share(SharePlace::Disagreements))),
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
        // Whoever saw how much of the survey it changes said yes to that; what it tells to forget has a question of its own.
        let consent = Consent { forget: false, upheaval: looked.look.upheaval.asks_first() };
        let taken = file::take(&looked.file, &mut store, consent, Limits::default(), &mut work.watch_file())?;
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
    Ok(if taken.waiting > 0 { Move::Go(Place::Share(SharePlace::Wishes)) } else { Move::Stay })
}

fn put_back(session: &mut Session) -> Result<Move> {
    let open = session.open_survey()?;
    let returned = file::put_back(&mut open.store)?;
    open.last_act = None;
    open.read()?;
    let message = if returned.without_trace { "share-was-put-back" } else { "share-was-put-back-later" };
    session.tell_done(Phrase::new(message).with("count", Arg::Count(returned.facts.len() as u64)));
    Ok(Move::Stay)
}
