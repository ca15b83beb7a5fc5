//! `legwork surveys`: the list, and what can be done with one.

use std::os::unix::fs::FileExt;

use crate::support::pictures::png;
use crate::support::{Desk, SMALL};
use serde_json::json;

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk
}

#[test]
fn they_are_listed_with_what_they_hold() {
    let desk = small();
    desk.write("a.png", png(40, 30, 1));
    desk.done(&["photo", "add", "s.legwork", "a.png"]);
    desk.done(&["surveys", "copy", "s.legwork", "another house"]);
    std::fs::create_dir(desk.work().join("bad.legwork")).unwrap();
    let list = desk.done(&["surveys"]);
    let surveys = list["surveys"].as_array().unwrap();
    let paths: Vec<_> = surveys.iter().map(|one| one["survey"].as_str().unwrap()).collect();
    assert_eq!(paths, ["another house.legwork", "s.legwork", "bad.legwork"], "the last written first");
    assert_eq!(surveys[0]["name"], "another house");
    // SMALL: six parts, two of them with a cable of their own, one room.
    for survey in &surveys[..2] {
        let counts = ["parts", "runs", "rooms", "photos"].map(|count| survey[count].as_u64().unwrap());
        assert_eq!(counts, [6, 2, 1, 1]);
    }
    assert!(surveys[2]["trouble"].as_str().unwrap().contains("no survey"));
    assert_ne!(surveys[0]["survey_id"], surveys[1]["survey_id"], "a copy is a survey of its own");
    let told = desk.run(&["surveys", "."]);
    assert!(told.out.contains("6 parts") && told.out.contains("1 photo"), "{}", told.out);
    desk.refused(1, "file", &["surveys", "no-such-folder"]);
}

#[test]
fn renamed_set_aside_brought_back_deleted() {
    let desk = small();
    desk.done(&["surveys", "copy", "s.legwork", "other"]);
    desk.refused(3, "exists", &["surveys", "rename", "s.legwork", "other"]);
    desk.refused(3, "exists", &["surveys", "copy", "s.legwork", "other"]);
    desk.refused(3, "survey", &["surveys", "rename", "s.legwork", "a/b"]);
    desk.refused(3, "not_a_survey", &["surveys", "rename", "none.legwork", "x"]);
    let renamed = desk.done(&["surveys", "rename", "s.legwork", "mill house"]);
    assert_eq!(renamed["survey"], "mill house.legwork");
    // Facts written in a burst count a millisecond each, so which of two fresh surveys is the newer is not asked here.
    let list = desk.done(&["surveys"]);
    let mut names: Vec<_> =
        list["surveys"].as_array().unwrap().iter().map(|survey| survey["name"].clone()).collect();
    names.sort_by_key(|name| name.as_str().map(str::to_owned));
    assert_eq!(names, ["mill house", "other"]);

    let aside = desk.done(&["surveys", "aside", "other.legwork"]);
    assert_eq!(aside["survey"], "set-aside/other.legwork");
    let list = desk.done(&["surveys"]);
    assert_eq!(list["set_aside"][0]["survey"], "set-aside/other.legwork");
    assert_eq!(list["surveys"].as_array().unwrap().len(), 1);
    desk.refused(3, "exists", &["surveys", "aside", "set-aside/other.legwork"]);
    desk.refused(3, "thing", &["surveys", "back", "mill house.legwork"]);
    assert_eq!(desk.done(&["surveys", "back", "set-aside/other.legwork"])["survey"], "other.legwork");

    let err = desk.refused(3, "not_confirmed", &["surveys", "delete", "other.legwork"]);
    assert!(err.contains("--yes"), "{err}");
    assert_eq!(
        desk.done(&["surveys", "delete", "other.legwork", "--yes"]),
        json!({"survey": null, "kept": null})
    );
    assert_eq!(desk.done(&["surveys"])["surveys"].as_array().unwrap().len(), 1);
}

#[test]
fn a_folder_that_is_no_survey_is_not_deleted() {
    let desk = small();
    std::fs::create_dir(desk.work().join("mine.legwork")).unwrap();
    desk.write("mine.legwork/letter.txt", "mine");
    for command in
        [&["surveys", "delete", "mine.legwork", "--yes"][..], &["surveys", "aside", "mine.legwork"]]
    {
        desk.refused(3, "not_a_survey", command);
    }
}

/// Spoils the pages of a table: SQLite keeps rows of a WITHOUT ROWID table in pages that begin with 10 or 2 (its file
/// format, 1.6: "b-tree pages").
fn spoil(desk: &Desk, spare_first: usize) {
    let path = desk.work().join("s.legwork/survey.db");
    let bytes = std::fs::read(&path).unwrap();
    let file = std::fs::File::options().write(true).open(&path).unwrap();
    let page = usize::from(u16::from_be_bytes([bytes[16], bytes[17]]));
    for at in (page..bytes.len()).step_by(page).skip(spare_first).filter(|&at| bytes[at] == 10) {
        file.write_all_at(&[0xEE; 64], at as u64).unwrap();
    }
}

#[test]
fn a_damaged_survey_is_told_and_repaired_from_a_file() {
    let desk = small();
    let whole = desk.done(&["surveys", "repair", "s.legwork"]);
    assert_eq!((&whole["was_damaged"], &whole["damaged"]), (&json!(false), &json!(null)));
    desk.write("a.png", png(40, 30, 1));
    desk.done(&["photo", "add", "s.legwork", "a.png", "--of", "S1"]);
    desk.done(&["pack", "s.legwork", "kept.lwk"]);
    desk.done(&["surveys", "copy", "s.legwork", "other"]);
    desk.done(&["pack", "other.legwork", "other.lwk"]);
    let before = desk.done(&["said", "s.legwork"]);
    spoil(&desk, 0);
    std::fs::remove_dir_all(desk.work().join("s.legwork/photos")).unwrap();
    std::fs::create_dir(desk.work().join("s.legwork/photos")).unwrap();
    let err = desk.refused(3, "damaged", &["findings", "s.legwork"]);
    assert!(err.contains("legwork surveys repair"), "{err}");
    desk.refused(3, "damaged", &["surveys", "repair", "s.legwork"]);
    desk.write("text.lwk", "no file of ours");
    desk.refused(3, "survey_file", &["surveys", "repair", "s.legwork", "--from", "text.lwk"]);
    let repaired = desk.done(&["surveys", "repair", "s.legwork", "--from", "kept.lwk"]);
    assert_eq!((&repaired["was_damaged"], &repaired["missing_photos"]), (&json!(true), &json!(0)));
    assert_eq!(repaired["photos_back"], 1);
    assert_eq!(desk.done(&["said", "s.legwork"]), before);
    assert_eq!(desk.run(&["findings", "s.legwork"]).code, 0);
    // Of the database nothing is left but its place.
    let database = desk.work().join("s.legwork/survey.db");
    let zeros = vec![0; usize::try_from(std::fs::metadata(&database).unwrap().len()).unwrap()];
    std::fs::write(&database, zeros).unwrap();
    let err = desk.refused(3, "not_a_survey", &["said", "s.legwork"]);
    assert!(err.contains("legwork surveys repair"), "{err}");
    desk.refused(3, "survey_file", &["surveys", "repair", "s.legwork", "--from", "text.lwk"]);
    let repaired = desk.done(&["surveys", "repair", "s.legwork", "--from", "kept.lwk"]);
    assert_eq!((&repaired["was_damaged"], &repaired["photos_back"]), (&json!(true), &json!(0)));
    assert_eq!(desk.done(&["said", "s.legwork"]), before);
    // Only a photo is lost.
    std::fs::remove_dir_all(desk.work().join("s.legwork/photos")).unwrap();
    std::fs::create_dir(desk.work().join("s.legwork/photos")).unwrap();
    let told = desk.run(&["surveys", "repair", "s.legwork", "--from", "kept.lwk"]);
    assert!(told.out.contains("One photo that was missing or damaged is back"), "{}", told.out);
}

#[test]
fn files_of_two_houses_do_not_tell_that_one_computer_wrote_them() {
    let desk = small();
    assert_eq!(desk.run(&["sheet", "small.toml", "t.legwork"]).code, 0);
    let author = |survey: &str| {
        let authors = desk.done(&["authors", survey]);
        assert_eq!((authors.as_array().unwrap().len(), &authors[0]["author"]["you"]), (1, &json!(true)));
        authors[0]["author"]["id"].as_str().unwrap().to_owned()
    };
    let (one, other) = (author("s.legwork"), author("t.legwork"));
    assert_ne!(one, other);
    let key = std::fs::read_to_string(desk.home().join("author-key")).unwrap();
    for (survey, file) in [("s.legwork", "s.lwk"), ("t.legwork", "t.lwk")] {
        desk.done(&["pack", survey, file, "--without", "owner"]);
    }
    // Our writer stores and does not deflate.
    let packed =
        |file: &str| String::from_utf8_lossy(&std::fs::read(desk.work().join(file)).unwrap()).into_owned();
    assert!(packed("s.lwk").contains(&one) && packed("t.lwk").contains(&other));
    assert!(!packed("t.lwk").contains(&one) && !packed("s.lwk").contains(&other));
    assert!(["s.lwk", "t.lwk"].iter().all(|file| !packed(file).contains(key.trim())));
    // Taken in again where it came from, it is still one's own.
    desk.done(&["take", "s.lwk", "again.legwork"]);
    assert_eq!(author("again.legwork"), one);
}
