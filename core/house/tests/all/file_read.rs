//! What docs/file.md says of how fields make a house, line by line, in its order.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeSet;

use facts::fact::{ActId, AuthorId, Edit, FactClock, Ledger, SubjectId, SurveyId};
use house::record::{LooseReason, Survey, fold};
use serde_json::{Value, json};

/// Facts in memory, as a file would bring them.
struct File {
    ledger: Ledger,
    clock: FactClock,
    survey: SurveyId,
    author: AuthorId,
}

impl File {
    fn new() -> Self {
        let (ledger, clock) = (Ledger::new(), FactClock::system());
        Self { ledger, clock, survey: SurveyId::random(), author: AuthorId::random() }
    }

    fn write(&mut self, edits: &[Edit]) {
        let facts = self.ledger.plan(ActId::random(), self.author, &mut self.clock, edits).unwrap();
        for fact in facts {
            self.ledger.insert(fact).unwrap();
        }
    }

    fn part(&mut self, kind: &str, said: &[(&str, Value)]) -> SubjectId {
        let part = SubjectId::random();
        let mut edits = vec![Edit::new(part, "is", "part"), Edit::new(part, "kind", kind)];
        edits.extend(said.iter().map(|(field, value)| Edit::new(part, *field, value.clone())));
        self.write(&edits);
        part
    }

    fn says(&mut self, subject: SubjectId, field: &str, value: Value) {
        self.write(&[Edit::new(subject, field, value)]);
    }

    fn forget(&mut self, subject: SubjectId, field: &str) {
        let edits = self.ledger.forget_field(subject, field);
        self.write(&edits);
    }

    fn house(&self) -> Survey {
        fold(&self.ledger, self.survey).unwrap()
    }

    fn loose(&self, part: SubjectId) -> Option<LooseReason> {
        self.house().wiring.loose().get(&part).copied()
    }
}

fn from(part: SubjectId, port: u8) -> Value {
    json!({"from": {"part": part, "port": port, "run": null}})
}

#[test]
fn a_subject_is_what_its_field_is_says() {
    for after in [Value::Null, json!("a word of a later release")] {
        let mut file = File::new();
        let part = file.part("barrel", &[("tag", json!("S1"))]);
        assert!(file.house().parts.contains_key(&part));
        file.says(part, "is", after);
        assert!(!file.house().parts.contains_key(&part));
        assert!(file.ledger.shown(part, "tag").is_some());
    }
    let mut file = File::new();
    let (feeder, part) = (file.part("entry", &[]), SubjectId::random());
    file.write(&[Edit::new(part, "is", "part"), Edit::new(part, "feed", from(feeder, 1))]);
    file.forget(feeder, "is");
    assert_eq!(file.loose(part), Some(LooseReason::FeederGone));
}

#[test]
fn an_authors_name_stands_under_the_authors_id() {
    let mut file = File::new();
    let author = file.author;
    file.says(author.subject(), "name", json!("A. Surveyor"));
    assert_eq!(facts::act::author_name(&file.ledger, author), Some("A. Surveyor"));
    assert!(file.ledger.shown(author.subject(), "is").is_none());
}

#[test]
fn a_feed_has_three_states() {
    let mut file = File::new();
    let (entry, looked, unsaid) = (
        file.part("entry", &[]),
        file.part("splitter", &[("feed", json!("nothing"))]),
        file.part("splitter", &[]),
    );
    let hangs = file.part("barrel", &[("feed", from(entry, 1))]);
    let house = file.house();
    let heads = house.wiring.heads().iter().copied().collect::<BTreeSet<_>>();
    assert_eq!(heads, BTreeSet::from([entry, looked]));
    assert_eq!(file.loose(unsaid), Some(LooseReason::NotTraced));
    assert_eq!(house.wiring.feed(hangs).unwrap().part, entry);
    file.says(hangs, "feed", Value::Null);
    assert_eq!(file.loose(hangs), Some(LooseReason::NotTraced));
}

#[test]
fn ports_count_from_one_and_one_that_is_not_there_leaves_a_part_loose() {
    let ports = [
        ("outlet", json!({}), 0),
        ("outlet", json!({"passes_on": true}), 1),
        ("terminator", json!({}), 0),
        ("splitter", json!({}), 2),
        ("splitter", json!({"legs": 4}), 4),
        ("tap", json!({"legs": 3}), 3),
        ("satellite_combiner", json!({}), 2),
        ("amplifier", json!({}), 1),
        ("amplifier", json!({"legs": 4, "modem_port": true}), 5),
        ("ground_block", json!({}), 1),
        ("unknown", json!({}), 1),
    ];
    for (kind, rating, count) in ports {
        let mut file = File::new();
        let feeder = file.part(kind, &[("rating", rating), ("feed", json!("nothing"))]);
        for port in 0..=count + 1 {
            let part = file.part("barrel", &[("feed", from(feeder, port))]);
            let expected = if (1..=count).contains(&port) { None } else { Some(LooseReason::NoSuchPort) };
            assert_eq!(file.loose(part), expected, "{kind} {port}");
        }
    }
}

#[test]
fn two_parts_on_one_port_both_hang_there() {
    let mut file = File::new();
    let entry = file.part("entry", &[]);
    let both = [(); 2].map(|()| file.part("barrel", &[("feed", from(entry, 1))]));
    assert_eq!(file.house().wiring.on_port(entry, 1).count(), both.len());
}

#[test]
fn the_newest_of_the_feeds_that_close_a_loop_gives_way() {
    let mut file = File::new();
    let [one, two, three] = [(); 3].map(|()| file.part("splitter", &[]));
    file.says(two, "feed", from(one, 1));
    file.says(three, "feed", from(two, 1));
    file.says(one, "feed", from(three, 1));
    assert_eq!(file.loose(one), Some(LooseReason::Loop));
    assert_eq!((file.loose(two), file.loose(three)), (None, None));
    // Deeper than 256.
    let mut file = File::new();
    let mut above = file.part("entry", &[]);
    for _ in 0..256 {
        above = file.part("barrel", &[("feed", from(above, 1))]);
        assert_eq!(file.loose(above), None);
    }
    let deep = file.part("barrel", &[("feed", from(above, 1))]);
    assert_eq!(file.loose(deep), Some(LooseReason::TooDeep));
}

#[test]
fn what_hung_on_something_removed_is_loose_and_hangs_there_again_when_it_is_brought_back() {
    let mut file = File::new();
    let entry = file.part("entry", &[]);
    let splitter = file.part("splitter", &[("feed", from(entry, 1))]);
    let outlet = file.part("outlet", &[("feed", from(splitter, 2)), ("rating", json!({"passes_on": true}))]);
    let below = file.part("terminator", &[("feed", from(outlet, 1))]);
    let removal = file.ledger.remove(splitter);
    file.write(&[removal]);
    let house = file.house();
    assert!(!house.parts.contains_key(&splitter));
    assert_eq!(file.loose(outlet), Some(LooseReason::FeederGone));
    assert_eq!(house.wiring.fed_from(outlet), [below]);
    file.write(&[Edit::bring_back(splitter)]);
    assert_eq!(file.loose(outlet), None);
}

#[test]
fn a_run_that_no_feed_names_is_a_record() {
    let mut file = File::new();
    let run = SubjectId::random();
    file.says(run, "is", json!("run"));
    let house = file.house();
    assert!(house.runs.contains_key(&run) && house.wiring.fed_over(run).is_none());
}

#[test]
fn what_is_read_from_a_label_goes_with_it_and_what_was_typed_stays() {
    let mut file = File::new();
    let part = file.part(
        "splitter",
        &[("label", json!("4-WAY SPLITTER 5-1002 MHz")), ("rating", json!({"power_pass": true}))],
    );
    let rating = |file: &File| file.house().parts[&part].rating.clone();
    assert_eq!((rating(&file).legs, rating(&file).power_pass), (4, Some(true)));
    assert!(file.ledger.shown(part, "rating").unwrap().value().get("legs").is_none());
    file.forget(part, "label");
    assert_eq!((rating(&file).legs, rating(&file).power_pass), (0, Some(true)));
    file.forget(part, "rating");
    assert_eq!(rating(&file).power_pass, None);
}

#[test]
fn what_cannot_be_is_kept_and_counts_as_not_said() {
    // Bounds as in docs/file.md: the last that can be, and what lies beyond.
    let length =
        |metres: f64| json!({"metres": metres, "low_metres": 0, "high_metres": metres, "known": "paced"});
    let mut file = File::new();
    let run = SubjectId::random();
    file.write(&[Edit::new(run, "is", "run"), Edit::new(run, "length", length(750.0))]);
    assert!(file.house().runs[&run].length.is_some() && file.house().impossible.is_empty());
    for metres in [750.1, -9.0, 1e308] {
        file.says(run, "length", length(metres));
        let house = file.house();
        assert_eq!(house.runs[&run].length, None, "{metres}");
        assert_eq!(house.impossible, [(run, "length".to_owned())]);
        // The store writes a whole number without a point.
        assert_eq!(file.ledger.shown(run, "length").unwrap().value()["metres"].as_f64(), Some(metres));
    }
    let amplifier = file.part("amplifier", &[("rating", json!({"legs": 255, "modem_port": true}))]);
    assert_eq!(file.house().parts[&amplifier].outputs(), 1);
    let splitter = file.part("splitter", &[("rating", json!({"legs": 2, "leg_losses_db": [-3.5, 3.5]}))]);
    assert!(file.house().parts[&splitter].rating.leg_losses_db.is_empty());
}

#[test]
fn what_names_nothing_is_kept_and_counts_as_not_said() {
    let mut file = File::new();
    let room = SubjectId::random();
    let outlet = file.part("outlet", &[("room", json!(room))]);
    let house = file.house();
    assert_eq!(house.parts[&outlet].room, Some(room));
    assert!(house.room_of(&house.parts[&outlet]).is_none() && house.wish_at(outlet).is_none());
    // The room's own words come later.
    file.says(room, "wish", json!({"down_mbps": 300, "up_mbps": 50}));
    assert!(file.house().wish_at(outlet).is_none(), "it is no room yet");
    file.says(room, "is", json!("room"));
    let house = file.house();
    assert_eq!(house.room_of(&house.parts[&outlet]).map(|room| room.id), Some(room));
    assert!(house.wish_at(outlet).is_some());
}
