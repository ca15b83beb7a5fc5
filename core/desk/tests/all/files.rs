//! `legwork pack`, `look`, `take`, `put-back`, and the whole way of a file between two people.

use crate::support::pictures::{jpeg, png};
use crate::support::{Desk, SMALL};
use serde_json::json;

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk.write("a.png", png(40, 30, 1));
    desk.write("b.jpg", jpeg(64, 48, 2));
    desk
}

#[test]
fn a_survey_goes_to_and_fro_between_two_people() {
    let desk = Desk::new();
    desk.write("a.png", png(40, 30, 1));
    desk.done(&["demo", "--out", "mine"]);
    let mine = "mine/demo.legwork";
    let photo = desk.done(&["photo", "add", mine, "a.png", "--of", "S1"])["photos"][0]["photo"].clone();
    let photo = photo.as_str().unwrap();
    desk.done(&["pack", mine, "first.lwk"]);
    let look = desk.done_by("guest", &["look", "first.lwk"]);
    assert_eq!((&look["photos"], &look["same_survey"]), (&json!(1), &json!(false)));
    assert_eq!(look["new_facts"], look["facts"]);
    let taken = desk.done_by("guest", &["take", "first.lwk", "guest.legwork"]);
    assert_eq!((&taken["new_survey"], &taken["photos"]), (&json!(true), &json!(1)));

    // Both edit without seeing each other's word; the guest adds a note as well.
    desk.done_by("guest", &["photo", "assign", "guest.legwork", photo, "--of", "S1", "--role", "place"]);
    desk.done_by("guest", &["note", "guest.legwork", "wet here", "--on", "S1"]);
    desk.done(&["photo", "assign", mine, photo, "--of", "S1", "--role", "label"]);
    desk.done_by("guest", &["pack", "guest.legwork", "second.lwk"]);
    let look = desk.done(&["look", "second.lwk", mine]);
    // The role, and of the note: that it is one, its text, what it is about.
    assert_eq!((&look["new_facts"], &look["new_photos"]), (&json!(4), &json!(0)));
    assert_eq!(look["new_disagreements"][0]["field"], "role");
    assert_eq!(look["new_disagreements"].as_array().unwrap().len(), 1);
    assert_eq!(look["authors"].as_array().unwrap().len(), 1);
    assert_eq!(
        (&look["authors"][0]["new_facts"], &look["authors"][0]["author"]["you"]),
        (&json!(4), &json!(false))
    );
    let taken = desk.done(&["take", "second.lwk", mine]);
    assert_eq!(taken["look"], look, "what it brought is what it said it would bring");
    assert_eq!(taken["facts"], 4);

    let found = desk.done(&["disagreements", mine]);
    let one = &found["disagreements"][0];
    assert_eq!((&one["thing"]["id"], &one["field"]), (&json!(photo), &json!("role")));
    let values: Vec<_> = one["sides"].as_array().unwrap().iter().map(|side| side["value"].clone()).collect();
    assert_eq!(values, ["place", "label"], "oldest first");
    assert_eq!(one["sides"][0]["author"]["you"], false);
    let told = desk.run(&["disagreements", mine]).out;
    assert!(told.contains("the place") && told.contains("the label"), "{told}");
    desk.refused(3, "thing", &["settle", mine, photo, "role", "3"]);
    desk.refused(3, "survey", &["settle", mine, photo, "of", "1"]);
    let settled = desk.done(&["settle", mine, photo, "role", "1"]);
    assert_eq!(settled["value"], "place");
    assert_eq!(desk.done(&["disagreements", mine])["disagreements"], json!([]));

    // Back to the guest, in whose copy it is settled too: both then pack the same bytes.
    desk.done(&["pack", mine, "third.lwk"]);
    desk.done_by("guest", &["take", "third.lwk", "guest.legwork"]);
    desk.done_by("guest", &["pack", "guest.legwork", "fourth.lwk", "--without", "photos"]);
    desk.done(&["--feet", "pack", mine, "fifth.lwk", "--without", "photos"]);
    let read = |name| std::fs::read(desk.work().join(name)).unwrap();
    assert!(read("fourth.lwk") == read("fifth.lwk"));
    assert!(read("third.lwk").len() > read("fifth.lwk").len());
}

#[test]
fn what_is_left_out_is_not_in_the_file_and_not_in_its_report() {
    let desk = small();
    desk.done(&["surveys", "rename", "s.legwork", "Elm Lane Nine"]);
    desk.done(&["note", "Elm Lane Nine.legwork", "ask for Quimby"]);
    desk.done(&["photo", "add", "Elm Lane Nine.legwork", "a.png"]);
    let says = |file: &str, words: &str| {
        let bytes = std::fs::read(desk.work().join(file)).unwrap();
        bytes.windows(words.len()).any(|part| part == words.as_bytes())
    };
    desk.done(&["pack", "Elm Lane Nine.legwork", "all.lwk"]);
    let all = ["--without", "owner", "--without", "notes", "--without", "photos"];
    let packed = desk.done(&[&["pack", "Elm Lane Nine.legwork", "less.lwk"][..], &all].concat());
    assert_eq!((&packed["photos"], &packed["left_out"]), (&json!(0), &json!(["notes", "owner", "photos"])));
    for words in ["Elm Lane Nine", "Quimby"] {
        // The writer of files only stores, so that text can be found in them.
        assert!(says("all.lwk", words) && !says("less.lwk", words), "{words}");
    }
    assert_eq!(desk.done(&["look", "less.lwk"])["left_out"], json!(["notes", "owner", "photos"]));
    assert_eq!(desk.run(&["pack", "Elm Lane Nine.legwork", "x.lwk", "--without", "quux"]).code, 2);
    // What is still told without its owner is listed, with what can be left out too.
    assert_eq!(packed["still_told"], json!(["times", "hands", "rooms", "photo-hashes"]));
    let told = desk.run(&["pack", "Elm Lane Nine.legwork", "some.lwk", "--without", "owner"]).out;
    for words in ["still tells", "cannot be left out", "--without notes", "--without photo-records"] {
        assert!(told.contains(words), "{words} in {told}");
    }
    let told = desk.run(&["pack", "Elm Lane Nine.legwork", "whole.lwk"]).out;
    assert!(!told.contains("still tells"), "{told}");
}

#[test]
fn a_file_is_never_written_over_unless_told_to() {
    let desk = small();
    desk.write("out.lwk", "mine");
    desk.refused(3, "other_kind", &["pack", "s.legwork", "out.lwk"]);
    desk.refused(1, "survey", &["pack", "s.legwork", "no/such/folder/out.lwk"]);
    desk.refused(3, "not_a_survey", &["pack", "none.legwork", "x.lwk"]);
    // What is no packed survey is not replaced by one, nor does a name say something else than what is in it.
    desk.refused(3, "other_kind", &["pack", "s.legwork", "out.lwk", "--replace"]);
    assert_eq!(std::fs::read(desk.work().join("out.lwk")).unwrap(), b"mine");
    desk.refused(3, "other_kind", &["pack", "s.legwork", "out.html"]);
    desk.refused(3, "other_kind", &["report", "s.legwork", "house.lwk"]);
    desk.done(&["pack", "s.legwork", "packed.lwk"]);
    desk.refused(3, "other_kind", &["report", "s.legwork", "packed.lwk"]);
    desk.refused(3, "exists", &["pack", "s.legwork", "packed.lwk"]);
    desk.refused(3, "other_kind", &["report", "s.legwork", "packed.lwk", "--replace"]);
    desk.done(&["pack", "s.legwork", "packed.lwk", "--replace"]);
    desk.done(&["look", "packed.lwk"]);
}

#[test]
fn a_take_is_put_back_and_asks_where_more_was_written_since() {
    let desk = small();
    desk.done(&["pack", "s.legwork", "first.lwk"]);
    desk.done_by("guest", &["take", "first.lwk", "guest.legwork"]);
    desk.done_by("guest", &["photo", "add", "guest.legwork", "a.png", "b.jpg"]);
    desk.done_by("guest", &["pack", "guest.legwork", "second.lwk"]);
    desk.refused(3, "survey", &["put-back", "s.legwork"]);
    let before = desk.done(&["said", "s.legwork"]);
    let taken = desk.done(&["take", "second.lwk", "s.legwork"]);
    assert_eq!(taken["photos"], 2);
    assert_eq!(desk.done(&["put-back", "s.legwork"])["facts"], taken["facts"]);
    assert_eq!(desk.done(&["said", "s.legwork"]), before);
    assert_eq!(std::fs::read_dir(desk.work().join("s.legwork/photos")).unwrap().count(), 0);
    desk.done(&["take", "second.lwk", "s.legwork"]);
    desk.done(&["note", "s.legwork", "seen"]);
    let err = desk.refused(3, "not_confirmed", &["put-back", "s.legwork"]);
    assert!(err.contains("written again") && err.contains("--yes"), "{err}");
    desk.done(&["put-back", "s.legwork", "--keep"]);
    desk.refused(3, "survey", &["put-back", "s.legwork"]);
}

#[test]
fn bad_files_are_refused_and_nothing_is_written() {
    let desk = small();
    desk.done(&["photo", "add", "s.legwork", "b.jpg"]);
    desk.done(&["pack", "s.legwork", "good.lwk"]);
    let good = std::fs::read(desk.work().join("good.lwk")).unwrap();
    desk.write("cut.lwk", &good[..good.len() - 7]);
    let mut flipped = good.clone();
    flipped[good.len() / 2] ^= 1;
    desk.write("flipped.lwk", flipped);
    desk.write("text.lwk", "no zip");
    desk.done(&["surveys", "copy", "s.legwork", "other"]);
    for bad in ["cut.lwk", "flipped.lwk", "text.lwk"] {
        desk.refused(3, "survey_file", &["look", bad]);
        desk.refused(3, "survey_file", &["look", bad, "s.legwork"]);
        desk.refused(3, "survey_file", &["take", bad, "s.legwork"]);
        desk.refused(3, "survey_file", &["take", bad, "new.legwork"]);
    }
    desk.refused(1, "survey", &["look", "missing.lwk"]);
    let err = desk.refused(3, "survey_file", &["take", "good.lwk", "other.legwork"]);
    assert!(err.contains("another survey"), "{err}");
    desk.refused(3, "not_a_survey", &["take", "good.lwk", "new.folder"]);
    desk.refused(3, "not_a_survey", &["take", "good.lwk", "small.toml"]);
    assert_eq!(desk.run(&["look", "good.lwk", "--most", "0"]).code, 2);
}

#[test]
fn other_programs_read_the_file() {
    let desk = small();
    desk.done(&["photo", "add", "s.legwork", "a.png", "b.jpg"]);
    desk.done(&["pack", "s.legwork", "out.lwk"]);
    // Info-ZIP 6: tests every entry's CRC.
    let tested = std::process::Command::new("unzip")
        .args(["-t", "out.lwk"])
        .current_dir(desk.work())
        .output()
        .expect("unzip is needed for this test");
    assert!(tested.status.success(), "{}", String::from_utf8_lossy(&tested.stdout));
}

/// What a cable is asked for by the tag of what it feeds, as `set` takes it.
#[test]
fn a_cables_length_is_told_and_settled_by_its_parts_tag() {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    desk.done(&["sheet", "small.toml", "mine.legwork"]);
    desk.done(&["set", "mine.legwork", "S1", "length", "9 m paced"]);
    desk.done(&["pack", "mine.legwork", "first.lwk"]);
    desk.done_by("guest", &["take", "first.lwk", "guest.legwork"]);
    desk.done_by("guest", &["set", "guest.legwork", "S1", "length", "8 m measured"]);
    desk.done(&["set", "mine.legwork", "S1", "length", "10 m measured"]);
    desk.done_by("guest", &["pack", "guest.legwork", "second.lwk"]);
    desk.done(&["take", "second.lwk", "mine.legwork"]);
    let sides = desk.done(&["disagreements", "mine.legwork"])["disagreements"][0]["sides"].clone();
    let eight = sides
        .as_array()
        .unwrap()
        .iter()
        .position(|side| side["value"]["metres"].as_f64() == Some(8.0))
        .unwrap();
    assert_eq!(desk.done(&["said", "mine.legwork", "S1", "length"]).as_array().unwrap().len(), 3);
    let side = (eight + 1).to_string();
    let settled = desk.done(&["settle", "mine.legwork", "S1", "length", &side]);
    assert_eq!(settled["value"]["metres"].as_f64(), Some(8.0));
    desk.refused(3, "survey", &["settle", "mine.legwork", "S1", "length", "1"]);
    desk.done(&["report", "mine.legwork", "mine.html"]);
    let page = std::fs::read_to_string(desk.work().join("mine.html")).unwrap();
    assert!(page.contains("8 m (26 ft), measured"));

    // A short one that was measured is told as measured, too.
    desk.done(&["set", "mine.legwork", "S1", "length", "0.1 m measured"]);
    desk.done(&["report", "mine.legwork", "short.html"]);
    let page = std::fs::read_to_string(desk.work().join("short.html")).unwrap();
    assert!(page.contains("0.1 m (0.3 ft), measured"));
}
