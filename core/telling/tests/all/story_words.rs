//! Every word that a story can need is there in English.

use facts::act;
use facts::fact::{AuthorId, Edit, Ledger, SubjectId};
use facts::store::Store;
use house::record::{
    Asked, CableKind, Connector, EntryKind, EntryState, Named, OutcomeKind, PartKind, PhotoRole, Plugged,
    PortEnd, Reply, ServiceKind, Sharing, SingleCable, Survey, TvSignal, field,
};
use house::story::{self, StoryTeller};
use serde_json::{Value, json};
use telling::words::{Figures, Language};
use tempfile::TempDir;

/// Every member of a list, as it stands in facts.
fn all<T: Named>(field: &'static str) -> impl Iterator<Item = (&'static str, Value)> {
    T::ALL.iter().map(move |member| (field, json!(member.name())))
}

/// Values of every field, every member of every closed list among them.
fn values() -> Vec<(&'static str, Value)> {
    let mut values: Vec<(&str, Value)> = Vec::new();
    values.extend(all::<PartKind>("kind").chain(all::<ServiceKind>("kind")));
    values.extend(all::<CableKind>("cable"));
    values.extend(all::<Connector>("connector_near").chain(all::<Connector>("connector_far")));
    values.extend(all::<EntryKind>("entry_kind").chain(all::<EntryState>("entry_state")));
    values.extend(all::<PhotoRole>("role").chain(all::<PortEnd>("end.3")));
    values.extend(all::<TvSignal>("signal").chain(all::<SingleCable>("single_cable")));
    values.extend(all::<Sharing>("sharing").chain(all::<Reply>("asked.cables")));
    values.extend(all::<OutcomeKind>("outcome").map(|(field, end)| (field, json!({"end": end}))));
    values.push(("asked.depends", json!(["phone", "alarm"])));
    for text in ["tag", "name", "place", "where", "label", "text", "text.0", "digest"] {
        values.push((text, json!("S1")));
    }
    values.extend([("port", json!(2)), ("ports", json!(3)), ("is", json!("part"))]);
    for known in ["measured", "paced", "guessed"] {
        values.push(("length", json!({"metres": 12, "low_metres": 10, "high_metres": 15, "known": known})));
    }
    let devices: Vec<_> = Plugged::ALL.iter().map(|device| device.name()).collect();
    values.extend([
        ("plugged", json!(devices)),
        ("plugged", json!([])),
        ("tag", Value::Null),
        ("feed", json!("nothing")),
    ]);
    for (ownership, shared) in [("own", false), ("own", true), ("rented", false), ("rented", true)] {
        values.push(("building", json!({"ownership": ownership, "shared": shared})));
    }
    let part = SubjectId::random();
    values.extend([
        ("feed", json!({"from": {"part": part, "port": 2, "run": null}})),
        ("room", json!(part)),
        ("of", json!(part)),
        ("about", json!(part)),
        ("measurement", json!(part)),
        ("change", json!({"replace_run": {"to": part}})),
        ("adapter", json!({"version": "2.5", "ethernet_mbps": 2500, "bridge": true})),
        ("network", json!({"version": "2.5", "ethernet_mbps": 2500})),
        ("wish", json!({"down_mbps": 500, "up_mbps": 100})),
        ("internet", json!({"down_mbps": 500, "up_mbps": 100})),
        ("measured", json!({"what": "level", "mhz": 600, "dbmv": -3})),
        ("measured", json!({"what": "throughput", "down_mbps": 900, "up_mbps": 800})),
        ("measured", json!({"what": "phy_rate", "mbps": 3000})),
        ("measured", json!({"what": "round_trip", "ms": 4})),
        ("file_name", json!("a picture.jpg")),
        ("taken", json!("2026-05-31T14:05:09")),
        ("top_mhz", json!(1218)),
        ("image", json!({"sha256": "ab", "ext": "jpg", "bytes": 3, "width": 40, "height": 30})),
        ("rating", json!({"legs": 4, "leg_losses_db": [7], "passes_on": true})),
    ]);
    values.extend(services_and_tests());
    values
}

/// The values that services and tests of outlets bring.
fn services_and_tests() -> Vec<(&'static str, Value)> {
    let part = SubjectId::random();
    let mut values = vec![
        ("measured", json!({"what": "error_ratio", "mhz": 603, "db": 36})),
        ("measured", json!({"what": "modem_sends", "dbmv": 44})),
        ("measured", json!({"what": "power", "sent_dbm": -10, "received_dbm": -40})),
        ("measured", json!({"what": "nodes_seen", "count": 3})),
        ("measured", json!({"what": "packet_loss", "percent": 1, "under_load": true})),
        ("measured", json!({"what": "packet_loss", "percent": 1, "under_load": false})),
        ("measured", json!({"what": "link", "state": "none"})),
        ("measured", json!({"what": "link", "state": "comes_and_goes"})),
        ("measured", json!({"what": "link", "state": "steady"})),
        ("adapter", json!({"version": "2.0", "bridge": false})),
        ("adapter", json!({"bridge": false})),
        ("behind_adapter", json!({"pieces": ["run", "switch"], "mbps": 100})),
        ("behind_adapter", json!({"pieces": []})),
        ("measured", json!({"what": "swings", "low_mbps": 6, "high_mbps": 100, "with_heat_or_hour": true})),
        ("modem", json!({"generation": "3.1", "upstream_top_mhz": 85})),
        (
            "other_network",
            json!({"version": "2.0", "bands": [{"low_mhz": 1400, "high_mhz": 1500}], "nodes": 2}),
        ),
        ("power", json!({"from": part, "to": part})),
        ("entry", json!(part)),
        ("served_from", json!(part)),
        ("device_filter", json!(true)),
        ("device_filter", json!(false)),
        ("drops_out", json!(true)),
        ("file_name", json!("DSC 0001.JPG")),
        ("print", json!("4-WAY 5-1002MHz")),
        ("taken", json!("2026-05-31T14:05:09")),
    ];
    for reach in ["internet", "house", "adapter_page"] {
        values.push(("how", json!({"reach": reach, "over_radio": reach == "internet"})));
    }
    values
}

#[test]
fn every_value_has_its_words() {
    let english = Language::english(Figures::default());
    let survey = Survey::new(SubjectId::random());
    for (field, value) in values() {
        let said = english.say(&story::value(&survey, field, &value));
        // A missing message is said by its id; a missing argument stands in braces.
        assert!(
            !said.contains("value-") && !said.contains("part-") && !said.contains('{'),
            "{field}: {said}"
        );
        let raw = value.as_str().unwrap_or_default();
        assert!(!raw.contains('_') || !said.contains(raw), "{field}: {said}");
    }
    // A field without a value here is one that nobody looked at.
    for line in field::lines() {
        let is_here = |field: &str| match line.name.strip_suffix('N') {
            Some(stem) => field.starts_with(stem),
            None => field == line.name,
        };
        assert!(values().iter().any(|(field, _)| is_here(field)), "{}", line.name);
    }
    let taken = story::value(&survey, "taken", &json!("2026-05-31T14:05:09"));
    assert_eq!(english.say(&taken), "2026-05-31 14:05");
    let rating = json!({"legs": 4, "band": {"low_mhz": 5, "high_mhz": 1675}, "says_moca": true});
    let told = english.say(&story::value(&survey, "rating", &rating));
    assert_eq!(told, "4 outputs, made for 5 to 1675 MHz and marked for MoCA");
    // What this release cannot read names no field of its own.
    let unread = json!({"legs": "four", "band": [5, 1675], "x": null});
    assert_eq!(
        english.say(&story::value(&survey, "rating", &unread)),
        "details that this release cannot tell"
    );
}

#[test]
fn every_field_has_its_name() {
    let english = Language::english(Figures::default());
    let names: Vec<String> = field::lines()
        .map(|line| line.name.replace(".N", ".3"))
        .chain(Asked::ALL.iter().map(|question| question.field()))
        .collect();
    for field in &names {
        let phrase = story::field_name(field);
        let said = english.say_if_known(&phrase).unwrap();
        assert!(phrase.id != "field-other" && !said.contains('{'), "{field}: {said}");
    }
    assert_eq!(english.say(&story::field_name("colour")), "a detail of a newer release (“colour”)");
    for id in [
        "photo-unassigned",
        "photo-missing",
        "forget-warning",
        "forget-also",
        "forget-done",
        "forget-later",
        "home-untitled",
        "home-progress",
        "home-repaired",
        "home-needs-file",
        "removed-thing",
        "changed-after-removal",
    ] {
        assert!(english.knows(id), "{id}");
    }
}

#[test]
fn stories_are_told_with_who_said_what() {
    let home = TempDir::new().unwrap();
    let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    let run = SubjectId::random();
    store.write(&[act::name_author(store.author(), "Ann (invented)")]).unwrap();
    store.write(&[Edit::new(run, "is", "run"), Edit::new(run, "tag", "R4")]).unwrap();
    store
        .write(&[Edit::new(
            run,
            "length",
            json!({"metres": 12, "low_metres": 10, "high_metres": 15, "known": "paced"}),
        )])
        .unwrap();
    let second = home.path().join("second.legwork");
    let mut other = Store::create_with(&second, AuthorId::random(), store.survey_id(), |_| Ok(())).unwrap();
    other.write_facts(store.ledger().facts().cloned().collect()).unwrap();
    let measured = json!({"metres": 14, "low_metres": 13.5, "high_metres": 14.5, "known": "measured"});
    other.write(&[Edit::new(run, "length", measured), Edit::new(run, "connector_far", "twist_on")]).unwrap();
    store.write_facts(other.ledger().facts().cloned().collect()).unwrap();

    let english = Language::english(Figures::default());
    let survey = store.survey_id();
    let said = |ledger: &Ledger, me: AuthorId| -> Vec<String> {
        let teller = StoryTeller::folded(ledger, survey, me).unwrap();
        let story = act::of_field(ledger, run, "length");
        story.iter().map(|said| english.say(&teller.said(said))).collect()
    };
    let lines = said(store.ledger(), other.author());
    assert!(
        lines[0]
            .starts_with("Ann (invented) wrote the length: about 12 m, 10 to 15 (39 ft, 33 to 49), paced ("),
        "{lines:?}"
    );
    assert!(lines[0].contains(", until you changed it ("), "{lines:?}");
    assert!(lines[1].starts_with("you wrote the length: about 14 m (46 ft, 44 to 48)"), "{lines:?}");
    let lines = said(store.ledger(), store.author());
    assert!(lines[1].starts_with("somebody who gave no name ("), "{lines:?}");

    let all = act::of_subject(store.ledger(), run);
    let teller = StoryTeller::folded(store.ledger(), survey, store.author()).unwrap();
    let spoken: Vec<String> = all.iter().map(|one| english.say(&teller.said(one))).collect();
    assert_eq!(spoken.len(), 5);
    assert!(spoken[4].contains("the connector nearer the outlet: a twist-on connector"), "{spoken:?}");

    other.write(&[Edit::new(run, "tag", "R5")]).unwrap();
    // Of two who write in the same millisecond either may count as the later.
    std::thread::sleep(std::time::Duration::from_millis(5));
    store.write(&[Edit::new(run, "tag", "R6")]).unwrap();
    store.write_facts(other.ledger().facts().cloned().collect()).unwrap();
    let found = &store.ledger().disagreements()[0];
    let teller = StoryTeller::folded(store.ledger(), survey, store.author()).unwrap();
    let spoken = english.say(&teller.disagreement(found));
    assert!(spoken.starts_with("R6 (a cable), the tag: "), "{spoken}");
    assert!(spoken.contains("you said R6"), "{spoken}");
    assert!(spoken.contains("Before, it was R4"), "{spoken}");
}
