//! `legwork photo` and `legwork note`.

use crate::support::pictures::{jpeg, png};
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
    assert!(err.contains("did you mean \"S1\""), "{err}");
    desk.refused(3, "thing", &["photo", "add", "s.legwork", "a.png", "--of", "Office"]);
    desk.refused(3, "thing", &["photo", "assign", "s.legwork", photo, "ffff", "--of", "S1"]);
    desk.refused(3, "thing", &["photo", "assign", "s.legwork", photo, "--of", "quux"]);
    desk.refused(3, "thing", &["photo", "write", "s.legwork", "S1", "out.png"]);
    desk.refused(3, "not_a_survey", &["photo", "add", "none.legwork", "a.png"]);
    for wrong in [
        &["photo", "assign", "s.legwork", photo][..],
        &["photo", "add", "s.legwork"],
        &["photo", "add", "s.legwork", "a.png", "--role", "quux"],
        &["photo", "list", "s.legwork", "S1", "--unassigned"],
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
