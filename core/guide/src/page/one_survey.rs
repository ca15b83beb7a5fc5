//! One survey from outside: what can be done with it as a whole.

use std::path::Path;

use facts::error::FactsError;
use facts::store::peek;
use phrase::Phrase;
use telling::words::error::InWords;

use crate::deed::Deed;
use crate::error::Result;
use crate::place::{Move, Outside, is_aside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Session;
use crate::view::{Sketch, survey_list};

pub(crate) fn show(session: &Session, folder: &Path) -> Screen {
    let found = peek(folder);
    let title = match &found {
        Ok(look) => survey_list::named(&look.summary, folder),
        Err(_) => survey_list::named(&facts::store::Summary::default(), folder),
    };
    let mut sketch = Sketch::new(session.language(), session.pending(), &title);
    match &found {
        Ok(look) => {
            sketch.words(WordsRole::Plain, &survey_list::progress(&look.summary));
            if let Some(remark) = survey_list::remark(&look.summary) {
                sketch.words(WordsRole::Aside, &remark);
            }
            if is_aside(folder) {
                sketch.words(WordsRole::Lead, &Phrase::new("survey-is-aside"));
                sketch.press("back", &Phrase::new("survey-bring-back"), PressWeight::Main);
            } else {
                sketch.press("open", &Phrase::new("survey-open"), PressWeight::Main);
                sketch.press("rename", &Phrase::new("survey-rename"), PressWeight::Other);
                sketch.press("copy", &Phrase::new("survey-copy"), PressWeight::Other);
                sketch.press("aside", &Phrase::new("survey-set-aside"), PressWeight::Other);
                sketch.press("mend", &Phrase::new("survey-check"), PressWeight::Quiet);
            }
            sketch.confirm_loss("delete", &Phrase::new("survey-delete"));
        }
        Err(error) => {
            sketch.words(WordsRole::Lead, &error.phrase());
            if matches!(error, FactsError::Damaged { .. } | FactsError::NotASurvey { .. }) {
                sketch.press("mend", &Phrase::new("survey-mend"), PressWeight::Main);
            }
            if folder.is_dir() {
                sketch.confirm_loss("delete", &Phrase::new("survey-delete"));
            }
        }
    }
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen
}

pub(crate) fn take(session: &mut Session, folder: &Path, deed: &Deed) -> Result<Move> {
    let Deed::Press { key } = deed else { return Ok(Move::Stay) };
    // Named while it is still there.
    let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
    let named = survey_list::named(&summary, folder);
    match key.as_str() {
        "open" if !is_aside(folder) => session.open_or_mend(folder),
        "rename" if !is_aside(folder) => Ok(Move::Outside(Outside::Rename(folder.to_owned()))),
        "copy" if !is_aside(folder) => Ok(Move::Outside(Outside::Copy(folder.to_owned()))),
        "mend" => {
            let found_damaged = peek(folder).is_err();
            Ok(Move::Outside(Outside::Mend { folder: folder.to_owned(), found_damaged }))
        }
        "aside" if !is_aside(folder) => {
            session.home().set_aside(folder)?;
            session.tell_done(Phrase::new("survey-was-set-aside").phrase("survey", named));
            Ok(Move::Outside(Outside::Surveys))
        }
        "back" if is_aside(folder) => {
            session.home().bring_back(folder)?;
            session.tell_done(Phrase::new("survey-was-brought-back").phrase("survey", named));
            Ok(Move::Outside(Outside::Surveys))
        }
        "delete" => {
            session.home().delete(folder)?;
            session.tell_done(Phrase::new("survey-was-deleted").phrase("survey", named));
            Ok(Move::Outside(Outside::Surveys))
        }
        "out" => Ok(Move::Outside(Outside::Surveys)),
        _ => Ok(Move::Stay),
    }
}
