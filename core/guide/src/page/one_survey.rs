//! One survey from outside: what can be done with it as a whole.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::home::Found;
use phrase::Phrase;
use telling::words::error::InWords;

use crate::done::Done;
use crate::error::{Result, Trouble};
use crate::place::{Key, Move, Outside, is_aside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{After, Session, WorkKind, name_of};
use crate::view::{ScreenBuilder, survey_list};

pub(crate) fn show(session: &Session, folder: &Path) -> Screen {
    let title = survey_list::named_in_list(session, folder);
    let mut builder = ScreenBuilder::new(session.language(), session.pending(), &title);
    match session.listed(folder).map(|entry| &entry.found) {
        None => builder.words(WordsRole::Lead, &Phrase::new("gone")),
        Some(Found::Survey(look)) => {
            builder.words(WordsRole::Plain, &survey_list::progress(&look.summary));
            if let Some(remark) = survey_list::remark(&look.summary) {
                builder.words(WordsRole::Aside, &remark);
            }
            if is_aside(folder) {
                builder.words(WordsRole::Lead, &Phrase::new("survey-is-aside"));
                builder.press(&Key::Back, &Phrase::new("survey-bring-back"), PressWeight::Main);
            } else {
                builder.press(&Key::OpenIt, &Phrase::new("survey-open"), PressWeight::Main);
                builder.press(&Key::Rename, &Phrase::new("survey-rename"), PressWeight::Other);
                builder.press(&Key::Copy, &Phrase::new("survey-copy"), PressWeight::Other);
                builder.press(&Key::Aside, &Phrase::new("survey-set-aside"), PressWeight::Other);
                builder.press(&Key::Mend, &Phrase::new("survey-check"), PressWeight::Quiet);
            }
            builder.confirm_loss(&Key::Delete, &Phrase::new("survey-delete"));
        }
        Some(Found::Trouble(error)) => {
            builder.words(WordsRole::Lead, &error.phrase());
            if matches!(error, FactsError::Damaged { .. } | FactsError::NotASurvey { .. }) {
                builder.press(&Key::Mend, &Phrase::new("survey-mend"), PressWeight::Main);
            }
            builder.confirm_loss(&Key::Delete, &Phrase::new("survey-delete"));
        }
    }
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, folder: &Path, done: &Done) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    let named = survey_list::named_in_list(session, folder);
    match key {
        Key::OpenIt if !is_aside(folder) => {
            session.send_open(folder.to_owned(), |_| Ok(Move::Stay));
            Ok(Move::Stay)
        }
        Key::Rename if !is_aside(folder) => Ok(Move::Outside(Outside::Rename(folder.to_owned()))),
        Key::Copy if !is_aside(folder) => Ok(Move::Outside(Outside::Copy(folder.to_owned()))),
        Key::Mend => {
            let found_damaged =
                session.listed(folder).is_some_and(|entry| matches!(entry.found, Found::Trouble(_)));
            Ok(Move::Outside(Outside::Mend { folder: folder.to_owned(), found_damaged, has_lost: false }))
        }
        Key::Aside if !is_aside(folder) => {
            session.home().set_aside(folder)?;
            session.tell_done(Phrase::new("survey-was-set-aside").phrase("survey", named));
            Ok(Move::Outside(Outside::Surveys))
        }
        Key::Back if is_aside(folder) => {
            session.home().bring_back(folder)?;
            session.tell_done(Phrase::new("survey-was-brought-back").phrase("survey", named));
            Ok(Move::Outside(Outside::Surveys))
        }
        Key::Delete => {
            delete(session, folder.to_owned(), named);
            Ok(Move::Stay)
        }
        Key::Out => Ok(Move::Outside(Outside::Surveys)),
        _ => Ok(Move::Stay),
    }
}

/// Sends the long work that deletes a survey: it may hold thousands of photos.
fn delete(session: &mut Session, folder: PathBuf, named: Phrase) {
    let home = session.home().clone();
    session.send(WorkKind::Delete, move |work| {
        if !work.goes_on(0.0) {
            return Err(Trouble::Stopped.into());
        }
        let kept = home.delete(&folder)?.map(|kept| name_of(&kept));
        Ok(After::new(move |session| {
            session.tell_done(Phrase::new("survey-was-deleted").phrase("survey", named));
            if let Some(kept) = kept {
                session.tell_done(Phrase::new("survey-kept-beside").text("folder", kept));
            }
            Ok(Move::Outside(Outside::Surveys))
        }))
    });
}
