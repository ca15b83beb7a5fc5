//! Forgetting what must be able to vanish. Asked about twice: that it is for ever, and that it holds for others too.

use facts::fact::{PhotoImage, SubjectId};
use facts::forget::Forgotten;
use facts::store::Store;
use house::record::field;
use phrase::{Arg, Phrase};
use telling::words::error::InWords;

use super::thing_story::forgettable;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Scene, Session};
use crate::view::{Sketch, Teller};

/// The first question: that it is for ever.
pub(crate) fn show(scene: &Scene<'_>, subject: SubjectId, name: Option<&str>) -> Screen {
    let mut sketch = sketch(scene, subject, name);
    let records = forgettable(scene, subject, name);
    if records == 0 {
        sketch.words(WordsRole::Lead, &Phrase::new("forget-nothing"));
    } else {
        sketch.words(WordsRole::Lead, &Phrase::new("forget-what").with("count", Arg::Count(records as u64)));
        sketch.words(WordsRole::Plain, &Phrase::new("forget-warning"));
        sketch.words(WordsRole::Plain, &Phrase::new("forget-also"));
        if subject == scene.me.subject() {
            sketch.words(WordsRole::Plain, &Phrase::new("forget-own-name"));
        }
        sketch.confirm_loss(&Key::Forget, &Phrase::new("forget-first"));
    }
    sketch.press(&Key::Keep, &Phrase::new("forget-keep"), PressWeight::Main);
    sketch.screen
}

/// The second: that it holds for others too.
pub(crate) fn show_for_others(scene: &Scene<'_>, subject: SubjectId, name: Option<&str>) -> Screen {
    let mut sketch = sketch(scene, subject, name);
    sketch.words(WordsRole::Lead, &Phrase::new("forget-others"));
    sketch.confirm_loss(&Key::Forget, &Phrase::new("forget-second"));
    sketch.press(&Key::Keep, &Phrase::new("forget-keep"), PressWeight::Main);
    sketch.screen
}

fn sketch<'a>(scene: &Scene<'a>, subject: SubjectId, name: Option<&str>) -> Sketch<'a> {
    let teller = Teller::of(scene);
    let what = name.map_or_else(|| teller.thing(subject), |name| teller.about(subject, name));
    Sketch::new(scene.language, scene.pending(), &Phrase::new("forget-title").phrase("what", what))
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
            let done = drop_for_ever(&mut open.store, subject, name)?;
            // What it said may stand among what is remembered of the way here.
            open.last_act = None;
            open.looked = None;
            open.read()?;
            session.tell_done(Phrase::new(if done.is_cleared { "forget-done" } else { "forget-later" }));
            // It is forgotten here; that a copy could not be told is said after that.
            let told = session.forget_elsewhere();
            match told {
                Ok(0) => {}
                Ok(copies) => {
                    session.tell_done(Phrase::new("forget-copies").with("count", Arg::Count(copies as u64)));
                }
                Err(error) => {
                    session.tell(Phrase::new("forget-not-everywhere").phrase("what", error.phrase()));
                }
            }
            Ok(Move::Swap(Place::Share(SharePlace::Things)))
        }
        Done::Press(Key::Keep) => Ok(Move::Back),
        _ => Ok(Move::Stay),
    }
}

fn drop_for_ever(store: &mut Store, subject: SubjectId, name: Option<&str>) -> Result<Forgotten> {
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
        Some(name) => Ok(store.forget_field(subject, name)?),
        None => Ok(store.forget_thing(subject)?),
    }
}
