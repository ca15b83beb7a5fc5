//! Files written by releases before this one open and say what was put into them. What is wanted here was taken from
//! `tests/samples/make` and its sheet, step by step, and not from any reader.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use crate::support::Desk;

/// What the release of commit f92f686 wrote.
fn first() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/samples/first")
}

fn copied(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let to = to.join(entry.file_name());
        if entry.path().is_dir() {
            copied(&entry.path(), &to);
        } else {
            fs::copy(entry.path(), to).unwrap();
        }
    }
}

/// A desk on which all of it lies, used by who wrote it.
fn desk() -> Desk {
    let desk = Desk::new();
    copied(&first(), &desk.work());
    fs::create_dir_all(desk.home()).unwrap();
    fs::rename(desk.work().join("author"), desk.home().join("author")).unwrap();
    desk
}

/// Name, rooms, parts, runs, photos, notes and readings of a survey in the folder.
fn counts(desk: &Desk, survey: &str) -> Value {
    let surveys = desk.done(&["surveys"]);
    let all = surveys["surveys"].as_array().unwrap();
    let one = all.iter().find(|one| Path::new(one["survey"].as_str().unwrap()).ends_with(survey)).unwrap();
    assert_eq!(one["trouble"], Value::Null);
    ["name", "rooms", "parts", "runs", "photos", "notes", "readings"].map(|member| one[member].clone()).into()
}

/// `core/desk/demo/house.toml` of that release: nine parts, of which all but the entry hang on a cable.
fn demo() -> Value {
    json!(["An invented house", 4, 9, 8, 0, 4, 0])
}

/// The sheet's six parts less S9, which was removed; three of them tell of their cable. Three photos. The sheet's note, two
/// of Ann's that were neither taken back nor forgotten, one of Ben's. The sheet's two readings. Ann's name is the newer.
fn house() -> Value {
    json!(["House by Ann", 2, 5, 3, 3, 4, 2])
}

#[test]
fn surveys_open() {
    let desk = desk();
    assert_eq!(counts(&desk, "demo.legwork"), demo());
    assert_eq!(counts(&desk, "house.legwork"), house());
    // The rooms that something is wished for.
    for (survey, wanted) in
        [("demo.legwork", ["Attic bedroom", "Office"]), ("house.legwork", ["Den", "Study"])]
    {
        let forecast = desk.done(&["forecast", survey]);
        let rooms = forecast["rooms"].as_array().unwrap().iter().filter(|room| !room["wish"].is_null());
        assert_eq!(rooms.map(|room| room["outlet"]["room"].as_str().unwrap()).collect::<Vec<_>>(), wanted);
    }
}

#[test]
fn exchange_files_are_taken_in() {
    let desk = desk();
    for (file, new, wanted) in
        [("demo.lwk", "new demo.legwork", demo()), ("house.lwk", "new house.legwork", house())]
    {
        let took = desk.done(&["take", file, new]);
        assert_eq!((&took["new_survey"], &took["look"]["core"]), (&json!(true), &json!("0.1.0")));
        assert_eq!(counts(&desk, new), wanted);
    }
    // The survey that it was packed from has all of it.
    let took = desk.done(&["take", "house.lwk", "house.legwork"]);
    assert_eq!((&took["new_survey"], &took["facts"], &took["photos"]), (&json!(false), &json!(0), &json!(0)));
    assert_eq!(counts(&desk, "house.legwork"), house());
}

#[test]
fn the_sheet_is_read() {
    let desk = desk();
    let made = desk.done(&["sheet", "house.toml", "again.legwork"]);
    assert_eq!((&made["parts"], &made["runs"], &made["rooms"]), (&json!(6), &json!(3), &json!(2)));
    assert_eq!(made["loose"], json!(["S9"]));
}

#[test]
fn what_was_done_and_said_is_still_told() {
    let desk = desk();
    let notes: Vec<Value> = desk.done(&["note", "house.legwork"]).as_array().unwrap().clone();
    let told: Vec<_> = notes.iter().map(|note| (&note["text"], &note["about"]["tag"])).collect();
    let told = serde_json::to_value(told).unwrap();
    assert_eq!(
        told,
        json!([
            ["Invented for the samples.", null],
            ["behind the shelf", "S1"],
            ["the ladder stands in the shed", null],
            ["from the other copy", "O3"],
        ])
    );
    let photos = desk.done(&["photo", "list", "house.legwork"]);
    let shows: Vec<_> = photos
        .as_array()
        .unwrap()
        .iter()
        .map(|photo| json!([photo["of"]["tag"], photo["role"], photo["ext"], photo["missing"]]))
        .collect();
    assert_eq!(
        Value::from(shows),
        json!([["S1", "label", "jpg", false], ["O2", "before", "png", false], [null, null, "jpg", false]])
    );
    let removed = desk.done(&["removed", "house.legwork"]);
    assert!(removed.as_array().unwrap().iter().any(|one| one["thing"]["tag"] == "S9"), "{removed}");
    let apart = desk.done(&["disagreements", "house.legwork"]);
    assert_eq!(apart["disagreements"].as_array().unwrap().len(), 1);
    assert_eq!(apart["disagreements"][0]["origin"], json!(["Sample house"]));
    let sides: Vec<_> = apart["disagreements"][0]["sides"]
        .as_array()
        .unwrap()
        .iter()
        .map(|side| json!([side["author"]["name"], side["author"]["you"], side["value"]]))
        .collect();
    assert_eq!(
        Value::from(sides),
        json!([["Sample Ben", false, "House by Ben"], ["Sample Ann", true, "House by Ann"]])
    );
    // What was forgotten is in none of the files.
    let secret = "third flowerpot";
    for (path, bytes) in desk.all() {
        assert!(!bytes.windows(secret.len()).any(|part| part == secret.as_bytes()), "{}", path.display());
    }
    // What was taken back can be done again: the undo is an act like another.
    let acts = desk.done(&["said", "house.legwork"]);
    let undo = acts.as_array().unwrap().iter().find(|act| act.to_string().contains("taken back"));
    assert!(undo.is_some(), "the note that was taken back is in the story");
    desk.done(&["settle", "house.legwork", "survey", "name", "1"]);
    assert_eq!(counts(&desk, "house.legwork")[0], "House by Ben");
}

/// What a walk of the house shows over these lines.
fn walked(desk: &Desk, lines: &str) -> String {
    desk.write("lines", lines);
    let ran = desk.run(&["walk", "house.legwork", "--answers", "lines"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    ran.out
}

/// The last screen was the length of R2, with 17 ft typed and not sent off; the modem was put off; one change was done.
#[test]
fn the_guide_is_where_it_was_left() {
    let desk = desk();
    let walked = |lines: &str| walked(&desk, lines);
    let here = walked("quit\n");
    assert!(here.contains("R2") && here.contains("17 ft"), "{here}");
    // The whole job; then what was put off.
    let job = walked("w\nquit\n");
    assert!(job.contains("The work list: 1 done"), "{job}");
    let later = walked("put-off\nquit\n");
    assert!(later.rsplit("> put-off").next().unwrap().contains("The cable modem"), "{later}");
    // The device's own: lengths in feet come first, and its user's name is there.
    assert!(here.contains("Length (ft"), "{here}");
    let device: Value = serde_json::from_slice(&fs::read(desk.work().join("device.json")).unwrap()).unwrap();
    assert_eq!((&device["name"], &device["length_unit"]), (&json!("Sample Ann"), &json!("feet")));
}

/// At the length of R2, beside two choices: a number alone is the figure, in any unit, and a choice has a letter before it.
#[test]
fn a_number_is_the_figure_that_is_asked_for() {
    let desk = desk();
    let walked = |lines: &str| walked(&desk, lines);
    let last = |out: &str, line: &str| out.rsplit(&format!("> {line}\n")).next().unwrap().to_owned();
    let figure = last(&walked("3\nquit\n"), "3");
    assert!(figure.contains("= 3 ft") && figure.contains("b2* Paced"), "{figure}");
    let chosen = last(&walked("b3\nquit\n"), "b3");
    assert!(chosen.contains("= 3 ft") && chosen.contains("b3* Guessed"), "{chosen}");
    // Half a figure and half a choice is neither.
    let neither = last(&walked("b9\nquit\n"), "b9");
    assert!(neither.contains("does nothing on this screen"), "{neither}");
    // What can be read two ways is asked again, and nothing is written.
    let doubt = last(&walked("1,000\ng\nquit\n"), "g");
    assert!(doubt.contains("1000") && doubt.contains("1.0") && doubt.contains("R2"), "{doubt}");
    let typed = walked("length = 5 ft 6 in\ng\nlong\nquit\n");
    assert!(!last(&typed, "g").contains("cannot be read"), "{typed}");
    // The screen was come to from the list of the cables, and its answer leads back there and stands there in words.
    let list = last(&typed, "g");
    assert!(list.contains("== The cables ==") && list.contains("5.5 ft"), "{list}");
}
