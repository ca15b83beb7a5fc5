//! Who said what, undo, removed things, forgetting.

use crate::support::pictures::png;
use crate::support::{Desk, SMALL};
use serde_json::{Value, json};

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk.write("a.png", png(40, 30, 1));
    desk
}

fn notes(desk: &Desk) -> Vec<Value> {
    desk.done(&["note", "s.legwork"]).as_array().unwrap().iter().map(|note| note["text"].clone()).collect()
}

#[test]
fn every_action_and_the_story_of_a_field() {
    let desk = small();
    desk.done_by("else", &["surveys", "rename", "s.legwork", "s"]);
    let acts = desk.done(&["said", "s.legwork"]);
    assert_eq!(acts.as_array().unwrap().len(), 2, "the sheet is one action");
    let newest = &acts[0];
    assert_eq!((&newest["author"]["you"], &newest["can_undo"]), (&json!(false), &json!(true)));
    assert_eq!((&newest["said"][0]["field"], &newest["said"][0]["value"]), (&json!("name"), &json!("s")));
    assert_eq!(acts[1]["author"]["you"], true);

    let label = desk.done(&["said", "s.legwork", "S1", "kind"]);
    assert_eq!((&label[0]["value"], &label[0]["thing"]["tag"]), (&json!("splitter"), &json!("S1")));
    let all = desk.done(&["said", "s.legwork", "s1"]);
    let fields: Vec<_> = all.as_array().unwrap().iter().map(|said| said["field"].clone()).collect();
    assert!(fields.contains(&json!("tag")) && fields.contains(&json!("feed")), "{fields:?}");
    let told = desk.run(&["said", "s.legwork"]);
    assert!(told.out.contains("somebody who gave no name"), "{}", told.out);
    let err = desk.refused(3, "thing", &["said", "s.legwork", "S1", "quux"]);
    assert!(err.contains("quux") && err.contains("kind"), "{err}");
    desk.refused(3, "thing", &["said", "s.legwork", "quux"]);
}

#[test]
fn undo_goes_back_step_by_step_over_the_actions_of_this_computer() {
    let desk = small();
    desk.done(&["note", "s.legwork", "one"]);
    desk.done(&["note", "s.legwork", "two"]);
    desk.done_by("else", &["note", "s.legwork", "three"]);
    let two = desk.done(&["undo", "s.legwork"]);
    assert_eq!(notes(&desk), ["one", "three"], "the newest of this computer, not of the other");
    desk.done(&["undo", "s.legwork"]);
    assert_eq!(notes(&desk), ["three"], "the one before, and not the undo");
    desk.done(&["undo", "s.legwork", two["act"].as_str().unwrap()]);
    assert_eq!(notes(&desk), ["two", "three"], "an undo can be undone");
    // By the beginning of its id: the one of the other author.
    let acts = desk.done(&["said", "s.legwork"]);
    let theirs = acts.as_array().unwrap().iter().find(|act| act["author"]["you"] == false).unwrap();
    desk.done(&["undo", "s.legwork", &theirs["act"].as_str().unwrap()[..8]]);
    assert_eq!(notes(&desk), ["two"]);
    let err = desk.refused(3, "survey", &["undo", "s.legwork", theirs["act"].as_str().unwrap()]);
    assert!(err.contains("cannot be taken back"), "{err}");
    desk.refused(3, "thing", &["undo", "s.legwork", "ffffffff-ffff"]);
}

#[test]
fn people_have_the_names_that_they_give_themselves() {
    let desk = small();
    desk.done_by("else", &["note", "s.legwork", "two"]);
    desk.done_by("else", &["authors", "s.legwork", "--me", " Invented Guest "]);
    let told = desk.run(&["said", "s.legwork"]);
    assert!(told.out.contains("Invented Guest wrote the text: two"), "{}", told.out);
    let authors = desk.done(&["authors", "s.legwork"]);
    let names: Vec<_> = authors.as_array().unwrap().iter().map(|share| &share["author"]["name"]).collect();
    assert_eq!(names, [&json!("Invented Guest"), &json!(null)]);
    assert_eq!(authors[0]["records"], 3, "two of the note, one of the name");
    // The same name again writes nothing; an empty one takes it back, and it can be undone.
    assert_eq!(desk.done_by("else", &["authors", "s.legwork", "--me", "Invented Guest"])["act"], json!(null));
    desk.done_by("else", &["authors", "s.legwork", "--me", ""]);
    assert_eq!(desk.done(&["authors", "s.legwork"])[0]["author"]["name"], json!(null));
    desk.done_by("else", &["undo", "s.legwork"]);
    assert_eq!(desk.done(&["authors", "s.legwork"])[0]["author"]["name"], "Invented Guest");
    // It travels, unless owner data are left out.
    desk.done(&["pack", "s.legwork", "all.lwk"]);
    desk.done(&["pack", "s.legwork", "bare.lwk", "--without", "owner"]);
    for (file, name) in [("all.lwk", json!("Invented Guest")), ("bare.lwk", json!(null))] {
        let look = desk.done(&["look", file]);
        let shares = look["authors"].as_array().unwrap();
        let guest = shares.iter().find(|share| share["author"]["you"] == false).unwrap();
        assert_eq!(guest["author"]["name"], name, "{file}");
    }
    let long = "x".repeat(61);
    for wrong in ["two\nlines", &long] {
        desk.refused(3, "thing", &["authors", "s.legwork", "--me", wrong]);
    }
    // Nobody who only takes a name back becomes an author.
    assert_eq!(desk.done_by("third", &["authors", "s.legwork", "--me", ""])["act"], json!(null));
    assert_eq!(desk.done(&["authors", "s.legwork"]).as_array().unwrap().len(), 2);
}

#[test]
fn removed_things_are_listed_and_come_back() {
    let desk = small();
    let before = desk.done(&["said", "s.legwork", "S1"]);
    // What hangs on it is told before anything is removed.
    let err = desk.refused(3, "not_confirmed", &["remove", "s.legwork", "S1"]);
    assert!(err.contains("S1") && err.contains("part") && err.contains("cable"), "{err}");
    assert_eq!(desk.done(&["removed", "s.legwork"]).as_array().unwrap().len(), 0);
    desk.done(&["remove", "s.legwork", "S1", "Office", "--yes"]);
    let removed = desk.done(&["removed", "s.legwork"]);
    let mut told: Vec<_> =
        removed.as_array().unwrap().iter().map(|one| one["thing"]["told"].to_string()).collect();
    told.sort();
    assert!(told[0].contains("S1") && told[1].contains("Office"), "{told:?}");
    desk.refused(3, "thing", &["remove", "s.legwork", "S1"]);
    desk.refused(3, "thing", &["bring-back", "s.legwork", "O1"]);
    desk.refused(3, "thing", &["remove", "s.legwork", "survey"]);
    desk.refused(3, "thing", &["bring-back", "s.legwork", "S1", "quux"]);
    desk.done(&["bring-back", "s.legwork", "S1"]);
    assert_eq!(desk.done(&["removed", "s.legwork"]).as_array().unwrap().len(), 1);
    let after = desk.done(&["said", "s.legwork", "S1"]);
    let kept = before.as_array().unwrap().len();
    assert_eq!(after.as_array().unwrap()[..kept], before.as_array().unwrap()[..], "nothing was deleted");
}

#[test]
fn forgetting_warns_first_and_reaches_copies_in_the_folder() {
    let desk = small();
    let secret = "the spare key lies under the third flowerpot";
    let note = desk.done(&["note", "s.legwork", secret]);
    let id = note["note"].as_str().unwrap();
    desk.done(&["pack", "s.legwork", "old.lwk"]);
    desk.done(&["take", "old.lwk", "copy.legwork"]);
    let err = desk.refused(3, "not_confirmed", &["forget", "s.legwork", id]);
    assert!(err.contains("for ever") && err.contains("--yes") && err.contains("already sent"), "{err}");
    assert_eq!(notes(&desk), [secret]);

    let done = desk.done(&["forget", "s.legwork", id, "--yes"]);
    assert_eq!((&done["copies"], &done["is_cleared"]), (&json!(1), &json!(true)));
    assert_eq!(notes(&desk), Vec::<Value>::new());
    for (path, bytes) in desk.all().into_iter().filter(|(path, _)| path.extension() != Some("lwk".as_ref())) {
        let there = bytes.windows(secret.len()).any(|part| part == secret.as_bytes());
        assert!(!there, "still in {}", path.display());
    }
    // The file that was sent before does not bring it back.
    desk.done(&["take", "old.lwk", "s.legwork"]);
    assert_eq!(notes(&desk), Vec::<Value>::new());
    desk.refused(3, "thing", &["forget", "s.legwork", id, "--yes"]);
    desk.refused(3, "thing", &["forget", "s.legwork", "survey", "--yes"]);
    desk.refused(3, "thing", &["forget", "s.legwork", "S1", "quux", "--yes"]);
}

#[test]
fn a_forgotten_photo_is_gone_from_the_disk() {
    let desk = small();
    let added = desk.done(&["photo", "add", "s.legwork", "a.png", "a.png"]);
    let photos = || std::fs::read_dir(desk.work().join("s.legwork/photos")).unwrap().count();
    assert_eq!(photos(), 1, "the same picture twice is one file");
    desk.done(&["forget", "s.legwork", added["photos"][0]["photo"].as_str().unwrap(), "--yes"]);
    assert_eq!(photos(), 0);
    assert_eq!(desk.done(&["photo", "list", "s.legwork"]), json!([]));
}

#[test]
fn a_field_is_forgotten_with_all_that_was_said_about_it() {
    let desk = small();
    desk.done(&["surveys", "rename", "s.legwork", "one street"]);
    desk.done(&["surveys", "rename", "one street.legwork", "s"]);
    let done = desk.done(&["forget", "s.legwork", "survey", "name", "--yes"]);
    assert_eq!((&done["records"], &done["field"]), (&json!(2), &json!("name")));
    let story = desk.done(&["said", "s.legwork", "survey", "name"]);
    assert!(
        story.as_array().unwrap().iter().all(|said| said["forgotten"] == true && said["value"].is_null())
    );
    assert_eq!(desk.done(&["surveys"])["surveys"][0]["name"], Value::Null);
}

#[test]
fn an_empty_note_is_refused() {
    let desk = small();
    for empty in ["", " \n "] {
        desk.refused(3, "thing", &["note", "s.legwork", empty]);
    }
    assert_eq!(notes(&desk), [""; 0]);
}
