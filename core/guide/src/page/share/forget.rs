//! Forgetting what must be able to vanish. Asked about twice: that it is for ever, and that it holds for others too.

use facts::error::FactsError;
use facts::fact::{PhotoImage, SubjectId};
use facts::forget::Forgotten;
use facts::store::Store;
use house::record::field;
use phrase::{Arg, Phrase};
use telling::words::error::InWords;

use super::thing_story::forgettable;
use crate::done::Done;
use crate::error::{Result, Trouble};
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{After, Keep, Session, SurveySnapshot, WorkKind};
use crate::view::{ScreenBuilder, StoryTeller};

/// The first question: that it is for ever.
pub(crate) fn show(snapshot: &SurveySnapshot<'_>, subject: SubjectId, name: Option<&str>) -> Screen {
    let mut builder = builder(snapshot, subject, name);
    let records = forgettable(snapshot, subject, name);
    if records == 0 {
        builder.words(WordsRole::Lead, &Phrase::new("forget-nothing"));
    } else {
        builder.words(WordsRole::Lead, &Phrase::new("forget-what").with("count", Arg::Count(records as u64)));
        builder.words(WordsRole::Plain, &Phrase::new("forget-warning"));
        builder.words(WordsRole::Plain, &Phrase::new("forget-also"));
        if subject == snapshot.me.subject() {
            builder.words(WordsRole::Plain, &Phrase::new("forget-own-name"));
        }
        builder.confirm_loss(&Key::Forget, &Phrase::new("forget-first"));
    }
    builder.press(&Key::Keep, &Phrase::new("forget-keep"), PressWeight::Main);
    builder.screen
}

/// The second: that it holds for others too.
pub(crate) fn show_for_others(
    snapshot: &SurveySnapshot<'_>,
    subject: SubjectId,
    name: Option<&str>,
) -> Screen {
    let mut builder = builder(snapshot, subject, name);
    builder.words(WordsRole::Lead, &Phrase::new("forget-others"));
    builder.confirm_loss(&Key::Forget, &Phrase::new("forget-second"));
    builder.press(&Key::Keep, &Phrase::new("forget-keep"), PressWeight::Main);
    builder.screen
}

fn builder<'a>(snapshot: &SurveySnapshot<'a>, subject: SubjectId, name: Option<&str>) -> ScreenBuilder<'a> {
    let teller = StoryTeller::of(snapshot);
    let what = name.map_or_else(|| teller.thing(subject), |name| teller.about(subject, name));
    ScreenBuilder::new(
        snapshot.language,
        snapshot.pending(),
        &Phrase::new("forget-title").phrase("what", what),
    )
}

pub(crate) fn take(subject: SubjectId, name: Option<&str>, done: &Done) -> Move {
    match done {
        Done::Press(Key::Forget) => {
            Move::Swap(Place::Share(SharePlace::ForgetForOthers(subject, name.map(str::to_owned))))
        }
        Done::Press(Key::Keep) => Move::Back,
        _ => Move::Stay,
    }
}

pub(crate) fn take_for_others(
    session: &mut Session,
    subject: SubjectId,
    name: Option<&str>,
    done: &Done,
) -> Result<Move> {
    match done {
        Done::Press(Key::Forget) => {
            let open = session.open_survey()?;
            if name.is_none() && subject == open.survey.id {
                return Ok(Move::Stay);
            }
            let name = name.map(str::to_owned);
            send(session, SharePlace::Things, move |store| drop_for_ever(store, subject, name.as_deref()))?;
            Ok(Move::Stay)
        }
        Done::Press(Key::Keep) => Ok(Move::Back),
        _ => Ok(Move::Stay),
    }
}

/// Sends the long work that forgets something, and leads to a screen after it: the database is written anew, and every copy
/// on this device is told.
pub(super) fn send(
    session: &mut Session,
    then: SharePlace,
    forget: impl FnOnce(&mut Store) -> std::result::Result<Forgotten, FactsError> + Send + 'static,
) -> Result<()> {
    // What it said may stand among what is half answered.
    session.open_survey()?.memory.drop_given();
    session.remember(Keep::Now)?;
    let open = session.open_survey()?;
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    let home = session.home().clone();
    session.send(WorkKind::Forget, move |work| {
        if !work.goes_on(0.0) {
            return Err(Trouble::Stopped.into());
        }
        let mut store = Store::open(&folder, author)?;
        let done = forget(&mut store)?;
        // It is forgotten here; that a copy could not be told is said after that.
        let told = home.forget_elsewhere(&store);
        Ok(After::new(move |session| {
            tell(session, &done, told)?;
            Ok(Move::Swap(Place::Share(then)))
        }))
    });
    Ok(())
}

/// What is read anew and told once something was forgotten.
fn tell(session: &mut Session, done: &Forgotten, told: std::result::Result<usize, FactsError>) -> Result<()> {
    let home = session.home().clone();
    let open = session.open_survey()?;
    // What it said may stand among what is remembered of the way here.
    open.last_act = None;
    open.looked = None;
    open.store.refresh()?;
    open.read()?;
    open.drop_what_followed(&home);
    session.tell_done(Phrase::new(if done.is_cleared { "forget-done" } else { "forget-later" }));
    match told {
        Ok(0) => {}
        Ok(copies) => {
            session.tell_done(Phrase::new("forget-copies").with("count", Arg::Count(copies as u64)));
        }
        Err(error) => session.tell(Phrase::new("forget-not-everywhere").phrase("what", error.phrase())),
    }
    Ok(())
}

fn drop_for_ever(
    store: &mut Store,
    subject: SubjectId,
    name: Option<&str>,
) -> std::result::Result<Forgotten, FactsError> {
    let is_picture = |name: &str| name == field::IMAGE;
    let shows = store
        .ledger()
        .history(subject, field::IMAGE)
        .into_iter()
        .any(|fact| !fact.is_forgotten() && PhotoImage::of_fact(fact).is_some());
    // The same picture may have been taken in twice: it goes wherever it stands.
    if shows && name.is_none_or(is_picture) {
        let picture = store.forget_photo(subject)?;
        if name.is_some() {
            return Ok(picture);
        }
        let rest = store.forget_thing(subject)?;
        return Ok(Forgotten { facts: picture.facts + rest.facts, is_cleared: rest.is_cleared });
    }
    match name {
        Some(name) => store.forget_field(subject, name),
        None => store.forget_thing(subject),
    }
}
