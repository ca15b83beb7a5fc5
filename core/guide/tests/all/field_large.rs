//! A survey of 300 parts: every screen of field work stays within its rows, and every part can be found.

use std::collections::BTreeSet;

use crate::hand::Hand;
use facts::fact::{Edit, SubjectId};
use facts::store::Store;
use serde_json::json;
use tempfile::TempDir;

/// 300 parts with runs, rooms, services, readings, notes: a head splitter of 16 legs, below it more, then outlets.
fn large(hand: &Hand) {
    let mut store = Store::open(&hand.guide.open_folder().unwrap(), facts::fact::AuthorId::random()).unwrap();
    let parts: Vec<_> = (0..300).map(|_| SubjectId::random()).collect();
    let mut edits = Vec::new();
    for (number, &part) in parts.iter().enumerate() {
        let kind = if number < 21 { "splitter" } else { "outlet" };
        edits.push(Edit::new(part, "is", "part"));
        edits.push(Edit::new(part, "kind", kind));
        edits.push(Edit::new(part, "tag", format!("{}{number}", if number < 21 { "S" } else { "O" })));
        edits.push(Edit::new(part, "rating", if number < 21 { json!({"legs": 16}) } else { json!({}) }));
        if number > 0 {
            let (run, room) = (SubjectId::random(), SubjectId::random());
            let feed = json!({"part": parts[(number - 1) / 16], "port": (number - 1) % 16 + 1, "run": run});
            edits.push(Edit::new(run, "is", "run"));
            edits.push(Edit::new(part, "feed", json!({"from": feed})));
            if number > 100 {
                edits.push(Edit::new(room, "is", "room"));
                edits.push(Edit::new(room, "name", format!("Room {number}")));
                edits.push(Edit::new(part, "room", json!(room)));
            }
        }
        for (is, field, value) in [
            ("note", "text", json!("a note")),
            ("reading", "measured", json!({"what": "level", "mhz": 100 + number, "dbmv": 1})),
        ] {
            let about = SubjectId::random();
            edits.push(Edit::new(about, "is", is));
            edits.push(Edit::new(about, "about", json!(parts[0])));
            edits.push(Edit::new(about, field, value));
        }
        if number < 100 {
            let service = SubjectId::random();
            edits.push(Edit::new(service, "is", "service"));
            edits.push(Edit::new(service, "kind", "power_over_coax"));
        }
    }
    store.write(&edits).unwrap();
}

/// Goes to a screen again, by its doors.
fn open(hand: &mut Hand, door: &str) {
    hand.door(door);
}

#[test]
fn every_screen_of_a_survey_of_300_parts_stays_under_200_rows() {
    let home = TempDir::new().unwrap();
    let mut hand = Hand::in_new(home.path(), "Large");
    large(&hand);
    hand.killed();
    // Each screen that `Hand` comes to is held to its rows.
    let mut seen = BTreeSet::new();
    for (door, prefix) in [
        ("free-parts", "part:"),
        ("free-runs", "run:"),
        ("free-meter", "part:"),
        ("free-services", "service:"),
    ] {
        hand.door(door);
        let mut there: BTreeSet<String> = hand.keys(prefix).into_iter().collect();
        while hand.keys("more").contains(&"more".to_owned()) {
            hand.press("more");
            there.extend(hand.keys(prefix));
        }
        let least = if prefix == "service:" { 90 } else { 299 };
        assert!(there.len() >= least, "{door}: {}", there.len());
        let first = hand.keys(prefix).remove(0);
        hand.press(&first);
        seen.insert(hand.screen().name);
    }
    // The part with the most about it, and what leads on from it.
    open(&mut hand, "free-parts");
    hand.write("find", "S0");
    let found = hand.keys("part:");
    assert_eq!(found.len(), 1);
    for next in ["meter", "add", "edit"] {
        open(&mut hand, "free-parts");
        hand.write("find", "S0");
        hand.press(&found[0]);
        hand.press(next);
        seen.insert(hand.screen().name);
    }
    open(&mut hand, "free-parts");
    hand.write("find", "room 150");
    assert_eq!(hand.keys("part:").len(), 1);
    // 70 photos wait; 300 parts may show on them.
    open(&mut hand, "free-burst");
    for number in 0..70 {
        hand.photo("photo", number);
    }
    hand.press("assign");
    hand.press("all");
    hand.press("new:splitter");
    assert_eq!(hand.survey().photos_of(None).count(), 20);
    open(&mut hand, "free-rooms");
    let room = hand.keys("room:").remove(0);
    hand.press(&room);
    seen.insert(hand.screen().name);
    open(&mut hand, "removed");
    open(&mut hand, "free-here");
    let all = ["edit-part", "meter-at", "new-behind", "part", "room", "run", "service"];
    assert!(
        seen.iter().map(String::as_str).eq(all.map(|name| format!("free-{name}")).iter().map(String::as_str))
    );
}
