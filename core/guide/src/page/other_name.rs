//! Another name for a survey, and a copy of it under another name.

use std::path::{Path, PathBuf};

use facts::fact::Edit;
use facts::store::{Store, peek};
use house::record::field;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{Session, folder_name};
use crate::view::{Sketch, survey_list};

pub(crate) fn show_rename(session: &Session, folder: &Path) -> Screen {
    let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
    let now = session.say(&survey_list::named(&summary, folder));
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("survey-rename"));
    sketch.words(WordsRole::Why, &Phrase::new("survey-rename-why"));
    sketch.writing(&Key::Name, &Phrase::new("new-survey-name"), None, WritingKind::Name, &now);
    sketch.press(&Key::Rename, &Phrase::new("survey-rename-do"), PressWeight::Main);
    sketch.press(&Key::Not, &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take_rename(session: &mut Session, folder: &Path, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Rename) => {
            let Some(name) = written(session, folder) else { return Ok(Move::Stay) };
            let mut store = Store::open(folder, session.author())?;
            let subject = store.survey_id().subject();
            store.write(&[Edit::new(subject, field::NAME, name.as_str())])?;
            // A folder is moved only while nothing in it is open.
            drop(store);
            let to = if fits(folder, &name) {
                folder.to_owned()
            } else {
                let free = session.free_folder(&name)?;
                let stem = free.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                session.home().rename(folder, &stem)?
            };
            session.tell_done(Phrase::new("survey-was-renamed").text("name", name));
            Ok(Move::Outside(Outside::Survey(to)))
        }
        _ => Ok(otherwise(session, folder, done)),
    }
}

/// Whether a survey's folder is called as this name would have it.
fn fits(folder: &Path, name: &str) -> bool {
    folder.file_stem().is_some_and(|stem| stem == folder_name(name).as_str())
}

pub(crate) fn show_copy(session: &Session, folder: &Path) -> Screen {
    let mut sketch = Sketch::new(session.language(), session.pending(), &Phrase::new("survey-copy"));
    sketch.words(WordsRole::Lead, &Phrase::new("survey-copy-lead"));
    let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
    let now = Phrase::new("survey-copy-name").phrase("name", survey_list::named(&summary, folder));
    let now = session.say(&now);
    sketch.writing(&Key::Name, &Phrase::new("new-survey-name"), None, WritingKind::Name, &now);
    sketch.press(&Key::Copy, &Phrase::new("survey-copy-do"), PressWeight::Main);
    sketch.press(&Key::Not, &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take_copy(session: &mut Session, folder: &Path, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Copy) => {
            // What the screen proposes counts as long as nobody wrote something else.
            let proposed = || {
                let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
                session.say(
                    &Phrase::new("survey-copy-name").phrase("name", survey_list::named(&summary, folder)),
                )
            };
            let name = session.pending().written(&Key::Name).map_or_else(proposed, str::to_owned);
            if name.is_empty() {
                session.tell(Phrase::new("new-survey-no-name"));
                return Ok(Move::Stay);
            }
            let to = copy(session, folder, &name)?;
            session.tell_done(Phrase::new("survey-was-copied").text("name", name));
            Ok(Move::Outside(Outside::Survey(to)))
        }
        _ => Ok(otherwise(session, folder, done)),
    }
}

fn copy(session: &Session, folder: &Path, name: &str) -> Result<PathBuf> {
    let from = Store::open(folder, session.author())?;
    let free = session.free_folder(name)?;
    let stem = free.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let mut made = session.home().copy(&from, &stem, session.author())?;
    let subject = made.survey_id().subject();
    made.write(&[Edit::new(subject, field::NAME, name)])?;
    Ok(made.folder().to_owned())
}

/// The name that was written, or the one that stands; says so where it is empty.
fn written(session: &mut Session, folder: &Path) -> Option<String> {
    let name = match session.pending().written(&Key::Name) {
        Some(name) => name.to_owned(),
        None => session.say(&survey_list::named(&peek(folder).ok()?.summary, folder)),
    };
    if name.is_empty() {
        session.tell(Phrase::new("new-survey-no-name"));
        return None;
    }
    Some(name)
}

fn otherwise(session: &mut Session, folder: &Path, done: &Done) -> Move {
    if matches!(done, Done::Press(Key::Not)) {
        return Move::Outside(Outside::Survey(folder.to_owned()));
    }
    session.keep_outside(done);
    Move::Stay
}
