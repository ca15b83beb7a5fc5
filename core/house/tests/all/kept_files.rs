//! Files that must open for ever: `tests/file/writer.py`, written from docs/file.md alone, once made them with all that the
//! format knew then, and says beside them what must be found. They are never made anew: what came later is said by a file
//! that was kept later.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use facts::act;
use facts::error::FactsError;
use facts::fact::{AuthorId, Fact, Ledger};
use facts::file::{self, Consent, Limits, PackOptions, Progress};
use facts::store::Store;
use house::record::{Asked, Named as _, Survey, field, fold};
use serde_json::{Value, json};
use tempfile::TempDir;

/// The files, and what must be found in each.
const FILES: [(&str, &str); 7] = [
    ("format-0.lwk", "told.json"),
    ("format-1.lwk", "told.json"),
    ("format-1-photos.lwk", "told-photos.json"),
    ("format-1-ports.lwk", "told-ports.json"),
    ("format-1-guesses.lwk", "told-guesses.json"),
    ("format-1-without.lwk", "told-without.json"),
    ("format-1-print.lwk", "told-print.json"),
];

fn go_on(_: Progress) -> bool {
    true
}

fn kept(name: &str) -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/file/kept").join(name)
}

fn told(name: &str) -> Value {
    serde_json::from_slice(&std::fs::read(kept(name)).unwrap()).unwrap()
}

fn taken(path: &Path, home: &TempDir, name: &str) -> Store {
    let folder = home.path().join(name);
    let author = AuthorId::random();
    file::take_as_new(path, &folder, author, Consent::NONE, Limits::default(), &mut go_on).unwrap().0
}

fn lines(ledger: &Ledger) -> Value {
    json!(ledger.facts().map(|fact| fact.to_line().unwrap()).collect::<Vec<_>>())
}

/// How many records of each kind the survey shows; itself is one.
fn records(survey: &Survey) -> BTreeMap<&'static str, usize> {
    BTreeMap::from([
        ("survey", 1),
        ("part", survey.parts.len()),
        ("run", survey.runs.len()),
        ("room", survey.rooms.len()),
        ("service", survey.services.len()),
        ("reading", survey.readings.len()),
        ("note", survey.notes.len()),
        ("photo", survey.photos.len()),
        ("measurement", survey.measurements.len()),
        ("work", survey.works.len()),
    ])
}

#[test]
fn a_file_of_every_format_opens_with_all_that_is_in_it() {
    for (name, told_in) in FILES {
        let told = told(told_in);
        let home = TempDir::new().unwrap();
        let store = taken(&kept(name), &home, "one.legwork");
        let ledger = store.ledger();
        assert_eq!(lines(ledger), told["facts"], "{name}");
        let survey = fold(ledger, store.survey_id()).unwrap();
        assert_eq!(json!(records(&survey)), told["records"], "{name}");
        assert_eq!((&survey.unread, &survey.impossible), (&vec![], &vec![]), "{name}");
        let removed: Vec<_> = act::removed(ledger).iter().map(|thing| thing.subject).collect();
        assert_eq!(json!(removed), told["removed"], "{name}");
        let forgotten: Vec<_> = ledger.facts().filter(|fact| fact.is_forgotten()).map(Fact::id).collect();
        assert_eq!(json!(forgotten), told["forgotten"], "{name}");
        let disagreements: Vec<Value> = ledger
            .disagreements()
            .iter()
            .map(|one| {
                let live = ledger.live(one.subject, one.field).into_iter();
                let said: BTreeSet<&str> = live.filter_map(|fact| fact.value().as_str()).collect();
                json!([one.subject, one.field, said])
            })
            .collect();
        assert_eq!(json!(disagreements), told["disagreements"], "{name}");
        assert_eq!(std::fs::read_dir(store.photos()).unwrap().count(), 1, "{name}");
    }
}

/// Whoever takes a file packed here finds the same again, and no format older than this release's is written.
#[test]
fn what_is_packed_again_says_the_same() {
    for (name, told_in) in FILES {
        let told = told(told_in);
        let home = TempDir::new().unwrap();
        let mut store = taken(&kept(name), &home, "one.legwork");
        let path = home.path().join("again.lwk");
        let report =
            |_: &Survey, _: &Ledger| Ok::<_, FactsError>("<!doctype html><title>x</title>".to_owned());
        house::document::pack(&mut store, &PackOptions::default(), &report, &path, &mut go_on).unwrap();
        let again = taken(&path, &home, "two.legwork");
        assert_eq!(lines(again.ledger()), told["facts"], "{name}");
        let packed = std::fs::read(&path).unwrap();
        let header = br#"{"core":"0.1.0","facts":"#;
        assert!(packed.windows(header.len()).any(|bytes| bytes == header));
        let format = br#""file":"legwork","format":1,"#;
        assert!(
            packed.windows(format.len()).any(|bytes| bytes == format),
            "format 1 is what docs/file.md promises"
        );
    }
}

/// A field, a question or a reply that no kept file says is promised by nothing.
#[test]
fn the_kept_files_say_all_that_can_be_said() {
    let lines = |told_in| told(told_in)["facts"].as_array().unwrap().clone();
    let facts: Vec<Value> = FILES
        .into_iter()
        .flat_map(|(_, told_in)| lines(told_in))
        .map(|line| serde_json::from_str(line.as_str().unwrap()).unwrap())
        .collect();
    let said: BTreeSet<&str> = facts.iter().map(|fact| fact["field"].as_str().unwrap()).collect();
    let is_said = |name: &str| match name.strip_suffix(".N") {
        Some(stem) => said.iter().any(|field| field.starts_with(stem)),
        None => said.contains(name),
    };
    for line in field::lines() {
        assert!(is_said(line.name), "{} {}", line.record, line.name);
    }
    for question in Asked::ALL {
        let name = question.field();
        let of_it = facts.iter().filter(|fact| fact["field"] == *name);
        let values: Vec<String> = of_it.map(|fact| fact["value"].to_string()).collect();
        for reply in question.replies() {
            let is_said = values.iter().any(|value| value.contains(&format!("\"{}\"", reply.name())));
            assert!(is_said, "{name} {}", reply.name());
        }
    }
}
