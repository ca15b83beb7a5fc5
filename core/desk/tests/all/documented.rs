//! What docs/command.md promises of the JSON: every member is named there, in the order stated there, null where there
//! is no value.

use crate::support::{Desk, HOUSE, SMALL};
use serde_json::{Value, json};

/// Every member's name, at any depth.
fn names(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Array(entries) => entries.iter().for_each(|entry| names(entry, found)),
        Value::Object(members) => {
            for (name, value) in members {
                found.push(name.clone());
                names(value, found);
            }
        }
        _ => {}
    }
}

pub(crate) fn assert_documented(value: &Value) {
    let docs = include_str!("../../../../docs/command.md");
    let mut found = Vec::new();
    names(value, &mut found);
    assert!(!found.is_empty());
    for name in found {
        let told = [format!("`{name}`"), format!("\"{name}\"")].iter().any(|form| docs.contains(form));
        assert!(told, "docs/command.md does not name {name}");
    }
}

/// Names in the order in which they stand in a text of JSON, one level deep: maps in memory may be sorted.
fn order(text: &str, indent: usize) -> Vec<&str> {
    let start = format!("{}\"", " ".repeat(indent));
    text.lines()
        .filter_map(|line| line.strip_prefix(start.as_str())?.split_once("\":"))
        .map(|(name, _)| name)
        .collect()
}

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    desk.write("house.toml", HOUSE);
    for name in ["small", "house"] {
        let ran = desk.run(&["sheet", &format!("{name}.toml"), &format!("{name}.legwork")]);
        assert_eq!(ran.code, 0, "{}", ran.err);
    }
    desk
}

#[test]
fn forecast() {
    let desk = small();
    let ran = desk.run(&["--json", "forecast", "house.legwork"]);
    let answer = ran.json();
    let expected = [
        "seed",
        "draws",
        "bridge",
        "bridge_places",
        "channels",
        "channels_left",
        "nodes",
        "rooms",
        "street",
        "airtime",
        "round_trip_ms",
    ];
    assert_eq!(order(&ran.out, 2), expected);
    assert_documented(&answer);
    for range in ["down_mbps", "up_mbps", "loss_db"] {
        let range = &answer["rooms"][0][range];
        let [low, likely, high] = ["low", "likely", "high"].map(|end| range[end].as_f64().unwrap());
        assert!(low <= likely && likely <= high, "{range}");
    }
}

/// Nobody said where the network starts: each place says what is got from there, in the shape of the forecast itself.
#[test]
fn places_of_the_networks_start_are_told_as_forecasts() {
    let desk = Desk::new();
    assert!(HOUSE.contains("bridge = true"));
    desk.write("open.toml", HOUSE.replace("bridge = true", "bridge = false"));
    assert_eq!(desk.run(&["sheet", "open.toml", "open.legwork"]).code, 0);
    let answer = desk.run(&["--json", "forecast", "open.legwork"]).json();
    assert_eq!(answer["bridge"], Value::Null);
    let places = answer["bridge_places"].as_array().unwrap();
    assert!(!places.is_empty(), "{answer}");
    for place in places {
        assert_eq!(place["forecast"]["bridge"]["id"], place["outlet"]["id"]);
        assert_eq!(place["forecast"]["bridge_places"], json!([]));
    }
    assert_documented(&answer);
}

#[test]
fn a_room_that_cannot_be_reached_has_nulls() {
    let desk = Desk::new();
    let loose = "[[part]]\ntag = \"O9\"\nkind = \"outlet\"\nadapter = {}\n";
    desk.write("loose.toml", format!("{SMALL}{loose}"));
    assert_eq!(desk.run(&["sheet", "loose.toml", "loose.legwork"]).code, 0);
    let answer = desk.run(&["--json", "forecast", "loose.legwork"]).json();
    let room = answer["rooms"].as_array().unwrap().iter().find(|room| room["outlet"]["tag"] == "O9").unwrap();
    assert_eq!(room["reach"], "loose");
    for member in [
        "wish",
        "wish_met",
        "down_mbps",
        "up_mbps",
        "phy_down_mbps",
        "phy_up_mbps",
        "loss_db",
        "links",
        "limit",
    ] {
        assert_eq!(room.get(member), Some(&Value::Null), "{member}");
    }
    assert_eq!(room["costs"], json!([]));
}

#[test]
fn findings() {
    let desk = small();
    let answer = desk.run(&["--json", "findings", "house.legwork"]).json();
    assert_documented(&answer);
}

#[test]
fn worklist() {
    let desk = small();
    let answer = desk.run(&["--json", "worklist", "house.legwork"]).json();
    assert_documented(&answer);
    let forecast = desk.run(&["--json", "forecast", "house.legwork"]).json();
    assert_eq!(answer["as_found"], forecast);
}

#[test]
fn levels() {
    let desk = small();
    let ran = desk.run(&["--json", "levels", "house.legwork"]);
    let answer = ran.json();
    assert_documented(&answer);
    let outlets = answer["outlets"].as_array().unwrap();
    // The modem and both TVs of the house, of which nobody measured anything.
    let told: Vec<_> = outlets.iter().map(|at| (&at["outlet"]["tag"], &at["service"])).collect();
    for expected in [("O1", "cable_internet"), ("O3", "cable_tv"), ("O4", "cable_tv")] {
        assert!(told.contains(&(&json!(expected.0), &json!(expected.1))), "{told:?}");
    }
    assert_eq!(outlets.len(), 3);
    for outlet in outlets {
        assert_eq!(
            (&outlet["fits"], &outlet["when_done"]["fits"]),
            (&json!("not_known"), &json!("not_known"))
        );
        assert!(!outlet["change"]["down"].as_array().unwrap().is_empty());
        for down in outlet["down"].as_array().unwrap() {
            assert_eq!((&down["level_dbmv"], &down["measured_dbmv"]), (&Value::Null, &Value::Null));
        }
    }
}

#[test]
fn sheet_and_report() {
    let desk = small();
    let sheet = desk.run(&["--json", "sheet", "small.toml", "other.legwork"]).json();
    let expected = json!({
        "survey": "other.legwork", "name": null, "parts": 6, "runs": 2, "rooms": 1, "loose": [], "label_doubts": [],
    });
    assert_eq!(sheet, expected);
    assert_documented(&sheet);
    let report = desk.run(&["--json", "report", "small.legwork", "out.html"]).json();
    assert_eq!(report, json!({"report": "out.html", "left_out": [], "one_page": false}));
    assert_documented(&report);
}

#[test]
fn doubts_of_labels_are_told_with_the_sheet() {
    let desk = Desk::new();
    let misread = "[[part]]\ntag = \"S9\"\nkind = \"splitter\"\nlabel = \"5-1ooo MHz -7d8\"\n";
    desk.write("doubt.toml", misread);
    let told = desk.run(&["--json", "sheet", "doubt.toml", "doubt.legwork"]).json();
    assert_eq!(told["label_doubts"][0]["tag"], "S9");
    assert!(!told["label_doubts"][0]["doubts"].as_array().unwrap().is_empty());
}

#[test]
fn a_field_against_the_print_is_told_with_the_sheet() {
    let desk = Desk::new();
    let part = |tag: &str, band: &str| {
        format!(
            "[[part]]\ntag = \"{tag}\"\nkind = \"splitter\"\nlabel = \"2-WAY 5-1000MHz 3.5dB\"\nband = \"{band}\"\n"
        )
    };
    desk.write("against.toml", [part("S1", "5-1675 MHz"), part("S2", "5-1000 MHz")].concat());
    let told = desk.run(&["--json", "sheet", "against.toml", "against.legwork"]).json();
    let doubts = told["label_doubts"].as_array().unwrap();
    assert_eq!((doubts.len(), &doubts[0]["tag"]), (1, &json!("S1")));
    let said = doubts[0]["doubts"][0].as_str().unwrap();
    assert!(said.contains("5 to 1000 MHz") && said.contains("5 to 1675 MHz"), "{said}");
}

#[test]
fn label() {
    let desk = Desk::new();
    let ran = desk.run_with(&["--json", "label", "-"], b"4-WAY SPLITTER 5-1000MHz -7dB\r\n\nquux\n");
    assert_eq!(ran.code, 0);
    let lines: Vec<&str> = ran.out.lines().collect();
    assert_eq!(lines.len(), 3, "one object a line, for a blank line too");
    // The members in the order that docs/command.md states; the values are those of the label's text.
    let start = "{\"kind\":\"splitter\",\"low_mhz\":5.0,\"high_mhz\":1000.0,\"leg_losses_db\":[7.0,7.0,7.0,7.0],\
                 \"tap_db\":null,\"gain_db\":null,\"rejection_db\":null,\"isolation_db\":null,\
                 \"return_loss_db\":null,\"power_pass\":null,\"doubts\":[],\"legs\":4,";
    assert!(lines[0].starts_with(start), "{}", lines[0]);
    for line in &lines {
        let object: Value = serde_json::from_str(line).unwrap();
        assert_documented(&object);
    }
    let one = desk.run(&["--json", "label", "4-WAY SPLITTER 5-1000MHz -7dB"]);
    assert_eq!(one.out.lines().next(), Some(lines[0]));
}

#[test]
fn errors() {
    let desk = Desk::new();
    desk.write("bad.toml", "[[part]]\ntag = \"E1\"\nkind = \"quux\"\n");
    let ran = desk.run(&["sheet", "bad.toml", "new.legwork", "--json"]);
    let told: Value = serde_json::from_str(&ran.err).unwrap();
    let problem = &told["error"]["problems"][0];
    assert_eq!((&problem["line"], &problem["column"]), (&json!(3), &json!(8)));
    assert_eq!((&problem["place"], &problem["field"]), (&json!("[[part]] E1"), &json!("kind")));
    assert_eq!(problem["found"], "quux");
    assert_eq!((&told["error"]["exit_code"], &told["error"]["name"]), (&json!(3), &json!("sheet")));
    assert_documented(&told);
}
