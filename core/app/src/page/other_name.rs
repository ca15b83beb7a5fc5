//! Another name for a survey, and a copy of it under another name.

use std::path::{Path, PathBuf};

use facts::fact::Edit;
use facts::store::{Store, peek};
use house::record::field;
use phrase::Phrase;

use super::surveys;
use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, folder_name};
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show_rename(guide: &Guide, folder: &Path) -> Screen {
    let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
    let now = guide.say(&surveys::named(&summary, folder));
    let mut sketch =
        Sketch::new(guide.language(), guide.pending(), "survey-rename", &Phrase::new("survey-rename"));
    sketch.words(WordsRole::Why, &Phrase::new("survey-rename-why"));
    sketch.writing("name", &Phrase::new("new-survey-name"), None, false, &now);
    sketch.press("rename", &Phrase::new("survey-rename-do"), PressWeight::Main);
    sketch.press("not", &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take_rename(guide: &mut Guide, folder: &Path, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Press { key } if key == "rename" => {
            let Some(name) = written(guide, folder) else { return Ok(Move::Stay) };
            let mut store = Store::open(folder, guide.author())?;
            let subject = store.survey_id().subject();
            store.write(&[Edit::new(subject, field::NAME, name.as_str())])?;
            // A folder is moved only while nothing in it is open.
            drop(store);
            let to = if fits(folder, &name) {
                folder.to_owned()
            } else {
                let free = guide.free_folder(&name)?;
                let stem = free.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                guide.home().rename(folder, &stem)?
            };
            guide.tell_done(Phrase::new("survey-was-renamed").text("name", name));
            Ok(Move::Outside(Outside::Survey(to)))
        }
        _ => Ok(otherwise(guide, folder, deed)),
    }
}

/// Whether a survey's folder is called as this name would have it.
fn fits(folder: &Path, name: &str) -> bool {
    folder.file_stem().is_some_and(|stem| stem == folder_name(name).as_str())
}

pub(super) fn show_copy(guide: &Guide, folder: &Path) -> Screen {
    let mut sketch =
        Sketch::new(guide.language(), guide.pending(), "survey-copy", &Phrase::new("survey-copy"));
    sketch.words(WordsRole::Lead, &Phrase::new("survey-copy-lead"));
    let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
    let now = Phrase::new("survey-copy-name").phrase("name", surveys::named(&summary, folder));
    let now = guide.say(&now);
    sketch.writing("name", &Phrase::new("new-survey-name"), None, false, &now);
    sketch.press("copy", &Phrase::new("survey-copy-do"), PressWeight::Main);
    sketch.press("not", &Phrase::new("survey-leave"), PressWeight::Quiet);
    sketch.screen
}

pub(super) fn take_copy(guide: &mut Guide, folder: &Path, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::Press { key } if key == "copy" => {
            // What the screen proposes counts as long as nobody wrote something else.
            let proposed = || {
                let summary = peek(folder).map(|look| look.summary).unwrap_or_default();
                guide.say(&Phrase::new("survey-copy-name").phrase("name", surveys::named(&summary, folder)))
            };
            let name = guide.pending().written("name").map_or_else(proposed, str::to_owned);
            if name.is_empty() {
                guide.tell(Phrase::new("new-survey-no-name"));
                return Ok(Move::Stay);
            }
            let to = copy(guide, folder, &name)?;
            guide.tell_done(Phrase::new("survey-was-copied").text("name", name));
            Ok(Move::Outside(Outside::Survey(to)))
        }
        _ => Ok(otherwise(guide, folder, deed)),
    }
}

fn copy(guide: &Guide, folder: &Path, name: &str) -> Result<PathBuf> {
    let from = Store::open(folder, guide.author())?;
    let free = guide.free_folder(name)?;
    let stem = free.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let mut made = guide.home().copy(&from, &stem, guide.author())?;
    let subject = made.survey_id().subject();
    made.write(&[Edit::new(subject, field::NAME, name)])?;
    Ok(made.folder().to_owned())
}

/// The name that was written, or the one that stands; says so where it is empty.
fn written(guide: &mut Guide, folder: &Path) -> Option<String> {
    let name = match guide.pending().written("name") {
        Some(name) => name.to_owned(),
        None => guide.say(&surveys::named(&peek(folder).ok()?.summary, folder)),
    };
    if name.is_empty() {
        guide.tell(Phrase::new("new-survey-no-name"));
        return None;
    }
    Some(name)
}

fn otherwise(guide: &mut Guide, folder: &Path, deed: &Deed) -> Move {
    if matches!(deed, Deed::Press { key } if key == "not") {
        return Move::Outside(Outside::Survey(folder.to_owned()));
    }
    guide.keep_outside(deed);
    Move::Stay
}
