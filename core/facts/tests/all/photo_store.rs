//! Photos in a survey: stored once, named by their SHA-256, refused with nothing left, swept when nothing names them.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use facts::FactsError;
use facts::fact::{AuthorId, SubjectId};
use facts::photo::{Picture, PictureFault};
use facts::store::Store;
use serde_json::json;
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

#[test]
fn the_same_picture_twice_is_two_photos_and_one_file() {
    let (_home, mut store) = survey();
    let one = store.take_photo(&picture("colour.png"), vec![("role", json!("before"))]).unwrap();
    let two = store.take_photo(&picture("colour.png"), vec![("role", json!("after"))]).unwrap();
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
        let refused = store.take_photo(bytes, Vec::new()).unwrap_err();
        assert!(matches!(refused, FactsError::Picture(_)), "{refused}");
        assert!(refused.to_string().starts_with("this picture was not taken in: it"), "{refused}");
    }
    assert!(matches!(
        store.take_photo(&broken, Vec::new()),
        Err(FactsError::Picture(PictureFault::Damaged { .. }))
    ));
    assert!(store.ledger().is_empty());
    assert_eq!(names_in(&store.photos()), BTreeSet::new());
}

#[test]
fn small_pictures_are_kept_and_can_be_made_again() {
    let (_home, mut store) = survey();
    let photo = store.take_photo(&picture("baseline.jpg"), Vec::new()).unwrap();
    let small = store.thumbnail(photo).unwrap();
    let decoded = image::load_from_memory(&small).unwrap();
    assert_eq!((decoded.width(), decoded.height()), (48, 64));
    let database = rusqlite::Connection::open(store.folder().join("survey.db")).unwrap();
    assert_eq!(database.execute("DELETE FROM thumbnail", ()).unwrap(), 1);
    drop(database);
    assert_eq!(store.thumbnail(photo).unwrap(), small);
    assert!(matches!(store.thumbnail(SubjectId::random()), Err(FactsError::NoSuchPhoto)));
}

#[test]
fn what_nothing_names_is_swept_and_what_is_missing_is_listed() {
    let (_home, mut store) = survey();
    let photo = store.take_photo(&picture("baseline.jpg"), Vec::new()).unwrap();
    let photos = store.photos();
    fs::write(photos.join(format!("{}.jpg", "ab".repeat(32))), "taken in half").unwrap();
    fs::write(photos.join("x.jpg.01930000000070008000000000000001.part"), "half").unwrap();
    fs::write(photos.join("notes.txt"), "somebody's own").unwrap();
    assert_eq!(names_in(&photos).len(), 4);
    let folder = store.folder().to_owned();
    drop(store);
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(names_in(&photos).len(), 2);
    assert_eq!(store.missing_photos().unwrap(), []);
    let path = store.photo_path(photo).unwrap();
    fs::write(&path, "short").unwrap();
    assert_eq!(store.missing_photos().unwrap(), [photo]);
    fs::remove_file(&path).unwrap();
    assert_eq!(store.missing_photos().unwrap(), [photo]);
    // The same picture again repairs it.
    store.take_photo(&picture("baseline.jpg"), Vec::new()).unwrap();
    assert_eq!(store.missing_photos().unwrap(), []);
}

#[test]
fn a_photo_whose_file_cannot_be_written_gives_no_fact() {
    let (_home, mut store) = survey();
    // A file stands where the folder of photos should be.
    fs::remove_dir(store.photos()).unwrap();
    fs::write(store.photos(), "").unwrap();
    let refused = store.take_photo(&picture("baseline.jpg"), Vec::new()).unwrap_err();
    assert!(matches!(refused, FactsError::Inaccessible { .. }), "{refused}");
    assert!(store.ledger().is_empty());
    fs::remove_file(store.photos()).unwrap();
    fs::create_dir(store.photos()).unwrap();
    store.take_photo(&picture("baseline.jpg"), Vec::new()).unwrap();
    assert_eq!(store.ledger().len(), 2);
}

/// A camera app may still be writing; a path may name no file at all.
#[test]
fn no_more_of_a_file_is_read_than_is_taken() {
    let (home, mut store) = survey();
    let file = home.path().join("photo.jpg");
    fs::write(&file, picture("baseline.jpg")).unwrap();
    let read = Picture::read(&file).unwrap().unwrap();
    let photo = store.take_picture(&read, Vec::new()).unwrap();
    assert_eq!(store.photo_bytes(photo).unwrap(), read.bytes());
    // Far longer than memory, and no byte of it on the disk.
    fs::File::options().write(true).open(&file).unwrap().set_len(1 << 42).unwrap();
    assert!(matches!(Picture::read(&file).unwrap(), Err(PictureFault::TooLong { .. })));
    assert!(Picture::read(home.path()).is_err());
    #[cfg(unix)]
    assert!(Picture::read(Path::new("/dev/zero")).is_err());
}
