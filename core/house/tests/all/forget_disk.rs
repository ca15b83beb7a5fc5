//! What was forgotten is nowhere on the disk any more, in no copy, for ever.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

#[path = "../../../../tests/record/holding.rs"]
mod holding;

use std::fs;
use std::path::Path;

use facts::fact::{AuthorId, Edit, Fact, SubjectId};
use facts::home::Home;
use facts::photo::Picture;
use facts::store::{Draft, Store};
use holding::holding;
use house::document::Document;
use house::record::{field, fold};
use tempfile::TempDir;

const SECRET: &str = "17 Nowhere Lane, Inventedville";

fn picture(name: &str) -> Vec<u8> {
    fs::read(format!("{}/../facts/tests/pictures/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

/// A survey whose place was written three times among many other facts, with a draft of it.
fn survey(home: &Path) -> Store {
    let mut store = Store::create(&home.join("house.legwork"), AuthorId::random()).unwrap();
    let about = store.survey_id().subject();
    for number in 0..3 {
        store.write(&[Edit::new(about, field::PLACE, format!("{SECRET} {number}"))]).unwrap();
        let notes: Vec<Edit> =
            (0..40).map(|_| Edit::new(SubjectId::random(), "text", "x".repeat(300))).collect();
        store.write(&notes).unwrap();
    }
    let draft =
        Draft { subject: about, field: field::PLACE.into(), text: format!("{SECRET}, no"), saved_ms: 5 };
    store.save_draft(&draft).unwrap();
    store
}

#[test]
fn a_value_is_gone_from_every_byte_of_the_folder() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let about = store.survey_id().subject();
    // Copies for safety and a damaged database that was replaced lie beside it.
    fs::write(store.folder().join("survey.db.copy-1"), SECRET).unwrap();
    fs::write(store.folder().join("survey.db.damaged-1"), SECRET).unwrap();
    fs::write(store.folder().join("copy of a list.txt"), "somebody's own").unwrap();
    // The test can fail: it is in the database's log and in the copies.
    assert!(holding(home.path(), SECRET.as_bytes()).len() >= 3);

    let done = store.forget_field(about, field::PLACE).unwrap();
    assert_eq!((done.facts, done.is_cleared), (3, true));
    // While the survey is still open, and after it was closed.
    assert_eq!(holding(home.path(), SECRET.as_bytes()), [""; 0]);
    assert!(store.folder().join("copy of a list.txt").exists());
    assert!(store.drafts().unwrap().is_empty());
    assert_eq!(store.summary().place, None);
    assert!(store.ledger().history(about, field::PLACE).iter().all(|fact| fact.is_forgotten()));
    let lines = store.ledger().to_lines().unwrap();
    drop(store);
    assert_eq!(holding(home.path(), SECRET.as_bytes()), [""; 0]);
    let store = Store::open(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    assert_eq!(store.ledger().to_lines().unwrap(), lines);
    assert_eq!(fold(store.ledger(), store.survey_id()).unwrap().place, None);
}

#[test]
fn a_photo_is_gone_with_its_hash_and_small_picture() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let photo = store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    let twin = store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    let other = store.add_photo(&picture("colour.png"), None, None).unwrap();
    let clean = Picture::clean(&picture("baseline.jpg")).unwrap();
    let small = store.thumbnail(photo).unwrap();
    let coded = &clean.bytes()[clean.bytes().len() - 200..];
    // Of the small picture a part that fits on one page of the database.
    let small = &small[small.len() - 200..];
    let image = clean.image();
    let secrets = [coded, small, image.sha256.as_bytes(), clean.sha256().as_slice()];
    for secret in secrets {
        assert!(!holding(home.path(), secret).is_empty());
    }
    let done = store.forget_photo(photo).unwrap();
    assert_eq!((done.facts, done.is_cleared), (2, true));
    for (place, secret) in secrets.into_iter().enumerate() {
        assert_eq!(holding(home.path(), secret), [""; 0], "secret {place}");
    }
    assert!(store.photo_image(photo).is_err() && store.photo_image(twin).is_err());
    assert!(store.photo_path(other).unwrap().is_file());
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!((records.photos.len(), store.summary().progress.photos), (1, 1));
    assert!(store.forget_photo(photo).is_err());
}

#[test]
fn it_is_forgotten_in_every_copy_and_an_older_file_does_not_bring_it_back() {
    let home = TempDir::new().unwrap();
    let mut one = survey(home.path());
    let about = one.survey_id().subject();
    let other_home = TempDir::new().unwrap();
    let folder = other_home.path().join("other.legwork");
    let mut two = Store::create_with(&folder, AuthorId::random(), one.survey_id(), |_| Ok(())).unwrap();
    let old_file: Vec<Fact> = one.ledger().facts().cloned().collect();
    two.write_facts(old_file.clone()).unwrap();
    two.save_draft(&Draft { subject: about, field: field::PLACE.into(), text: SECRET.into(), saved_ms: 0 })
        .unwrap();
    assert!(!holding(other_home.path(), SECRET.as_bytes()).is_empty());

    one.forget_field(about, field::PLACE).unwrap();
    two.write_facts(one.ledger().facts().cloned().collect()).unwrap();
    assert_eq!(holding(other_home.path(), SECRET.as_bytes()), [""; 0]);
    for copy in [&mut one, &mut two] {
        copy.write_facts(old_file.clone()).unwrap();
    }
    assert_eq!(one.ledger().to_lines().unwrap(), two.ledger().to_lines().unwrap());
    for folder in [home.path(), other_home.path()] {
        assert_eq!(holding(folder, SECRET.as_bytes()), [""; 0]);
    }
}

#[test]
fn it_is_forgotten_in_surveys_that_were_set_aside() {
    let folder = TempDir::new().unwrap();
    let home = Home::at(folder.path()).unwrap();
    let aside = survey(folder.path());
    let (survey_id, facts): (_, Vec<Fact>) = (aside.survey_id(), aside.ledger().facts().cloned().collect());
    let (path, author) = (aside.folder().to_owned(), aside.author());
    drop(aside);
    home.set_aside(&path).unwrap();
    let mut store = Store::create_with(&path, author, survey_id, |_| Ok(())).unwrap();
    store.write_facts(facts).unwrap();
    store.forget_field(survey_id.subject(), field::PLACE).unwrap();
    assert!(!holding(folder.path(), SECRET.as_bytes()).is_empty());
    assert_eq!(home.forget_elsewhere(&store).unwrap(), 1);
    assert_eq!(holding(folder.path(), SECRET.as_bytes()), [""; 0]);
}

#[test]
fn another_program_that_reads_delays_the_clearing_and_the_next_opening_finishes_it() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let folder = store.folder().to_owned();
    let reader = rusqlite::Connection::open(folder.join("survey.db")).unwrap();
    reader.execute_batch("BEGIN; SELECT count(*) FROM fact").unwrap();
    let done = store.forget_field(store.survey_id().subject(), field::PLACE).unwrap();
    assert_eq!((done.facts, done.is_cleared), (3, false));
    assert!(store.scrub_is_due().unwrap());
    assert!(!holding(home.path(), SECRET.as_bytes()).is_empty());
    drop(reader);
    drop(store);
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    assert!(!store.scrub_is_due().unwrap());
    assert_eq!(holding(home.path(), SECRET.as_bytes()), [""; 0]);
}

#[test]
fn a_store_that_was_open_meanwhile_forgets_too() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let about = store.survey_id().subject();
    let mut open = Store::open(store.folder(), AuthorId::random()).unwrap();
    store.forget_field(about, field::PLACE).unwrap();
    assert!(open.refresh().unwrap());
    assert_eq!(open.ledger().to_lines().unwrap(), store.ledger().to_lines().unwrap());
    assert_eq!(open.summary(), store.summary());
}

#[test]
fn a_whole_thing_can_be_forgotten() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let note = store.add_note(None, "the key lies under INVENTED STONE").unwrap();
    store.forget_thing(note).unwrap();
    assert_eq!(holding(home.path(), b"INVENTED STONE"), [""; 0]);
    assert!(fold(store.ledger(), store.survey_id()).unwrap().notes.is_empty());
}

#[test]
fn what_a_killed_take_left_goes_with_forgetting_with_the_next_opening_and_with_a_sweep_of_the_home() {
    let home = TempDir::new().unwrap();
    let mut store = survey(home.path());
    let (folder, author) = (store.folder().to_owned(), store.author());
    let leave = |name: &str| {
        let left = folder.join(name);
        fs::create_dir(&left).unwrap();
        fs::write(left.join("lock"), "").unwrap();
        fs::write(left.join("0.jpg"), SECRET).unwrap();
        left
    };
    let left = leave(".taking-1");
    let about = store.survey_id().subject();
    assert!(store.forget_field(about, field::PLACE).unwrap().is_cleared);
    assert!(!left.exists());
    assert_eq!(holding(home.path(), SECRET.as_bytes()), [""; 0]);

    let left = leave(".taking-2");
    drop(store);
    assert_eq!(Home::at(home.path()).unwrap().sweep().unwrap(), 1);
    assert!(!left.exists());

    let left = leave(".taking-3");
    Store::open(&folder, author).unwrap();
    assert!(!left.exists());
}
