//! No file takes anything away that nobody agreed to: what it tells to forget waits, what turns a survey upside down is asked
//! about, and what it brought can be put back.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{SystemTime, UNIX_EPOCH};

use facts::FactsError;
use facts::error::CannotPutBack;
use facts::fact::{AuthorId, Edit, Fact, FactClock, Removal, SubjectId};
use facts::file::{Consent, look, put_back, take, take_as_new};
use facts::home::Home;
use facts::store::{DATABASE, RETURNABLE_MS, Store};
use rusqlite::Connection;
use tempfile::TempDir;

use super::file_support::{Chance, NO_LIMIT, content, go_on, house, pack};

/// A survey, and a copy of it at a stranger's.
fn two() -> (TempDir, Store, Store) {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let file = home.path().join("first.lwk");
    pack(&mut mine, &file);
    let folder = home.path().join("copy.legwork");
    let (theirs, _) =
        take_as_new(&file, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    (home, mine, theirs)
}

fn sent(home: &TempDir, from: &mut Store) -> PathBuf {
    let file = home.path().join(format!("{}.lwk", SubjectId::random()));
    pack(from, &file);
    file
}

fn of_kind(store: &Store, is: &str) -> Vec<SubjectId> {
    let ledger = store.ledger();
    ledger
        .subjects()
        .filter(|&subject| ledger.shown(subject, "is").is_some_and(|fact| fact.value() == is))
        .collect()
}

#[test]
fn a_file_that_forgets_everything_wipes_nothing() {
    let (home, mut mine, mut theirs) = two();
    let before = content(&mine);
    let things: Vec<SubjectId> = theirs.ledger().subjects().collect();
    for subject in things {
        theirs.forget_thing(subject).unwrap();
    }
    theirs.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    let file = sent(&home, &mut theirs);

    let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    assert!(seen.forgotten.len() > 8 && !seen.upheaval.asks_first());
    assert!(seen.forgotten.iter().all(|wish| wish.by == Some(theirs.author())));
    let taken = take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((taken.facts.len(), taken.waiting), (1, seen.forgotten.len()));
    assert_eq!(of_kind(&mine, "room").len(), 1, "all else is taken");
    assert_eq!(of_kind(&mine, "part").len(), 1);
    assert!(mine.ledger().facts().all(|fact| !fact.is_forgotten()));
    assert_eq!(content(&mine).1, before.1, "the photo");

    // The question stays open, also after the survey was closed and the file came again.
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    let folder = mine.folder().to_owned();
    mine.close().unwrap();
    let mut mine = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(mine.wishes().unwrap().len(), seen.forgotten.len());
    put_back(&mut mine).unwrap();
    assert_eq!(content(&mine), before);
    assert!(mine.wishes().unwrap().is_empty(), "what it asked goes with it");
}

#[test]
fn a_wish_is_agreed_to_or_refused_and_then_not_asked_again() {
    let (home, mut mine, mut theirs) = two();
    let survey = mine.survey_id().subject();
    theirs.forget_field(survey, "place").unwrap();
    let file = sent(&home, &mut theirs);
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    mine.refuse_wishes().unwrap();
    assert!(mine.wishes().unwrap().is_empty());
    let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.forgotten.len(), seen.new_facts), (0, 0));
    assert_eq!(take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap().waiting, 0);
    assert_eq!(mine.ledger().shown(survey, "place").unwrap().value(), "Invented Street 1");

    // The sender's copy takes ours in, and what they forgot stays so.
    let back = sent(&home, &mut mine);
    take(&back, &mut theirs, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert!(theirs.ledger().shown(survey, "place").unwrap().is_forgotten());

    // Another wish is another question; a yes drops it here, and what we send then carries it on.
    let note = of_kind(&theirs, "note").remove(0);
    theirs.forget_thing(note).unwrap();
    let file = sent(&home, &mut theirs);
    assert!(take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap().waiting > 0);
    assert!(mine.agree_to_wishes().unwrap().is_cleared);
    assert!(mine.wishes().unwrap().is_empty());
    assert!(mine.ledger().history(note, "text").iter().all(|fact| fact.is_forgotten()));
    let on = std::fs::read(sent(&home, &mut mine)).unwrap();
    assert!(!on.windows(16).any(|part| part == b"behind the shelf"));
}

#[test]
fn a_yes_to_a_file_forgets_no_more_than_a_look_at_it_showed() {
    let (home, mut mine, mut theirs) = two();
    let survey = mine.survey_id().subject();
    theirs.forget_field(survey, "place").unwrap();
    take(&sent(&home, &mut theirs), &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    mine.refuse_wishes().unwrap();
    let note = of_kind(&theirs, "note").remove(0);
    theirs.forget_field(note, "text").unwrap();
    let file = sent(&home, &mut theirs);
    let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(seen.forgotten.iter().map(|wish| wish.subject).collect::<Vec<_>>(), [note]);
    let taken = take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.new_facts, seen.new_words, taken.facts.len()), (0, 1, 1));
    assert_eq!(mine.ledger().shown(survey, "place").unwrap().value(), "Invented Street 1");
    assert!(mine.ledger().shown(note, "text").unwrap().is_forgotten());
    // Where nobody said no, the yes is to all of it.
    let (home, mut mine, mut theirs) = two();
    let survey = mine.survey_id().subject();
    theirs.forget_field(survey, "place").unwrap();
    take(&sent(&home, &mut theirs), &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert!(mine.ledger().shown(survey, "place").unwrap().is_forgotten());
}

#[test]
fn a_wish_that_rotted_on_the_disk_is_asked_again() {
    let (home, mut mine, mut theirs) = two();
    let survey = mine.survey_id().subject();
    theirs.forget_field(survey, "place").unwrap();
    let file = sent(&home, &mut theirs);
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    let folder = mine.folder().to_owned();
    mine.close().unwrap();
    let database = Connection::open(folder.join(DATABASE)).unwrap();
    database.execute("UPDATE wish SET sum = sum + 2", ()).unwrap();
    drop(database);
    let mut mine = Store::open(&folder, AuthorId::random()).unwrap();
    assert!(mine.wishes().unwrap().is_empty());
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(mine.wishes().unwrap().len(), 1);
}

#[test]
fn a_yes_to_a_frame_alone_drops_it_in_every_copy_beside() {
    let (home, mut mine, mut theirs) = two();
    let survey = mine.survey_id().subject();
    let copy = home.path().join("beside.legwork");
    take_as_new(&sent(&home, &mut mine), &copy, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on)
        .unwrap();
    // What nobody tells to forget, and comes without what was said.
    let place = theirs.ledger().shown(survey, "place").unwrap().clone();
    let frame = Fact::forgotten(
        place.id(),
        place.act(),
        place.by(),
        place.subject(),
        place.field(),
        place.over().to_vec(),
    );
    theirs.write_facts(vec![frame.unwrap()]).unwrap();
    take(&sent(&home, &mut theirs), &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(mine.wishes().unwrap()[0].by, None);
    mine.agree_to_wishes().unwrap();
    theirs.close().unwrap();
    assert_eq!(Home::at(home.path()).unwrap().forget_elsewhere(&mine).unwrap(), 2);
    let copy = Store::open(&copy, AuthorId::random()).unwrap();
    assert!(copy.ledger().shown(survey, "place").unwrap().is_forgotten());
    assert!(!copy.ledger().shown(survey, "name").unwrap().is_forgotten());
}

#[test]
fn what_was_never_here_is_forgotten_without_a_question() {
    let (home, mut mine, mut theirs) = two();
    let note = SubjectId::random();
    theirs.write(&[Edit::new(note, "is", "note"), Edit::new(note, "text", "phone of the owner")]).unwrap();
    theirs.forget_thing(note).unwrap();
    let file = sent(&home, &mut theirs);
    let taken = take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((taken.waiting, taken.facts.len()), (0, 3));
    assert_eq!(content(&mine), content(&theirs));
}

/// Both copies know parts, each but the first fed by the one before.
fn parts(home: &TempDir, mine: &mut Store, theirs: &mut Store, count: usize) -> Vec<SubjectId> {
    let parts: Vec<SubjectId> = (0..count).map(|_| SubjectId::random()).collect();
    for (place, &part) in parts.iter().enumerate() {
        let feed = place.checked_sub(1).map_or(
            serde_json::json!("nothing"),
            |before| serde_json::json!({"from": {"part": parts[before], "port": 1, "run": null}}),
        );
        mine.write(&[Edit::new(part, "is", "part"), Edit::new(part, "feed", feed)]).unwrap();
    }
    let file = sent(home, mine);
    take(&file, theirs, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    parts
}

#[test]
fn a_file_that_removes_or_moves_more_than_half_asks_first_and_half_does_not() {
    // With the part and the run of the house there are 6 parts and 9 things.
    for (moves, removes, asks) in
        [(0, 3, false), (0, 4, true), (3, 0, false), (4, 0, true), (2, 2, true), (2, 1, false)]
    {
        let (home, mut mine, mut theirs) = two();
        let parts = parts(&home, &mut mine, &mut theirs, 5);
        for &part in parts.iter().skip(1).take(removes) {
            let removal = theirs.ledger().remove(part);
            theirs.write(&[removal]).unwrap();
        }
        for &part in parts.iter().rev().take(moves) {
            theirs.write(&[Edit::new(part, "feed", serde_json::json!("nothing"))]).unwrap();
        }
        let file = sent(&home, &mut theirs);
        let before = content(&mine);
        let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
        assert_eq!((seen.upheaval.parts, seen.upheaval.parts_changed), (6, moves + removes));
        assert_eq!(seen.upheaval.asks_first(), asks, "{moves} {removes}");
        let taken = take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on);
        if asks {
            assert!(matches!(taken, Err(FactsError::Upheaval { parts: 6, .. })));
            assert_eq!(content(&mine), before);
            take(&file, &mut mine, Consent { forget: false, upheaval: true }, NO_LIMIT, &mut go_on).unwrap();
        } else {
            taken.unwrap();
        }
        assert_eq!(content(&mine), content(&theirs));
    }
}

#[test]
fn a_file_that_says_parts_are_something_else_asks_too() {
    let (home, mut mine, mut theirs) = two();
    let parts = parts(&home, &mut mine, &mut theirs, 5);
    for part in &parts {
        theirs.write(&[Edit::new(*part, "is", "nothing that anybody knows")]).unwrap();
    }
    let file = sent(&home, &mut theirs);
    assert!(matches!(
        take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on),
        Err(FactsError::Upheaval { gone: 5, .. })
    ));
}

#[test]
fn put_back_after_more_was_written_brings_back_what_stood_and_leaves_what_is_ours() {
    let (home, mut mine, mut theirs) = two();
    let parts = parts(&home, &mut mine, &mut theirs, 5);
    let gone = theirs.ledger().remove(parts[4]);
    let new = SubjectId::random();
    theirs
        .write(&[
            gone,
            Edit::new(parts[0], "tag", "X9"),
            Edit::new(parts[1], "tag", "X1"),
            Edit::new(new, "is", "part"),
        ])
        .unwrap();
    mine.write(&[Edit::new(parts[0], "tag", "S7")]).unwrap();
    let file = sent(&home, &mut theirs);
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    // Since then: a word of ours over one of theirs, and something new.
    mine.write(&[Edit::new(parts[1], "tag", "S8"), Edit::new(parts[2], "tag", "S9")]).unwrap();
    assert!(!mine.can_put_back().unwrap().without_trace);
    put_back(&mut mine).unwrap();
    let ledger = mine.ledger();
    let tag = |part| ledger.shown(part, "tag").unwrap().value().as_str().unwrap().to_owned();
    assert_eq!((tag(parts[0]), tag(parts[1]), tag(parts[2])), ("S7".into(), "S8".into(), "S9".into()));
    assert!(matches!(ledger.removal(parts[4]), Removal::Present));
    assert!(matches!(ledger.removal(new), Removal::Removed { .. }));
    assert!(ledger.disagreements().is_empty());
    let none = mine.can_put_back().unwrap_err();
    assert!(matches!(none, FactsError::CannotPutBack(CannotPutBack::NothingTaken)));
}

#[test]
fn a_file_can_be_put_back_for_thirty_days_or_until_it_is_kept() {
    let (home, mine, mut theirs) = two();
    let folder = mine.folder().to_owned();
    mine.close().unwrap();
    let start = SystemTime::now().duration_since(UNIX_EPOCH).unwrap().as_millis();
    let now = Arc::new(AtomicU64::new(u64::try_from(start).unwrap()));
    let wall = Arc::clone(&now);
    let clock = FactClock::with_wall(move || wall.load(Ordering::Relaxed));
    let mut mine = Store::open_with(&folder, AuthorId::random(), clock).unwrap();
    theirs.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    let file = sent(&home, &mut theirs);
    take(&file, &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    now.fetch_add(RETURNABLE_MS, Ordering::Relaxed);
    assert!(mine.can_put_back().unwrap().without_trace);
    now.fetch_add(1, Ordering::Relaxed);
    assert!(mine.can_put_back().is_err() && put_back(&mut mine).is_err());

    theirs.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    take(&sent(&home, &mut theirs), &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    theirs
        .write(&[Edit::new(SubjectId::random(), "is", "room"), Edit::new(SubjectId::random(), "is", "room")])
        .unwrap();
    take(&sent(&home, &mut theirs), &mut mine, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(mine.can_put_back().unwrap().facts, 2);
    mine.keep_what_was_taken().unwrap();
    assert_eq!(mine.can_put_back().unwrap().facts, 1, "the one before it is another question");
    mine.keep_what_was_taken().unwrap();
    assert!(mine.can_put_back().is_err());
}
