//! Another name for a survey, and a copy of it under another name.

use std::path::{Path, PathBuf};

use facts::store::Store;
use house::record::field;
use phrase::Phrase;

use crate::done::Done;
use crate::error::{Result, Trouble};
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole, WritingKind};
use crate::session::{After, Session, WorkKind, folder_name};
use crate::view::{ScreenBuilder, survey_list};

pub(crate) fn show_rename(session: &Session, folder: &Path) -> Screen {
    let now = session.say(&survey_list::named_in_list(session, folder));
    let mut builder =
        ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("survey-rename"));
    builder.words(WordsRole::Why, &Phrase::new("survey-rename-why"));
    builder.writing(&Key::Name, &Phrase::new("new-survey-name"), None, WritingKind::Name, &now);
    builder.press(&Key::Rename, &Phrase::new("survey-rename-do"), PressWeight::Main);
    builder.press(&Key::Not, &Phrase::new("survey-leave"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take_rename(session: &mut Session, folder: &Path, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Rename) => {
            let Some(name) = written(session, folder) else { return Ok(Move::Stay) };
            rename(session, folder.to_owned(), name)?;
            Ok(Move::Stay)
        }
        _ => Ok(otherwise(session, folder, done)),
    }
}

/// Sends the long work that gives a survey another name, and its folder too.
fn rename(session: &mut Session, folder: PathBuf, name: String) -> Result<()> {
    let (home, author) = (session.home().clone(), session.author());
    let to = if fits(&folder, &name) { None } else { Some(stem(&session.free_folder(&name)?)) };
    session.send(WorkKind::Rename, move |work| {
        if !work.goes_on(0.0) {
            return Err(Trouble::Stopped.into());
        }
        let mut store = Store::open(&folder, author)?;
        let subject = store.survey_id().subject();
        store.write(&[field::survey::NAME.set(subject, name.as_str())])?;
        // A folder is moved only while nothing in it is open.
        drop(store);
        let now = match to {
            Some(to) => home.rename(&folder, &to)?,
            None => folder,
        };
        Ok(After::new(move |session| {
            session.tell_done(Phrase::new("survey-was-renamed").text("name", name));
            Ok(Move::Outside(Outside::Survey(now)))
        }))
    });
    Ok(())
}

fn stem(folder: &Path) -> String {
    folder.file_stem().unwrap_or_default().to_string_lossy().into_owned()
}

/// Whether a survey's folder is called as this name would have it.
fn fits(folder: &Path, name: &str) -> bool {
    folder.file_stem().is_some_and(|stem| stem == folder_name(name).as_str())
}

pub(crate) fn show_copy(session: &Session, folder: &Path) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("survey-copy"));
    builder.words(WordsRole::Lead, &Phrase::new("survey-copy-lead"));
    let now = proposed(session, folder);
    builder.writing(&Key::Name, &Phrase::new("new-survey-name"), None, WritingKind::Name, &now);
    builder.press(&Key::Copy, &Phrase::new("survey-copy-do"), PressWeight::Main);
    builder.press(&Key::Not, &Phrase::new("survey-leave"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take_copy(session: &mut Session, folder: &Path, done: &Done) -> Result<Move> {
    match done {
        Done::Press(Key::Copy) => {
            // What the screen proposes counts as long as nobody wrote something else.
            let written = session.pending().written(&Key::Name).map(str::to_owned);
            let name = written.unwrap_or_else(|| proposed(session, folder));
            if name.is_empty() {
                session.tell(Phrase::new("new-survey-no-name"));
                return Ok(Move::Stay);
            }
            copy(session, folder.to_owned(), name)?;
            Ok(Move::Stay)
        }
        _ => Ok(otherwise(session, folder, done)),
    }
}

/// What a copy is called as long as nobody says otherwise.
fn proposed(session: &Session, folder: &Path) -> String {
    let now = survey_list::named_in_list(session, folder);
    session.say(&Phrase::new("survey-copy-name").phrase("name", now))
}

/// Sends the long work that copies a survey with its photos.
fn copy(session: &mut Session, folder: PathBuf, name: String) -> Result<()> {
    let (home, author, to) = (session.home().clone(), session.author(), stem(&session.free_folder(&name)?));
    session.send(WorkKind::Copy, move |work| {
        let from = Store::open(&folder, author)?;
        let mut made = home.copy_watched(&from, &to, author, &mut work.watch_file())?;
        let subject = made.survey_id().subject();
        made.write(&[field::survey::NAME.set(subject, name.as_str())])?;
        let to = made.folder().to_owned();
        Ok(After::new(move |session| {
            session.tell_done(Phrase::new("survey-was-copied").text("name", name));
            Ok(Move::Outside(Outside::Survey(to)))
        }))
    });
    Ok(())
}

/// The name that was written, or the one that stands; says so where it is empty.
fn written(session: &mut Session, folder: &Path) -> Option<String> {
    let name = match session.pending().written(&Key::Name) {
        Some(name) => name.to_owned(),
        None => session.say(&survey_list::named_in_list(session, folder)),
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
