//! What happens every day: an edit, opening a survey, the list of surveys.

use std::path::Path;

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::home::{Found, Home};
use facts::store::Store;
use house::record;
use rusqlite::{Connection, params};
use serde_json::json;
use tempfile::TempDir;

use super::{median, seconds};
use crate::Outcome;

const PARTS: usize = 300;
const PHOTOS: usize = 2_000;
const FACTS: usize = 20_000;
const SURVEYS: usize = 200;
/// Edits for each round.
const EDITS: u32 = 200;

/// One acknowledged edit in a survey of 300 parts, against one committed row of the same bytes in a table of its own,
/// with the same settings of SQLite, by turns.
pub fn edit(rounds: usize, folder: &Path) -> Outcome {
    let home = TempDir::new_in(folder)?;
    let mut store = house(&home.path().join("house.legwork"), 0)?;
    let subjects: Vec<SubjectId> = store.ledger().subjects().collect();
    let raw = raw_table(&home.path().join("raw.db"))?;
    let (mut edits, mut rows) = (Vec::new(), Vec::new());
    for number in 0..u32::try_from(rounds.max(7))? * EDITS {
        let about = subjects.get(number as usize % subjects.len()).copied().ok_or("no part")?;
        edits.push(seconds(|| {
            let length = json!({"known": "measured", "likely_m": number, "most_m": number + 1});
            store.write(&[Edit::new(about, "length", length)])?;
            Ok(())
        })?);
        rows.push(seconds(|| {
            let id = u128::from(number).to_be_bytes();
            let length = format!(r#"{{"known":"measured","likely_m":{number},"most_m":{}}}"#, number + 1);
            // One statement is one transaction.
            raw.prepare_cached("INSERT INTO fact VALUES (?1, ?2, ?3, ?4, ?5, ?6)")?
                .execute(params![id, id, id, id, "length", length])?;
            Ok(())
        })?);
    }
    let [edit, row] = [edits, rows].map(|times| median(times) * 1e6);
    println!("one edit, {PARTS} parts: {edit:.0} us; one raw SQLite row: {row:.0} us: {:.2} x", row / edit);
    Ok(())
}

/// A plain table with the settings that the store has.
fn raw_table(path: &Path) -> Outcome<Connection> {
    let connection = Connection::open(path)?;
    let settings = [
        ("journal_mode", "WAL"),
        ("synchronous", "FULL"),
        ("fullfsync", "ON"),
        ("checkpoint_fullfsync", "ON"),
        ("foreign_keys", "ON"),
        ("trusted_schema", "OFF"),
        ("mmap_size", "0"),
        ("secure_delete", "ON"),
        ("temp_store", "MEMORY"),
        ("cell_size_check", "ON"),
    ];
    for (name, value) in settings {
        connection.pragma_update(None, name, value)?;
    }
    connection.execute_batch(
        "CREATE TABLE fact (id BLOB PRIMARY KEY NOT NULL, act BLOB NOT NULL, author BLOB NOT NULL, subject BLOB NOT \
         NULL, field TEXT NOT NULL, value TEXT) STRICT, WITHOUT ROWID",
    )?;
    Ok(connection)
}

/// Opening a survey of 300 parts, 2,000 photos and 20,000 facts, until its records are there. The system has its files
/// in memory, as after a first look.
pub fn open(rounds: usize, folder: &Path) -> Outcome {
    let home = TempDir::new_in(folder)?;
    let place = home.path().join("house.legwork");
    let mut store = house(&place, PHOTOS)?;
    let parts: Vec<SubjectId> =
        record::fold(store.ledger(), store.survey_id())?.parts.keys().copied().collect();
    let left = FACTS.saturating_sub(store.ledger().len());
    let places: Vec<Edit> = (0..left)
        .filter_map(|number| {
            let part = *parts.get(number % parts.len())?;
            Some(Edit::new(part, "place", format!("cellar, shelf {number}")))
        })
        .collect();
    // An act replaces what the one before it said.
    for act in places.chunks(parts.len()) {
        store.write(act)?;
    }
    let facts = store.ledger().len();
    drop(store);
    let (mut opens, mut folds) = (Vec::new(), Vec::new());
    for _ in 0..rounds.max(7) {
        let mut opened = None;
        opens.push(seconds(|| {
            opened = Some(Store::open(&place, AuthorId::random())?);
            Ok(())
        })?);
        let store = opened.ok_or("not opened")?;
        folds.push(seconds(|| {
            let survey = record::fold(store.ledger(), store.survey_id())?;
            let right = survey.parts.len() == PARTS && survey.photos.len() == PHOTOS;
            if right { Ok(()) } else { Err("the survey is not whole".into()) }
        })?);
    }
    let [open, fold] = [opens, folds].map(|times| median(times) * 1e3);
    println!(
        "open {PARTS} parts, {PHOTOS} photos, {facts} facts: {:.1} ms (read {open:.1}, records {fold:.1})",
        open + fold
    );
    Ok(())
}

/// Listing 200 surveys with name, place and progress.
pub fn list(rounds: usize, folder: &Path) -> Outcome {
    let place = TempDir::new_in(folder)?;
    let home = Home::at(place.path())?;
    for number in 0..SURVEYS {
        let mut store = Store::create(&home.place(&format!("house {number}"))?, AuthorId::random())?;
        let about = store.survey_id().subject();
        let part = SubjectId::random();
        store.write(&[
            Edit::new(about, "name", format!("House {number}")),
            Edit::new(about, "place", "nowhere"),
            Edit::new(part, "is", "part"),
            Edit::new(part, "kind", "splitter"),
        ])?;
    }
    let mut times = Vec::new();
    for _ in 0..rounds.max(7) {
        times.push(seconds(|| {
            let list = home.list()?;
            let right = list.iter().all(|entry| matches!(entry.found, Found::Survey(_)));
            if right && list.len() == SURVEYS { Ok(()) } else { Err("the list is not whole".into()) }
        })?);
    }
    println!("list {SURVEYS} surveys: {:.1} ms", median(times) * 1e3);
    Ok(())
}

/// A survey of 300 parts with photos of them; the pictures themselves play no part here and are not there.
fn house(place: &Path, photos: usize) -> Outcome<Store> {
    let mut store = Store::create(place, AuthorId::random())?;
    let parts: Vec<SubjectId> = (0..PARTS).map(|_| SubjectId::random()).collect();
    let mut edits = Vec::new();
    for (number, &part) in parts.iter().enumerate() {
        edits.push(Edit::new(part, "is", "part"));
        edits.push(Edit::new(part, "kind", if number == 0 { "entry" } else { "splitter" }));
        edits.push(Edit::new(part, "tag", format!("S{number}")));
        if let Some(from) = number.checked_sub(1).and_then(|number| parts.get(number / 2)) {
            let feed = json!({"part": from.to_string(), "port": number % 2 + 1});
            edits.push(Edit::new(part, "feed", feed));
        }
    }
    for number in 0..photos {
        let photo = SubjectId::random();
        let image =
            json!({"bytes": 900, "ext": "jpg", "height": 3, "sha256": format!("{number:064x}"), "width": 4});
        edits.push(Edit::new(photo, "is", "photo"));
        edits.push(Edit::new(photo, "image", image));
        let of = parts.get(number % parts.len()).map(ToString::to_string);
        edits.push(Edit::new(photo, "of", of));
        edits.push(Edit::new(photo, "role", "before"));
    }
    store.write(&edits)?;
    Ok(store)
}
