//! `legwork photo` and `legwork note`.

use serde_json::json;

use crate::support::pictures::{jpeg, jpeg_taken, png};
use crate::support::{Desk, SMALL};

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk.write("a.png", png(40, 30, 1));
    desk.write("b.jpg", jpeg(64, 48, 2));
    desk.write("c.png", png(20, 10, 3));
    desk
}

#[test]
fn a_burst_is_taken_in_and_its_parts_are_said_later() {
    let desk = small();
    let added = desk.done(&["photo", "add", "s.legwork", "a.png", "b.jpg", "c.png", "--role", "label"]);
    let ids: Vec<&str> =
        added["photos"].as_array().unwrap().iter().map(|photo| photo["photo"].as_str().unwrap()).collect();
    assert_eq!(ids.len(), 3);
    let unassigned = desk.done(&["photo", "list", "s.legwork", "--unassigned"]);
    assert_eq!(unassigned, added["photos"], "all of them, in the order given");
    let sizes: Vec<_> =
        unassigned.as_array().unwrap().iter().map(|photo| (&photo["width"], &photo["height"])).collect();
    assert_eq!(sizes, [(&40.into(), &30.into()), (&64.into(), &48.into()), (&20.into(), &10.into())]);

    // The beginning of an id is enough; a tag in small letters too.
    desk.done(&["photo", "assign", "s.legwork", &ids[0][..8], ids[1], "--of", "s1"]);
    desk.done(&["photo", "assign", "s.legwork", ids[1], "--of", "O2", "--role", "before"]);
    let of_splitter = desk.done(&["photo", "list", "s.legwork", "S1"]);
    assert_eq!(of_splitter[0]["photo"], ids[0]);
    assert_eq!((&of_splitter[0]["role"], &of_splitter[0]["of"]["tag"]), (&"label".into(), &"S1".into()));
    assert_eq!(of_splitter.as_array().unwrap().len(), 1);
    assert_eq!(desk.done(&["photo", "list", "s.legwork", "O2"])[0]["role"], "before");
    let told = desk.run(&["photo", "list", "s.legwork"]);
    assert!(told.out.contains("3 photos") && told.out.contains("before the work"), "{}", told.out);
    assert!(told.out.contains("One photo is not assigned"), "{}", told.out);
    desk.done(&["photo", "assign", "s.legwork", ids[0], "--nothing"]);
    assert_eq!(desk.done(&["photo", "list", "s.legwork", "S1"]), serde_json::json!([]));
}

#[test]
fn a_photo_is_written_out_as_it_was_taken_in() {
    let desk = small();
    let added = desk.done(&["photo", "add", "s.legwork", "a.png", "--of", "S1"]);
    let photo = added["photos"][0]["photo"].as_str().unwrap();
    desk.done(&["photo", "write", "s.legwork", photo, "out.png"]);
    // Nothing about place or camera was in it, so nothing was cut.
    assert_eq!(std::fs::read(desk.work().join("out.png")).unwrap(), png(40, 30, 1));
    let err = desk.refused(3, "exists", &["photo", "write", "s.legwork", photo, "out.png"]);
    assert!(err.contains("--replace"), "{err}");
    assert_eq!(desk.run(&["photo", "write", "s.legwork", photo, "out.png", "--replace"]).code, 0);

    let stored = desk
        .work()
        .join("s.legwork/photos")
        .join(format!("{}.png", added["photos"][0]["sha256"].as_str().unwrap()));
    std::fs::write(&stored, png(40, 30, 9)).unwrap();
    desk.refused(1, "picture", &["photo", "write", "s.legwork", photo, "other.png"]);
    std::fs::remove_file(&stored).unwrap();
    desk.refused(1, "picture", &["photo", "write", "s.legwork", photo, "other.png"]);
    assert_eq!(desk.done(&["photo", "list", "s.legwork"])[0]["missing"], true);
}

#[test]
fn one_bad_picture_among_many_and_nothing_is_stored() {
    let desk = small();
    let whole = jpeg(64, 48, 2);
    desk.write("cut.jpg", &whole[..whole.len() / 2]);
    desk.write("text.jpg", "no picture");
    desk.write("empty.png", "");
    // ISO/IEC 23008-12, annex B: a brand of HEIC.
    desk.write("phone.heic", b"\0\0\0\x18ftypheic\0\0\0\0mif1heic");
    for (bad, words) in [
        ("cut.jpg", "end is missing"),
        ("text.jpg", "no JPEG"),
        ("empty.png", "empty"),
        ("phone.heic", "HEIC"),
    ] {
        let err = desk.refused(3, "picture", &["photo", "add", "s.legwork", "a.png", bad, "b.jpg"]);
        assert!(err.contains(bad) && err.contains(words) && err.contains("Nothing was written"), "{err}");
    }
    desk.refused(1, "file", &["photo", "add", "s.legwork", "a.png", "missing.png"]);
    assert_eq!(desk.done(&["photo", "list", "s.legwork"]), serde_json::json!([]));
}

#[test]
fn words_that_mean_nothing_are_refused() {
    let desk = small();
    let photo = desk.done(&["photo", "add", "s.legwork", "a.png"])["photos"][0]["photo"].clone();
    let photo = photo.as_str().unwrap();
    let err = desk.refused(3, "thing", &["photo", "add", "s.legwork", "a.png", "--of", "S11"]);
    assert!(err.contains("did you mean “S1”"), "{err}");
    // A room stands for its one outlet, and for nothing where it has none.
    desk.write("room.toml", "[[room]]\nname = \"Store room\"\n");
    desk.done(&["sheet", "room.toml", "s.legwork", "--change", "--yes"]);
    desk.refused(3, "thing", &["photo", "add", "s.legwork", "a.png", "--of", "Store room"]);
    desk.refused(3, "thing", &["photo", "assign", "s.legwork", photo, "ffff", "--of", "S1"]);
    desk.refused(3, "thing", &["photo", "assign", "s.legwork", photo, "--of", "quux"]);
    desk.refused(3, "thing", &["photo", "write", "s.legwork", "S1", "out.png"]);
    desk.refused(3, "not_a_survey", &["photo", "add", "none.legwork", "a.png"]);
    for wrong in [
        &["photo", "assign", "s.legwork", photo][..],
        &["photo", "add", "s.legwork"],
        &["photo", "add", "s.legwork", "a.png", "--role", "quux"],
        &["photo", "list", "s.legwork", "S1", "--unassigned"],
        &["photo", "assign", "s.legwork", photo, "--list", "list.txt"],
        &["photo", "assign", "s.legwork", "--list", "list.txt", "--of", "S1"],
    ] {
        assert_eq!(desk.run(wrong).code, 2, "{wrong:?}");
    }
}

#[test]
fn notes_are_added_and_listed() {
    let desk = small();
    let note = desk.done(&["note", "s.legwork", "behind the shelf", "--on", "S1"]);
    assert_eq!((&note["text"], &note["about"]["tag"]), (&"behind the shelf".into(), &"S1".into()));
    assert_eq!(note["author"]["you"], true);
    desk.done(&["note", "s.legwork", "the key is with the neighbour"]);
    let all = desk.done(&["note", "s.legwork"]);
    assert_eq!(all.as_array().unwrap().len(), 2);
    assert_eq!((&all[0], &all[1]["about"]), (&note, &serde_json::Value::Null));
    assert_eq!(desk.done(&["note", "s.legwork", "--on", "S1"]), serde_json::json!([note]));
    assert_eq!(desk.done(&["note", "s.legwork", "--on", "survey"])[0], all[1]);
    desk.refused(3, "thing", &["note", "s.legwork", "x", "--on", "quux"]);
    desk.refused(3, "survey", &["note", "s.legwork", &"x".repeat(9000)]);
}

/// The file names of these photos, in order.
fn names(photos: &serde_json::Value) -> Vec<&str> {
    photos.as_array().unwrap().iter().map(|photo| photo["file_name"].as_str().unwrap()).collect()
}

#[test]
fn a_folder_a_pattern_and_a_pasted_name_stand_for_files() {
    let desk = small();
    std::fs::create_dir_all(desk.work().join("of a day/deeper")).unwrap();
    let picture = |number| png(8, 8, number);
    for (number, name) in [(20, "b.png"), (21, "A.PNG"), (22, ".hidden.png"), (23, "deeper/d.png")] {
        desk.write(&format!("of a day/{name}"), picture(number));
    }
    desk.write("of a day/notes.txt", "no picture");
    desk.write("of a day/c \u{e4} (1).jpg", jpeg_taken(16, 16, 24, "2026:05:31 14:05:09"));
    let folder = desk.done(&["photo", "add", "s.legwork", "of a day"]);
    assert_eq!(names(&folder["photos"]), ["A.PNG", "b.png", "c \u{e4} (1).jpg"]);
    let taken: Vec<_> = folder["photos"].as_array().unwrap().iter().map(|photo| &photo["taken"]).collect();
    assert_eq!(taken, [&json!(null), &json!(null), &json!("2026-05-31T14:05:09")]);
    let path = folder["photos"][2]["path"].as_str().unwrap();
    assert!(desk.work().join(path).is_file(), "{path}");
    let told = desk.run(&["photo", "list", "s.legwork"]).out;
    assert!(told.contains("c \u{e4} (1).jpg, taken 2026-05-31 14:05"), "{told}");
    assert!(told.lines().any(|line| line.trim() == path), "the path stands on a line of its own: {told}");

    // As a shell leaves a pattern, and as a terminal writes the name of what was dropped on it.
    let pattern = desk.done(&["photo", "add", "s.legwork", "of a day/*/*.png", "of a day/[.]hidden.png"]);
    assert_eq!(names(&pattern["photos"]), ["d.png", ".hidden.png"]);
    let whole = desk.work().join("of a day/c \u{e4} (1).jpg");
    let whole = whole.to_str().unwrap();
    let address = format!("file://{}", whole.replace(' ', "%20").replace('\u{e4}', "%C3%A4"));
    let escaped = whole.replace(' ', "\\ ").replace('(', "\\(").replace(')', "\\)");
    for pasted in [&format!("'{whole}'"), &format!("\"{whole}\" "), &address, &escaped] {
        let again = desk.done(&["photo", "add", "s.legwork", pasted, "--again"]);
        assert_eq!(names(&again["photos"]), ["c \u{e4} (1).jpg"], "{pasted}");
    }
    std::fs::create_dir(desk.work().join("empty")).unwrap();
    for nothing in ["empty", "*.tiff", "of a day/deeper/*.jpg"] {
        let err = desk.refused(3, "picture", &["photo", "add", "s.legwork", "a.png", nothing]);
        assert!(err.contains(nothing) && err.contains("no JPEG or PNG"), "{err}");
    }
}

#[test]
fn the_same_picture_is_not_taken_in_twice_without_saying() {
    let desk = small();
    let first = desk.done(&["photo", "add", "s.legwork", "a.png", "--of", "S1"]);
    desk.write("same.png", png(40, 30, 1));
    desk.write("new.png", png(9, 9, 7));
    desk.write("new again.png", png(9, 9, 7));
    let arguments = ["photo", "add", "s.legwork", "same.png", "new.png", "new again.png"];
    let second = desk.done(&arguments);
    assert_eq!(names(&second["photos"]), ["new.png"]);
    let expected = json!([
        {"file": "same.png", "photo": first["photos"][0]["photo"]},
        {"file": "new again.png", "photo": second["photos"][0]["photo"]},
    ]);
    assert_eq!(second["already"], expected);
    let told = desk.run(&arguments).out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("Took in no photo") && told.contains("3 pictures are there already"), "{told}");
    assert!(told.contains("same.png is photo") && told.contains("S1"), "{told}");
    assert_eq!(desk.done(&["photo", "list", "s.legwork"]).as_array().unwrap().len(), 2);
    let again = desk.done(&["photo", "add", "s.legwork", "same.png", "--again"]);
    assert_eq!((names(&again["photos"]), &again["already"]), (vec!["same.png"], &json!([])));
    assert_eq!(desk.done(&["photo", "list", "s.legwork"]).as_array().unwrap().len(), 3);
}

#[test]
fn what_many_photos_show_is_said_by_one_list_in_one_act() {
    let desk = small();
    let added = desk.done(&["photo", "add", "s.legwork", "a.png", "b.jpg", "c.png", "--role", "label"]);
    let id = |place: usize| added["photos"][place]["photo"].as_str().unwrap();
    desk.write(
        "list.txt",
        format!("# from the walk\n\n{}   S1 before\nb.jpg O2  # the office\nC.PNG\t-\n", &id(0)[..8]),
    );
    let said = desk.done(&["photo", "assign", "s.legwork", "--list", "list.txt"]);
    let shown: Vec<_> = said["photos"]
        .as_array()
        .unwrap()
        .iter()
        .map(|photo| (&photo["of"]["tag"], &photo["role"]))
        .collect();
    let nothing = &json!(null);
    let expected = [(&json!("S1"), &json!("before")), (&json!("O2"), &json!("label")), (nothing, nothing)];
    assert_eq!(shown, expected, "a role that no line names stays; what is taken off shows nothing");
    let acts = desk.done(&["said", "s.legwork"]);
    assert_eq!(acts[0]["act"], said["act"], "one act for all of it");
    desk.done(&["undo", "s.legwork"]);
    assert_eq!(desk.done(&["photo", "list", "s.legwork", "--unassigned"]).as_array().unwrap().len(), 3);

    desk.write("list.csv", "photo,thing,role\r\n\"a.png\",s1,\r\nb.jpg,O1,after\r\n");
    let input = std::fs::read(desk.work().join("list.csv")).unwrap();
    let ran = desk.run_with(&["--json", "photo", "assign", "s.legwork", "--list", "-"], &input);
    assert_eq!(ran.json()["photos"][1]["of"]["tag"], "O1", "{}", ran.err);
    for (list, words) in [
        ("a.png S1\nb.jpg S77\n", "line 2: nothing here has the tag, name or id “S77”"),
        ("a.png S1 before\n\na.png O1\n", "line 3: the photo “a.png” stands on line 1 already"),
        ("a.png S1 sideways\n", "“sideways” is no role"),
        ("a.png\n", "there are 1 words"),
        ("x.png S1\n", "is no photo"),
        ("a.png S1 \u{e4}\n", "is no role"),
        ("# nothing\n", "names no photo"),
    ] {
        desk.write("bad.txt", list);
        let err = desk.refused(3, "list", &["photo", "assign", "s.legwork", "--list", "bad.txt"]);
        assert!(err.contains(words), "{err}");
    }
    desk.write("bad.txt", b"a.png S1\n\xFF\n");
    desk.refused(3, "list", &["photo", "assign", "s.legwork", "--list", "bad.txt"]);
    desk.refused(1, "file", &["photo", "assign", "s.legwork", "--list", "none.txt"]);
}

#[test]
fn all_mistakes_of_a_list_are_told_at_once_and_a_twin_does_not_sink_it() {
    let desk = Desk::new();
    desk.write("small.toml", format!("{SMALL}\n[[room]]\nname = \"Annexe office\"\n"));
    desk.done(&["sheet", "small.toml", "s.legwork"]);
    desk.done(&["set", "s.legwork", "O2", "room", "Annexe office"]);
    desk.write("a.png", png(8, 8, 1));
    desk.write("b.png", png(8, 8, 2));
    desk.write("twin.png", png(8, 8, 2));
    desk.done(&["photo", "add", "s.legwork", "a.png", "b.png", "twin.png"]);
    desk.write("list.txt", "a.png S77\nb.png O1 sideways\na.png O1 label more\n");
    let list = ["photo", "assign", "s.legwork", "--list", "list.txt"];
    let err = desk.refused(3, "list", &list);
    for told in ["line 1", "S77", "line 2", "sideways", "line 3", "4 words"] {
        assert!(err.contains(told), "{told}: {err}");
    }
    desk.write("list.txt", "a.png \"Annexe office\"\ntwin.png O2\nb.png survey\n");
    let said = desk.done(&list);
    assert_eq!(said["left_out"], json!([{"line": 2, "word": "twin.png"}]));
    assert_eq!(said["photos"][0]["of"]["tag"], "O2", "the one outlet of the room");
    assert_eq!(said["photos"].as_array().unwrap().len(), 2);
    // The house as a whole is done with, too.
    assert_eq!(desk.done(&["photo", "list", "s.legwork", "--unassigned"]), json!([]));
    assert_eq!(desk.done(&["photo", "list", "s.legwork", "Annexe office"]).as_array().unwrap().len(), 1);
}

#[test]
fn a_role_does_not_stick_to_a_photo_that_shows_nothing_any_more() {
    let desk = small();
    let added = desk.done(&["photo", "add", "s.legwork", "a.png", "--of", "S1", "--role", "label"]);
    let photo = added["photos"][0]["photo"].as_str().unwrap();
    let taken_off = desk.done(&["photo", "assign", "s.legwork", photo, "--nothing"]);
    assert_eq!(
        (&taken_off["photos"][0]["of"], &taken_off["photos"][0]["role"]),
        (&json!(null), &json!(null))
    );
}
