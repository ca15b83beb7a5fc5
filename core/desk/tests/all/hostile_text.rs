//! Whatever a stranger wrote into a survey: no command and no screen hands it to the terminal as anything but text.

use facts::fact::{ActId, AuthorId, Edit, Fact, FactClock, SubjectId};
use facts::store::Store;
use serde_json::json;

use crate::support::Desk;

/// Escape sequences, a bell, a carriage return, a C1 control, deletes, marks that turn text, line separators: and text that
/// looks like a screen of ours.
const HOSTILE: &str =
    "x\u{1b}[31m\u{1b}]0;t\u{7}\r\u{9b}2J\u{7f}\u{202e}\u{2066}\u{200f}\u{2028}\n  a  Take it in\ny";

fn is_harmless(text: &str) -> bool {
    text.chars().all(|c| {
        let turns = matches!(c, '\u{61C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}');
        c == '\n' || !(c.is_control() || turns || matches!(c, '\u{2028}' | '\u{2029}'))
    })
}

/// A survey in which every text is hostile, and two people disagree in hostile words.
fn hostile(desk: &Desk) -> SubjectId {
    let folder = desk.work().join("h.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let survey = store.survey_id().subject();
    let [entry, part, run, room, note, service, reading] = [(); 7].map(|()| SubjectId::random());
    let feed = json!({"from": {"part": entry, "port": 1, "run": run}});
    let author = store.author().subject();
    let says = |about, field: &str, value: serde_json::Value| Edit::new(about, field, value);
    let mut edits = vec![
        says(author, "name", json!(HOSTILE)),
        says(survey, "name", json!(HOSTILE)),
        says(survey, "place", json!(HOSTILE)),
        says(entry, "is", json!("part")),
        says(entry, "kind", json!("entry")),
        says(entry, "entry_kind", json!("cable")),
        says(part, "is", json!("part")),
        says(part, "kind", json!("outlet")),
        says(part, "feed", feed),
        says(part, "label", json!(HOSTILE)),
        says(part, "unheard-of", json!(HOSTILE)),
        says(run, "is", json!("run")),
        says(run, "cable", json!(HOSTILE)),
        says(room, "is", json!("room")),
        says(room, "name", json!(HOSTILE)),
        says(part, "room", json!(room)),
        says(note, "is", json!("note")),
        says(note, "text", json!(HOSTILE)),
        says(note, "about", json!(part)),
        says(service, "is", json!("service")),
        says(service, "kind", json!(HOSTILE)),
        says(reading, "is", json!(HOSTILE)),
    ];
    for about in [entry, part, run] {
        edits.push(says(about, "tag", json!(HOSTILE)));
        edits.push(says(about, "where", json!(HOSTILE)));
    }
    store.write(&edits).unwrap();
    let removal = store.ledger().remove(reading);
    store.write(&[removal]).unwrap();
    // Somebody else says otherwise without having seen it.
    let id = FactClock::system().next_id();
    let other = Fact::new(
        id,
        ActId::random(),
        AuthorId::random(),
        part,
        "tag",
        &json!(format!("{HOSTILE}2")),
        vec![],
    );
    store.write_facts(vec![other.unwrap()]).unwrap();
    part
}

#[test]
fn no_command_and_no_screen_hands_a_strangers_signs_to_the_terminal() {
    let desk = Desk::new();
    let part = hostile(&desk).to_string();
    desk.run(&["pack", "h.legwork", "h.lwk"]);
    desk.write("small.toml", crate::support::SMALL);
    desk.write("list.txt", format!("{HOSTILE},S1,{HOSTILE}\n"));
    let survey = ["h.legwork"];
    let mut commands: Vec<Vec<&str>> = [
        "forecast",
        "findings",
        "worklist",
        "levels",
        "note",
        "said",
        "authors",
        "disagreements",
        "removed",
        "undo",
        "wishes",
        "put-back",
    ]
    .iter()
    .map(|command| [&[*command], survey.as_slice()].concat())
    .collect();
    commands.extend([
        vec!["said", "h.legwork", &part],
        vec!["settle", "h.legwork", &part, "tag", "9"],
        vec!["forget", "h.legwork", &part],
        vec!["remove", "h.legwork", HOSTILE],
        vec!["photo", "list", "h.legwork"],
        vec!["surveys"],
        vec!["surveys", "repair", "h.legwork"],
        vec!["look", "h.lwk"],
        vec!["look", "h.lwk", "h.legwork"],
        vec!["take", "h.lwk", "new.legwork"],
        vec!["label", HOSTILE],
        vec!["report", "h.legwork", "r.html"],
        vec!["tags", "h.legwork", "t.html"],
        vec!["table", "h.legwork", "parts"],
        vec!["table", "h.legwork", "readings"],
        vec!["table", "h.legwork", "steps"],
        vec!["search", "a"],
        vec!["search", HOSTILE],
        vec!["set", "h.legwork", &part, HOSTILE, HOSTILE],
        vec!["set", "h.legwork", &part, "tag", HOSTILE],
        vec!["set", "h.legwork", &part, "plugged", HOSTILE],
        vec!["copy-part", "h.legwork", &part, HOSTILE],
        vec!["surveys", "pattern", "h.legwork", "pattern"],
        vec!["sheet", "small.toml", "h.legwork", "--change"],
        vec!["photo", "assign", "h.legwork", "--list", "list.txt"],
        vec![HOSTILE],
    ]);
    for command in &commands {
        for flags in [&[] as &[&str], &["--json"]] {
            let ran = desk.run(&[flags, command.as_slice()].concat());
            // A table's lines end as RFC 4180 has it.
            let out = if command[0] == "table" { ran.out.replace("\r\n", "\n") } else { ran.out };
            assert!(is_harmless(&out), "{command:?} {flags:?}: {out:?}");
            assert!(is_harmless(&ran.err), "{command:?} {flags:?}: {:?}", ran.err);
        }
    }
    // Every door of the overview, and whatever lies behind the first rows of each screen.
    let walk: String =
        (1..=40).flat_map(|door| [format!("{door}\n"), "1\n2\n".into(), "<\n<\n<\n<\n".into()]).collect();
    let ran = desk.run_with(&["walk", "h.legwork"], walk.as_bytes());
    assert!(ran.out.len() > 20_000 && ran.out.contains("\u{FFFD}"), "{}", ran.out.len());
    assert!(is_harmless(&ran.out) && is_harmless(&ran.err));
    // Nothing that was written on a line of its own stands there as if it could be chosen.
    assert!(!ran.out.lines().any(|line| line.trim_start().starts_with("a  Take it in")));
    // The preview of the file before one agrees.
    let ran = desk.run_with(&["walk"], b"2\na = h.lwk\n");
    assert!(is_harmless(&ran.out), "{:?}", ran.out);
}
