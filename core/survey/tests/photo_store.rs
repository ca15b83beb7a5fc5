//! Photos in a survey: stored once, named by their SHA-256, assigned afterwards, swept when nothing names them.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::time::Duration;

use sha2::{Digest, Sha256};
use survey::error::SurveyError;
use survey::fact::{AuthorId, Edit, SubjectId};
use survey::photo::{Assignment, Picture, PictureFault, Swept};
use survey::record::{PhotoRole, field, fold};
use survey::store::Store;
use tempfile::TempDir;

fn picture(name: &str) -> Vec<u8> {
    fs::read(format!("{}/tests/pictures/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
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
        .map(|(place, &photo)| Assignment { photo, of: Some(parts[place % 2]), role: Some(PhotoRole::Label) })
        .collect();
    let act = store.assign_photos(&assignments).unwrap();
    assert_eq!(store.ledger().of_act(act).len(), 20);
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.photos_of(None).count(), 0);
    assert_eq!(parts.map(|part| records.photos_of(Some(part)).count()), [5, 5]);

    store.undo(act).unwrap();
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.photos_of(None).count(), 10);
    let stranger = Assignment { photo: SubjectId::random(), of: None, role: None };
    let before = store.ledger().len();
    assert!(matches!(store.assign_photos(&[assignments[0], stranger]), Err(SurveyError::NoSuchPhoto)));
    assert_eq!(store.ledger().len(), before);
}

#[test]
fn the_same_picture_twice_is_two_photos_and_one_file() {
    let (_home, mut store) = survey();
    let one = store.add_photo(&picture("colour.png"), None, Some(PhotoRole::Before)).unwrap();
    let two = store.add_photo(&picture("colour.png"), None, Some(PhotoRole::After)).unwrap();
    assert_ne!(one, two);
    assert_eq!(store.photo_path(one).unwrap(), store.photo_path(two).unwrap());
    assert_eq!(names_in(&store.photos()).len(), 1);
    assert_eq!(store.summary().progress.photos, 2);
}

#[test]
fn a_refused_picture_leaves_nothing() {
    let (_home, mut store) = survey();
    let whole = picture("baseline.jpg");
    let cut = &whole[..whole.len() / 2];
    // Structure right, pixels not: the data of the picture are replaced by something that no decoder takes.
    let mut broken = picture("palette.png");
    let start = broken.windows(4).position(|name| name == b"IDAT").unwrap();
    let length = usize::try_from(u32::from_be_bytes(broken[start - 4..start].try_into().unwrap())).unwrap();
    broken[start + 4..start + 4 + length].fill(0xAA);
    let sum = crc32fast::hash(&broken[start..start + 4 + length]);
    broken[start + 4 + length..start + 8 + length].copy_from_slice(&sum.to_be_bytes());
    for bytes in [cut, &broken, b"hello"] {
        let refused = store.add_photo(bytes, None, None).unwrap_err();
        assert!(matches!(refused, SurveyError::Picture(_)), "{refused}");
        assert!(refused.to_string().starts_with("this picture was not taken in: it"), "{refused}");
    }
    assert!(matches!(
        store.add_photo(&broken, None, None),
        Err(SurveyError::Picture(PictureFault::Damaged { .. }))
    ));
    assert!(store.ledger().is_empty());
    assert_eq!(names_in(&store.photos()), BTreeSet::new());
}

#[test]
fn small_pictures_are_kept_and_can_be_made_again() {
    let (_home, mut store) = survey();
    let photo = store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    let small = store.thumbnail(photo).unwrap();
    let decoded = image::load_from_memory(&small).unwrap();
    assert_eq!((decoded.width(), decoded.height()), (48, 64));
    let database = rusqlite::Connection::open(store.folder().join("survey.db")).unwrap();
    assert_eq!(database.execute("DELETE FROM thumbnail", ()).unwrap(), 1);
    drop(database);
    assert_eq!(store.thumbnail(photo).unwrap(), small);
    assert!(matches!(store.thumbnail(SubjectId::random()), Err(SurveyError::NoSuchPhoto)));
}

#[test]
fn what_nothing_names_is_swept_and_what_is_missing_is_listed() {
    let (_home, mut store) = survey();
    let photo = store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    let photos = store.photos();
    fs::write(photos.join(format!("{}.jpg", "ab".repeat(32))), "taken in half").unwrap();
    fs::write(photos.join(".0.part"), "half").unwrap();
    fs::write(photos.join("notes.txt"), "somebody's own").unwrap();
    assert_eq!(store.sweep_photos(Duration::from_secs(3600)).unwrap(), Swept::default());
    let swept = store.sweep_photos(Duration::ZERO).unwrap();
    assert_eq!(swept, Swept { unfinished: 1, unnamed: 1 });
    assert_eq!(names_in(&photos).len(), 2);
    assert_eq!(store.missing_photos().unwrap(), []);
    let path = store.photo_path(photo).unwrap();
    fs::write(&path, "short").unwrap();
    assert_eq!(store.missing_photos().unwrap(), [photo]);
    fs::remove_file(&path).unwrap();
    assert_eq!(store.missing_photos().unwrap(), [photo]);
    // The same picture again repairs it.
    store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    assert_eq!(store.missing_photos().unwrap(), []);
}

#[test]
fn a_photo_whose_file_cannot_be_written_gives_no_fact() {
    let (_home, mut store) = survey();
    // A file stands where the folder of photos should be.
    fs::remove_dir(store.photos()).unwrap();
    fs::write(store.photos(), "").unwrap();
    let refused = store.add_photo(&picture("baseline.jpg"), None, None).unwrap_err();
    assert!(matches!(refused, SurveyError::Inaccessible { .. }), "{refused}");
    assert!(store.ledger().is_empty());
    fs::remove_file(store.photos()).unwrap();
    fs::create_dir(store.photos()).unwrap();
    store.add_photo(&picture("baseline.jpg"), None, None).unwrap();
    assert_eq!(store.ledger().len(), 2);
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

/// A camera app may still be writing; a path may name no file at all.
#[test]
fn no_more_of_a_file_is_read_than_is_taken() {
    let (home, mut store) = survey();
    let file = home.path().join("photo.jpg");
    fs::write(&file, picture("baseline.jpg")).unwrap();
    let read = Picture::read(&file).unwrap().unwrap();
    let photo = store.add_picture(&read, None, None).unwrap();
    assert_eq!(store.photo_bytes(photo).unwrap(), read.bytes());
    // Far longer than memory, and no byte of it on the disk.
    fs::File::options().write(true).open(&file).unwrap().set_len(1 << 42).unwrap();
    assert!(matches!(Picture::read(&file).unwrap(), Err(PictureFault::TooLong { .. })));
    assert!(Picture::read(home.path()).is_err());
    #[cfg(unix)]
    assert!(Picture::read(Path::new("/dev/zero")).is_err());
}
