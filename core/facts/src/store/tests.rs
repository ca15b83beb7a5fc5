//! What can only be shown with the connection at hand: its settings, the triggers, a full disk, a busy database.

use std::thread;
use std::time::Duration;

use tempfile::TempDir;

use super::*;
use crate::error::FactsError;
use crate::fact::SubjectId;

fn store() -> (TempDir, Store) {
    let home = TempDir::new().unwrap();
    let store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    (home, store)
}

fn tag(text: &str) -> Edit {
    Edit::new(SubjectId::random(), "tag", text)
}

/// Values as documented on sqlite.org/pragma.html: synchronous 2 is FULL, `temp_store` 2 is MEMORY.
#[test]
fn the_settings_hold_after_opening() {
    let (_home, store) = store();
    let number =
        |name: &str| -> i64 { store.connection.pragma_query_value(None, name, |row| row.get(0)).unwrap() };
    assert_eq!(number("synchronous"), 2);
    assert_eq!(number("temp_store"), 2);
    for on in [
        "fullfsync",
        "checkpoint_fullfsync",
        "foreign_keys",
        "recursive_triggers",
        "secure_delete",
        "cell_size_check",
    ] {
        assert_eq!(number(on), 1, "{on}");
    }
    assert_eq!(number("trusted_schema"), 0);
    let mode: String = store.connection.pragma_query_value(None, "journal_mode", |row| row.get(0)).unwrap();
    assert_eq!(mode, "wal");
    // A build that leaves memory maps out gives no answer at all.
    let map: rusqlite::Result<i64> = store.connection.pragma_query_value(None, "mmap_size", |row| row.get(0));
    assert!(matches!(map, Ok(0) | Err(rusqlite::Error::QueryReturnedNoRows)), "{map:?}");
}

/// As `.cargo/config.toml` says: two cores that look at surveys do not wait for each other.
#[test]
#[cfg(feature = "bundled-sqlite")]
fn sqlite_is_built_as_listing_wants_it() {
    let (_home, store) = store();
    let is_built = |option: &str| -> bool {
        let asked = "SELECT sqlite_compileoption_used(?1)";
        store.connection.query_row(asked, [option], |row| row.get(0)).unwrap()
    };
    assert!(is_built("DEFAULT_MEMSTATUS=0"));
    assert!(is_built("THREADSAFE=1"));
    assert!(!is_built("ENABLE_FTS5") && !is_built("ENABLE_RTREE"));
}

#[test]
fn every_table_is_strict_and_without_rowid() {
    let (_home, store) = store();
    let mut select = store
        .connection
        .prepare("SELECT name, wr, strict FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite_%'")
        .unwrap();
    let mut tables: Vec<(String, bool, bool)> = select
        .query_map((), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    tables.sort();
    let names = ["draft", "fact", "fact_over", "meta", "summary", "thumbnail", "wish"];
    assert_eq!(tables, names.map(|name| (name.to_owned(), true, true)));
}

#[test]
fn the_log_only_grows_whoever_asks() {
    let (_home, mut store) = store();
    let about = SubjectId::random();
    store.write(&[Edit::new(about, "tag", "S1")]).unwrap();
    store.write(&[Edit::new(about, "tag", "S2")]).unwrap();
    let before = store.ledger.to_lines().unwrap();
    for forbidden in [
        "DELETE FROM fact",
        "DELETE FROM fact_over",
        "UPDATE fact SET value = '\"S9\"'",
        "UPDATE fact SET field = 'note', value = NULL, extra = NULL",
        "UPDATE fact SET author = act, value = NULL",
        "UPDATE fact_over SET replaced = fact",
        "INSERT OR REPLACE INTO fact SELECT id, act, author, subject, field, '\"S9\"', extra, sum FROM fact",
        "INSERT INTO fact_over (fact, replaced) VALUES (x'00', x'01')",
    ] {
        let refused = store.connection.execute_batch(forbidden).unwrap_err();
        let constraint = Some(rusqlite::ErrorCode::ConstraintViolation);
        assert_eq!(refused.sqlite_error_code(), constraint, "{forbidden}: {refused}");
    }
    let again = Store::open(store.folder(), store.author()).unwrap();
    assert_eq!(again.ledger.to_lines().unwrap(), before);
}

#[test]
fn what_a_fact_said_can_be_dropped_for_good() {
    let (_home, mut store) = store();
    store.write(&[tag("S1")]).unwrap();
    store.connection.execute_batch("UPDATE fact SET value = NULL, extra = NULL").unwrap();
    let back = store.connection.execute_batch("UPDATE fact SET value = '\"S1\"'").unwrap_err();
    assert_eq!(back.sqlite_error_code(), Some(rusqlite::ErrorCode::ConstraintViolation));
}

#[test]
fn a_full_disk_is_said_and_nothing_is_lost() {
    let (_home, mut store) = store();
    store.write(&[tag("S1")]).unwrap();
    let pages: i64 = store.connection.pragma_query_value(None, "page_count", |row| row.get(0)).unwrap();
    // SQLite itself refuses to grow the file beyond this, with the code that it gives for a full disk.
    store.connection.pragma_update(None, "max_page_count", pages).unwrap();
    let before = store.ledger.to_lines().unwrap();
    let long: Vec<Edit> = (0..20).map(|_| tag(&"x".repeat(8000))).collect();
    let full = store.write(&long).unwrap_err();
    assert!(matches!(full, FactsError::DiskFull { .. }), "{full}");
    assert_eq!(store.ledger.to_lines().unwrap(), before);

    store.connection.pragma_update(None, "max_page_count", 1_000_000).unwrap();
    store.write(&long).unwrap();
    assert_eq!(store.ledger.len(), 21);
    let again = Store::open(store.folder(), store.author()).unwrap();
    assert_eq!(again.ledger, store.ledger);
}

#[test]
fn a_second_writer_waits() {
    let (_home, mut first) = store();
    let mut second = Store::open(first.folder(), AuthorId::random()).unwrap();
    first.connection.execute_batch("BEGIN IMMEDIATE").unwrap();
    let writer = thread::spawn(move || {
        second.write(&[tag("S2")]).unwrap();
        second.ledger.len()
    });
    thread::sleep(Duration::from_millis(200));
    assert!(!writer.is_finished());
    first.connection.execute_batch("COMMIT").unwrap();
    assert_eq!(writer.join().unwrap(), 1);
    assert!(first.refresh().unwrap());
    assert_eq!(first.ledger.len(), 1);
}

#[test]
fn a_writer_that_waited_too_long_is_told_and_can_try_again() {
    let (_home, first) = store();
    let mut second = Store::open(first.folder(), AuthorId::random()).unwrap();
    second.connection.busy_timeout(Duration::from_millis(50)).unwrap();
    first.connection.execute_batch("BEGIN IMMEDIATE").unwrap();
    let busy = second.write(&[tag("S2")]).unwrap_err();
    assert!(matches!(busy, FactsError::Busy { .. }), "{busy}");
    assert!(second.ledger.is_empty());
    first.connection.execute_batch("COMMIT").unwrap();
    second.write(&[tag("S2")]).unwrap();
    assert_eq!(second.ledger.len(), 1);
}

/// A survey that took a file in which said two things, and wrote something itself since.
fn took() -> (TempDir, Store, SubjectId) {
    let (home, mut store) = store();
    let mut theirs =
        Store::create_with(&home.path().join("theirs.legwork"), AuthorId::random(), store.survey, |_| Ok(()))
            .unwrap();
    let about = SubjectId::random();
    store.write(&[Edit::new(about, "tag", "S1")]).unwrap();
    theirs.write_facts(store.ledger.facts().cloned().collect()).unwrap();
    theirs.write(&[Edit::new(about, "tag", "S7")]).unwrap();
    let facts = theirs.ledger.facts().cloned().collect();
    store.take_in(facts, false, || Ok(())).unwrap();
    store.write(&[tag("S3")]).unwrap();
    (home, store, about)
}

#[test]
fn what_was_hidden_before_a_file_changed_it_is_hidden_when_the_file_is_put_back() {
    let (home, mut store) = store();
    let mut theirs =
        Store::create_with(&home.path().join("theirs.legwork"), AuthorId::random(), store.survey, |_| Ok(()))
            .unwrap();
    let [about, never_said] = [SubjectId::random(), SubjectId::random()];
    store.write(&[Edit::new(about, "tag", "S1")]).unwrap();
    theirs.write_facts(store.ledger.facts().cloned().collect()).unwrap();
    theirs.write(&[Edit::new(about, "tag", "S7"), Edit::new(never_said, "tag", "S8")]).unwrap();
    store.remove(&[about, never_said]).unwrap();
    let is_hidden =
        |store: &Store, thing| matches!(store.ledger.removal(thing), crate::fact::Removal::Removed { .. });
    store.take_in(theirs.ledger.facts().cloned().collect(), false, || Ok(())).unwrap();
    assert!(
        !is_hidden(&store, about) && !is_hidden(&store, never_said),
        "the file says something new of both"
    );
    store.write(&[tag("S3")]).unwrap();
    assert!(!store.put_back().unwrap().without_trace);
    assert!(is_hidden(&store, about) && is_hidden(&store, never_said));
    assert_eq!(store.ledger.shown(about, "tag").unwrap().value(), "S1");
    assert!(store.ledger.live(about, crate::fact::REMOVED).len() == 1, "one removal stands");
}

#[test]
fn two_who_put_the_same_file_back_at_once_say_what_stood_before_once() {
    let (_home, mut one, about) = took();
    let mut two = Store::open(one.folder(), AuthorId::random()).unwrap();
    let receipt = taken::last_receipt(&two).unwrap();
    one.put_back().unwrap();
    let again = two.say_what_stood_before(&receipt).unwrap_err();
    assert!(matches!(again, FactsError::CannotPutBack(_)));
    assert_eq!(two.ledger().shown(about, "tag").unwrap().value(), "S1");
    assert_eq!(two.ledger().live(about, "tag").len(), 1);
}

/// A survey with something that waits for a yes or a no, opened by two programs.
fn asked_twice() -> (TempDir, Store, Store, SubjectId) {
    let (home, mut one) = store();
    let about = SubjectId::random();
    one.write(&[Edit::new(about, "tag", "S1")]).unwrap();
    let edits = one.ledger.forget_facts(one.ledger.facts());
    let mut clock = FactClock::system();
    one.ledger.facts().for_each(|fact| clock.raise(fact.id()));
    let word = one.ledger.plan(ActId::random(), AuthorId::random(), &mut clock, &edits).unwrap();
    one.take_in(word, false, || Ok(())).unwrap();
    let two = Store::open(one.folder(), AuthorId::random()).unwrap();
    assert_eq!(two.wishes().unwrap().len(), 1);
    (home, one, two, about)
}

#[test]
fn who_answers_waits_for_who_is_answering_and_the_first_answer_counts() {
    let (_home, mut one, mut two, about) = asked_twice();
    one.connection.execute_batch("BEGIN IMMEDIATE").unwrap();
    two.connection.busy_timeout(Duration::from_millis(50)).unwrap();
    assert!(matches!(two.refuse_wishes(), Err(FactsError::Busy { .. })));
    assert!(matches!(two.agree(), Err(FactsError::Busy { .. })));
    one.connection.execute_batch("ROLLBACK").unwrap();
    one.refuse_wishes().unwrap();
    assert!(!two.agree().unwrap(), "it is refused already");
    assert_eq!(two.ledger.shown(about, "tag").unwrap().value(), "S1");
    // The other way round.
    let (_home, mut one, mut two, about) = asked_twice();
    assert!(one.agree().unwrap());
    two.refuse_wishes().unwrap();
    assert!(two.refused().unwrap().is_empty(), "what was agreed to is not asked any more");
    two.refresh().unwrap();
    assert!(two.ledger.shown(about, "tag").unwrap().is_forgotten());
}

#[test]
fn what_need_not_be_on_the_disk_waits_for_nobody_and_all_else_does() {
    let (_home, store) = store();
    let number = |connection: &Connection, name: &str| -> rusqlite::Result<i64> {
        connection.pragma_query_value(None, name, |row| row.get(0))
    };
    let settings = |connection: &Connection| {
        ["busy_timeout", "synchronous"].map(|name| number(connection, name).unwrap())
    };
    // In milliseconds, and as on sqlite.org/pragma.html: 1 is NORMAL, 2 is FULL.
    let usual = [5_000, 2];
    assert_eq!(settings(&store.connection), usual);
    let meanwhile = |connection: &Connection| {
        assert_eq!(settings(connection), [0, 1]);
        Ok(())
    };
    pragma::unsynced(&store.connection, meanwhile).unwrap();
    assert_eq!(settings(&store.connection), usual);
    // Also where it did not go through.
    pragma::unsynced(&store.connection, |_| Err(rusqlite::Error::QueryReturnedNoRows)).unwrap_err();
    assert_eq!(settings(&store.connection), usual);
}

#[test]
fn putting_back_leaves_what_another_program_said_meanwhile_and_the_receipt_of_a_later_file() {
    let (_home, mut one, about) = took();
    let mut two = Store::open(one.folder(), AuthorId::random()).unwrap();
    let receipt = taken::last_receipt(&two).unwrap();
    one.write(&[Edit::new(about, "tag", "S8")]).unwrap();
    let mut theirs = Ledger::new();
    theirs.insert_all(one.ledger.facts().cloned(), |_| Ok(())).unwrap();
    let later =
        theirs.plan(ActId::random(), AuthorId::random(), &mut FactClock::system(), &[tag("S9")]).unwrap();
    one.take_in(later, false, || Ok(())).unwrap();
    two.say_what_stood_before(&receipt).unwrap();
    assert_eq!(two.ledger().shown(about, "tag").unwrap().value(), "S8");
    assert_eq!(two.ledger().live(about, "tag").len(), 1);
    assert_eq!(two.can_put_back().unwrap().facts, 1, "the later file's");
}
