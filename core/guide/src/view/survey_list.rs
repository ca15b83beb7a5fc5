//! Lists of surveys: the rows, and where they lead.

use std::path::Path;

use facts::error::FactsError;
use facts::home::{Entry, Found, Home};
use facts::store::Summary;
use phrase::{Arg, Phrase};
use telling::words::error::InWords;

use super::paging;
use super::sketch::Sketch;
use super::teller::day;
use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Outside};
use crate::screen::{RowEntry, WordsRole};
use crate::session::Session;

/// The rows of a list of surveys, each with the key of its folder; returns how many there are in all.
pub(crate) fn list(
    session: &Session,
    sketch: &mut Sketch<'_>,
    found: std::result::Result<Vec<Entry>, FactsError>,
    key: fn(String) -> Key,
    none: &Phrase,
) -> usize {
    match found {
        Err(error) => {
            sketch.words(WordsRole::Problem, &error.phrase());
            0
        }
        Ok(found) if found.is_empty() => {
            sketch.words(WordsRole::Lead, none);
            0
        }
        Ok(found) => {
            let first = paging::first(session.pending());
            let rows: Vec<RowEntry> =
                found.iter().skip(first).take(paging::ROWS).map(|entry| row(sketch, key, entry)).collect();
            sketch.rows(&Phrase::new("surveys-rows"), rows);
            paging::presses(sketch, found.len());
            found.len()
        }
    }
}

fn row(sketch: &Sketch<'_>, key: fn(String) -> Key, entry: &Entry) -> RowEntry {
    let folder = entry.folder_name();
    let key = Some(key(folder.clone()));
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
pub(crate) fn named(summary: &Summary, folder: &Path) -> Phrase {
    let name = summary.name.as_deref().filter(|name| !name.trim().is_empty());
    let stem = || folder.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    Phrase::new("text").text("text", name.map_or_else(stem, str::to_owned))
}

/// How far a survey is, in counts.
pub(crate) fn progress(summary: &Summary) -> Phrase {
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
pub(crate) fn remark(summary: &Summary) -> Option<Phrase> {
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

/// Turns a page; returns whether that was asked for.
pub(crate) fn turn(session: &mut Session, key: &Key) -> bool {
    paging::turn(&mut session.pending, key)
}

/// What a list does whose rows lead to one survey each: turns its page, leads on, or back to the surveys.
pub(crate) fn take_in_list(
    session: &mut Session,
    done: &Done,
    list: impl FnOnce(&Home) -> std::result::Result<Vec<Entry>, FactsError>,
) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    if turn(session, key) {
        return Ok(Move::Stay);
    }
    if *key == Key::Out {
        return Ok(Move::Outside(Outside::Surveys));
    }
    let Key::Survey(name) = key else { return Ok(Move::Stay) };
    let found = list(session.home())?;
    let entry = find(session, found, name);
    Ok(entry.map_or(Move::Stay, |entry| Move::Outside(Outside::Survey(entry.folder))))
}

/// The survey of a row; says so if it is gone.
pub(crate) fn find(session: &mut Session, found: Vec<Entry>, name: &str) -> Option<Entry> {
    let entry = found.into_iter().find(|entry| entry.folder_name() == name);
    if entry.is_none() {
        session.tell(Phrase::new("gone"));
    }
    entry
}
