//! What is no survey, a newer survey or a damaged one is said plainly, and nothing is changed.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use facts::fact::reserved::MOST_PARTS;
use facts::fact::{AuthorId, Edit, SubjectId};
use facts::store::Store;
use facts::{FactsError, NotASurvey};
use rusqlite::Connection;
use tempfile::TempDir;

/// Every file below a folder, with its bytes; folders with none.
fn bytes_below(folder: &Path) -> BTreeMap<PathBuf, Option<Vec<u8>>> {
    let mut found = BTreeMap::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(bytes_below(&path));
            found.insert(path, None);
        } else {
            found.insert(path.clone(), Some(fs::read(path).unwrap()));
        }
    }
    found
}

fn open(folder: &Path) -> Result<Store, FactsError> {
    Store::open(folder, AuthorId::random())
}

/// A survey with some facts, closed.
fn survey(home: &TempDir) -> PathBuf {
    let folder = home.path().join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let edits: Vec<Edit> = (0..100)
        .map(|number| Edit::new(SubjectId::random(), "note", format!("{number} ").repeat(40)))
        .collect();
    store.write(&edits).unwrap();
    folder
}

#[test]
fn what_is_no_survey_is_refused_and_left_alone() {
    let home = TempDir::new().unwrap();
    let at = |name: &str| home.path().join(name);
    fs::write(at("file.legwork"), "text").unwrap();
    for name in ["empty", "text", "nothing", "folder", "other"] {
        fs::create_dir(at(name)).unwrap();
    }
    fs::write(at("text/survey.db"), "This is no database. ".repeat(300)).unwrap();
    fs::write(at("nothing/survey.db"), "").unwrap();
    fs::create_dir(at("folder/survey.db")).unwrap();
    let other = Connection::open(at("other/survey.db")).unwrap();
    other.execute_batch("CREATE TABLE fact (id); INSERT INTO fact VALUES (1)").unwrap();
    drop(other);

    let before = bytes_below(home.path());
    for (name, expected) in [
        ("missing", NotASurvey::Missing),
        ("file.legwork", NotASurvey::AFile),
        ("file.legwork/below", NotASurvey::Missing),
        ("empty", NotASurvey::NoDatabase),
        ("text", NotASurvey::NotSqlite),
        ("nothing", NotASurvey::NotSqlite),
        ("folder", NotASurvey::NotSqlite),
        ("other", NotASurvey::OtherProgram),
    ] {
        let refused = open(&at(name)).unwrap_err();
        assert!(
            matches!(refused, FactsError::NotASurvey { why, .. } if why == expected),
            "{name}: {refused}"
        );
        assert!(refused.to_string().contains(name), "{refused}");
    }
    assert_eq!(bytes_below(home.path()), before);
}

#[test]
fn a_newer_survey_is_refused_untouched() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    let newer = Connection::open(folder.join("survey.db")).unwrap();
    newer.pragma_update(None, "user_version", 5).unwrap();
    drop(newer);
    let before = bytes_below(home.path());
    let refused = open(&folder).unwrap_err();
    assert!(matches!(refused, FactsError::Newer { found: 5, known: 4, .. }), "{refused}");
    assert!(refused.to_string().contains("update"), "{refused}");
    assert_eq!(bytes_below(home.path()), before);
}

#[test]
fn a_newer_survey_that_did_not_end_well_keeps_its_log() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    let (database, log) = (folder.join("survey.db"), folder.join("survey.db-wal"));
    let newer = Connection::open(&database).unwrap();
    newer.pragma_update(None, "user_version", 5).unwrap();
    // What a process leaves that is killed now: the new version stands in the log alone.
    let left = (fs::read(&database).unwrap(), fs::read(&log).unwrap());
    drop(newer);
    fs::write(&database, &left.0).unwrap();
    fs::write(&log, &left.1).unwrap();
    assert!(!left.1.is_empty());

    let refused = open(&folder).unwrap_err();
    assert!(matches!(refused, FactsError::Newer { found: 5, .. }), "{refused}");
    assert_eq!((fs::read(&database).unwrap(), fs::read(&log).unwrap()), left);
}

#[test]
fn a_survey_that_did_not_end_well_has_all_that_was_acknowledged() {
    let home = TempDir::new().unwrap();
    let folder = home.path().join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "tag", "S1")]).unwrap();
    // What a process leaves that is killed now: the fact stands in the log alone.
    let killed = home.path().join("killed.legwork");
    fs::create_dir(&killed).unwrap();
    for name in ["survey.db", "survey.db-wal"] {
        fs::copy(folder.join(name), killed.join(name)).unwrap();
    }
    assert_eq!(open(&killed).unwrap().ledger(), store.ledger());
    assert_eq!(store.ledger().len(), 1);
}

#[test]
fn damage_is_reported() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    let database = folder.join("survey.db");
    let mut bytes = fs::read(&database).unwrap();
    // The bytes behind the first page are tables and indices: all of them become 0xFF.
    bytes.iter_mut().skip(4096).for_each(|byte| *byte = 0xFF);
    fs::write(&database, &bytes).unwrap();
    let refused = open(&folder).unwrap_err();
    assert!(matches!(refused, FactsError::Damaged { .. }), "{refused}");
    assert_eq!(fs::read(&database).unwrap(), bytes);
}

#[test]
fn a_cut_file_is_reported() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    let database = folder.join("survey.db");
    let whole = fs::read(&database).unwrap();
    let mut reported = 0;
    for pages in 0..whole.len() / 4096 {
        fs::write(&database, &whole[..pages * 4096 + 100]).unwrap();
        let refused = open(&folder).unwrap_err();
        let kinds = matches!(
            refused,
            FactsError::Damaged { .. } | FactsError::NotASurvey { why: NotASurvey::NotSqlite, .. }
        );
        assert!(kinds, "{pages} pages: {refused}");
        reported += 1;
    }
    assert!(reported > 5);
}

#[test]
fn after_an_unclean_end_also_what_opening_does_not_read_is_checked() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    let database = folder.join("survey.db");
    let connection = Connection::open(&database).unwrap();
    let page: u32 = connection
        .query_row("SELECT rootpage FROM sqlite_schema WHERE name = 'draft'", (), |row| row.get(0))
        .unwrap();
    connection.close().unwrap();
    let mut bytes = fs::read(&database).unwrap();
    bytes.iter_mut().skip((page as usize - 1) * 4096).take(4096).for_each(|byte| *byte = 0xFF);
    fs::write(&database, &bytes).unwrap();
    assert!(open(&folder).is_ok(), "opening reads no drafts");
    // A log that ends before its first whole frame: somebody was stopped while writing.
    fs::write(folder.join("survey.db-wal"), [0; 20]).unwrap();
    let refused = open(&folder).unwrap_err();
    assert!(matches!(refused, FactsError::Damaged { .. }), "{refused}");
}

#[test]
fn a_fact_whose_origin_is_gone_is_damage() {
    let home = TempDir::new().unwrap();
    let folder = home.path().join("house.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let part = SubjectId::random();
    store.write(&[Edit::new(part, "tag", "S1")]).unwrap();
    store.write(&[Edit::new(part, "tag", "S2")]).unwrap();
    drop(store);
    let connection = Connection::open(folder.join("survey.db")).unwrap();
    connection
        .execute_batch(
            "PRAGMA foreign_keys = OFF; DROP TRIGGER fact_is_kept;
             DELETE FROM fact WHERE id IN (SELECT replaced FROM fact_over);",
        )
        .unwrap();
    drop(connection);
    let refused = open(&folder).unwrap_err();
    assert!(
        matches!(&refused, FactsError::Damaged { report, .. } if report.contains("not known")),
        "{refused}"
    );
}

#[test]
fn nothing_is_made_where_something_stands_or_nothing_can_be_written() {
    let home = TempDir::new().unwrap();
    let folder = survey(&home);
    fs::write(home.path().join("file.legwork"), "text").unwrap();
    fs::create_dir(home.path().join("empty.legwork")).unwrap();
    let before = bytes_below(home.path());
    let create = |path: PathBuf| Store::create(&path, AuthorId::random()).unwrap_err();
    for there in ["house.legwork", "file.legwork", "empty.legwork"] {
        let refused = create(home.path().join(there));
        assert!(matches!(refused, FactsError::AlreadyThere { .. }), "{there}: {refused}");
    }
    for unnamed in ["house", "house.txt", ".legwork", ".."] {
        let refused = create(home.path().join(unnamed));
        let name = matches!(refused, FactsError::NotASurvey { why: NotASurvey::Name, .. });
        assert!(name, "{unnamed}: {refused}");
    }
    for nowhere in ["missing/new.legwork", "file.legwork/new.legwork"] {
        let refused = create(home.path().join(nowhere));
        assert!(matches!(refused, FactsError::Inaccessible { .. }), "{nowhere}: {refused}");
    }
    assert_eq!(bytes_below(home.path()), before);
    assert!(open(&folder).is_ok());
}

/// SQLite on Unix opens no path longer than 512 bytes (`MAX_PATHNAME` of its `os_unix.c`), so that the database
/// cannot be made where the folder can.
#[test]
fn a_survey_that_could_not_be_finished_leaves_nothing() {
    let home = TempDir::new().unwrap();
    let deep = home.path().join("x".repeat(240)).join("y".repeat(240));
    fs::create_dir_all(&deep).unwrap();
    let before = bytes_below(home.path());
    let refused = Store::create(&deep.join("house.legwork"), AuthorId::random()).unwrap_err();
    assert!(matches!(refused, FactsError::Inaccessible { .. }), "{refused}");
    assert_eq!(bytes_below(home.path()), before);
}

#[test]
fn no_survey_grows_larger_than_can_be_read_again() {
    let home = TempDir::new().unwrap();
    let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    let parts = |count: usize| -> Vec<Edit> {
        (0..count).map(|_| Edit::new(SubjectId::random(), "is", "part")).collect()
    };
    let all = parts(MOST_PARTS);
    store.write(&all).unwrap();
    let before = store.ledger().to_lines().unwrap();
    let refused = store.write(&parts(1)).unwrap_err();
    assert!(matches!(refused, FactsError::TooManyParts { found: 2_001, most: 2_000 }), "{refused}");
    assert_eq!(store.ledger().to_lines().unwrap(), before);
    // Anything else can be written, and a part in the place of one that was removed.
    store.write(&[Edit::new(all[0].subject, "tag", "S1")]).unwrap();
    store.remove(&[all[1].subject]).unwrap();
    store.write(&parts(1)).unwrap();
    assert!(matches!(store.bring_back(&[all[1].subject]), Err(FactsError::TooManyParts { .. })));
    let reopened = open(store.folder()).unwrap();
    assert_eq!(reopened.summary().progress.parts, MOST_PARTS as u64);
}
