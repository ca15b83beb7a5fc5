//! The JSON of the record's commands is stable, as that of the others: see json.rs. Ids, times and hashes, which differ
//! each time, stand as `<id>`, `<ms>`, `<date>`, `<sha256>`, and the release as `<release>`.

use crate::support::pictures::png;
use crate::support::{Desk, SMALL};

/// The text with everything that chance or the clock made replaced.
fn steady(text: &str) -> String {
    let is_word = |c: char| c.is_ascii_alphanumeric() || c == '-';
    let mut steady = String::new();
    let mut word = String::new();
    for c in text.chars().chain(['\n']) {
        if is_word(c) {
            word.push(c);
            continue;
        }
        steady.push_str(match word.as_str() {
            id if id.len() == 36 && id.matches('-').count() == 4 => "<id>",
            hash if hash.len() == 64 && hash.chars().all(|c| c.is_ascii_hexdigit()) => "<sha256>",
            ms if ms.len() == 13 && ms.chars().all(|c| c.is_ascii_digit()) => "<ms>",
            date if date.len() == 10 && date.matches('-').count() == 2 => "<date>",
            short if short.len() == 8 && short.chars().all(|c| c.is_ascii_hexdigit()) => "<id>",
            other => other,
        });
        word.clear();
        steady.push(c);
    }
    // What is left of the time of day after its date.
    let mut lines = String::new();
    for line in steady.lines() {
        let mut rest = line;
        while let Some((before, after)) = rest.split_once("<date> ") {
            lines.push_str(before);
            lines.push_str("<date>");
            rest = after.get(5..).unwrap_or_default();
        }
        lines.push_str(rest);
        lines.push('\n');
    }
    lines
}

fn answer(desk: &Desk, arguments: &[&str]) -> String {
    let ran = desk.run(&[&["--json"], arguments].concat());
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
    ran.json();
    steady(&ran.out).replace(concat!("\"", env!("CARGO_PKG_VERSION"), "\""), "\"<release>\"")
}

/// A desk with a small house, a photo in it, and a file of it that was changed elsewhere.
fn with_file() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    desk.write("a.png", png(40, 30, 1));
    assert_eq!(desk.run(&["sheet", "small.toml", "s.legwork"]).code, 0);
    desk.done(&["surveys", "rename", "s.legwork", "s"]);
    desk.done(&["pack", "s.legwork", "first.lwk"]);
    desk.done_by("guest", &["take", "first.lwk", "guest.legwork"]);
    desk.done_by("guest", &["surveys", "rename", "guest.legwork", "guest"]);
    desk.done_by("guest", &["photo", "add", "guest.legwork", "a.png"]);
    desk.done_by("guest", &["pack", "guest.legwork", "second.lwk"]);
    std::fs::remove_dir_all(desk.work().join("guest.legwork")).unwrap();
    desk.done(&["surveys", "rename", "s.legwork", "mine"]);
    std::fs::rename(desk.work().join("mine.legwork"), desk.work().join("s.legwork")).unwrap();
    desk
}

#[test]
fn photos_and_notes() {
    let desk = with_file();
    insta::assert_snapshot!(answer(
        &desk,
        &["photo", "add", "s.legwork", "a.png", "--of", "S1", "--role", "label"]
    ));
    let photo = desk.done(&["photo", "list", "s.legwork"])[0]["photo"].clone();
    let photo = photo.as_str().unwrap();
    insta::assert_snapshot!(answer(&desk, &["photo", "assign", "s.legwork", photo, "--nothing"]));
    insta::assert_snapshot!(answer(&desk, &["photo", "list", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["photo", "write", "s.legwork", photo, "out.png"]));
    insta::assert_snapshot!(answer(&desk, &["note", "s.legwork", "wet here", "--on", "S1"]));
    insta::assert_snapshot!(answer(&desk, &["note", "s.legwork"]));
}

#[test]
fn who_said_what() {
    let desk = with_file();
    insta::assert_snapshot!(answer(&desk, &["said", "s.legwork", "survey", "name"]));
    desk.done(&["note", "s.legwork", "wet here", "--on", "S1"]);
    let acts = answer(&desk, &["said", "s.legwork"]);
    // The newest action; the sheet's is long and says nothing more of the form.
    let newest: Vec<&str> = acts.split_inclusive("\n  },\n").take(1).collect();
    insta::assert_snapshot!(newest.concat());
    insta::assert_snapshot!(answer(&desk, &["undo", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["remove", "s.legwork", "S1", "--yes"]));
    insta::assert_snapshot!(answer(&desk, &["removed", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["bring-back", "s.legwork", "S1"]));
    insta::assert_snapshot!(answer(&desk, &["forget", "s.legwork", "S1", "tag", "--yes"]));
}

#[test]
fn files_and_disagreements() {
    let desk = with_file();
    insta::assert_snapshot!(answer(&desk, &["look", "second.lwk", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["take", "second.lwk", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["put-back", "s.legwork"]));
    desk.done(&["take", "second.lwk", "s.legwork"]);
    insta::assert_snapshot!(answer(&desk, &["disagreements", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["settle", "s.legwork", "survey", "name", "1"]));
    let packed = desk.done(&["pack", "s.legwork", "third.lwk", "--without", "notes"]);
    // Its length follows the report's, which is not held here.
    let mut members: Vec<_> = packed.as_object().unwrap().keys().cloned().collect();
    members.sort();
    assert_eq!(members, ["bytes", "facts", "file", "left_out", "lost_photos", "photos", "still_told"]);
}

#[test]
fn surveys() {
    let desk = with_file();
    insta::assert_snapshot!(answer(&desk, &["surveys", "copy", "s.legwork", "copy"]));
    desk.done(&["surveys", "aside", "copy.legwork"]);
    std::fs::create_dir(desk.work().join("bad.legwork")).unwrap();
    insta::assert_snapshot!(answer(&desk, &["surveys"]));
    insta::assert_snapshot!(answer(&desk, &["surveys", "repair", "s.legwork"]));
    insta::assert_snapshot!(answer(&desk, &["surveys", "delete", "s.legwork", "--yes"]));
}

/// Every member that a command answers with is told in docs/command.md.
#[test]
fn every_member_is_documented() {
    // What values hold stands in docs/file.md.
    let docs = concat!(include_str!("../../../../docs/command.md"), include_str!("../../../../docs/file.md"));
    let snapshots = std::path::Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/all/snapshots"));
    let mut seen = 0;
    for entry in std::fs::read_dir(snapshots).unwrap() {
        let path = entry.unwrap().path();
        if !path.file_name().unwrap().to_str().unwrap().starts_with("all__json_record__") {
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap();
        for line in text.lines().map(str::trim_start) {
            let Some((name, _)) = line.strip_prefix('"').and_then(|rest| rest.split_once("\":")) else {
                continue;
            };
            let told = [format!("`{name}`"), format!("\"{name}\"")].iter().any(|form| docs.contains(form));
            assert!(told, "docs/command.md does not name {name} ({})", path.display());
            seen += 1;
        }
    }
    assert!(seen > 100, "{seen}");
}
