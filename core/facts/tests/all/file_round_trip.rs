//! Files that go from one copy to another, as they are meant to.

use std::cell::Cell;
use std::fs;

use crate::file_support::*;
use facts::fact::{AuthorId, Edit, SubjectId, Wish};
use facts::file::{
    self, Consent, FileFault, LeftOut, PackOptions, StillTold, look, put_back, recognise, still_told, take,
    take_as_new,
};
use facts::store::Store;
use facts::{CannotPutBack, FactsError};
use serde_json::json;

fn without(what: LeftOut) -> PackOptions {
    PackOptions { left_out: [what].into(), replace: false }
}

#[test]
fn a_copy_made_from_a_file_is_the_same_and_packs_to_the_same_bytes() {
    let (home, mut store) = house(&mut Chance::new());
    let (one, two) = (home.path().join("one.lwk"), home.path().join("two.lwk"));
    let packed = pack(&mut store, &one);
    assert_eq!((packed.facts, packed.photos), (store.ledger().len(), 1));
    assert_eq!(packed.bytes, fs::metadata(&one).unwrap().len());
    assert!(packed.lost_photos.is_empty());
    assert!(recognise(&one));

    let folder = home.path().join("copy.legwork");
    let (mut copy, taken) =
        take_as_new(&one, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((taken.facts.len(), taken.photos.len()), (store.ledger().len(), 1));
    assert_eq!(copy.survey_id(), store.survey_id());
    assert_eq!(content(&copy), content(&store));
    pack(&mut copy, &two);
    assert_eq!(fs::read(&one).unwrap(), fs::read(&two).unwrap());

    let again = take(&one, &mut copy, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert!(again.facts.is_empty() && again.photos.is_empty());
}

#[test]
fn nothing_unfinished_is_left_beside_a_file() {
    let (home, mut store) = house(&mut Chance::new());
    let place = home.path().join("one.lwk");
    // What a killed process left, and what only looks like it.
    fs::write(home.path().join("one.lwk.01930000000070008000000000000001.part"), "half").unwrap();
    fs::write(home.path().join("one.lwk.notes.part"), "whole").unwrap();
    pack(&mut store, &place);
    let mut names: Vec<_> = fs::read_dir(home.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(names, ["house.legwork", "one.lwk", "one.lwk.notes.part"]);
}

#[test]
fn a_file_that_is_there_is_replaced_only_if_asked_for() {
    let (home, mut store) = house(&mut Chance::new());
    let place = home.path().join("one.lwk");
    fs::write(&place, "mine").unwrap();
    let refused = file::pack(&mut store, &PackOptions::default(), &report, &place, &mut go_on).unwrap_err();
    assert!(matches!(refused, FactsError::FileThere { .. }), "{refused}");
    assert_eq!(fs::read(&place).unwrap(), b"mine");
    pack_with(&mut store, &PackOptions { replace: true, ..PackOptions::default() }, &place);
    assert!(recognise(&place));
}

#[test]
fn looking_says_what_taking_brings_and_changes_nothing() {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let base = home.path().join("base.lwk");
    pack(&mut mine, &base);
    let folder = home.path().join("copy.legwork");
    let (mut theirs, _) =
        take_as_new(&base, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();

    let part = mine.ledger().subjects().find(|&part| mine.ledger().shown(part, "tag").is_some()).unwrap();
    theirs
        .write(&[
            Edit::new(part, "tag", "S7"),
            Edit::new(part, "kind", "tap"),
            Edit::new(theirs.author().subject(), "name", "B. Helper"),
        ])
        .unwrap();
    mine.write(&[Edit::new(part, "tag", "S9")]).unwrap();
    add_photo(&mut theirs, part, &chance.picture(5000));
    let file = home.path().join("theirs.lwk");
    pack(&mut theirs, &file);

    let before = snapshot(mine.folder());
    let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(snapshot(mine.folder()), before);
    assert!(seen.same_survey);
    assert_eq!(seen.name.as_deref(), Some("House by the mill"));
    assert_eq!((seen.new_facts, seen.new_photos, seen.photos), (7, 1, 2));
    assert_eq!(seen.new_disagreements, [(part, "tag".to_owned())]);
    assert!(seen.settled.is_empty() && seen.forgotten.is_empty());
    let shares: Vec<_> = seen.authors.iter().map(|share| (share.name.as_deref(), share.new_facts)).collect();
    assert_eq!(shares, [(Some("B. Helper"), 7)]);

    let taken = take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((taken.facts.len(), taken.photos.len()), (7, 1));
    assert!(mine.ledger().disagreement(part, "tag").is_some());

    // Settled in one copy, the other is told so.
    mine.write(&[Edit::new(part, "tag", "S7")]).unwrap();
    let settled = home.path().join("settled.lwk");
    pack(&mut mine, &settled);
    let seen = look(&settled, Some(&mut theirs), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(
        (seen.settled.len(), seen.new_disagreements.len()),
        (0, 0),
        "no disagreement is known there yet"
    );
    take(&settled, &mut theirs, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(content(&mine), content(&theirs));

    let alone = look(&file, None, NO_LIMIT, &mut go_on).unwrap();
    assert!(!alone.same_survey);
    assert_eq!((alone.new_facts, alone.new_photos), (alone.facts, 2));
}

#[test]
fn another_survey_is_never_mixed_in() {
    let mut chance = Chance::new();
    let (home, mut one) = house(&mut chance);
    let (_other_home, mut two) = house(&mut chance);
    let file = home.path().join("one.lwk");
    pack(&mut one, &file);
    let before = content(&two);
    let refused = take(&file, &mut two, Consent::ALL, NO_LIMIT, &mut go_on).unwrap_err();
    assert!(matches!(refused, FactsError::OtherSurvey { .. }), "{refused}");
    assert_eq!(content(&two), before);
}

#[test]
fn what_was_taken_can_be_put_back_until_something_is_written() {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let base = home.path().join("base.lwk");
    pack(&mut mine, &base);
    let folder = home.path().join("copy.legwork");
    let (mut theirs, _) =
        take_as_new(&base, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    let part = SubjectId::random();
    theirs.write(&[Edit::new(part, "is", "part"), Edit::new(part, "tag", "S5")]).unwrap();
    theirs.write(&[Edit::new(part, "tag", "S6")]).unwrap();
    add_photo(&mut theirs, part, &chance.picture(700));
    let file = home.path().join("theirs.lwk");
    pack(&mut theirs, &file);

    let none = put_back(&mut mine).unwrap_err();
    assert!(matches!(none, FactsError::CannotPutBack(CannotPutBack::NothingTaken)), "{none}");
    let before = content(&mine);
    let mut watching = Store::open(mine.folder(), AuthorId::random()).unwrap();
    take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    watching.refresh().unwrap();
    assert_eq!(content(&watching), content(&theirs));
    let returned = put_back(&mut mine).unwrap();
    assert_eq!(returned.facts.len(), 7);
    assert_eq!(content(&mine), before);
    assert_eq!(content(&Store::open(mine.folder(), AuthorId::random()).unwrap()), before);
    // Another process that had seen it sees it go.
    watching.refresh().unwrap();
    assert_eq!(content(&watching), before);
    let twice = put_back(&mut mine).unwrap_err();
    assert!(matches!(twice, FactsError::CannotPutBack(CannotPutBack::NothingTaken)), "{twice}");

    take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    watching.write(&[Edit::new(part, "note", "written since")]).unwrap();
    let returned = put_back(&mut mine).unwrap();
    assert!(!returned.without_trace);
    // What was written since stands; of what the file said about the part nothing does.
    let says = |field| mine.ledger().shown(part, field).map(|fact| fact.value().clone());
    assert_eq!((says("is"), says("tag")), (Some(json!(null)), Some(json!(null))));
    assert_eq!(says("note"), Some(json!("written since")));
    // The log is again closed to everybody.
    mine.write(&[Edit::new(part, "tag", "S8")]).unwrap();
}

#[test]
fn forgetting_travels_and_is_for_ever() {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let old = home.path().join("old.lwk");
    pack(&mut mine, &old);
    let folder = home.path().join("copy.legwork");
    let (mut theirs, _) =
        take_as_new(&old, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    let survey = mine.survey_id().subject();
    let photo =
        mine.ledger().subjects().find(|&photo| mine.ledger().shown(photo, "image").is_some()).unwrap();
    theirs.forget_field(survey, "place").unwrap();
    theirs.forget_photo(photo).unwrap();
    let file = home.path().join("theirs.lwk");
    pack(&mut theirs, &file);
    let bytes = fs::read(&file).unwrap();
    assert!(!bytes.windows(15).any(|part| part == b"Invented Street"));

    let seen = look(&file, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    let mut forgotten = seen.forgotten;
    forgotten.sort();
    let by = Some(theirs.author());
    let mut expected = [
        Wish { subject: survey, field: "place".to_owned(), by },
        Wish { subject: photo, field: "image".to_owned(), by },
    ];
    expected.sort();
    assert_eq!((forgotten, seen.new_facts, seen.new_words, seen.photos), (expected.to_vec(), 0, 2, 0));
    take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(content(&mine), content(&theirs));
    assert!(content(&mine).1.is_empty());
    // What was forgotten with a yes does not come back.
    assert!(!put_back(&mut mine).unwrap().without_trace);
    assert_eq!(content(&mine), content(&theirs));

    // The older file, with the value and the picture, brings neither back.
    let seen = look(&old, Some(&mut mine), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.new_facts, seen.new_photos), (0, 0));
    let taken = take(&old, &mut mine, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert!(taken.facts.is_empty() && taken.photos.is_empty());
    assert_eq!(content(&mine), content(&theirs));
}

#[test]
fn owner_notes_and_photos_can_stay_at_home() {
    let (home, mut store) = house(&mut Chance::new());
    let packed = |store: &mut Store, what| {
        let path = home.path().join(format!("{what:?}.lwk"));
        pack_with(store, &without(what), &path);
        let (lines, photos) = taken_as_new(&path).unwrap();
        assert!(look(&path, None, NO_LIMIT, &mut go_on).unwrap().left_out.contains(&what));
        (lines, photos, fs::read(&path).unwrap())
    };
    let says = |bytes: &[u8], text: &str| bytes.windows(text.len()).any(|part| part == text.as_bytes());

    let (lines, photos, bytes) = packed(&mut store, LeftOut::Owner);
    for secret in ["House by the mill", "Invented Street", "Surveyor"] {
        assert!(!says(&bytes, secret), "{secret}");
    }
    assert!(lines.contains("behind the shelf") && photos.len() == 1);

    let (lines, _, bytes) = packed(&mut store, LeftOut::Notes);
    assert!(!says(&bytes, "behind the shelf") && lines.contains("House by the mill"));

    let (lines, photos, _) = packed(&mut store, LeftOut::Photos);
    assert_eq!((lines, photos.len()), (store.ledger().to_lines().unwrap(), 0));
}

#[test]
fn what_a_file_without_its_owner_still_tells_can_stay_at_home_too_and_comes_later() {
    use LeftOut::{Notes, Owner, PhotoRecords, Photos, Places};
    let (home, mut store) = house(&mut Chance::new());
    let (room, part) = (SubjectId::random(), SubjectId::random());
    store.write(&[Edit::new(room, "name", "Study"), Edit::new(part, "where", "over the wardrobe")]).unwrap();
    let told = |store: &Store, out: &[LeftOut]| {
        let told = still_told(store.ledger(), store.survey_id(), &out.iter().copied().collect());
        told.into_iter().map(StillTold::word).collect::<Vec<_>>()
    };
    assert!(told(&store, &[Photos]).is_empty(), "with its owner it tells all");
    assert_eq!(told(&store, &[Owner]), ["times", "hands", "rooms", "places", "notes", "photos"]);
    assert_eq!(told(&store, &[Owner, Photos, Notes]), ["times", "hands", "rooms", "places", "photo-hashes"]);
    let most = [Owner, Notes, Places, Photos, PhotoRecords];
    assert_eq!(told(&store, &most), ["times", "hands", "rooms"]);

    let photo = fs::read_dir(store.photos()).unwrap().next().unwrap().unwrap().file_name();
    let hash = photo.to_str().unwrap().split('.').next().unwrap().to_owned();
    let whole = home.path().join("whole.lwk");
    pack(&mut store, &whole);
    for (what, secret) in [(Places, "over the wardrobe"), (PhotoRecords, &*hash)] {
        let path = home.path().join(format!("{what:?}.lwk"));
        pack_with(&mut store, &without(what), &path);
        let bytes = fs::read(&path).unwrap();
        let says = |text: &str| bytes.windows(text.len()).any(|part| part == text.as_bytes());
        assert!(!says(secret) && says("Study"), "{what:?}");
        assert!(look(&path, None, NO_LIMIT, &mut go_on).unwrap().left_out.contains(&what));
        // It merges like any other, and what was left out comes with a later file.
        let folder = home.path().join(format!("{what:?}.legwork"));
        let (mut copy, _) =
            take_as_new(&path, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
        take(&path, &mut store, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
        take(&whole, &mut copy, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
        assert_eq!(content(&copy), content(&store));
    }
}

#[test]
fn photos_left_out_arrive_with_a_later_file() {
    let (home, mut store) = house(&mut Chance::new());
    let (bare, whole) = (home.path().join("bare.lwk"), home.path().join("whole.lwk"));
    pack_with(&mut store, &without(LeftOut::Photos), &bare);
    pack(&mut store, &whole);
    let folder = home.path().join("copy.legwork");
    let (mut copy, _) =
        take_as_new(&bare, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    let lost = pack(&mut copy, &home.path().join("again.lwk"));
    assert_eq!((lost.photos, lost.lost_photos.len()), (0, 1));
    let taken = take(&whole, &mut copy, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((taken.facts.len(), taken.photos.len()), (0, 1));
    assert_eq!(content(&copy), content(&store));
}

#[test]
fn a_damaged_photo_is_named_and_left_out() {
    let (home, mut store) = house(&mut Chance::new());
    let photo = fs::read_dir(store.photos()).unwrap().next().unwrap().unwrap().path();
    let mut bytes = fs::read(&photo).unwrap();
    bytes[500] ^= 1;
    fs::write(&photo, bytes).unwrap();
    let path = home.path().join("one.lwk");
    let packed = pack(&mut store, &path);
    assert_eq!((packed.photos, packed.lost_photos.len()), (0, 1));
    let (lines, photos) = taken_as_new(&path).unwrap();
    assert_eq!((lines, photos.len()), (store.ledger().to_lines().unwrap(), 0));
}

#[test]
fn stopping_at_any_moment_leaves_everything_as_it_was() {
    let mut chance = Chance::new();
    let (home, mut mine) = house(&mut chance);
    let part = SubjectId::random();
    let base = home.path().join("base.lwk");
    pack(&mut mine, &base);
    let (_other, mut theirs) = {
        let other = tempfile::TempDir::new().unwrap();
        let folder = other.path().join("copy.legwork");
        let (copy, _) =
            take_as_new(&base, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
        (other, copy)
    };
    for _ in 0..3 {
        add_photo(&mut theirs, part, &chance.picture(300_000));
    }
    let file = home.path().join("theirs.lwk");
    pack(&mut theirs, &file);
    let before = snapshot(home.path());
    for steps in 0..usize::MAX {
        let left = Cell::new(steps);
        let mut stop = |_| left.replace(left.get().saturating_sub(1)) > 0;
        let place = home.path().join("stopped.lwk");
        match file::pack(&mut theirs, &PackOptions::default(), &report, &place, &mut stop) {
            Err(FactsError::Stopped) => assert_eq!(snapshot(home.path()), before, "packing, after {steps}"),
            packed => {
                packed.unwrap();
                assert!(steps > 10);
                fs::remove_file(place).unwrap();
                break;
            }
        }
    }
    for steps in 0..usize::MAX {
        let left = Cell::new(steps);
        let mut stop = |_| left.replace(left.get().saturating_sub(1)) > 0;
        match take(&file, &mut mine, Consent::ALL, NO_LIMIT, &mut stop) {
            Err(FactsError::Stopped) => assert_eq!(snapshot(home.path()), before, "taking, after {steps}"),
            taken => {
                assert_eq!(taken.unwrap().photos.len(), 3);
                assert!(steps > 10);
                break;
            }
        }
    }
    assert_eq!(content(&mine), content(&theirs));
}

#[test]
fn members_of_later_releases_travel_on() {
    let (home, mut store) = empty();
    let survey = store.survey_id().to_string();
    let known = line(1, 1, "tag", &json!("S1"), &[]);
    // A member after "value" in the order of RFC 8785.
    let unknown = known.replace("\"value\":\"S1\"}", "\"value\":\"S1\",\"zone\":{\"later\":[1,null]}}");
    let bag = Bag::new(
        &survey,
        vec![unknown.clone(), line(2, 1, "drawn_by", &json!({"with": "a field of later"}), &[])],
    );
    let file = home.path().join("later.lwk");
    let mut lines = bag.clone();
    // A member of the header that is not known either.
    lines.lines[0] = lines.lines[0].replace("\"survey\"", "\"sent\":\"by hand\",\"survey\"");
    fs::write(&file, zip(&stored(&lines.entries()))).unwrap();
    take(&file, &mut store, Consent::ALL, NO_LIMIT, &mut go_on).unwrap();
    let again = home.path().join("again.lwk");
    pack(&mut store, &again);
    let bytes = fs::read(&again).unwrap();
    assert!(bytes.windows(unknown.len()).any(|part| part == unknown.as_bytes()));
    assert_eq!(taken_as_new(&again).unwrap().0, bag.lines[1..].join("\n") + "\n");
}

#[test]
fn a_file_that_another_program_deflated_is_read() {
    let (home, mut store) = house(&mut Chance::new());
    let path = home.path().join("one.lwk");
    pack(&mut store, &path);
    let entries = unzip(&fs::read(&path).unwrap());
    let deflated: Vec<RawEntry> =
        entries.iter().rev().map(|(name, data)| RawEntry::deflated(name, data)).collect();
    fs::write(&path, zip(&deflated)).unwrap();
    assert_eq!(taken_as_new(&path).unwrap(), content(&store));
}

#[test]
fn a_newer_format_is_said_to_be_newer_whatever_else_it_holds() {
    let (home, mut store) = empty();
    let mut bag = Bag::new(&store.survey_id().to_string(), Vec::new());
    bag.lines[0] = "{\"file\":\"legwork\",\"format\":3}".into();
    let mut entries = bag.entries();
    entries.push((b"survey/data/sketches/1.svg".to_vec(), b"<svg/>".to_vec()));
    let path = home.path().join("later.lwk");
    fs::write(&path, zip(&stored(&entries))).unwrap();
    let refused = take(&path, &mut store, Consent::ALL, NO_LIMIT, &mut go_on).unwrap_err();
    assert!(
        matches!(&refused, FactsError::File { fault: FileFault::Newer { found: 3, .. }, .. }),
        "{refused}"
    );
    assert!(recognise(&path));
    fs::write(&path, zip(&stored(&vec![(b"survey/readme".to_vec(), b"x".to_vec())]))).unwrap();
    assert!(!recognise(&path));
}

/// The stored entries of a file of ours, found by their local headers.
fn unzip(bytes: &[u8]) -> Entries {
    let number = |at: usize, bytes_long: usize| {
        bytes[at..at + bytes_long].iter().rev().fold(0, |sum, &byte| sum << 8 | usize::from(byte))
    };
    let (mut at, mut entries) = (0, Vec::new());
    while bytes[at..].starts_with(b"PK\x03\x04") {
        let (size, name) = (number(at + 18, 4), number(at + 26, 2));
        let data = at + 30 + name;
        entries.push((bytes[at + 30..data].to_vec(), bytes[data..data + size].to_vec()));
        at = data + size;
    }
    entries
}
