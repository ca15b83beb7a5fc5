//! What people read: width, feet, colour, and words for everything.

use crate::support::pictures::png;
use crate::support::{Desk, HOUSE};

/// The commands of the record.
const RECORD: [&str; 26] = [
    "photo",
    "photo add",
    "photo list",
    "photo assign",
    "photo write",
    "note",
    "said",
    "authors",
    "undo",
    "disagreements",
    "settle",
    "remove",
    "removed",
    "bring-back",
    "forget",
    "surveys",
    "surveys rename",
    "surveys copy",
    "surveys aside",
    "surveys back",
    "surveys delete",
    "surveys repair",
    "pack",
    "look",
    "take",
    "put-back",
];

#[test]
fn the_record_is_told_in_words_that_fit() {
    let desk = desk_with_house();
    desk.write("a.png", png(40, 30, 1));
    let long =
        "a note of some length about the cellar, the shelf and the box behind it, for the next one who looks";
    for command in [
        &["photo", "add", "house.legwork", "a.png", "--of", "S1"][..],
        &["photo", "list", "house.legwork"],
        &["note", "house.legwork", long],
        &["note", "house.legwork"],
        &["said", "house.legwork"],
        &["said", "house.legwork", "S1"],
        &["authors", "house.legwork"],
        &["authors", "house.legwork", "--me", "Invented"],
        &["authors", "house.legwork"],
        &["authors", "house.legwork", "--me", ""],
        &["pack", "house.legwork", "house.lwk"],
        &["look", "house.lwk"],
        &["look", "house.lwk", "house.legwork"],
        &["take", "house.lwk", "copy.legwork"],
        &["take", "house.lwk", "house.legwork"],
        &["disagreements", "house.legwork"],
        &["remove", "house.legwork", "S1", "--yes"],
        &["removed", "house.legwork"],
        &["undo", "house.legwork"],
        &["forget", "house.legwork", "survey", "name", "--yes"],
        &["surveys"],
        &["surveys", "repair", "house.legwork"],
    ] {
        let ran = desk.run(command);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{command:?}");
        assert_fits(&command.join(" "), &ran.out);
        let ids = ["desk-", "said-", "field-", "value-", "thing-", "home-", "forget-", "photo-", "author-"];
        let bare = ran.out.split_whitespace().find(|word| ids.iter().any(|id| word.starts_with(id)));
        assert_eq!(bare, None, "a message without words: {command:?}");
    }
}

fn desk_with_house() -> Desk {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    assert_eq!(desk.run(&["sheet", "house.toml", "house.legwork"]).code, 0);
    desk
}

fn assert_fits(what: &str, text: &str) {
    // A path stands whole on its line, so that it can be opened.
    let is_path = |line: &str| !line.trim().contains(' ') && line.contains('/');
    for line in text.lines() {
        assert!(line.chars().count() <= 80 || is_path(line), "{what}: {line}");
        assert_eq!(line.trim_end(), line, "{what}: blanks at the end of \"{line}\"");
    }
}

#[test]
fn everything_fits_eighty_columns() {
    let desk = desk_with_house();
    for command in ["forecast", "findings", "worklist", "levels"] {
        let ran = desk.run(&[command, "house.legwork"]);
        assert_eq!(ran.code, 0, "{}", ran.err);
        assert!(ran.out.lines().count() > 10);
        assert_fits(command, &ran.out);
        assert!(!ran.out.contains('\u{1b}'));
    }
    for help in ["demo", "sheet", "forecast", "findings", "worklist", "levels", "report", "label"] {
        assert_fits(help, &desk.run(&[help, "--help"]).out);
    }
    for help in RECORD {
        let arguments: Vec<&str> = help.split(' ').chain(["--help"]).collect();
        let ran = desk.run(&arguments);
        assert_eq!(ran.code, 0, "{help}");
        assert_fits(help, &ran.out);
    }
    assert_fits("help", &desk.run(&["--help"]).out);
    desk.write("bad.toml", "[[part]]\nkind = \"quux\"\n");
    assert_fits("bad sheet", &desk.run(&["sheet", "bad.toml", "new.legwork"]).err);
}

#[test]
fn feet_come_first_where_asked_for() {
    let desk = desk_with_house();
    // 38 m are 125 ft: 38 / 0.3048 = 124.67.
    let flat = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let metres = flat(desk.run(&["findings", "house.legwork"]).out);
    assert!(metres.contains("about 38 m,"), "{metres}");
    let feet = flat(desk.run(&["--feet", "findings", "house.legwork"]).out);
    assert!(feet.contains("about 125 ft,"), "{feet}");
}

#[test]
fn a_label_is_told_in_words() {
    let desk = Desk::new();
    let ran = desk.run(&["label", "4-WAY SPLITTER 5-1000MHz -7dB"]);
    for words in ["splitter", "outputs", "5 to 1000 MHz", "7 dB"] {
        assert!(ran.out.contains(words), "no {words} in {}", ran.out);
    }
    // A label may begin with a dash.
    assert!(desk.run(&["label", "-7 dB 5-1000 MHz"]).out.contains("5 to 1000 MHz"));
}

#[test]
fn what_a_label_says_cannot_steer_the_terminal() {
    let ran = Desk::new().run(&["label", "\u{1b}[31mred\u{1b}[0m 5-1000 MHz"]);
    assert_eq!(ran.code, 0);
    assert!(!ran.out.contains('\u{1b}'), "{:?}", ran.out);
}

#[test]
fn reading_leaves_no_author_behind() {
    let desk = desk_with_house();
    std::fs::remove_dir_all(desk.home()).unwrap();
    assert_eq!(desk.run(&["findings", "house.legwork"]).code, 0);
    assert!(!desk.home().exists());
}

/// Whatever is too long is refused with what it is, how long it is and how long it may be; nothing is cut or written.
#[test]
fn what_is_too_long_is_refused_with_its_length_and_the_limit() {
    let desk = desk_with_house();
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let before = desk.run(&["--json", "said", "house.legwork"]).out;
    let label = "x".repeat(1025);
    let note = "x".repeat(8191);
    let name = "x".repeat(61);
    for (command, said) in [
        (&["label", label.as_str()][..], &["1025", "1024"][..]),
        (&["note", "house.legwork", &note], &["the text", "8193", "8192"]),
        (&["authors", "house.legwork", "--me", &name], &["61", "60"]),
    ] {
        let ran = desk.run(command);
        assert_ne!(ran.code, 0, "{command:?}");
        let err = flat(&ran.err);
        for words in said {
            assert!(err.contains(words), "no {words} in {err}");
        }
        assert!(!err.contains("formed") && !err.contains("damaged"), "{err}");
    }
    assert_eq!(desk.run(&["--json", "said", "house.legwork"]).out, before);
    for (field, text, most) in [("label", "x".repeat(1025), "1024"), ("tag", "x".repeat(41), "40")] {
        let tag = if field == "tag" { text.clone() } else { "S1".to_owned() };
        let label = if field == "label" { format!("label = \"{text}\"\n") } else { String::new() };
        desk.write("long.toml", format!("[[part]]\ntag = \"{tag}\"\nkind = \"splitter\"\n{label}"));
        let err = flat(&desk.run(&["sheet", "long.toml", "long.legwork"]).err);
        for words in [field, most, if field == "tag" { "41" } else { "1025" }] {
            assert!(err.contains(words), "no {words} in {err}");
        }
    }
}
