//! Lists of surveys: the rows, and where they lead.

use std::path::Path;

use facts::home::{Entry, Found};
use facts::store::Summary;
use phrase::{Arg, Phrase};

use super::builder::ScreenBuilder;
use super::paging;
use super::teller::day;
use crate::done::Done;
use crate::place::{Key, Move, Outside};
use crate::screen::{PressWeight, RowEntry, WordsRole};
use crate::session::{Listing, Session};

/// The rows of a list of surveys, each with the key of its folder.
pub(crate) fn list(
    session: &Session,
    builder: &mut ScreenBuilder<'_>,
    found: &[Entry],
    key: fn(String) -> Key,
    none: &Phrase,
) {
    if !session.listing.is_whole {
        builder.words(WordsRole::Lead, &Phrase::new("surveys-not-all"));
        builder.press(&Key::Again, &Phrase::new("surveys-again"), PressWeight::Other);
    }
    if found.is_empty() {
        if session.listing.is_whole {
            builder.words(WordsRole::Lead, none);
        }
        return;
    }
    let first = paging::first(session.pending());
    let rows: Vec<RowEntry> =
        found.iter().skip(first).take(paging::ROWS).map(|entry| row(builder, key, entry)).collect();
    builder.rows(&Phrase::new("surveys-rows"), rows);
    paging::presses(builder, found.len());
}

fn row(builder: &ScreenBuilder<'_>, key: fn(String) -> Key, entry: &Entry) -> RowEntry {
    let folder = entry.folder_name();
    let key = Some(key(folder.clone()));
    match &entry.found {
        Found::Survey(look) => {
            let summary = &look.summary;
            let (progress, remark) = (progress(summary), remark(summary));
            builder.row(key, &named(summary, &entry.folder), Some(&progress), remark.as_ref())
        }
        Found::Trouble(_) => {
            let head = Phrase::new("text").text("text", &folder);
            builder.row(key, &head, Some(&Phrase::new("surveys-in-trouble")), None)
        }
    }
}

/// A survey's name; that of its folder where it has none.
pub(crate) fn named(summary: &Summary, folder: &Path) -> Phrase {
    let name = summary.name.as_deref().filter(|name| !name.trim().is_empty());
    let stem = || folder.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    Phrase::new("text").text("text", name.map_or_else(stem, str::to_owned))
}

/// The name of a survey of the list.
pub(crate) fn named_in_list(session: &Session, folder: &Path) -> Phrase {
    match session.listed(folder).map(|entry| &entry.found) {
        Some(Found::Survey(look)) => named(&look.summary, folder),
        Some(Found::Trouble(_)) | None => named(&Summary::default(), folder),
    }
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

/// Does what a list does by itself, whatever its rows lead to: turns its page, is made anew. Returns whether that was
/// asked for.
pub(crate) fn turn(session: &mut Session, key: &Key) -> bool {
    if *key == Key::Again {
        session.list();
        return true;
    }
    paging::turn(&mut session.pending, key)
}

/// What a list does whose rows lead to one survey each: turns its page, leads on, or back to the surveys.
pub(crate) fn take_in_list(session: &mut Session, done: &Done, list: fn(&Listing) -> &[Entry]) -> Move {
    let Done::Press(key) = done else { return Move::Stay };
    if turn(session, key) {
        return Move::Stay;
    }
    let entry = match key {
        Key::Out => return Move::Outside(Outside::Surveys),
        Key::Survey(name) => find(list(&session.listing), name),
        _ => None,
    };
    entry.map_or(Move::Stay, |entry| Move::Outside(Outside::Survey(entry.folder.clone())))
}

/// The survey of a row.
pub(crate) fn find<'a>(found: &'a [Entry], name: &str) -> Option<&'a Entry> {
    found.iter().find(|entry| entry.folder_name() == name)
}
