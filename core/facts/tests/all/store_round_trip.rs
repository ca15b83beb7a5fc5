//! What is written to a survey's folder comes back, whoever writes and however often it is opened.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use facts::FactsError;
use facts::fact::{
    ActId, AuthorId, DeviceKey, Edit, Fact, FactClock, FactFault, FactId, Ledger, SubjectId, SurveyId, Writer,
};
use facts::file::{self, Consent, Limits, PackOptions};
use facts::home::{Home, Repaired};
use facts::store::Store;
use serde_json::{Value, json};
use tempfile::TempDir;

fn place() -> (TempDir, PathBuf) {
    let home = TempDir::new().unwrap();
    let folder = home.path().join("house.legwork");
    (home, folder)
}

fn names_in(folder: &std::path::Path) -> BTreeSet<String> {
    fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn a_new_survey_holds_a_database_and_a_folder_for_photos_and_nothing_lies_beside_it() {
    let (home, folder) = place();
    let store = Store::create(&folder, AuthorId::random()).unwrap();
    assert!(store.ledger().is_empty());
    drop(store);
    assert_eq!(names_in(&folder), ["photos", "survey.db"].map(String::from).into());
    assert_eq!(names_in(home.path()), ["house.legwork"].map(String::from).into());
}

#[test]
fn what_was_written_is_there_after_reopening() {
    let (_home, folder) = place();
    let author = AuthorId::random();
    let mut store = Store::create(&folder, author).unwrap();
    let (splitter, run) = (SubjectId::random(), SubjectId::random());
    let decision = json!({"known": "measured", "likely_m": 20.25, "words": "cellar \u{2192} attic, 日本"});
    let act = store.write(&[Edit::new(splitter, "tag", "S2"), Edit::new(run, "length", decision.clone())]);
    let act = act.unwrap();
    store.write(&[Edit::new(splitter, "tag", "S3")]).unwrap();
    store.write(&[Edit::new(run, "note", Value::Null)]).unwrap();
    let (lines, survey) = (store.ledger().to_lines().unwrap(), store.survey_id());
    drop(store);

    let store = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(store.survey_id(), survey);
    assert_eq!(store.ledger().to_lines().unwrap(), lines);
    assert_eq!(store.ledger().len(), 3);
    assert_eq!(store.ledger().of_act(act).len(), 2);
    assert_eq!(store.ledger().shown(run, "length").unwrap().value(), &decision);
    let tag = store.ledger().shown(splitter, "tag").unwrap();
    assert_eq!((tag.value(), tag.by(), tag.over().len()), (&json!("S3"), author, 1));
}

#[test]
fn members_unknown_to_this_release_are_kept() {
    let (_home, folder) = place();
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let line = concat!(
        r#"{"act":"00000000-0000-4000-8000-0000000000a1","by":"00000000-0000-4000-8000-0000000000b1","#,
        r#""colour":["later",{"a":1}],"field":"length","id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","#,
        r#""over":[],"subject":"00000000-0000-4000-8000-0000000000c1","value":15}"#
    );
    store.write_facts(vec![Fact::from_line(line).unwrap()]).unwrap();
    drop(store);
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(store.ledger().to_lines().unwrap(), format!("{line}\n"));
}

#[test]
fn two_who_write_in_turn_lose_nothing() {
    let (_home, folder) = place();
    let mut one = Store::create(&folder, AuthorId::random()).unwrap();
    let mut two = Store::open(&folder, AuthorId::random()).unwrap();
    let mut written = BTreeSet::new();
    let shared = SubjectId::random();
    for round in 0..20 {
        for store in [&mut one, &mut two] {
            let own = SubjectId::random();
            let edits = [Edit::new(own, "tag", format!("S{round}")), Edit::new(shared, "note", round)];
            let act = store.write(&edits).unwrap();
            written.extend(store.ledger().of_act(act).iter().map(|fact| fact.to_line().unwrap()));
        }
    }
    one.refresh().unwrap();
    let fresh = Store::open(&folder, AuthorId::random()).unwrap();
    // Facts about the shared note are over what the writer had seen, so only equal values may have been left out.
    assert!(written.len() >= 40 + 20, "{}", written.len());
    for store in [&one, &two, &fresh] {
        let held: BTreeSet<String> = store.ledger().facts().map(|fact| fact.to_line().unwrap()).collect();
        assert_eq!(held, written);
    }
}

#[test]
fn what_another_process_wrote_meanwhile_is_not_replaced_unseen() {
    let (_home, folder) = place();
    let mut one = Store::create(&folder, AuthorId::random()).unwrap();
    let run = SubjectId::random();
    one.write(&[Edit::new(run, "length", 12)]).unwrap();
    let mut two = Store::open(&folder, AuthorId::random()).unwrap();
    one.write(&[Edit::new(run, "length", 15)]).unwrap();
    two.write(&[Edit::new(run, "length", 20)]).unwrap();
    let found = two.ledger().disagreement(run, "length").unwrap();
    let sides: Vec<(&Value, AuthorId)> = found.sides.iter().map(|side| (side.value(), side.by())).collect();
    assert_eq!(sides.len(), 2);
    assert!(sides.contains(&(&json!(15), one.author())) && sides.contains(&(&json!(20), two.author())));
    assert_eq!(found.origin.iter().map(|fact| fact.value()).collect::<Vec<_>>(), [&json!(12)]);
    two.write(&[Edit::new(run, "length", 15)]).unwrap();
    assert!(one.refresh().unwrap());
    assert!(!one.refresh().unwrap());
    assert_eq!(one.ledger(), two.ledger());
    assert!(one.ledger().disagreements().is_empty());
}

#[test]
fn an_action_is_written_whole_or_not_at_all() {
    let (_home, folder) = place();
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let part = SubjectId::random();
    let edits = [Edit::new(part, "tag", "S1"), Edit::new(part, "note", "x".repeat(9000))];
    let refused = store.write(&edits).unwrap_err();
    assert!(matches!(&refused, FactsError::Fact(FactFault::TooLong { field, .. }) if field == "note"));
    assert!(!refused.to_string().contains("xxx"));

    // A file with a fact whose origin is missing.
    let mut clock = FactClock::system();
    let (whole, missing, broken) = (clock.next_id(), clock.next_id(), clock.next_id());
    let make = |id, over| {
        Fact::new(id, ActId::random(), AuthorId::random(), part, "tag", &json!(id.ms()), over).unwrap()
    };
    let refused = store.write_facts(vec![make(whole, vec![]), make(broken, vec![missing])]).unwrap_err();
    assert!(matches!(refused, FactsError::ReplacesUnknown { .. }));
    assert!(store.ledger().is_empty());
    drop(store);
    assert!(Store::open(&folder, AuthorId::random()).unwrap().ledger().is_empty());
}

#[test]
fn facts_are_taken_in_once_and_writing_goes_on_above_them() {
    let (home, folder) = place();
    let mut source = Store::create(&folder, AuthorId::random()).unwrap();
    let run = SubjectId::random();
    source.write(&[Edit::new(run, "length", 12)]).unwrap();
    source.write(&[Edit::new(run, "length", 15)]).unwrap();
    let facts: Vec<Fact> = source.ledger().facts().rev().cloned().collect();

    let copy = home.path().join("copy.legwork");
    Store::create(&copy, AuthorId::random()).unwrap();
    // This device is back in 1970.
    let mut store = Store::open_with(&copy, AuthorId::random(), FactClock::with_wall(|| 0)).unwrap();
    assert_eq!(store.write_facts(facts.clone()).unwrap().len(), 2);
    assert_eq!(store.write_facts(facts.clone()).unwrap().len(), 0);
    assert_eq!(store.ledger(), source.ledger());
    store.write(&[Edit::new(run, "length", 16)]).unwrap();
    let newest = store.ledger().shown(run, "length").unwrap();
    assert_eq!(newest.value(), &json!(16));
    assert!(newest.id() > facts[0].id());
}

#[test]
fn a_fact_of_the_year_9999_is_refused_and_drags_no_clock_along() {
    let (_home, folder) = place();
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    // 253,370,764,800 s after 1970 is 9999-01-01 (GNU date).
    let late = uuid::Builder::from_unix_timestamp_millis(253_370_764_800_000, &[0; 10]).into_uuid();
    let late = FactId::try_from(late).unwrap();
    let part = SubjectId::random();
    let fact = Fact::new(late, ActId::random(), AuthorId::random(), part, "tag", &json!("S1"), vec![]);
    let refused = store.write_facts(vec![fact.unwrap()]).unwrap_err();
    assert!(matches!(refused, FactsError::FromTheFuture { id } if id == late));
    store.write(&[Edit::new(part, "tag", "S2")]).unwrap();
    assert!(store.ledger().shown(part, "tag").unwrap().id() < late);
    assert_eq!(store.ledger().len(), 1);
}

/// Everything below a folder with the bits of its mode.
#[cfg(unix)]
fn modes(below: &std::path::Path) -> Vec<(PathBuf, bool, u32)> {
    use std::os::unix::fs::PermissionsExt;
    let mut found = Vec::new();
    let mut folders = vec![below.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap().map(Result::unwrap) {
            let (is_folder, mode) =
                (entry.file_type().unwrap().is_dir(), entry.metadata().unwrap().permissions().mode() & 0o777);
            found.push((entry.path(), is_folder, mode));
            if is_folder {
                folders.push(entry.path());
            }
        }
    }
    found
}

#[cfg(unix)]
#[test]
fn nobody_else_may_look_into_a_survey_also_into_one_that_stood_open() {
    use std::os::unix::fs::PermissionsExt;
    let (home, folder) = place();
    let picture = fs::read(format!("{}/tests/pictures/baseline.jpg", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "tag", "S1")]).unwrap();
    store.take_photo(&picture, Vec::new()).unwrap();
    let all_private = || {
        let found = modes(home.path());
        assert!(found.iter().any(|(path, ..)| path.ends_with("survey.db-wal")), "{found:?}");
        assert!(
            found.iter().any(|(path, ..)| path.extension().is_some_and(|ends| ends == "jpg")),
            "{found:?}"
        );
        for (path, is_folder, mode) in found {
            assert_eq!(mode, if is_folder { 0o700 } else { 0o600 }, "{} {mode:o}", path.display());
        }
    };
    all_private();
    drop(store);
    // As an earlier release or a copying program leaves it.
    for (path, is_folder, _) in modes(home.path()) {
        let mode = if is_folder { 0o755 } else { 0o644 };
        fs::set_permissions(&path, fs::Permissions::from_mode(mode)).unwrap();
    }
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "tag", "S2")]).unwrap();
    all_private();
}

#[test]
fn a_device_writes_under_an_id_of_its_own_in_each_survey() {
    let home = TempDir::new().unwrap();
    let old = AuthorId::random();
    let device = Writer::Device { key: DeviceKey::random(), before: Some(old) };
    let written = |name: &str, writer: Writer| {
        let mut store = Store::create(&home.path().join(name), writer).unwrap();
        store.write(&[Edit::new(SubjectId::random(), "tag", "S1")]).unwrap();
        (store.author(), store.folder().to_owned())
    };
    let (one, folder) = written("one.legwork", device);
    let (two, _) = written("two.legwork", device);
    assert!(one != two && one != old && two != old);
    // Whenever it is opened, by whichever way.
    assert_eq!(Store::open(&folder, device).unwrap().author(), one);
    assert_eq!(Store::open_to_read(&folder, device).unwrap().author(), one);
    assert_eq!(Repaired::open(&folder, device).unwrap().store.author(), one);
    let mut store = Store::open(&folder, device).unwrap();
    store = store.suspend().unwrap().resume().unwrap();
    assert_eq!(store.author(), one);
    // A survey of a release before keeps the id that stands in it, and what was written in it can be undone.
    let (before, folder) = written("old.legwork", old.into());
    let mut store = Store::open(&folder, device).unwrap();
    assert_eq!((before, store.author()), (old, old));
    let act = store.ledger().facts().next().unwrap().act();
    store.undo(act).unwrap();
    // A copy under another name is a survey of its own.
    let copy = Home::at(home.path()).unwrap().copy(&store, "copy", device).unwrap();
    assert!(copy.ledger().facts().all(|fact| fact.by() == copy.author() && fact.by() != old));
}

#[test]
fn a_survey_that_comes_back_in_a_file_has_the_same_author_here() {
    let home = TempDir::new().unwrap();
    let device = Writer::Device { key: DeviceKey::random(), before: None };
    let mut store = Store::create(&home.path().join("house.legwork"), device).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "tag", "S1")]).unwrap();
    let file = home.path().join("house.lwk");
    let page = |_: &Ledger, _: SurveyId| Ok::<_, FactsError>(String::new());
    file::pack(&mut store, &PackOptions::default(), &page, &file, &mut |_: file::Progress| true).unwrap();
    let again = home.path().join("again.legwork");
    let (back, _) = file::take_as_new(
        &file,
        &again,
        device,
        Consent::NONE,
        Limits::default(),
        &mut |_: file::Progress| true,
    )
    .unwrap();
    assert_eq!(back.author(), store.author());
    assert!(back.ledger().facts().all(|fact| fact.by() == back.author()));
}
