//! Rot: a bit of a survey's files that is not what was written is seen, or changes nothing that is shown.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fs;
use std::path::{Path, PathBuf};

use facts::FactsError;
use facts::fact::{AuthorId, Edit, SubjectId};
use facts::file::{Consent, Limits, put_back, take, take_as_new};
use facts::home::Repaired;
use facts::store::{DATABASE, Draft, Store, peek, salvage};
use rusqlite::Connection;
use serde_json::json;
use tempfile::TempDir;

use super::file_support::{Chance, add_photo, go_on, house, pack};

/// A survey of some pages, at rest, and how its file looks when it is whole.
fn at_rest(chance: &mut Chance) -> (TempDir, PathBuf, Vec<u8>) {
    let (home, mut store) = house(chance);
    for number in 0..120 {
        let run = SubjectId::random();
        store
            .write(&[Edit::new(run, "is", "run"), Edit::new(run, "length", json!({"metres": number}))])
            .unwrap();
        store
            .write(&[Edit::new(run, "length", json!({"metres": number + 15, "known": "measured"}))])
            .unwrap();
    }
    let draft =
        Draft { subject: SubjectId::random(), field: "label".into(), text: "5-1002 MHz".into(), saved_ms: 7 };
    store.save_draft(&draft).unwrap();
    let folder = store.folder().to_owned();
    store.close().unwrap();
    let whole = fs::read(folder.join(DATABASE)).unwrap();
    (home, folder, whole)
}

fn turn(folder: &Path, whole: &[u8], bit: usize) {
    let mut bytes = whole.to_vec();
    bytes[bit / 8] ^= 1 << (bit % 8);
    fs::write(folder.join(DATABASE), bytes).unwrap();
    for ending in ["-wal", "-shm"] {
        let _ = fs::remove_file(folder.join(format!("{DATABASE}{ending}")));
    }
}

/// All that a survey shows to anybody; or that it is seen to be damaged.
fn shown(folder: &Path) -> Result<(String, String, Vec<String>), FactsError> {
    let listed = format!("{:?}", peek(folder)?);
    let store = Store::open(folder, AuthorId::random())?;
    let drafts = store.drafts()?.into_iter().map(|draft| draft.text).collect();
    Ok((listed, format!("{} {}", store.survey_id(), store.ledger().to_lines().unwrap()), drafts))
}

#[test]
fn a_flipped_bit_anywhere_is_seen_or_changes_nothing_shown() {
    let mut chance = Chance::new();
    let (_home, folder, whole) = at_rest(&mut chance);
    let sound = shown(&folder).unwrap();
    assert!(whole.len() > 60_000, "{} bytes are too few pages", whole.len());
    let mut seen = 0;
    for _ in 0..1_000 {
        let bit = chance.below(whole.len() * 8);
        turn(&folder, &whole, bit);
        match shown(&folder) {
            Err(_) => seen += 1,
            Ok((listed, lines, drafts)) => {
                assert!(listed == sound.0 && lines == sound.1, "bit {bit} changed what is shown");
                // A draft that is not what was typed is none.
                assert!(drafts == sound.2 || drafts.is_empty(), "bit {bit}");
            }
        }
    }
    println!("{seen} of 1,000 flipped bits were seen");
    // The rest lies in pages and room that nothing uses, and in rows' sums of what can be made again.
    assert!(seen > 450, "{seen}");
}

#[test]
fn a_repair_makes_whole_what_one_bit_has_damaged_or_says_what_is_lost() {
    let mut chance = Chance::new();
    let (_home, folder, whole) = at_rest(&mut chance);
    let sound = shown(&folder).unwrap();
    let (mut damaged, mut repaired) = (0, 0);
    for _ in 0..150 {
        let bit = chance.below(whole.len() * 8);
        turn(&folder, &whole, bit);
        if shown(&folder).is_ok() {
            continue;
        }
        damaged += 1;
        if let Ok(found) = Repaired::open(&folder, AuthorId::random()) {
            assert_eq!(
                format!("{} {}", found.store.survey_id(), found.store.ledger().to_lines().unwrap()),
                sound.1
            );
            repaired += 1;
        } else {
            // Whatever is readable comes, and nothing that was never said.
            let found = salvage(&folder).unwrap_or_default();
            for fact in &found.facts {
                assert!(sound.1.contains(&fact.to_line().unwrap()), "bit {bit}");
            }
        }
        for entry in fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()) {
            if entry.to_string_lossy().contains("damaged") || entry.to_string_lossy().contains("rebuilt") {
                fs::remove_file(entry).unwrap();
            }
        }
    }
    // Nearly all bits lie in rows, and a row has its bit put right; what is left lies in the file's structure.
    println!("{repaired} of {damaged} repaired");
    assert!(damaged > 50 && repaired * 10 > damaged * 6, "{repaired} of {damaged}");
}

/// Writes over the value of the shown length of a run, as rot would: more than one bit.
fn spoil(folder: &Path, from: &str, to: &str) {
    let path = folder.join(DATABASE);
    let mut bytes = fs::read(&path).unwrap();
    let at = bytes.windows(from.len()).position(|part| part == from.as_bytes()).unwrap();
    bytes[at..at + to.len()].copy_from_slice(to.as_bytes());
    fs::write(path, bytes).unwrap();
}

/// A run whose length was said three times: 15, 16, 17 m.
fn a_run() -> (TempDir, PathBuf, SubjectId) {
    let (home, mut store) = house(&mut Chance::new());
    let run = SubjectId::random();
    for metres in [15, 16, 17] {
        store.write(&[Edit::new(run, "length", json!({"known": "measured", "metres": metres}))]).unwrap();
    }
    let folder = store.folder().to_owned();
    store.close().unwrap();
    (home, folder, run)
}

fn length(store: &Store, run: SubjectId) -> i64 {
    store.ledger().shown(run, "length").unwrap().value()["metres"].as_i64().unwrap()
}

#[test]
fn fifteen_metres_never_become_fifty_five() {
    let (home, folder, run) = a_run();
    let file = home.path().join("sent.lwk");
    pack(&mut Store::open(&folder, AuthorId::random()).unwrap(), &file);
    // One bit is put right.
    spoil(&folder, "\"metres\":17", "\"metres\":16");
    assert!(matches!(Store::open(&folder, AuthorId::random()), Err(FactsError::Damaged { .. })));
    let found = Repaired::open(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.put_right, length(&found.store, run)), (1, 17));
    found.store.close().unwrap();
    // More is named, and comes from a file.
    spoil(&folder, "\"metres\":17", "\"metres\":99");
    let report = Store::open(&folder, AuthorId::random()).unwrap_err();
    assert!(matches!(report, FactsError::Damaged { .. }));
    assert!(matches!(Repaired::open(&folder, AuthorId::random()), Err(FactsError::Damaged { .. })));
    let lost = salvage(&folder).unwrap().lost;
    assert_eq!((lost[0].subject, lost[0].field.as_str(), lost.len()), (run, "length", 1));
    let found =
        Repaired::open_with_file(&folder, AuthorId::random(), &file, Limits::default(), &mut go_on).unwrap();
    assert_eq!((found.lost.len(), length(&found.store, run)), (0, 17));
}

#[test]
fn another_copy_on_this_device_brings_back_what_is_lost() {
    let (home, folder, run) = a_run();
    let file = home.path().join("sent.lwk");
    pack(&mut Store::open(&folder, AuthorId::random()).unwrap(), &file);
    let copy = home.path().join("copy.legwork");
    drop(
        take_as_new(&file, &copy, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on).unwrap(),
    );
    spoil(&folder, "\"metres\":16", "\"metres\":99");
    let found = Repaired::open(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.lost.len(), length(&found.store, run)), (0, 17));
    assert_eq!(found.store.ledger().history(run, "length").len(), 3);
}

#[test]
fn what_was_said_on_top_of_a_lost_record_still_counts() {
    let (_home, folder, run) = a_run();
    spoil(&folder, "\"metres\":16", "\"metres\":99");
    assert!(Repaired::open(&folder, AuthorId::random()).is_err());
    let found = Repaired::open_without_lost(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.lost.len(), found.said_again, length(&found.store, run)), (1, 1, 17));
    // The last word itself lost: what was said before counts, and that is told.
    let (_home, folder, run) = a_run();
    spoil(&folder, "\"metres\":17", "\"metres\":99");
    let found = Repaired::open_without_lost(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.lost.len(), found.said_again, length(&found.store, run)), (1, 0, 16));
}

#[test]
fn a_repair_keeps_what_belongs_to_this_copy_alone() {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let (survey, run) = (mine.survey_id().subject(), SubjectId::random());
    mine.write(&[Edit::new(run, "length", json!({"known": "measured", "metres": 17}))]).unwrap();
    let file = home.path().join("sent.lwk");
    pack(&mut mine, &file);
    let theirs = home.path().join("elsewhere");
    fs::create_dir(&theirs).unwrap();
    let theirs = theirs.join("theirs.legwork");
    let mut theirs =
        take_as_new(&file, &theirs, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)
            .unwrap()
            .0;
    let takes = |theirs: &mut Store, mine: &mut Store, number: u32| {
        let file = home.path().join(format!("{number}.lwk"));
        pack(theirs, &file);
        take(&file, mine, Consent::NONE, Limits::default(), &mut go_on).unwrap()
    };
    // Refused, waiting, half typed, and a file that can be put back.
    theirs.forget_field(survey, "place").unwrap();
    takes(&mut theirs, &mut mine, 1);
    mine.refuse_wishes().unwrap();
    theirs.forget_field(survey, "name").unwrap();
    theirs.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    takes(&mut theirs, &mut mine, 2);
    let draft = Draft { subject: run, field: "label".into(), text: "5-1002 MHz".into(), saved_ms: 7 };
    let rotted = Draft { text: "5-2150 MHz".into(), field: "mark".into(), ..draft.clone() };
    mine.save_draft(&draft).unwrap();
    mine.save_draft(&rotted).unwrap();
    let (wishes, returnable) = (mine.wishes().unwrap(), mine.can_put_back().unwrap());
    assert_eq!((wishes.len(), returnable.facts), (1, 1));
    let folder = mine.folder().to_owned();
    mine.close().unwrap();
    spoil(&folder, "\"metres\":17", "\"metres\":16");
    spoil(&folder, "5-2150 MHz", "5-9999 MHz");
    let mut found = Repaired::open(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.put_right, length(&found.store, run)), (1, 17));
    assert_eq!(found.store.wishes().unwrap(), wishes);
    assert_eq!(found.store.can_put_back().unwrap(), returnable);
    assert_eq!(found.store.drafts().unwrap(), [draft], "and nothing that nobody typed");
    assert_eq!(takes(&mut theirs, &mut found.store, 3).waiting, 1, "what was refused is not asked again");
}

#[test]
fn what_a_file_brought_is_put_back_by_facts_after_a_repair_that_lost_a_record() {
    let (home, folder, run) = a_run();
    let mut mine = Store::open(&folder, AuthorId::random()).unwrap();
    let about = SubjectId::random();
    mine.write(&[Edit::new(about, "tag", "S1")]).unwrap();
    let (sent, back) = (home.path().join("sent.lwk"), home.path().join("back.lwk"));
    pack(&mut mine, &sent);
    let elsewhere = home.path().join("elsewhere");
    fs::create_dir(&elsewhere).unwrap();
    let (author, limits) = (AuthorId::random(), Limits::default());
    let mut theirs =
        take_as_new(&sent, &elsewhere.join("theirs.legwork"), author, Consent::NONE, limits, &mut go_on)
            .unwrap()
            .0;
    theirs.write(&[Edit::new(about, "tag", "S7")]).unwrap();
    pack(&mut theirs, &back);
    take(&back, &mut mine, Consent::NONE, limits, &mut go_on).unwrap();
    assert!(mine.can_put_back().unwrap().without_trace);
    let facts = mine.ledger().len();
    mine.close().unwrap();
    spoil(&folder, "\"metres\":17", "\"metres\":99");
    let mut found = Repaired::open_without_lost(&folder, AuthorId::random()).unwrap().store;
    assert_eq!((found.ledger().len(), length(&found, run)), (facts - 1, 16));
    // As many as there were with the file, and not the same.
    found.write(&[Edit::new(run, "length", json!({"known": "measured", "metres": 18}))]).unwrap();
    assert_eq!(found.ledger().len(), facts);
    assert!(!found.can_put_back().unwrap().without_trace);
    put_back(&mut found).unwrap();
    assert_eq!(length(&found, run), 18);
    assert_eq!(found.ledger().shown(about, "tag").unwrap().value(), "S1");
    assert_eq!(found.ledger().history(about, "tag").len(), 3, "said again, and nothing deleted");
}

/// A run as [`a_run`], a note that was forgotten while another program read, so that its bytes are still to be cleared, and
/// a photo that no record names.
fn still_to_be_cleared() -> (TempDir, PathBuf, PathBuf) {
    let (home, folder, run) = a_run();
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    store.write(&[Edit::new(run, "label", "behind the shelf")]).unwrap();
    let reader = Connection::open(folder.join(DATABASE)).unwrap();
    reader.execute_batch("BEGIN; SELECT count(*) FROM fact").unwrap();
    store.forget_field(run, "label").unwrap();
    assert!(store.scrub_is_due().unwrap());
    drop(reader);
    store.close().unwrap();
    let photo = folder.join("photos").join(format!("{}.jpg", "0f".repeat(32)));
    fs::write(&photo, "of a record that is lost").unwrap();
    (home, folder, photo)
}

#[test]
fn what_is_still_to_be_cleared_takes_no_damaged_database_that_holds_lost_records() {
    let (_home, folder, photo) = still_to_be_cleared();
    spoil(&folder, "\"metres\":17", "\"metres\":99");
    let found = Repaired::open_without_lost(&folder, AuthorId::random()).unwrap();
    let rebuilt = found.rebuilt.unwrap();
    let damaged = rebuilt.damaged.unwrap();
    assert_eq!((found.lost.len(), rebuilt.damaged_is_forgotten), (1, false));
    drop(found.store);
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    assert!(damaged.is_file() && photo.is_file() && store.scrub_is_due().unwrap());
    // Until something is forgotten.
    let name = store.survey_id().subject();
    store.forget_field(name, "name").unwrap();
    assert!(!damaged.exists() && !photo.exists() && !store.scrub_is_due().unwrap());
}

#[test]
fn what_is_still_to_be_cleared_goes_with_a_damaged_database_that_lost_nothing_and_that_is_told() {
    let (_home, folder, photo) = still_to_be_cleared();
    spoil(&folder, "\"metres\":17", "\"metres\":16");
    let found = Repaired::open(&folder, AuthorId::random()).unwrap();
    let rebuilt = found.rebuilt.unwrap();
    assert_eq!((found.put_right, rebuilt.damaged, rebuilt.damaged_is_forgotten), (1, None, true));
    assert!(!photo.exists() && !found.store.scrub_is_due().unwrap());
    let names = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name());
    assert!(names.into_iter().all(|name| !name.to_str().unwrap().contains("damaged")));
}

#[test]
fn a_record_that_is_gone_is_missed() {
    let (_home, folder, _) = a_run();
    let database = Connection::open(folder.join(DATABASE)).unwrap();
    database.execute_batch("DROP TRIGGER fact_is_kept; DROP TRIGGER fact_over_is_kept").unwrap();
    let last = "(SELECT max(id) FROM fact)";
    database
        .execute_batch(&format!(
            "DELETE FROM fact_over WHERE fact = {last}; DELETE FROM fact WHERE id = {last}"
        ))
        .unwrap();
    drop(database);
    assert!(matches!(Store::open(&folder, AuthorId::random()), Err(FactsError::Damaged { .. })));
    assert!(!salvage(&folder).unwrap().is_complete);
}

#[test]
fn a_photo_of_the_same_length_with_other_bytes_is_seen_and_comes_back() {
    let mut chance = Chance::new();
    let (home, mut store) = house(&mut chance);
    let picture = chance.picture(700);
    let photo = add_photo(&mut store, SubjectId::random(), &picture);
    let place = store.photo_path(photo).unwrap();
    let file = home.path().join("sent.lwk");
    pack(&mut store, &file);
    let folder = store.folder().to_owned();
    store.close().unwrap();
    let mut bad = picture.clone();
    bad[300] ^= 1;
    fs::write(&place, &bad).unwrap();
    let found = Repaired::open(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.store.lacking_photos().unwrap(), found.photos_back), (vec![photo], 0));
    assert!(!place.exists(), "set aside, so that nobody takes it for the photo");
    drop(found);
    let found =
        Repaired::open_with_file(&folder, AuthorId::random(), &file, Limits::default(), &mut go_on).unwrap();
    assert_eq!((found.store.lacking_photos().unwrap(), found.photos_back), (vec![], 1));
    assert_eq!(fs::read(&place).unwrap(), picture);
    // From another survey beside it.
    let copy = home.path().join("copy.legwork");
    drop(
        take_as_new(&file, &copy, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on).unwrap(),
    );
    fs::write(&place, &bad).unwrap();
    drop(found);
    let mut found = Repaired::open(&folder, AuthorId::random()).unwrap();
    assert_eq!((found.photos_back, fs::read(&place).unwrap()), (1, picture));
    // What was set aside goes with what is forgotten.
    found.store.forget_photo(photo).unwrap();
    let name = place.file_name().unwrap().to_str().unwrap();
    assert!(!found.store.photos().join(format!("{name}.damaged")).exists());
}
