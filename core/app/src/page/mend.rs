//! Mending a damaged survey: from what can still be read, or with a file of it.

use std::path::{Path, PathBuf};

use survey::SurveyError;
use survey::error::NotASurvey;
use survey::fact::AuthorId;
use survey::home::Repaired;
use survey::store::{Rebuilt, Store, peek, rebuild, salvage};
use survey::words::{Arg, Phrase};

use super::share::{self, work};
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::Guide;
use crate::place::{Move, Outside};
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(guide: &Guide) -> Screen {
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "survey-mend", &Phrase::new("mend"));
    sketch.able(Ability::ChooseFile);
    let choose = FileAsked::ToRead.key();
    match &guide.looked {
        None => {
            sketch.words(WordsRole::Lead, &Phrase::new("mend-lead"));
            sketch.words(WordsRole::Plain, &Phrase::new("mend-how"));
            sketch.press("mend", &Phrase::new("mend-from-itself"), PressWeight::Main);
            sketch.press(&choose, &Phrase::new("mend-from-file"), PressWeight::Other);
        }
        Some(looked) => {
            // Where too little can be read to tell one survey from another, only its user can.
            share::tell_look(&mut sketch, &looked.look, guide.author(), None);
            sketch.confirm("mend-with-file", &Phrase::new("mend-with-this-file"));
            sketch.press(&choose, &Phrase::new("share-choose-other"), PressWeight::Other);
        }
    }
    sketch.press("not", &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take(guide: &mut Guide, folder: &Path, found_damaged: bool, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Press { key } => match key.as_str() {
            "mend" => {
                if let Some(mended) = from_itself(folder, guide.author(), found_damaged)? {
                    return tell(guide, folder, &mended, None);
                }
                guide.tell(Phrase::new("home-needs-file"));
                Ok(Move::Stay)
            }
            "mend-with-file" => mend_with_file(guide, folder, found_damaged),
            "not" => Ok(Move::Outside(Outside::Survey(folder.to_owned()))),
            key if FileAsked::of(key).is_some() => {
                guide.tell(Phrase::new("share-needs-file"));
                Ok(Move::Stay)
            }
            _ => Ok(Move::Stay),
        },
        Deed::File { key, file } if FileAsked::of(key) == Some(FileAsked::ToRead) => {
            guide.looked = None;
            let looked = work::look(Path::new(file), None)?;
            let known = match peek(folder) {
                Ok(look) => Some(look.survey),
                Err(_) => salvage(folder)?.survey,
            };
            if known.is_some_and(|survey| survey != looked.look.survey) {
                return Err(SurveyError::OtherSurveyInFile.into());
            }
            guide.looked = Some(looked);
            Ok(Move::Stay)
        }
        _ => Ok(Move::Stay),
    }
}

/// A survey that can be read, and what was done for that.
struct Mended {
    store: Store,
    rebuilt: Option<Rebuilt>,
}

/// Mends a survey from what can be read of it; nothing if too little can.
fn from_itself(folder: &Path, author: AuthorId, found_damaged: bool) -> Result<Option<Mended>> {
    if !found_damaged {
        return match Repaired::open(folder, author) {
            Ok(repaired) => Ok(Some(Mended { store: repaired.store, rebuilt: repaired.rebuilt })),
            Err(error) if is_damage(&error) => Ok(None),
            Err(error) => Err(error.into()),
        };
    }
    // What showed the damage may not show it twice: the log that a crash left is gone after the first opening.
    let found = salvage(folder)?;
    let Some(survey) = found.survey.filter(|_| found.is_complete) else { return Ok(None) };
    let rebuilt = rebuild(folder, survey, found.facts)?;
    Ok(Some(Mended { store: Store::open(folder, author)?, rebuilt: Some(rebuilt) }))
}

fn mend_with_file(guide: &mut Guide, folder: &Path, found_damaged: bool) -> Result<Move> {
    let Some(looked) = guide.looked.clone() else { return Ok(Move::Stay) };
    let mut mended = match from_itself(folder, guide.author(), found_damaged)? {
        Some(mended) => mended,
        None => with_file(guide, folder, &looked.file)?,
    };
    // Brings the photos too.
    work::take(&looked.file, &mut mended.store)?;
    tell(guide, folder, &mended, Some(&looked.file))
}

/// Whether a survey cannot be read from its own folder, but perhaps with a file's help.
fn is_damage(error: &SurveyError) -> bool {
    matches!(error, SurveyError::Damaged { .. } | SurveyError::NotASurvey { why: NotASurvey::NotSqlite, .. })
}

fn tell(guide: &mut Guide, folder: &Path, mended: &Mended, file: Option<&Path>) -> Result<Move> {
    let done = match (&mended.rebuilt, file) {
        (None, _) => Phrase::new("mend-whole"),
        (Some(rebuilt), file) => {
            let name = |path: &PathBuf| path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            match (rebuilt.damaged.as_ref().map(name), file) {
                (None, _) => Phrase::new("mend-mended-from-nothing"),
                (Some(damaged), Some(_)) => Phrase::new("mend-mended-with-file").text("damaged", damaged),
                (Some(damaged), None) => Phrase::new("home-repaired").text("damaged", damaged),
            }
        }
    };
    let facts = Arg::Count(mended.store.ledger().len() as u64);
    let missing = mended.store.missing_photos()?.len();
    guide.tell_done(done.with("facts", facts));
    if missing > 0 {
        guide.tell(Phrase::new("photo-missing").with("count", Arg::Count(missing as u64)));
    }
    Ok(Move::Outside(Outside::Survey(folder.to_owned())))
}

fn with_file(guide: &Guide, folder: &Path, file: &Path) -> Result<Mended> {
    let repaired = work::open_with_file(folder, guide.author(), file)?;
    Ok(Mended { store: repaired.store, rebuilt: repaired.rebuilt })
}
