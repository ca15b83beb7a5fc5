//! The JSON of every command is stable: its members and their order are held by snapshots, for programs that read it.
//!
//! A snapshot proves that nothing changed unseen, not that a figure is right; that is proved in `coax` and `survey`.
//! After a change that is meant: `INSTA_UPDATE=always cargo test -p desk --test json`, and read the difference.

use crate::support::{Desk, HOUSE};

/// A desk with the demo's house as a survey.
fn with_house() -> Desk {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    let ran = desk.run(&["sheet", "house.toml", "house.legwork"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    desk
}

/// What a command answers with `--json`, as text.
fn answer(desk: &Desk, arguments: &[&str]) -> String {
    let ran = desk.run(&[&["--json"], arguments].concat());
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    // The text itself is held, since the order of members is promised; that it is JSON is seen here.
    for line in ran.out.lines().filter(|_| arguments.first() == Some(&"label")) {
        assert!(serde_json::from_str::<serde_json::Value>(line).is_ok(), "{line}");
    }
    if arguments.first() != Some(&"label") {
        ran.json();
    }
    ran.out
}

#[test]
fn forecast() {
    insta::assert_snapshot!(answer(&with_house(), &["forecast", "house.legwork"]));
}

#[test]
fn findings() {
    insta::assert_snapshot!(answer(&with_house(), &["findings", "house.legwork"]));
}

#[test]
fn worklist() {
    insta::assert_snapshot!(answer(&with_house(), &["worklist", "house.legwork"]));
}

/// Readings of a level meter at the entry and in the kitchen, and of the modem's page; invented like the house.
const METERED: &str = r#"
[[reading]]
at = "E1"
level = "12 dBmV"
frequency = "57 MHz"

[[reading]]
at = "E1"
level = "6 dBmV"
frequency = "999 MHz"

[[reading]]
at = "O3"
level = "-4.5 dBmV"
frequency = "603 MHz"

[[reading]]
at = "O1"
modem_sends = "44 dBmV"
"#;

#[test]
fn levels() {
    let desk = Desk::new();
    desk.write("house.toml", format!("{HOUSE}{METERED}"));
    assert_eq!(desk.run(&["sheet", "house.toml", "house.legwork"]).code, 0);
    insta::assert_snapshot!(answer(&desk, &["levels", "house.legwork"]));
}

#[test]
fn report() {
    insta::assert_snapshot!(answer(&with_house(), &["report", "house.legwork", "house.html"]));
}

#[test]
fn sheet() {
    let desk = Desk::new();
    desk.write("house.toml", HOUSE);
    insta::assert_snapshot!(answer(&desk, &["sheet", "house.toml", "house.legwork"]));
}

#[test]
fn label() {
    let desk = Desk::new();
    insta::assert_snapshot!(answer(&desk, &["label", "4-WAY 5-1000MHz -7dB"]));
    insta::assert_snapshot!(answer(&desk, &["label", "5-1ooo MHz -7d8"]));
}

#[test]
fn the_example_of_the_sheets_description_is_a_house() {
    let description = include_str!("../../../../docs/sheet.md");
    let example = description.split("```toml").nth(1).and_then(|rest| rest.split("```").next());
    let desk = Desk::new();
    desk.write("example.toml", example.unwrap_or_default());
    let ran = desk.run(&["sheet", "example.toml", "example.legwork"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let forecast = desk.run(&["--json", "forecast", "example.legwork"]).json();
    assert!(forecast["rooms"].as_array().is_some_and(|rooms| !rooms.is_empty()));
}
