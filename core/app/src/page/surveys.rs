//! The surveys of this device.

use survey::home::{Entry, Found};
use survey::words::{Arg, Phrase};

use crate::deed::Deed;
use crate::error::{GuideError, Result};
use crate::guide::Guide;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::sketch::Sketch;

/// At most so many are listed.
const ROWS: usize = 150;

pub(super) fn show(guide: &Guide) -> Screen {
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "surveys", &Phrase::new("surveys"));
    match guide.home().list() {
        Err(error) => {
            sketch.words(WordsRole::Problem, &Phrase::new("problem").text("what", error.to_string()))
        }
        Ok(found) if found.is_empty() => sketch.words(WordsRole::Lead, &Phrase::new("surveys-none")),
        Ok(found) => {
            let rows: Vec<RowEntry> = found.iter().take(ROWS).map(|entry| row(&sketch, entry)).collect();
            sketch.rows(&Phrase::new("surveys-rows"), rows);
        }
    }
    sketch.press("new", &Phrase::new("surveys-new"), PressWeight::Main);
    sketch.screen
}

fn row(sketch: &Sketch<'_>, entry: &Entry) -> RowEntry {
    let folder = entry.folder_name();
    match &entry.found {
        Found::Survey(look) => {
            let summary = &look.summary;
            let name =
                summary.name.clone().filter(|name| !name.trim().is_empty()).unwrap_or_else(|| folder.clone());
            let parts = Phrase::new("surveys-parts").with("parts", Arg::Count(summary.progress.parts));
            let place = summary.place.as_ref().map(|place| Phrase::new("text").text("text", place));
            let head = Phrase::new("text").text("text", name);
            sketch.row(Some(format!("open:{folder}")), &head, Some(&parts), place.as_ref())
        }
        Found::Trouble(error) => {
            let head = Phrase::new("text").text("text", &folder);
            let says = Phrase::new("surveys-trouble").text("what", error.to_string());
            sketch.row(None, &head, Some(&says), None)
        }
    }
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    let Some(key) = deed.key() else { return Ok(Move::Stay) };
    if key == "new" {
        return Ok(Move::Outside(Outside::NewSurvey));
    }
    let Some(name) = key.strip_prefix("open:") else { return Ok(Move::Stay) };
    let found = guide.home().list()?.into_iter().find(|entry| entry.folder_name() == name);
    match found {
        Some(entry) => {
            guide.open(&entry.folder)?;
            Ok(Move::Stay)
        }
        None => Err(GuideError::Refused { message: guide.say(&Phrase::new("gone")) }),
    }
}
