//! The surveys of this device.

use std::path::Path;

use facts::error::FactsError;
use facts::home::{Entry, Found, Home};
use facts::store::Summary;
use phrase::{Arg, Phrase};

use super::paging;
use super::share::day;
use crate::deed::Deed;
use crate::error::{GuideError, Result};
use crate::guide::Guide;
use crate::place::{Move, Outside};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::sketch::Sketch;

pub(super) fn show(guide: &Guide) -> Screen {
    let mut sketch = Sketch::new(guide.language(), guide.pending(), "surveys", &Phrase::new("surveys"));
    let none = Phrase::new("surveys-none");
    let listed = list(guide, &mut sketch, guide.home().list(), "open", &none);
    sketch.press("new", &Phrase::new("surveys-new"), PressWeight::Main);
    sketch.press("sent", &Phrase::new("surveys-sent"), PressWeight::Other);
    if listed > 0 {
        sketch.press("order", &Phrase::new("surveys-order"), PressWeight::Quiet);
    }
    if guide.home().set_aside_list().is_ok_and(|aside| !aside.is_empty()) {
        sketch.press("aside", &Phrase::new("surveys-aside"), PressWeight::Quiet);
    }
    sketch.press("device", &Phrase::new("device"), PressWeight::Quiet);
    sketch.screen
}

/// The rows of a list of surveys, each with the key `prefix:FOLDER`; returns how many there are in all.
pub(super) fn list(
    guide: &Guide,
    sketch: &mut Sketch<'_>,
    found: std::result::Result<Vec<Entry>, FactsError>,
    prefix: &str,
    none: &Phrase,
) -> usize {
    match found {
        Err(error) => {
            sketch.words(WordsRole::Problem, &Phrase::new("problem").text("what", error.to_string()));
            0
        }
        Ok(found) if found.is_empty() => {
            sketch.words(WordsRole::Lead, none);
            0
        }
        Ok(found) => {
            let first = paging::first(guide.pending());
            let rows: Vec<RowEntry> =
                found.iter().skip(first).take(paging::ROWS).map(|entry| row(sketch, prefix, entry)).collect();
            sketch.rows(&Phrase::new("surveys-rows"), rows);
            paging::presses(sketch, found.len());
            found.len()
        }
    }
}

fn row(sketch: &Sketch<'_>, prefix: &str, entry: &Entry) -> RowEntry {
    let folder = entry.folder_name();
    let key = Some(format!("{prefix}:{folder}"));
    match &entry.found {
        Found::Survey(look) => {
            let summary = &look.summary;
            let (progress, remark) = (progress(summary), remark(summary));
            sketch.row(key, &named(summary, &entry.folder), Some(&progress), remark.as_ref())
        }
        Found::Trouble(_) => {
            let head = Phrase::new("text").text("text", &folder);
            sketch.row(key, &head, Some(&Phrase::new("surveys-in-trouble")), None)
        }
    }
}

/// A survey's name; that of its folder where it has none.
pub(super) fn named(summary: &Summary, folder: &Path) -> Phrase {
    let name = summary.name.as_deref().filter(|name| !name.trim().is_empty());
    let stem = || folder.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    Phrase::new("text").text("text", name.map_or_else(stem, str::to_owned))
}

/// How far a survey is, in counts.
pub(super) fn progress(summary: &Summary) -> Phrase {
    let progress = summary.progress;
    if progress.parts == 0 && progress.rooms == 0 {
        return Phrase::new("surveys-parts").with("parts", Arg::Count(0));
    }
    Phrase::new("home-progress")
        .with("rooms", Arg::Count(progress.rooms))
        .with("parts", Arg::Count(progress.parts))
        .with("runs", Arg::Count(progress.runs))
        .with("photos", Arg::Count(progress.photos))
}

/// Where the house is, and when something was last written.
pub(super) fn remark(summary: &Summary) -> Option<Phrase> {
    let place = summary.place.as_deref().filter(|place| !place.trim().is_empty());
    let written = summary.newest.map(|newest| day(newest.ms()));
    match (place, written) {
        (Some(place), Some(day)) => {
            Some(Phrase::new("surveys-place-and-day").text("place", place).text("day", day))
        }
        (None, Some(day)) => Some(Phrase::new("surveys-day").text("day", day)),
        (Some(place), None) => Some(Phrase::new("text").text("text", place)),
        (None, None) => None,
    }
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    let Deed::Press { key } = deed else { return Ok(Move::Stay) };
    if turn(guide, key) {
        return Ok(Move::Stay);
    }
    Ok(match key.as_str() {
        "new" => Move::Outside(Outside::NewSurvey),
        "sent" => Move::Outside(Outside::Sent),
        "order" => Move::Outside(Outside::Order),
        "aside" => Move::Outside(Outside::Aside),
        "device" => Move::Outside(Outside::Device),
        key => {
            let Some(name) = key.strip_prefix("open:") else { return Ok(Move::Stay) };
            let entry = find(guide, guide.home().list()?, name)?;
            match entry.found {
                Found::Survey(_) => return open(guide, &entry.folder),
                Found::Trouble(_) => Move::Outside(Outside::Survey(entry.folder)),
            }
        }
    })
}

/// Turns a page; returns whether that was asked for.
pub(super) fn turn(guide: &mut Guide, key: &str) -> bool {
    let turned = paging::turned(guide.pending(), key);
    turned.is_some_and(|turned| {
        guide.keep_outside(&turned);
        true
    })
}

/// What a list does whose rows lead to one survey each: turns its page, leads on, or back to the surveys.
pub(super) fn take_in_list(
    guide: &mut Guide,
    deed: &Deed,
    list: impl FnOnce(&Home) -> std::result::Result<Vec<Entry>, FactsError>,
) -> Result<Move> {
    let Deed::Press { key } = deed else { return Ok(Move::Stay) };
    if turn(guide, key) {
        return Ok(Move::Stay);
    }
    if key == "out" {
        return Ok(Move::Outside(Outside::Surveys));
    }
    let Some(name) = key.strip_prefix("survey:") else { return Ok(Move::Stay) };
    let entry = find(guide, list(guide.home())?, name)?;
    Ok(Move::Outside(Outside::Survey(entry.folder)))
}

/// The survey of a row.
pub(super) fn find(guide: &Guide, found: Vec<Entry>, name: &str) -> Result<Entry> {
    found
        .into_iter()
        .find(|entry| entry.folder_name() == name)
        .ok_or_else(|| GuideError::Refused { message: guide.say(&Phrase::new("gone")) })
}

/// Opens a survey. One that turns out to be damaged leads to where it can be mended.
pub(super) fn open(guide: &mut Guide, folder: &Path) -> Result<Move> {
    match guide.open(folder) {
        Ok(()) => Ok(Move::Stay),
        Err(GuideError::Damaged { .. }) => {
            Ok(Move::Outside(Outside::Mend { folder: folder.to_owned(), found_damaged: true }))
        }
        Err(error) => Err(error),
    }
}
