//! A file that somebody sent: what is in it, and taking it in as a survey of its own.

use std::path::PathBuf;

use facts::file::{self, Consent, Limits, Taken};
use facts::home::{Entry, Found};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside, Place, SharePlace};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::session::{After, Looked, OpenSurvey, Session, WorkKind, look};
use crate::view::{ScreenBuilder, survey_list, tell_look};

pub(crate) fn show(session: &Session) -> Screen {
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &Phrase::new("sent"));
    builder.able(Ability::ChooseFile);
    let choose = Key::File(FileAsked::ToRead);
    match &session.looked {
        None => {
            builder.words(WordsRole::Lead, &Phrase::new("sent-lead"));
            builder.press(&choose, &Phrase::new("share-choose"), PressWeight::Main);
        }
        Some(looked) => {
            tell_look(&mut builder, &looked.look, looked.look.author_of(session.author()));
            match here(session) {
                Some(entry) => {
                    let Found::Survey(look) = &entry.found else { return builder.screen };
                    let name = survey_list::named(&look.summary, &entry.folder);
                    builder.words(WordsRole::Lead, &Phrase::new("sent-is-here").phrase("survey", name));
                    builder.press(&Key::There, &Phrase::new("sent-take-there"), PressWeight::Main);
                }
                None => builder.press(&Key::TakeIt, &Phrase::new("sent-take"), PressWeight::Main),
            }
            builder.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen
}

/// The survey of this device that the file belongs to.
fn here(session: &Session) -> Option<&Entry> {
    let id = session.looked.as_ref()?.look.survey;
    let mut surveys = session.listing.surveys.iter();
    surveys.find(|entry| matches!(&entry.found, Found::Survey(look) if look.survey == id))
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    match done {
        Done::File(Key::File(FileAsked::ToRead), file) => Ok(look_into(session, PathBuf::from(file))),
        Done::Press(key) => match key {
            Key::TakeIt => take_in(session),
            Key::There => Ok(there(session)),
            Key::Out => Ok(Move::Outside(Outside::Surveys)),
            Key::File(_) => {
                session.tell(Phrase::new("share-needs-file"));
                Ok(Move::Stay)
            }
            _ => Ok(Move::Stay),
        },
        _ => Ok(Move::Stay),
    }
}

/// Sends the long work that looks into a file.
pub(crate) fn look_into(session: &mut Session, file: PathBuf) -> Move {
    session.looked = None;
    session.send(WorkKind::Look, move |work| {
        let looked = Looked::into(&file, work)?;
        Ok(After::new(move |session| {
            session.looked = Some(looked.clone());
            Ok(Move::Stay)
        }))
    });
    Move::Stay
}

/// Sends the long work that takes the file in that was looked into.
fn take_in(session: &mut Session) -> Result<Move> {
    let Some(looked) = session.looked.clone() else { return Ok(Move::Stay) };
    if here(session).is_some() {
        return Ok(Move::Stay);
    }
    let stem = || looked.file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let name = looked.look.name.clone().filter(|name| !name.trim().is_empty()).unwrap_or_else(stem);
    let (folder, author) = (session.free_folder(&name)?, session.author());
    let (home, opening) = (session.home().clone(), session.opening());
    session.send(WorkKind::TakeNew, move |work| {
        // What others left that died; that it cannot be removed hinders nothing.
        let _ = home.sweep();
        let (store, taken) = file::take_as_new(
            &looked.file,
            &folder,
            author,
            Consent::NONE,
            Limits::default(),
            &mut work.watch_file(),
        )?;
        let open = opening.opened(store)?;
        Ok(After::new(move |session| was_taken(session, open, &taken)))
    });
    Ok(Move::Stay)
}

fn was_taken(session: &mut Session, open: OpenSurvey, taken: &Taken) -> Result<Move> {
    session.enter(open)?;
    session.tell_done(
        Phrase::new("sent-taken")
            .with("facts", Arg::Count(taken.facts.len() as u64))
            .with("photos", Arg::Count(taken.photos.len() as u64)),
    );
    session.looked = None;
    let next = if taken.waiting > 0 { Place::Share(SharePlace::Wishes) } else { Place::Overview };
    Ok(Move::Go(next))
}

/// Opens the survey that the file belongs to and looks at it from there.
fn there(session: &mut Session) -> Move {
    let (Some(looked), Some(entry)) = (session.looked.clone(), here(session)) else { return Move::Stay };
    session.send_open(entry.folder.clone(), |session| {
        session.looked = None;
        look(session, looked.file)?;
        Ok(Move::Go(Place::Share(SharePlace::TakeIn)))
    });
    Move::Stay
}
