//! Photos of a house: what they show is said with them or afterwards. Notes.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use facts::FactsError;
use facts::fact::{AuthorId, Edit, SubjectId};
use facts::photo::Picture;
use facts::store::Store;
use house::document::{Assignment, Document, PhotoSaid, RoleSaid};
use house::record::{PhotoRole, field, fold};
use sha2::{Digest, Sha256};
use tempfile::TempDir;

fn picture(name: &str) -> Vec<u8> {
    fs::read(format!("{}/../facts/tests/pictures/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn survey() -> (TempDir, Store) {
    let home = TempDir::new().unwrap();
    let store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    (home, store)
}

fn names_in(folder: &Path) -> BTreeSet<String> {
    fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

/// A PNG of one colour, different for each number.
fn numbered(number: u8) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::RgbImage::from_pixel(8, 8, image::Rgb([number, 0, 0]))
        .write_to(&mut bytes, image::ImageFormat::Png)
        .unwrap();
    bytes.into_inner()
}

#[test]
fn a_photo_is_stored_under_its_hash_and_found_again() {
    let (_home, mut store) = survey();
    let part = SubjectId::random();
    let photo = store.add_photo(&picture("baseline.jpg"), Some(part), Some(PhotoRole::Label)).unwrap();
    let path = store.photo_path(photo).unwrap();
    let bytes = fs::read(&path).unwrap();
    let digest = Sha256::digest(&bytes).iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"));
    assert_eq!(path.file_name().unwrap().to_str().unwrap(), format!("{digest}.jpg"));
    assert_eq!(names_in(&store.photos()).len(), 1);

    let store = Store::open(store.folder(), store.author()).unwrap();
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    let found = &records.photos[&photo];
    assert_eq!((found.of, found.role), (Some(part), Some(PhotoRole::Label)));
    assert_eq!((found.image.width, found.image.height, found.image.bytes), (64, 48, bytes.len() as u64));
    assert_eq!(records.photos_of(Some(part)).count(), 1);
    assert!(records.unread.is_empty(), "{:?}", records.unread);
    // The names that files of this survey carry for ever.
    let value = store.ledger().shown(photo, "image").unwrap().value();
    assert_eq!(value["sha256"], digest.as_str());
    assert_eq!(value["ext"], "jpg");
    assert_eq!(store.ledger().shown(photo, "is").unwrap().value(), "photo");
    assert_eq!(store.ledger().shown(photo, "role").unwrap().value(), "label");
    assert_eq!(store.summary().progress.photos, 1);
}

/// The Exif of a picture made by hand after Exif 2.32, 4.6: its first directory leads to the Exif directory, which holds
/// `DateTimeOriginal` alone.
fn taken_at(time: &str) -> Vec<u8> {
    let mut tiff = b"MM\0\x2A\0\0\0\x08".to_vec();
    tiff.extend(b"\0\x01\x87\x69\0\x04\0\0\0\x01\0\0\0\x1A\0\0\0\0");
    tiff.extend(b"\0\x01\x90\x03\0\x02\0\0\0\x14\0\0\0\x2C\0\0\0\0");
    tiff.extend(time.as_bytes());
    tiff.push(0);
    let segment = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = u16::try_from(segment.len() + 2).unwrap().to_be_bytes();
    let whole = picture("grey.jpg");
    [&whole[..2], &[0xFF, 0xE1], &length, &segment, &whole[2..]].concat()
}

#[test]
fn a_files_own_name_and_when_it_was_taken_are_kept() {
    let (_home, mut store) = survey();
    let taken = Picture::clean(&taken_at("2026:05:31 14:05:09")).unwrap();
    for (path, name) in [
        ("/of/somebody/DSC 0001.JPG", Some("DSC 0001.JPG")),
        (r"C:\of\somebody\b.jpg", Some("b.jpg")),
        ("c.jpg", Some("c.jpg")),
        ("/", None),
    ] {
        let said = PhotoSaid { file_name: Some(path), ..PhotoSaid::default() };
        let photo = store.add_picture(&taken, said).unwrap();
        let found = store.survey().unwrap().photos[&photo].clone();
        assert_eq!(found.file_name.as_deref(), name);
        assert_eq!(found.taken.unwrap().to_string(), "2026-05-31T14:05:09");
    }
    let value = |photo, field| store.ledger().shown(photo, field).map(|fact| fact.value().clone());
    let survey = store.survey().unwrap();
    let first = survey.photo_with(&taken.image()).unwrap().id;
    assert_eq!(value(first, "taken").unwrap(), "2026-05-31T14:05:09");
    let other = Picture::clean(&picture("baseline.jpg")).unwrap();
    assert_eq!(survey.photo_with(&other.image()), None);
    // Nothing that the picture does not tell is made up.
    let photo = store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    let found = &store.survey().unwrap().photos[&photo];
    assert_eq!((&found.file_name, found.taken), (&None, None));
    let long = "ä".repeat(300);
    let said = PhotoSaid { file_name: Some(&long), ..PhotoSaid::default() };
    let photo = store.add_picture(&other, said).unwrap();
    let name = store.survey().unwrap().photos[&photo].file_name.clone().unwrap();
    assert_eq!(name, "ä".repeat(255));
}

#[test]
fn ten_labels_first_and_their_parts_afterwards_in_one_act() {
    let (_home, mut store) = survey();
    let photos: Vec<SubjectId> =
        (0..10).map(|number| store.add_photo(&numbered(number), None, None).unwrap()).collect();
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.photos_of(None).count(), 10);

    let parts = [SubjectId::random(), SubjectId::random()];
    let assignments: Vec<Assignment> = photos
        .iter()
        .enumerate()
        .map(|(place, &photo)| Assignment {
            photo,
            of: Some(parts[place % 2]),
            role: RoleSaid::Is(PhotoRole::Label),
        })
        .collect();
    let act = store.assign_photos(&assignments).unwrap();
    assert_eq!(store.ledger().of_act(act).len(), 20);
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.photos_of(None).count(), 0);
    assert_eq!(parts.map(|part| records.photos_of(Some(part)).count()), [5, 5]);

    store.undo(act).unwrap();
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.photos_of(None).count(), 10);
    let stranger = Assignment { photo: SubjectId::random(), of: None, role: RoleSaid::Stays };
    let before = store.ledger().len();
    assert!(matches!(store.assign_photos(&[assignments[0], stranger]), Err(FactsError::NoSuchPhoto)));
    assert_eq!(store.ledger().len(), before);
}

#[test]
fn notes_are_subjects_of_their_own() {
    let (_home, mut store) = survey();
    let part = SubjectId::random();
    let mut other = Store::open(store.folder(), AuthorId::random()).unwrap();
    store.add_note(Some(part), "behind the shelf").unwrap();
    other.add_note(Some(part), "loose screw").unwrap();
    store.add_note(None, "key at the neighbour's").unwrap();
    store.write(&[Edit::new(part, field::IS, "part")]).unwrap();
    assert!(store.ledger().disagreements().is_empty());
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.notes_on(Some(part)).count(), 2);
    assert_eq!(records.notes_on(None).count(), 1);
    assert_eq!(store.summary().progress.notes, 3);
}
