//! `legwork set`, `copy-part`, and changes of a sheet onto a survey.

use serde_json::{Value, json};

use crate::support::{Desk, SMALL};

fn small() -> Desk {
    let desk = Desk::new();
    desk.write("small.toml", SMALL);
    desk.done(&["sheet", "small.toml", "s.legwork"]);
    desk
}

fn set(desk: &Desk, arguments: &[&str]) -> Value {
    desk.done(&[&["set", "s.legwork"], arguments].concat())
}

/// What a field of a thing says now, as docs/file.md has it.
fn says(desk: &Desk, thing: &str, field: &str) -> Value {
    let said = desk.done(&["said", "s.legwork", thing, field]);
    said.as_array().unwrap().last().unwrap()["value"].clone()
}

/// Whether two values are the same, whole numbers or not.
fn number_alike(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => one.as_f64() == other.as_f64(),
        (Value::Object(one), Value::Object(other)) => {
            one.len() == other.len()
                && one.iter().all(|(name, one)| other.get(name).is_some_and(|other| number_alike(one, other)))
        }
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| number_alike(one, other))
        }
        (one, other) => one == other,
    }
}

#[test]
fn a_value_is_written_in_the_words_of_a_sheet_and_stands_as_in_the_record() {
    let desk = small();
    // What is typed, of what it is asked afterwards, and what it says then; null where something is enough.
    let cases: [(&[&str], &str, &str, Value); 22] = [
        (&["S1", "where", "behind the shelf"], "S1", "where", json!("behind the shelf")),
        (&["S1", "label", "4-WAY 5-1675MHz", "legs", "4"], "S1", "label", json!("4-WAY 5-1675MHz")),
        (&["S1", "label", "not-known"], "S1", "label", Value::Null),
        (&["S1", "legs", "5"], "S1", "rating", Value::Null),
        (&["S1", "legs", "4"], "S1", "rating", Value::Null),
        (&["S1", "end.3", "open"], "S1", "end.3", json!("open")),
        (&["S1", "ends", "{ 4 = \"capped\" }"], "S1", "end.4", json!("capped")),
        (&["s1", "tag", "S7"], "S7", "tag", json!("S7")),
        (&["S7", "tag", "S1"], "S1", "tag", json!("S1")),
        (&["E1", "service", "fibre_box"], "E1", "entry_kind", json!("fibre_box")),
        (&["E1", "entry_state", "cut_off"], "E1", "entry_state", json!("cut_off")),
        (&["O2", "plugged", "tv,tv box"], "O2", "plugged", json!(["tv", "tv_box"])),
        (&["O2", "plugged", "[]"], "O2", "plugged", json!([])),
        (
            &["O2", "adapter", "{ version = \"2.5\" }"],
            "O2",
            "adapter",
            json!({"bridge": false, "version": "2.5"}),
        ),
        (&["O2", "device_filter", "true"], "O2", "device_filter", json!(true)),
        (&["O2", "from", "S1", "port", "3"], "O2", "feed", Value::Null),
        (&["O2", "feed", "nothing"], "O2", "feed", json!("nothing")),
        (
            &["Office", "wish", "{ down = \"800 Mb/s\", up = \"300 Mb/s\" }"],
            "Office",
            "wish",
            json!({"down_mbps": 800, "up_mbps": 300}),
        ),
        (&["Office", "name", "Study"], "Study", "name", json!("Study")),
        (&["survey", "name", "An invented house"], "survey", "name", json!("An invented house")),
        (
            &["survey", "internet", "1 Gb/s"],
            "survey",
            "internet",
            json!({"down_mbps": 1000, "up_mbps": 1000}),
        ),
        (&["survey", "network", "{ version = \"2.0\" }"], "survey", "network", json!({"version": "2.0"})),
    ];
    for (arguments, thing, field, expected) in cases {
        let answer = set(&desk, arguments);
        assert!(answer["act"].is_string(), "{arguments:?}: {answer}");
        let value = says(&desk, thing, field);
        assert!(expected.is_null() || number_alike(&value, &expected), "{arguments:?}: {value}");
    }
    // What else was rated stays beside what is set.
    let rating = says(&desk, "S1", "rating");
    assert_eq!((&rating["legs"], &rating["band"]["high_mhz"]), (&json!(4), &json!(1675)));
    set(&desk, &["S1", "isolation", "20 dB", "loss", "7 dB,7 dB,7 dB,7.5 dB", "return_loss", "18 dB"]);
    let rating = says(&desk, "S1", "rating");
    assert_eq!((&rating["isolation_db"], &rating["return_loss_db"]), (&json!(20), &json!(18)));
    assert_eq!(rating["leg_losses_db"], json!([7, 7, 7, 7.5]));
    set(&desk, &["S1", "isolation_db", "not-known"]);
    assert_eq!(says(&desk, "S1", "rating")["isolation_db"], Value::Null);
    assert_eq!(says(&desk, "S1", "rating")["return_loss_db"], 18);
    // Set again, nothing is written.
    assert_eq!(set(&desk, &["S1", "return_loss", "18 dB"])["act"], Value::Null);
    let told = desk.run(&["set", "s.legwork", "S1", "where", "in the loft"]);
    assert!(told.out.contains("in the loft") && told.out.contains("where it sits"), "{}", told.out);
}

#[test]
fn a_cable_is_set_by_the_part_that_it_leads_to_or_by_its_tag() {
    let desk = small();
    set(&desk, &["O2", "length", "12 m paced", "run_tag", "R2", "connectors", "compression"]);
    let length = says(&desk, "R2", "length");
    assert_eq!((&length["metres"], &length["known"]), (&json!(12), &json!("paced")));
    set(&desk, &["R2", "cable", "11", "connector_far", "hand_tight"]);
    assert_eq!(says(&desk, "R2", "cable"), "eleven");
    assert_eq!(
        (says(&desk, "R2", "connector_near"), says(&desk, "R2", "connector_far")),
        (json!("compression"), json!("hand_tight"))
    );
    set(&desk, &["R2", "length", "not-known"]);
    assert_eq!(says(&desk, "R2", "length"), Value::Null);
    // A part that nothing is known to feed has no cable of which something could be said.
    set(&desk, &["O2", "feed", "not-known"]);
    let err = desk.refused(3, "value", &["set", "s.legwork", "O2", "length", "5 m"]);
    assert!(err.contains("need a part that they come from"), "{err}");
    // S1 hangs on F1 without a cable of which anything was said: it gets one.
    set(&desk, &["S1", "length", "1 m measured"]);
    let forecast = desk.run(&["--json", "said", "s.legwork", "S1", "feed"]).json();
    assert!(forecast.as_array().unwrap().last().unwrap()["value"]["from"]["run"].is_string());
}

#[test]
fn readings_and_services_are_set_by_their_ids() {
    let desk = Desk::new();
    let more = "[[service]]\nkind = \"cable_internet\"\n[[reading]]\nat = \"O2\"\nlevel = \"-6 dBmV\"\nfrequency = \"603 MHz\"\n";
    desk.write("small.toml", format!("{SMALL}{more}"));
    desk.done(&["sheet", "small.toml", "s.legwork"]);
    let readings = desk.done(&["table", "s.legwork", "readings"]);
    let reading = readings[0]["id"].as_str().unwrap();
    set(&desk, &[reading, "level", "-3 dBmV"]);
    let found = says(&desk, reading, "measured");
    assert!(number_alike(&found, &json!({"dbmv": -3, "mhz": 603, "what": "level"})), "{found}");
    set(&desk, &[reading, "at", "O1"]);
    set(&desk, &[reading, "throughput", "900 Mb/s"]);
    assert_eq!(desk.done(&["table", "s.legwork", "readings"])[0]["down_mbps"], 900.0);
    assert_eq!(desk.done(&["table", "s.legwork", "readings"])[0]["at"], "O1");
    let acts = desk.done(&["said", "s.legwork"]);
    let said = acts.as_array().unwrap().last().unwrap()["said"].as_array().unwrap();
    let service =
        said.iter().find(|said| said["thing"]["kind"] == "service").unwrap()["thing"]["id"].as_str().unwrap();
    set(&desk, &[service, "modem", "{ generation = \"3.1\", sends_to = \"85 MHz\" }", "top", "1218 MHz"]);
    let found = says(&desk, service, "modem");
    assert!(number_alike(&found, &json!({"generation": "3.1", "upstream_top_mhz": 85})), "{found}");
    let found = says(&desk, service, "top_mhz");
    assert!(number_alike(&found, &json!(1218)), "{found}");
}

#[test]
fn a_note_is_put_right_and_a_photo_is_assigned_elsewhere() {
    let desk = small();
    let note = desk.done(&["note", "s.legwork", "behind the shelve", "--on", "S1"]);
    let note = note["note"].as_str().unwrap();
    set(&desk, &[note, "text", "behind the shelf"]);
    let notes = desk.done(&["note", "s.legwork"]);
    assert_eq!((&notes[0]["text"], &notes[0]["about"]["tag"]), (&json!("behind the shelf"), &json!("S1")));
    let err = desk.refused(3, "value", &["set", "s.legwork", note, "text", &"x".repeat(9000)]);
    assert!(err.contains("a text that takes up at most"), "{err}");
    desk.refused(3, "value", &["set", "s.legwork", note, "text", "not-known"]);
    desk.write("a.png", crate::support::pictures::png(8, 8, 1));
    let added = desk.done(&["photo", "add", "s.legwork", "a.png"]);
    let photo = added["photos"][0]["photo"].as_str().unwrap();
    let err = desk.refused(3, "value", &["set", "s.legwork", photo, "role", "label"]);
    assert!(err.contains("photo assign"), "{err}");
}

#[test]
fn what_a_sheet_would_refuse_is_refused_in_its_words() {
    let desk = small();
    for (arguments, words) in [
        (["O2", "length", "12"], "a length with its unit"),
        (["O2", "length", "12 furlongs"], "a length with its unit"),
        (["S1", "legs", "99"], "a whole number from 1 to 32"),
        (["S1", "kind", "spliter"], "Did you mean \"splitter\"?"),
        (["S1", "loss", "-7 dB"], "a figure of 0 dB or more"),
        (["S1", "gain", "15 dB"], "amplifier"),
        (["O2", "from", "S9"], "the tag of a part"),
        (["O2", "port", "7"], "one of the 2 outputs (legs) of S1"),
        (["O2", "port", "1"], "one cable on each port"),
        (["F1", "from", "O2"], "feeds nothing on"),
        (["S1", "end.1", "capped"], "is fed from this port"),
        (["O2", "room", "Attic"], "the name of a room"),
        (["Office", "wish", "fast"], "a rate above 0"),
        (["Office", "name", "not-known"], "cannot be left open"),
        (["O2", "tag", "S1"], "is called so already"),
        (["S1", "colour", "red"], "cannot be set"),
        (["survey", "internet", "{ down = \"1 Gb/s\" }"], "the field up"),
        (["S1", "measured", "../x.s3p"], "beside"),
    ] {
        let err = desk.refused(3, "value", &[&["set", "s.legwork"], &arguments[..]].concat());
        assert!(err.contains(words) && err.contains("Nothing was changed"), "{arguments:?}: {err}");
        assert!(!err.contains("Line "), "{err}");
    }
    desk.refused(3, "thing", &["set", "s.legwork", "S77", "legs", "2"]);
    // One bad pair among good ones, and nothing is written.
    desk.refused(3, "value", &["set", "s.legwork", "S1", "where", "here", "legs", "many"]);
    assert_eq!(desk.run(&["set", "s.legwork", "S1", "where"]).code, 2);
}

#[test]
fn a_part_is_copied_under_a_tag_of_its_own() {
    let desk = small();
    desk.done(&["set", "s.legwork", "S1", "label", "2-WAY 5-1675MHz 3.5dB"]);
    let copied = desk.done(&["copy-part", "s.legwork", "S1", "S2"]);
    assert_eq!((&copied["part"]["tag"], &copied["like"]["tag"]), (&json!("S2"), &json!("S1")));
    let parts = desk.done(&["table", "s.legwork", "parts"]);
    let of = |tag: &str| parts.as_array().unwrap().iter().find(|part| part["tag"] == tag).unwrap().clone();
    for column in ["kind", "label", "legs", "leg_losses_db", "band_high_mhz"] {
        assert_eq!(of("S1")[column], of("S2")[column], "{column}");
    }
    assert_eq!((&of("S2")["loose"], &of("S2")["from"]), (&json!(true), &Value::Null));
    desk.refused(3, "value", &["copy-part", "s.legwork", "S1", "O2"]);
    desk.refused(3, "value", &["copy-part", "s.legwork", "S1", "S1"]);
    desk.refused(3, "value", &["copy-part", "s.legwork", "S1", &"x".repeat(41)]);
    desk.refused(3, "thing", &["copy-part", "s.legwork", "Office", "S3"]);
}

#[test]
fn a_sheet_changes_a_survey_once_that_is_agreed() {
    let desk = small();
    desk.done(&["note", "s.legwork", "behind the shelf", "--on", "S1"]);
    let changed = SMALL
        .replace("legs = 2\n", "legs = 3\n")
        .replace("length = \"10 m measured\"", "length = \"14 m measured\"\nnote = \"The hatch sticks.\"")
        .replace("wish = \"300 Mb/s\"", "wish = \"500 Mb/s\"");
    let new = "[[part]]\ntag = \"O3\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 3\ncable = \"6\"\n";
    desk.write("changed.toml", format!("{changed}{new}"));
    let before = desk.all();
    let listed = desk.done(&["sheet", "changed.toml", "s.legwork", "--change"]);
    assert_eq!(desk.all(), before, "nothing is written without a yes");
    let told: Vec<(String, String)> = listed["changes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|change| {
            (
                change["thing"]["tag"].as_str().unwrap_or_default().to_owned(),
                change["field"].as_str().unwrap().to_owned(),
            )
        })
        .collect();
    for expected in [("S1", "rating"), ("O3", "tag"), ("O3", "feed")] {
        assert!(told.contains(&(expected.0.to_owned(), expected.1.to_owned())), "{told:?}");
    }
    assert!(told.iter().any(|(_, field)| field == "length") && told.iter().any(|(_, field)| field == "wish"));
    assert!(
        told.iter().all(|(tag, _)| tag != "G1" && tag != "F1"),
        "what stands so already is no change: {told:?}"
    );
    assert_eq!((&listed["act"], &listed["loose_then"]), (&Value::Null, &json!([])));
    let words = desk.run(&["sheet", "changed.toml", "s.legwork", "--change"]).out;
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("Say --yes to make these changes") && words.contains("new: "), "{words}");

    let made = desk.done(&["sheet", "changed.toml", "s.legwork", "--change", "--yes"]);
    assert_eq!(made["changes"], listed["changes"]);
    assert!(made["act"].is_string());
    // Held against it again it says nothing otherwise, and what only the survey said stays.
    assert_eq!(desk.done(&["sheet", "changed.toml", "s.legwork", "--change"])["changes"], json!([]));
    assert_eq!(desk.done(&["note", "s.legwork"]).as_array().unwrap().len(), 2);
    // One action, and it can be taken back.
    desk.done(&["undo", "s.legwork"]);
    assert_eq!(desk.done(&["sheet", "small.toml", "s.legwork", "--change"])["changes"], json!([]));
}

#[test]
fn a_sheet_that_leaves_things_out_removes_nothing() {
    let desk = small();
    desk.write("part.toml", "[[part]]\ntag = \"O2\"\nkind = \"outlet\"\nplugged = [\"tv\"]\n");
    let made = desk.done(&["sheet", "part.toml", "s.legwork", "--change", "--yes"]);
    assert_eq!(made["changes"].as_array().unwrap().len(), 1, "{made}");
    let parts = desk.done(&["table", "s.legwork", "parts"]);
    assert_eq!(parts.as_array().unwrap().len(), 6);
    let outlet = parts.as_array().unwrap().iter().find(|part| part["tag"] == "O2").unwrap();
    assert_eq!(
        (&outlet["from"], &outlet["room"], &outlet["plugged"]),
        (&json!("S1"), &json!("Office"), &json!(["tv"]))
    );
    // What would hang in a loop or share a port is said before.
    desk.write("loop.toml", "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"S2\"\nport = 1\n[[part]]\ntag = \"S2\"\nkind = \"splitter\"\nlegs = 2\n");
    let listed = desk.done(&["sheet", "loop.toml", "s.legwork", "--change"]);
    assert!(listed["changes"].as_array().unwrap().len() >= 2, "{listed}");
    desk.write("shared.toml", "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\n[[part]]\ntag = \"O9\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 2\n");
    let listed = desk.done(&["sheet", "shared.toml", "s.legwork", "--change"]);
    assert_eq!(listed["two_on_a_port"], json!(["O2", "O9"]), "{listed}");
    // A sheet with mistakes changes nothing, and one for a survey that is not there neither.
    desk.write("bad.toml", "[[part]]\ntag = \"O2\"\nkind = \"quux\"\n");
    desk.refused(3, "sheet", &["sheet", "bad.toml", "s.legwork", "--change", "--yes"]);
    desk.refused(3, "not_a_survey", &["sheet", "small.toml", "none.legwork", "--change"]);
    desk.refused(3, "exists", &["sheet", "small.toml", "s.legwork"]);
}

/// A helper with half a house types only that half: what the survey knows is known.
#[test]
fn what_a_survey_knows_need_not_stand_in_a_sheet_onto_it() {
    let desk = Desk::new();
    desk.write("small.toml", SMALL.replace("legs = 2", "legs = 4"));
    desk.done(&["sheet", "small.toml", "s.legwork"]);
    // A room, a part on the third output of a splitter that the sheet does not speak of, a length, and a level at its first.
    desk.write(
        "half.toml",
        "[[room]]\nname = \"Store room\"\n\n\
         [[part]]\ntag = \"O9\"\nkind = \"outlet\"\nroom = \"Store room\"\nfrom = \"S1\"\nport = 3\ncable = \"6\"\n\n\
         [[part]]\ntag = \"O1\"\nlength = \"7 m measured\"\nroom = \"Office\"\n\n\
         [[reading]]\nat = \"S1\"\nport = 1\nlevel = \"3 dBmV\"\nfrequency = \"603 MHz\"\n",
    );
    let made = desk.done(&["sheet", "half.toml", "s.legwork", "--change", "--yes"]);
    assert_eq!((&made["loose_then"], &made["two_on_a_port"]), (&json!([]), &json!([])), "{made}");
    let told: Vec<_> =
        made["changes"].as_array().unwrap().iter().map(|change| change["thing"]["tag"].clone()).collect();
    assert!(!told.contains(&json!("S1")) && !told.contains(&json!("O2")), "nothing else is said: {made}");
    let parts = desk.done(&["table", "s.legwork", "parts"]);
    let part = |tag: &str| parts.as_array().unwrap().iter().find(|row| row["tag"] == tag).unwrap();
    assert_eq!((&part("O9")["from"], &part("O9")["port"]), (&json!("S1"), &json!(3)));
    assert_eq!(part("O9")["room"], "Store room");
    let outlet = part("O1");
    assert_eq!((&outlet["from"], &outlet["port"]), (&json!("S1"), &json!(1)));
    assert_eq!((&outlet["length_metres"], &outlet["cable"]), (&json!(7.0), &json!("six")));
    // Once made, nothing is left to change; and a room that is there now can be set.
    assert_eq!(desk.done(&["sheet", "half.toml", "s.legwork", "--change"])["changes"], json!([]));
    desk.done(&["set", "s.legwork", "O1", "room", "Store room"]);
    // What the survey does not know is asked for as ever.
    desk.write("new.toml", "[[part]]\ntag = \"O10\"\nlength = \"7 m\"\n");
    let err = desk.refused(3, "sheet", &["sheet", "new.toml", "s.legwork", "--change"]);
    assert!(err.contains("kind") && err.contains("from"), "{err}");
    desk.write("port.toml", "[[part]]\ntag = \"O10\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 9\n");
    desk.refused(3, "sheet", &["sheet", "port.toml", "s.legwork", "--change"]);
}
