//! Parts of a sheet that name a Touchstone file: the file's figures count, and the survey needs the file no more.

use std::fmt::Write;

use crate::support::Desk;
use serde_json::Value;

/// A two-way splitter of our own invention: both legs 10 dB, leg to leg 25 dB, matched at every port, at frequencies
/// from 5 to 1700 MHz. Port 1 is the input. Version 1.1 of the format: one line for each row of the matrix.
fn splitter(leg_db: f64) -> String {
    let mut text = String::from("! measured by an invented person\n# MHz S DB R 75\n");
    for mhz in (5..=1700).step_by(5) {
        let mut row = |start: String, cells: [f64; 3]| {
            let cells: Vec<_> = cells.iter().map(|db| format!("{:.2} 0", -db)).collect();
            writeln!(text, "{start} {} ! row", cells.join(" ")).unwrap();
        };
        row(mhz.to_string(), [90.0, leg_db, leg_db]);
        row(String::new(), [leg_db, 90.0, 25.0]);
        row(String::new(), [leg_db, 25.0, 90.0]);
    }
    text
}

/// Two adapters and a TV on one splitter; the runs are too short to lose anything.
fn house(measured: &str) -> String {
    format!(
        r#"
[[part]]
tag = "E1"
kind = "entry"
service = "cable"
state = "connected"

[[part]]
tag = "S1"
kind = "splitter"
legs = 2
loss = "3.5 dB"
band = "5-1675 MHz"
from = "E1"
cable = "6"
length = "1 ft measured"
{measured}

[[part]]
tag = "O1"
kind = "outlet"
from = "S1"
port = 1
cable = "6"
length = "1 ft measured"
plugged = []
adapter = {{ bridge = true }}

[[part]]
tag = "O2"
kind = "outlet"
from = "S1"
port = 2
cable = "6"
length = "1 ft measured"
plugged = ["tv"]
"#
    )
}

fn likely(range: &Value) -> f64 {
    range["likely"].as_f64().unwrap()
}

/// The house as a survey, whose sheet and file are gone.
fn made(measured: &str) -> Desk {
    let desk = Desk::new();
    std::fs::create_dir(desk.work().join("files")).unwrap();
    desk.write("files/split.s3p", splitter(10.0));
    desk.write("house.toml", house(measured));
    let ran = desk.run(&["sheet", "house.toml", "house.legwork"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    std::fs::remove_dir_all(desk.work().join("files")).unwrap();
    std::fs::remove_file(desk.work().join("house.toml")).unwrap();
    desk
}

fn to_the_tv(desk: &Desk) -> f64 {
    let levels = desk.run(&["--json", "levels", "house.legwork"]).json();
    likely(&levels["outlets"][0]["down"][1]["gain_db"])
}

/// The file's 10 dB go on the way to the TV where the label's 3.5 dB did: 6.5 dB less, whatever plates and joints take.
#[test]
fn the_files_figures_go_before_the_labels() {
    let (rated, measured) = (to_the_tv(&made("")), to_the_tv(&made("measured = \"files/split.s3p\"")));
    assert!((rated - measured - 6.5).abs() < 0.8, "{rated} {measured}");
}

/// Between the adapters lies what the file says of leg to leg, 25 dB, and little else: two wall plates and joints.
#[test]
fn the_network_sees_the_measured_isolation() {
    let desk = Desk::new();
    desk.write("split.s3p", splitter(10.0));
    let both = house("measured = \"split.s3p\"").replace("plugged = [\"tv\"]", "plugged = []\nadapter = {}");
    desk.write("house.toml", both);
    assert_eq!(desk.run(&["sheet", "house.toml", "house.legwork"]).code, 0);
    let forecast = desk.run(&["--json", "forecast", "house.legwork"]).json();
    let rooms = forecast["rooms"].as_array().unwrap();
    let loss = likely(&rooms.iter().find(|room| room["outlet"]["tag"] == "O2").unwrap()["loss_db"]);
    assert!((24.5..28.0).contains(&loss), "{loss}");
}

/// Comments of such files name people and instruments: none is kept.
#[test]
fn no_comment_of_the_file_is_kept() {
    let desk = made("measured = \"files/split.s3p\"");
    let mut found_figures = false;
    for entry in std::fs::read_dir(desk.work().join("house.legwork")).unwrap() {
        let path = entry.unwrap().path();
        let bytes = if path.is_file() { std::fs::read(path).unwrap() } else { Vec::new() };
        let text = String::from_utf8_lossy(&bytes);
        assert!(!text.contains("an invented person"));
        found_figures |= text.contains("# MHz S DB R 75");
    }
    assert!(found_figures, "the figures are not in the survey");
}

#[test]
fn two_parts_may_name_one_file() {
    let desk = Desk::new();
    desk.write("split.s3p", splitter(10.0));
    let second = "[[part]]\ntag = \"S2\"\nkind = \"splitter\"\nlegs = 2\nmeasured = \"split.s3p\"\n";
    desk.write("house.toml", format!("{}{second}", house("measured = \"split.s3p\"")));
    assert_eq!(desk.run(&["sheet", "house.toml", "house.legwork"]).code, 0);
    assert!(to_the_tv(&desk) < -9.0);
}

/// Each with the words that say what is wrong.
#[test]
fn a_file_that_cannot_count_is_refused() {
    let lifting = splitter(10.0).replace("-10.00", "10.00");
    for (measured, words) in [
        ("measured = \"none.s3p\"", "is not there"),
        ("measured = \"../split.s3p\"", "beside the sheet"),
        ("measured = \"/etc/hostname\"", "beside the sheet"),
        ("measured = \"folder\"", "can be read"),
        ("measured = \"text.s3p\"", "can be read"),
        ("measured = \"two.s2p\"", "a file of 3 ports"),
        ("measured = \"lifting.s3p\"", "only an amplifier"),
        ("measured = 3", "a text in"),
    ] {
        let desk = Desk::new();
        std::fs::create_dir(desk.work().join("folder")).unwrap();
        desk.write("text.s3p", "no figures\n");
        desk.write("two.s2p", "# MHz S RI R 75\n5 0 0 0.5 0 0.5 0 0 0\n1700 0 0 0.5 0 0.5 0 0 0\n");
        desk.write("lifting.s3p", &lifting);
        desk.write("house.toml", house(measured));
        let ran = desk.run(&["sheet", "house.toml", "house.legwork"]);
        let told = ran.err.split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(ran.code, 3, "{told}");
        assert!(told.contains("(1 problem)") && told.contains("[[part]] S1, measured"), "{told}");
        assert!(told.contains(words), "no \"{words}\" in {told}");
        assert!(!desk.work().join("house.legwork").exists());
    }
    let desk = Desk::new();
    desk.write("bad.toml", "[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nmeasured = \"a.s2p\"\n");
    let told = desk.run(&["sheet", "bad.toml", "house.legwork"]).err;
    assert!(told.contains("is not measured"), "{told}");
}
