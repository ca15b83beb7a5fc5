//! docs/sheet.md has every field that a sheet's reader takes, in the table where it takes it, with every name that it takes for a
//! value, and no other. The reader names what it takes when it refuses.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::support::Desk;

const PAGE: &str = include_str!("../../../../docs/sheet.md");

/// A name that nothing has.
const WRONG: &str = "qqqqqqqqqqqqqqqqqqqqqqqqqqqq";

/// What was expected in place of what is wrong with a sheet.
fn expected(sheet: &str) -> Vec<String> {
    let desk = Desk::new();
    desk.write("bad.toml", sheet);
    let ran = desk.run(&["--json", "sheet", "bad.toml", "new.legwork"]);
    let told: Value =
        serde_json::from_str(&ran.err).unwrap_or_else(|error| panic!("{error}: {}\n{sheet}", ran.err));
    let problems = told["error"]["problems"].as_array().unwrap();
    problems.iter().filter_map(|problem| problem["expected"].as_str().map(str::to_owned)).collect()
}

/// The names told after these words.
fn names(sheet: &str, words: &str) -> BTreeSet<String> {
    let told = expected(sheet);
    let of = |text: &String| Some(text.strip_prefix(words)?.split(", ").map(str::to_owned).collect());
    told.iter().find_map(of).unwrap_or_else(|| panic!("no \"{words}\" in {told:?}\n{sheet}"))
}

/// The fields that a table may have, with one that it may not have put in.
fn fields(sheet: &str) -> BTreeSet<String> {
    names(sheet, "one of these fields: ")
}

fn section(heading: &str) -> &'static str {
    let start = format!("\n## `{heading}`");
    let (_, rest) = PAGE.split_once(&start).unwrap_or_else(|| panic!("docs/sheet.md has no {heading}"));
    rest.split("\n## ").next().unwrap()
}

fn cells(section: &str) -> impl Iterator<Item = (Vec<&str>, &str)> {
    section.lines().filter(|line| line.starts_with("| `")).map(|line| {
        let cell = line[2..].split(" | ").next().unwrap();
        (quoted(cell).collect(), line)
    })
}

/// What stands in backquotes.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

fn row<'p>(section: &'p str, field: &str) -> &'p str {
    cells(section).find(|(names, _)| names.contains(&field)).unwrap_or_else(|| panic!("no row {field}")).1
}

/// The fields of a table within a field, as its row tells them: `{ down = ..., up = ... }`.
fn fields_within(row: &str) -> BTreeSet<String> {
    let is_name = |name: &str| !name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c == '_');
    let before = quoted(row).flat_map(|code| {
        let parts: Vec<_> = code.split(" = ").collect();
        let names = parts.iter().take(parts.len().saturating_sub(1));
        names.filter_map(|part| part.rsplit([' ', '{', ',']).next()).map(str::to_owned).collect::<Vec<_>>()
    });
    before.filter(|name| is_name(name)).collect()
}

#[test]
fn every_table_has_the_fields_that_the_reader_takes_and_no_other() {
    let part = "[[part]]\ntag = \"A1\"\nkind = \"outlet\"\n";
    for (heading, sheet) in [
        ("[survey]", "[survey]\n".to_owned()),
        ("[[room]]", "[[room]]\nname = \"a\"\n".to_owned()),
        ("[[service]]", "[[service]]\nkind = \"cable_tv\"\n".to_owned()),
        ("[[part]]", part.to_owned()),
        ("[[reading]]", "[[reading]]\nround_trip = \"3 ms\"\n".to_owned()),
    ] {
        let told: BTreeSet<_> =
            cells(section(heading)).flat_map(|(names, _)| names).map(str::to_owned).collect();
        assert_eq!(told, fields(&format!("{sheet}{WRONG} = 1\n")), "{heading}");
    }
    let headings = fields(&format!("{WRONG} = 1\n"));
    let told = ["survey", "room", "service", "part", "reading"].map(str::to_owned);
    assert_eq!(headings, BTreeSet::from(told));
}

#[test]
fn every_table_within_a_field_has_the_fields_that_the_reader_takes_and_no_other() {
    let outlet = "[[part]]\ntag = \"A1\"\nkind = \"outlet\"\n";
    let service = |kind: &str| format!("[[service]]\nkind = \"{kind}\"\n");
    let survey = "[survey]\n".to_owned();
    for (heading, before, field) in [
        ("[survey]", survey.clone(), "internet"),
        ("[survey]", survey.clone(), "building"),
        ("[survey]", survey, "network"),
        ("[[room]]", "[[room]]\nname = \"a\"\n".to_owned(), "wish"),
        ("[[service]]", service("cable_internet"), "modem"),
        ("[[service]]", service("fibre_link"), "network"),
        ("[[service]]", service("power_over_coax"), "power"),
        ("[[part]]", outlet.to_owned(), "adapter"),
        ("[[part]]", outlet.to_owned(), "behind_adapter"),
        ("[[part]]", outlet.to_owned(), "connectors"),
        ("[[reading]]", "[[reading]]\n".to_owned(), "throughput"),
        ("[[reading]]", "[[reading]]\n".to_owned(), "power"),
        ("[[reading]]", "[[reading]]\n".to_owned(), "packet_loss"),
        ("[[reading]]", "[[reading]]\n".to_owned(), "swings"),
        ("[[reading]]", "[[reading]]\n".to_owned(), "how"),
    ] {
        let taken = fields(&format!("{before}{field} = {{ {WRONG} = 1 }}\n"));
        assert_eq!(fields_within(row(section(heading), field)), taken, "{heading} {field}");
    }
}

/// Fields with a closed list of names: heading, field, and the sheet with a wrong one.
fn closed_lists() -> Vec<(&'static str, &'static str, String)> {
    let kind = |heading: &str, kind: &str| format!("[[{heading}]]\ntag = \"A1\"\nkind = \"{kind}\"\n");
    let service = |kind: &str| format!("[[service]]\nkind = \"{kind}\"\n");
    let of = |before: String, field: &str| format!("{before}{field} = \"{WRONG}\"\n");
    vec![
        (
            "[survey]",
            "building",
            format!("[survey]\nbuilding = {{ ownership = \"{WRONG}\", shared = true }}\n"),
        ),
        ("[survey]", "network", format!("[survey]\nnetwork = {{ version = \"{WRONG}\" }}\n")),
        ("[[service]]", "kind", service(WRONG)),
        ("[[service]]", "signal", of(service("cable_tv"), "signal")),
        (
            "[[service]]",
            "modem",
            format!("{}modem = {{ generation = \"{WRONG}\" }}\n", service("cable_internet")),
        ),
        ("[[service]]", "single_cable", of(service("satellite_tv"), "single_cable")),
        ("[[part]]", "kind", kind("part", WRONG)),
        ("[[part]]", "cable", of(kind("part", "barrel"), "from = \"A1\"\ncable")),
        ("[[part]]", "connectors", of(kind("part", "barrel"), "from = \"A1\"\nconnectors")),
        ("[[part]]", "ends", format!("{}ends = {{ 1 = \"{WRONG}\" }}\n", kind("part", "barrel"))),
        ("[[part]]", "service", of(kind("part", "entry"), "service")),
        ("[[part]]", "state", of(kind("part", "entry"), "state")),
        ("[[part]]", "plugged", of(kind("part", "outlet"), "plugged")),
        (
            "[[part]]",
            "behind_adapter",
            format!("{}behind_adapter = {{ pieces = [\"{WRONG}\"] }}\n", kind("part", "outlet")),
        ),
        ("[[part]]", "sharing", of(kind("part", "outlet"), "sharing")),
        ("[[reading]]", "link", of("[[reading]]\n".to_owned(), "link")),
        (
            "[[reading]]",
            "how",
            format!("[[reading]]\nnodes_seen = 4\nhow = {{ reach = \"{WRONG}\", radio = false }}\n"),
        ),
    ]
}

#[test]
fn every_closed_list_has_the_names_that_the_reader_takes_and_no_other() {
    for (heading, field, sheet) in closed_lists() {
        let taken = names(&sheet, "one of: ");
        assert!(taken.len() > 1, "{taken:?}");
        let row = row(section(heading), field);
        let within = fields_within(row);
        // Names of other fields, kinds that a field belongs to, and what is no name.
        let others = ["true", "false", "port", "tv", "power_supply"];
        let told: BTreeSet<_> = quoted(row)
            .skip(1)
            .map(|code| code.trim_matches('"'))
            .filter(|code| !code.contains([' ', '=', '[', '{', '/']) || taken.contains(*code))
            .filter(|code| !within.contains(*code) && (taken.contains(*code) || !others.contains(code)))
            .filter(|code| taken.contains(*code) || !code.chars().any(|c| c.is_ascii_uppercase()))
            .map(str::to_owned)
            .collect();
        assert_eq!(told, taken, "{heading} {field}");
    }
}

#[test]
fn what_is_too_much_is_refused_from_where_the_page_says() {
    let (_, rest) = PAGE.split_once("## How values are written").unwrap();
    let table = rest.split("\n## ").next().unwrap();
    let outlet = "[[part]]\ntag = \"A1\"\nkind = \"splitter\"\n";
    let run = format!("[[part]]\ntag = \"E1\"\nkind = \"entry\"\n{outlet}from = \"E1\"\n");
    // What the page says, a sheet before the value, the most that is taken, its unit, and what is one step too much.
    for (told, before, most, over, unit) in [
        ("at most 500 m", format!("{run}length"), "500", "500.1", "m"),
        ("at most 10000 MHz", "[[service]]\nkind = \"cable_tv\"\ntop".to_owned(), "10000", "10000.1", "MHz"),
        ("at most 100000 Mb/s", "[survey]\ninternet".to_owned(), "100000", "100000.1", "Mb/s"),
        ("0 to 150 dB;", format!("{outlet}isolation"), "150", "150.1", "dB"),
        (
            "from -150 dB",
            "[[part]]\ntag = \"A1\"\nkind = \"amplifier\"\nreturn_gain".to_owned(),
            "-150",
            "-150.1",
            "dB",
        ),
        ("-100 to 100 dBmV", "[[reading]]\nmodem_sends".to_owned(), "-100", "-100.1", "dBmV"),
        ("at most 60000 ms", "[[reading]]\nround_trip".to_owned(), "60000", "60000.1", "ms"),
    ] {
        assert!(table.contains(told), "{told}");
        let of = |value: &str| expected(&format!("{before} = \"{value} {unit}\"\n{WRONG} = 1\n"));
        // The wrong name keeps the sheet from being taken; the value adds a problem of its own only where it is too much.
        assert_eq!((of(most).len(), of(over).len()), (1, 2), "{told}: {:?}", of(over));
    }
    for (field, most, told) in [("legs", 32, "1 to 32"), ("nodes_seen", 255, "1 to 255")] {
        let heading = if field == "legs" { "[[part]]" } else { "[[reading]]" };
        assert!(row(section(heading), field).contains(told), "{field}");
        let before = if field == "legs" { outlet } else { "[[reading]]\n" };
        let of = |value: u16| expected(&format!("{before}{field} = {value}\n{WRONG} = 1\n")).len();
        assert_eq!((of(most), of(most + 1)), (1, 2), "{field}");
    }
}
