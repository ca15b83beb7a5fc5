//! A survey of an older layout becomes the newest layout in one step, as if it had been made so.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fs;
use std::path::{Path, PathBuf};

use facts::fact::{AuthorId, SubjectId};
use facts::store::{Draft, Store, peek};
use rusqlite::Connection;
use tempfile::TempDir;

/// What the release that wrote layout 1 wrote: schema and rows, frozen.
const LAYOUT_1: &str = include_str!("../layouts/v1.sql");

/// What the release that wrote layout 2 wrote, of the same facts.
const LAYOUT_2: &str = include_str!("../layouts/v2.sql");

fn old_survey(home: &Path) -> PathBuf {
    survey_of(home, LAYOUT_1)
}

fn survey_of(home: &Path, layout: &str) -> PathBuf {
    let folder = home.join("old.legwork");
    fs::create_dir_all(folder.join("photos")).unwrap();
    let database = Connection::open(folder.join("survey.db")).unwrap();
    database.pragma_update(None, "journal_mode", "WAL").unwrap();
    database.execute_batch(layout).unwrap();
    folder
}

/// Every table, index and trigger, and every row, as text.
fn content(folder: &Path) -> Vec<String> {
    let database = Connection::open(folder.join("survey.db")).unwrap();
    let mut lines = Vec::new();
    let mut tables: Vec<(String, String)> = Vec::new();
    let mut schema =
        database.prepare("SELECT type, name, sql FROM sqlite_schema ORDER BY type, name").unwrap();
    let mut rows = schema.query(()).unwrap();
    while let Some(row) = rows.next().unwrap() {
        let (kind, name): (String, String) = (row.get(0).unwrap(), row.get(1).unwrap());
        lines.push(format!("{kind} {name} {:?}", row.get::<_, Option<String>>(2).unwrap()));
        tables.push((kind, name));
    }
    for (_, name) in tables.iter().filter(|(kind, _)| kind == "table") {
        let mut select = database.prepare(&format!("SELECT * FROM {name}")).unwrap();
        let columns = select.column_count();
        let mut rows = select.query(()).unwrap();
        while let Some(row) = rows.next().unwrap() {
            let values: Vec<_> =
                (0..columns).map(|column| format!("{:?}", row.get_ref(column).unwrap())).collect();
            lines.push(format!("{name}: {}", values.join(", ")));
        }
    }
    for name in ["user_version", "application_id"] {
        let number: i64 = database.pragma_query_value(None, name, |row| row.get(0)).unwrap();
        lines.push(format!("{name} {number}"));
    }
    lines
}

#[test]
fn migrated_is_as_fresh() {
    let home = TempDir::new().unwrap();
    let old = old_survey(home.path());
    // The look at it before: name, place and date, without what layout 1 does not count.
    let look = peek(&old).unwrap();
    assert_eq!(look.summary.name.as_deref(), Some("Invented house"));
    assert_eq!(look.summary.place.as_deref(), Some("1 Nowhere Lane"));
    assert_eq!(look.summary.facts, 8);

    let migrated = Store::open(&old, AuthorId::random()).unwrap();
    let fresh = home.path().join("fresh.legwork");
    let mut made = Store::create_with(&fresh, AuthorId::random(), migrated.survey_id(), |_| Ok(())).unwrap();
    made.write_facts(migrated.ledger().facts().cloned().collect()).unwrap();
    for draft in migrated.drafts().unwrap() {
        made.save_draft(&draft).unwrap();
    }
    assert_eq!(migrated.ledger(), made.ledger());
    assert_eq!(migrated.summary(), made.summary());
    drop((migrated, made));
    assert_eq!(content(&old), content(&fresh));
    assert_eq!(peek(&old).unwrap().summary.progress.parts, 1);
}

#[test]
fn layout_2_becomes_what_layout_1_becomes_and_keeps_its_small_pictures() {
    let homes = [TempDir::new().unwrap(), TempDir::new().unwrap()];
    let [one, two] =
        [(&homes[0], LAYOUT_1), (&homes[1], LAYOUT_2)].map(|(home, layout)| survey_of(home.path(), layout));
    // The look at it before says what it counts.
    assert_eq!(peek(&two).unwrap().summary.progress.parts, 1);
    for folder in [&one, &two] {
        drop(Store::open(folder, AuthorId::random()).unwrap());
    }
    let (small, rest): (Vec<_>, Vec<_>) =
        content(&two).into_iter().partition(|line| line.starts_with("thumbnail: "));
    assert_eq!(small.len(), 1);
    assert_eq!(rest, content(&one));
}

#[test]
fn everything_is_still_there() {
    let home = TempDir::new().unwrap();
    let old = old_survey(home.path());
    let store = Store::open(&old, AuthorId::random()).unwrap();
    let lines = store.ledger().to_lines().unwrap();
    // One with unknown members, one forgotten, one that replaces two.
    assert!(lines.contains(r#""colour":["later"]"#), "{lines}");
    assert!(lines.contains(r#""forgotten":true"#), "{lines}");
    assert_eq!(store.ledger().facts().filter(|fact| fact.over().len() == 2).count(), 1);
    let drafts = store.drafts().unwrap();
    let subject: SubjectId = "00000000-0000-4000-8000-0000000000c1".parse().unwrap();
    let expected =
        Draft { subject, field: "text".into(), text: "half ty".into(), saved_ms: 1_700_000_000_000 };
    assert_eq!(drafts, [expected]);
    drop(store);
    assert_eq!(Store::open(&old, AuthorId::random()).unwrap().ledger().to_lines().unwrap(), lines);
}

#[test]
fn a_migration_that_fails_changes_nothing() {
    let home = TempDir::new().unwrap();
    let old = old_survey(home.path());
    let database = Connection::open(old.join("survey.db")).unwrap();
    // The last statement of the step meets a table of that name.
    database.execute_batch("CREATE TABLE summary (x)").unwrap();
    drop(database);
    let before = content(&old);
    assert!(Store::open(&old, AuthorId::random()).is_err());
    assert_eq!(content(&old), before);
}
