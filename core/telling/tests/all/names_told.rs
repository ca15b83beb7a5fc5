//! Everything has a name: over houses at random, whatever is told of things, fields and values holds no id, no name of a
//! field and no message without words, be it there, removed, forgotten or of a newer release.
#![expect(clippy::unwrap_used, reason = "a house that cannot be made or told fails the test")]

use facts::act;
use facts::fact::{AuthorId, Edit, FORGET, REMOVED, SubjectId};
use facts::store::Store;
use house::record::{Differs, Survey, field};
use house::story::StoryTeller;
use houses::random;
use phrase::Phrase;
use serde_json::{Value, json};
use telling::words::{Figures, Language};
use tempfile::TempDir;

const HOUSES: u64 = 12;

#[test]
fn nothing_is_told_by_an_id_or_the_name_of_a_field() {
    for seed in 0..HOUSES {
        let house = random::survey(seed);
        let home = TempDir::new().unwrap();
        let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
        store.write(&edits(&house, store.survey_id().subject())).unwrap();
        all_is_told(&store);
        changed(&mut store, &house, &home);
        all_is_told(&store);
    }
}

/// A house as facts, with what no random house has: notes, photos, steps, and what a newer release may write.
fn edits(house: &Survey, survey: SubjectId) -> Vec<Edit> {
    let mut edits = Vec::new();
    house.parts.values().for_each(|part| add(&mut edits, part.id, "part", part.stated()));
    house.runs.values().for_each(|run| add(&mut edits, run.id, "run", run.stated()));
    house.rooms.values().for_each(|room| add(&mut edits, room.id, "room", room.stated()));
    house.services.values().for_each(|service| add(&mut edits, service.id, "service", service.stated()));
    house.readings.values().for_each(|reading| add(&mut edits, reading.id, "reading", reading.stated()));
    let about = house.parts.keys().chain(house.runs.keys()).chain(house.rooms.keys());
    let about: Vec<SubjectId> = about.copied().collect();
    for (about, measured) in about.iter().chain([&survey]).cycle().zip(readings()) {
        let id = SubjectId::random();
        add(
            &mut edits,
            id,
            "reading",
            vec![Edit::new(id, "measured", measured), Edit::new(id, "about", json!(about))],
        );
    }
    for (number, about) in about.iter().enumerate() {
        let id = SubjectId::random();
        match number % 4 {
            0 => add(
                &mut edits,
                id,
                "note",
                vec![Edit::new(id, "text", "a note"), Edit::new(id, "about", json!(about))],
            ),
            1 => {
                let image = json!({"sha256": "ab", "ext": "jpg", "bytes": 3, "width": 40, "height": 30});
                let of = if number % 3 == 0 { Value::Null } else { json!(about) };
                add(&mut edits, id, "photo", vec![Edit::new(id, "image", image), Edit::new(id, "of", of)]);
            }
            2 if house.parts.contains_key(about) => {
                let change = json!({"replace_run": {"to": about}});
                add(
                    &mut edits,
                    id,
                    "work",
                    vec![Edit::new(id, "change", change), Edit::new(id, "outcome", json!({"end": "done"}))],
                );
            }
            _ => {
                edits.push(Edit::new(*about, "colour_of_it", json!({"shade_no": 3, "of_part": about})));
                edits.push(Edit::new(*about, "like_that_one", json!(about)));
            }
        }
        if number == 0 {
            let measurement = SubjectId::random();
            let digest = "0f".repeat(32);
            add(
                &mut edits,
                measurement,
                "measurement",
                vec![Edit::new(measurement, "ports", 3), Edit::new(measurement, "digest", digest)],
            );
            add(&mut edits, *about, "part", vec![Edit::new(*about, "measurement", json!(measurement))]);
            edits.push(Edit::new(survey, "like_that_one", json!(about)));
        }
    }
    edits
}

fn add(edits: &mut Vec<Edit>, id: SubjectId, is: &str, stated: Vec<Edit>) {
    edits.push(Edit::new(id, field::IS, is));
    edits.extend(stated);
}

/// A reading of every kind.
fn readings() -> Vec<Value> {
    vec![
        json!({"what": "level", "mhz": 603, "dbmv": -3}),
        json!({"what": "error_ratio", "mhz": 603, "db": 36}),
        json!({"what": "modem_sends", "dbmv": 44}),
        json!({"what": "throughput", "down_mbps": 900, "up_mbps": 800}),
        json!({"what": "phy_rate", "mbps": 3000}),
        json!({"what": "round_trip", "ms": 4}),
        json!({"what": "power", "sent_dbm": -10, "received_dbm": -40}),
        json!({"what": "nodes_seen", "count": 3}),
        json!({"what": "packet_loss", "percent": 1, "under_load": true}),
        json!({"what": "link", "state": "comes_and_goes"}),
        json!({"what": "swings", "low_mbps": 6, "high_mbps": 100, "with_heat_or_hour": true}),
    ]
}

/// Takes the house apart: tags emptied, cables changed, things removed and forgotten, two people apart.
fn changed(store: &mut Store, house: &Survey, home: &TempDir) {
    let second = home.path().join("second.legwork");
    let mut other = Store::create_with(&second, AuthorId::random(), store.survey_id(), |_| Ok(())).unwrap();
    other.write_facts(store.ledger().facts().cloned().collect()).unwrap();
    let parts: Vec<SubjectId> = house.parts.keys().copied().collect();
    for (number, part) in parts.iter().enumerate() {
        if number % 3 == 0 {
            store.write(&[Edit::new(*part, "tag", Value::Null)]).unwrap();
        }
        if number % 4 == 1 {
            // The cable that led there joins nothing any more.
            store.write(&[Edit::new(*part, "feed", "nothing")]).unwrap();
            other.write(&[Edit::new(*part, "where", "on the shelf")]).unwrap();
            store.write(&[Edit::new(*part, "where", "in the box")]).unwrap();
        }
    }
    let rooms: Vec<SubjectId> = house.rooms.keys().copied().collect();
    for room in rooms.iter().step_by(2) {
        store.forget_field(*room, "name").unwrap();
    }
    for room in rooms.iter().skip(1).step_by(2) {
        store.write(&[Edit::new(*room, "name", " ")]).unwrap();
    }
    for run in house.runs.keys().step_by(3) {
        store.write(&[Edit::new(*run, "tag", Value::Null)]).unwrap();
        store.write(&[Edit::new(*run, "cable", "seven")]).unwrap();
        other.write(&[Edit::new(*run, "cable", "eleven")]).unwrap();
    }
    let subjects: Vec<SubjectId> =
        store.ledger().subjects().filter(|id| *id != store.survey_id().subject()).collect();
    let author = store.author().subject();
    let gone: Vec<SubjectId> = subjects.iter().copied().filter(|id| *id != author).step_by(5).collect();
    store.remove(&gone).unwrap();
    let forgotten: Vec<SubjectId> = subjects.into_iter().filter(|id| *id != author).step_by(17).collect();
    for subject in forgotten {
        store.forget_thing(subject).unwrap();
    }
    store.write_facts(other.ledger().facts().cloned().collect()).unwrap();
}

/// Tells all of it, and looks at every sentence.
fn all_is_told(store: &Store) {
    let english = Language::english(Figures::default());
    let (ledger, me) = (store.ledger(), store.author());
    let teller = StoryTeller::folded(ledger, store.survey_id(), me).unwrap();
    let told = |phrase: &Phrase| holds_names(&english.say(phrase));
    let subjects: Vec<SubjectId> = ledger.subjects().collect();
    for subject in &subjects {
        told(&teller.thing(*subject));
        for name in ledger.fields(*subject) {
            told(&teller.about(*subject, name));
        }
        for said in act::of_subject(ledger, *subject) {
            told(&teller.said(&said));
            told(&teller.fact(said.fact));
            if said.fact.field() != FORGET && said.fact.field() != REMOVED {
                told(&teller.value(said.fact.field(), said.fact.value()));
            }
        }
    }
    for found in ledger.disagreements() {
        told(&teller.disagreement(&found));
    }
    for removed in act::removed(ledger) {
        let line = english.say(&teller.removal(removed.subject, removed.fact));
        holds_names(&line);
        assert!(!line.contains("no longer in the survey"), "{line}");
    }
}

fn holds_names(line: &str) {
    let word = |word: &str| word.trim_matches(|sign: char| !sign.is_alphanumeric()).to_owned();
    let words: Vec<String> = line.split_whitespace().map(word).collect();
    let is_id = |word: &String| {
        let digits = word.chars().filter(char::is_ascii_hexdigit).count();
        digits >= 16
            || (word.contains('_') && !word.contains("colour_of_it") && !word.contains("like_that_one"))
    };
    assert!(!words.iter().any(is_id), "{line}");
    let bare = [
        "thing-", "field-", "value-", "part-", "run-", "said-", "told-", "reading-", "rated-", "room-",
        "change-",
    ];
    assert!(!words.iter().any(|word| bare.iter().any(|id| word.starts_with(id))), "{line}");
    for never in ["without a tag", "{", "}", "  ", "null", "shade"] {
        assert!(!line.contains(never), "{line}");
    }
    let own = ["“colour_of_it”", "“like_that_one”"].iter().any(|name| line.contains(name));
    assert!(own || !line.contains('_'), "{line}");
}
