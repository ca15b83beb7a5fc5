//! Mending a damaged survey: from what can still be read, or with a file of it.

use std::fs;
use std::path::Path;

use survey::SurveyError;
use survey::error::NotASurvey;
use survey::fact::SurveyId;
use survey::home::Repaired;
use survey::words::{Arg, Phrase};

use super::share::work;
use crate::deed::Deed;
use crate::error::{GuideError, Result};
use crate::guide::Guide;
use crate::place::{Move, Outside};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

/// The survey that a file is unpacked into, in a folder that is gone afterwards.
const UNPACKED: &str = "unpacked.legwork";

pub(super) fn show(guide: &Guide, folder: &Path) -> Screen {
    let _ = folder;
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "survey-mend", &Phrase::new("mend"));
    sketch.words(WordsRole::Lead, &Phrase::new("mend-lead"));
    sketch.words(WordsRole::Plain, &Phrase::new("mend-how"));
    sketch.able(Ability::ChooseFile);
    sketch.press("mend", &Phrase::new("mend-from-itself"), PressWeight::Main);
    sketch.press(&FileAsked::ToRead.key(), &Phrase::new("mend-from-file"), PressWeight::Other);
    sketch.press("not", &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, folder: &Path, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Press { key } if key == "mend" => match Repaired::open(folder, guide.author()) {
            Ok(repaired) => tell(guide, folder, &repaired, None),
            Err(error) if is_damage(&error) => {
                guide.tell(Phrase::new("home-needs-file"));
                Ok(Move::Stay)
            }
            Err(error) => Err(error.into()),
        },
        Deed::Press { key } if key == "not" => Ok(Move::Outside(Outside::Survey(folder.to_owned()))),
        Deed::Press { key } if FileAsked::of(key).is_some() => {
            guide.tell(Phrase::new("share-needs-file"));
            Ok(Move::Stay)
        }
        Deed::File { key, file } if FileAsked::of(key) == Some(FileAsked::ToRead) => {
            let file = Path::new(file);
            let mut repaired = match Repaired::open(folder, guide.author()) {
                Err(error) if is_damage(&error) => with_file(guide, folder, file)?,
                other => other?,
            };
            // Brings the photos too.
            work::take(file, &mut repaired.store)?;
            tell(guide, folder, &repaired, Some(file))
        }
        _ => Ok(Move::Stay),
    }
}

/// Whether a survey cannot be read from its own folder, but perhaps with a file's help.
fn is_damage(error: &SurveyError) -> bool {
    matches!(
        error,
        SurveyError::Damaged { .. } | SurveyError::NotASurvey { why: NotASurvey::NotSqlite, .. }
    )
}

fn tell(guide: &mut Guide, folder: &Path, repaired: &Repaired, file: Option<&Path>) -> Result<Move> {
    let facts = Arg::Count(repaired.store.ledger().len() as u64);
    let done = match (&repaired.rebuilt, file) {
        (None, _) => Phrase::new("mend-whole"),
        (Some(rebuilt), None) => {
            Phrase::new("home-repaired").text("damaged", rebuilt.damaged.display().to_string())
        }
        (Some(rebuilt), Some(_)) => {
            Phrase::new("mend-mended-with-file").text("damaged", rebuilt.damaged.display().to_string())
        }
    };
    let missing = repaired.store.missing_photos()?.len();
    guide.tell_done(done.with("facts", facts));
    if missing > 0 {
        guide.tell(Phrase::new("photo-missing").with("count", Arg::Count(missing as u64)));
    }
    Ok(Move::Outside(Outside::Survey(folder.to_owned())))
}

/// By way of a survey beside the others that is gone afterwards. It is named so that, if this process dies, it is swept
/// like any other that was never finished.
fn with_file(guide: &Guide, folder: &Path, file: &Path) -> Result<Repaired> {
    let beside = guide.home().folder().join(format!(".{}.unfinished", SurveyId::random()));
    fs::create_dir(&beside)
        .map_err(|error| GuideError::Failed { message: format!("{}: {error}", beside.display()) })?;
    let unpacked = work::take_as_new(file, &beside.join(UNPACKED), guide.author())
        .map(|(store, _)| (store.survey_id(), store.ledger().facts().cloned().collect()));
    let removed = fs::remove_dir_all(&beside);
    let (survey, facts) = unpacked?;
    // What could not be removed is swept later and hinders nothing.
    drop(removed);
    Ok(Repaired::open_with_file(folder, guide.author(), survey, facts)?)
}
