//! The guide's screens, the command's JSON and the report say one thing of what was measured, whatever it was.

use std::path::Path;

use crate::support::{Desk, SMALL};
use advice::verdict::is_a_speed;
use advice::worklist::Options;
use facts::fact::{AuthorId, Edit, SubjectId, value_of};
use facts::store::Store;
use guide::screen::{Block, RowEntry};
use guide::{Deed, Guide, Screen};
use house::record::{HowMeasured, ReadingKind, TestReach, field, fold};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::Value;
use telling::words::Figures;

/// One room more than the small house has, and a plan.
fn sheet() -> String {
    let small = SMALL.replace("legs = 2", "legs = 4");
    let outlet = "[[part]]\ntag = \"O3\"\nkind = \"outlet\"\nroom = \"Attic\"\nfrom = \"S1\"\nport = 3\n\
                  cable = \"59\"\nlength = \"25 m measured\"\nadapter = {}\n";
    format!("{small}\n{outlet}\n[[room]]\nname = \"Attic\"\nwish = \"900 Mb/s\"\n")
}

/// One reading: at which outlet, of what kind, at which share of which end of what is expected, how taken.
type Thrown = (usize, u8, bool, f64, u8);

fn thrown() -> impl Strategy<Value = Thrown> {
    let share = prop_oneof![Just(1.0), 0.94..0.96_f64, 1.04..1.06_f64, 0.98..1.02_f64, 0.2..1.5_f64];
    (0..2_usize, 0..5_u8, any::<bool>(), share, 0..6_u8)
}

/// The end of a range in the forecast's JSON.
fn end(room: &Value, range: &str, upper: bool) -> f64 {
    room[range][if upper { "high" } else { "low" }].as_f64().unwrap()
}

fn reading(room: &Value, (_, what, upper, share, how): Thrown) -> (ReadingKind, HowMeasured) {
    let near = |range: &str| end(room, range, upper) * share;
    let measured = match what {
        0 => ReadingKind::Throughput { down_mbps: near("down_mbps"), up_mbps: near("up_mbps") },
        1 => ReadingKind::Throughput { down_mbps: 940.0, up_mbps: 935.0 },
        2 => ReadingKind::PhyRate { mbps: near("phy_down_mbps") },
        3 => ReadingKind::Power { sent_dbm: 3.0, received_dbm: 3.0 - near("loss_db") },
        _ => ReadingKind::PacketLoss { percent: 2.0, under_load: true },
    };
    let how = match how {
        0 => HowMeasured::new(TestReach::House, true),
        1 => HowMeasured::new(TestReach::Internet, false),
        2 => HowMeasured { socket_mbps: Some(1000), ..HowMeasured::new(TestReach::House, false) },
        _ => HowMeasured::new(TestReach::House, false),
    };
    (measured, how)
}

/// Writes readings into a survey in place of those that are there.
fn write(folder: &Path, author: AuthorId, readings: &[(SubjectId, ReadingKind, HowMeasured)]) {
    let mut store = Store::open(folder, author).unwrap();
    let known = fold(store.ledger(), store.survey_id()).unwrap();
    let mut edits: Vec<Edit> = known.readings.keys().map(|id| store.ledger().remove(*id)).collect();
    for (outlet, measured, how) in readings {
        let id = SubjectId::random();
        edits.push(Edit::new(id, field::IS, "reading"));
        edits.push(Edit::new(id, field::ABOUT, value_of(outlet).unwrap()));
        edits.push(Edit::new(id, field::MEASURED, value_of(measured).unwrap()));
        edits.push(Edit::new(id, field::HOW, value_of(how).unwrap()));
    }
    store.write(&edits).unwrap();
}

/// The guide over a survey. It makes the forecast as the command does; no step is looked for.
fn opened(folder: &Path, author: AuthorId) -> Guide {
    let mut guide = Guide::at(folder.parent().unwrap(), author, guide::english(Figures::default())).unwrap();
    guide.work_out_with(Options { most_steps: 0, ..Options::default() });
    guide.open(folder).unwrap();
    guide
}

/// The screen of a stage, once what it tells is worked out.
fn stage(guide: &mut Guide, key: &str) -> Screen {
    let press = |guide: &mut Guide, key: &str| {
        guide.settle_long_work();
        guide.act(&Deed::Press { key: key.into() }).unwrap();
        guide.settle_long_work();
    };
    for _ in 0..20 {
        let screen = guide.screen();
        if screen.name != "overview" && screen.keys().contains(&"overview") {
            press(guide, "overview");
        } else if screen.name != "overview" {
            guide.act(&Deed::Back).unwrap();
        } else if screen.keys().contains(&key) {
            press(guide, key);
            return guide.screen();
        } else {
            press(guide, "more");
        }
    }
    panic!("no way to {key} from {}", guide.screen().name)
}

/// The report, as it is written at the handover.
fn report(guide: &mut Guide, place: &Path) -> String {
    let screen = stage(guide, "handover");
    let key = screen.keys().into_iter().find(|key| key.contains(".html")).unwrap().to_owned();
    guide.act(&Deed::File { key, file: place.to_str().unwrap().into() }).unwrap();
    guide.settle_long_work();
    let page = std::fs::read_to_string(place).unwrap();
    std::fs::remove_file(place).unwrap();
    page
}

fn row<'a>(screen: &'a Screen, key: &str) -> Option<&'a RowEntry> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    rows.flatten().find(|row| row.key.as_deref() == Some(key))
}

/// How often a text says something.
fn says(text: &str, words: &str) -> usize {
    text.matches(words).count()
}

/// What the JSON of the forecast says of the tests at a room: how many figures stand there.
fn held(room: &Value, is: impl Fn(&str, &str) -> bool) -> usize {
    let tests = room["tests"].as_array().unwrap().iter();
    let held = tests.flat_map(|test| test["held"].as_array().unwrap());
    held.filter(|held| is(held["what"].as_str().unwrap(), held["beside"].as_str().unwrap())).count()
}

fn tells(room: &Value, of: &str) -> usize {
    room["tests"].as_array().unwrap().iter().filter(|test| test["tells"] == of).count()
}

fn is_short(room: &Value) -> bool {
    held(room, |_, beside| beside == "worse") > 0
}

/// The screen that holds tests against the forecast says of each room what the JSON says.
fn compare_agrees(screen: &Screen, forecast: &Value) {
    let rooms = forecast["rooms"].as_array().unwrap();
    for room in rooms {
        let key = format!("room:{}", room["outlet"]["id"].as_str().unwrap());
        let Some(row) = row(screen, &key) else {
            assert!(room["tests"].as_array().unwrap().is_empty(), "{room}");
            continue;
        };
        let text = &row.says;
        let told = format!("{text}\n{room:#}");
        let loss = |what: &str| what == "loss_db";
        let worse = held(room, |what, beside| beside == "worse" && !loss(what));
        assert_eq!(says(text, "below what was expected"), worse, "{told}");
        let above = held(room, |what, beside| beside == if loss(what) { "worse" } else { "better" });
        assert_eq!(says(text, "more than was expected"), above, "{told}");
        let less = held(room, |what, beside| beside == "better" && loss(what));
        assert_eq!(says(text, "less than was expected"), less, "{told}");
        assert_eq!(says(text, " as expected"), held(room, |_, beside| beside == "as_expected"), "{told}");
        let socket = held(room, |_, beside| beside.ends_with("_socket"));
        assert_eq!(says(text, "nothing against the cable"), socket, "{told}");
        assert_eq!(says(text, "partly by radio"), tells(room, "radio"), "{told}");
        assert_eq!(says(text, "the plan limits it"), tells(room, "plan"), "{told}");
        assert_eq!(says(text, "to the internet, which"), tells(room, "internet"), "{told}");
        let met = room["wish_met"] == "yes" && room["wish_met_by"] == "test";
        assert_eq!(text.contains("What is wished here is met."), met, "{told}");
        assert_eq!(!row.remark.is_empty(), is_short(room), "{told}\n{}", row.remark);
    }
    let short = rooms.iter().filter(|room| is_short(room)).count();
    let lead = screen.spoken().join("\n");
    let tested = rooms.iter().any(|room| !room["tests"].as_array().unwrap().is_empty());
    assert_eq!(lead.contains("falls short of its forecast"), tested && short == 0, "{lead}");
    let one = lead.contains("One room gets less") || lead.contains("one of them gets");
    assert_eq!(one, short == 1, "{lead}");
}

/// The findings of the command are of the same readings.
fn findings_agree(findings: &Value, forecast: &Value) {
    for room in forecast["rooms"].as_array().unwrap() {
        let here = |id: &str| {
            let findings = findings.as_array().unwrap().iter();
            let at = |finding: &&Value| finding["at"][0]["part"]["id"] == room["outlet"]["id"];
            findings.filter(|finding| finding["id"] == id).filter(at).count()
        };
        let short = here("measured-below-forecast") + here("loss-above-forecast") > 0;
        assert_eq!(short, is_short(room), "{room:#}");
        let busy = here("loss-under-load");
        let coax = tells(room, "coax") + tells(room, "socket");
        assert!(busy <= coax, "{busy} {room:#}");
    }
}

#[test]
fn screens_json_and_report_say_one_thing() {
    let desk = Desk::new();
    desk.write("small.toml", sheet());
    let ran = desk.run(&["sheet", "small.toml", "s.legwork"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let folder = desk.work().join("s.legwork");
    let author = AuthorId::random();
    let expected = desk.done(&["forecast", "s.legwork"]);
    let rooms = expected["rooms"].as_array().unwrap().clone();
    assert_eq!(rooms.len(), 2);
    let config = ProptestConfig {
        cases: 6,
        max_shrink_iters: 8,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    // A failed case prints the readings that made it fail.
    let outcome = TestRunner::new(config).run(&proptest::collection::vec(thrown(), 1..8), |throws| {
        let readings: Vec<_> = throws
            .iter()
            .map(|throw| {
                let room = &rooms[throw.0];
                let outlet: SubjectId = room["outlet"]["id"].as_str().unwrap().parse().unwrap();
                let (measured, how) = reading(room, *throw);
                (outlet, measured, how)
            })
            .collect();
        write(&folder, author, &readings);
        let forecast = desk.done(&["forecast", "s.legwork"]);
        let findings = desk.done(&["findings", "s.legwork"]);
        findings_agree(&findings, &forecast);
        let mut guide = opened(&folder, author);
        compare_agrees(&stage(&mut guide, "compare"), &forecast);
        // The forecast's screen says of a wish what the JSON says.
        let screen = stage(&mut guide, "forecast");
        for room in forecast["rooms"].as_array().unwrap() {
            let key = format!("room:{}", room["outlet"]["id"].as_str().unwrap());
            let words = match (room["wish_met"].as_str().unwrap(), room["wish_met_by"] == "test") {
                ("unlikely", true) => "Not met yet.",
                ("yes", _) => "Met.",
                ("likely", _) => "Likely met.",
                _ => "Likely not met.",
            };
            let row = row(&screen, &key).unwrap();
            assert!(row.remark.contains(words), "{words} {} {room:#}", row.remark);
        }
        // At the handover, the rooms of which no speed was measured are left.
        let speeds: Vec<_> = readings.iter().filter(|(_, measured, _)| is_a_speed(*measured)).collect();
        let left = rooms.iter().filter(|room| {
            !speeds.iter().any(|(outlet, ..)| outlet.to_string() == room["outlet"]["id"].as_str().unwrap())
        });
        let left = left.count();
        let handover = stage(&mut guide, "handover");
        assert_eq!(row(&handover, "tests").is_some(), left > 0, "{left}");
        let page = report(&mut guide, &desk.work().join("r.html"));
        for finding in findings.as_array().unwrap() {
            let what = finding["what"].as_str().unwrap().replace('&', "&amp;").replace('"', "&quot;");
            assert!(page.contains(&what), "{what}");
        }
        Ok(())
    });
    outcome.unwrap();
}
