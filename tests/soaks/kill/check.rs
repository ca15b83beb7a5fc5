//! What must be there after a kill, and what must not.

#[path = "../../record/holding.rs"]
mod holding;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use facts::fact::{AuthorId, FORGET, Ledger, SubjectId};
use facts::home::{Found, Home};
use facts::photo::Picture;
use facts::store::Store;
use holding::holding;
use serde_json::json;

fn subject(text: &str) -> SubjectId {
    text.parse().unwrap()
}

/// Checks all that was ever promised about a survey, and that nothing else is there by half.
pub fn survey(folder: &Path, promised: &[String]) {
    let store = Store::open(folder, AuthorId::random()).unwrap();
    let drafts: BTreeMap<SubjectId, String> =
        store.drafts().unwrap().into_iter().map(|draft| (draft.subject, draft.text)).collect();
    let ledger = store.ledger();
    let shown = |about: &str, field: &str| ledger.shown(subject(about), field).unwrap().value().clone();
    let finished: Vec<&str> =
        promised.iter().filter_map(|line| line.strip_prefix("finished ")?.split(' ').next()).collect();
    let forgot = |lines: &[String]| lines.iter().filter(|line| line.starts_with("forgot ")).count();
    // One that was written and not acknowledged may have been the last thing of each writer.
    let unsaid = ledger.facts().filter(|fact| fact.field() == FORGET).count() - forgot(promised);
    for (place, line) in promised.iter().enumerate() {
        match line.split(' ').collect::<Vec<_>>()[..] {
            ["edit" | "secret", part, number] => {
                assert_eq!(shown(part, "tag"), json!(number.parse::<u32>().unwrap()), "{line}");
            }
            ["photo", photo, name] => {
                let image = store.photo_image(subject(photo)).unwrap();
                assert_eq!(image.file_name(), name);
                let bytes = fs::read(store.photo_path(subject(photo)).unwrap()).unwrap();
                assert_eq!(Picture::clean(&bytes).unwrap().image(), image);
            }
            ["draft", about, number] => {
                let text = format!("half {number}");
                // It is still a draft, or became a fact: one of the two, never both and never none.
                let is_fact = ledger.shown(subject(about), "text").is_some();
                // What is half typed goes with what is forgotten after it.
                let may_be_gone = unsaid > 0 || forgot(&promised[place..]) > 0;
                let draft = drafts.get(&subject(about));
                assert!(!(is_fact && draft.is_some()), "{line}");
                assert!(is_fact || may_be_gone || draft.is_some(), "{line}");
                assert!(draft.is_none_or(|draft| *draft == text), "{line}");
                assert!(is_fact || !finished.contains(&about), "{line}");
            }
            ["finished", about, number] => assert_eq!(shown(about, "text"), json!(format!("half {number}"))),
            ["undone", part] => assert_eq!(shown(part, "tag"), json!(null), "{line}"),
            // Nor beside it in the home folder.
            ["forgot", secret] => {
                assert_eq!(holding(folder.parent().unwrap(), secret.as_bytes()), [""; 0], "{line}");
            }
            ["open" | "taken", ..] => {}
            _ => unreachable!("{line}"),
        }
    }
    // Every act of the writer has two facts, but for the one that makes a draft a fact or forgets something, and the
    // one of a group.
    for act in facts::act::acts(ledger) {
        let has = |names: &[&str]| act.facts.iter().any(|fact| names.contains(&fact.field()));
        let facts = if has(&["group"]) { 8 } else { 2 - usize::from(has(&["text", "forget"])) };
        assert_eq!(act.facts.len(), facts, "{:?}", act.facts);
    }
    assert!(store.missing_photos().unwrap().is_empty());
    // What was taken in by half counts for nothing and went at the opening.
    let named = ledger_photos(&store);
    assert_eq!(fs::read_dir(store.photos()).unwrap().count(), named);
}

fn ledger_photos(store: &Store) -> usize {
    let ledger = store.ledger();
    let names: std::collections::BTreeSet<String> = ledger
        .subjects()
        .filter_map(|about| store.photo_image(about).ok())
        .map(|image| image.file_name())
        .collect();
    names.len()
}

/// Checks a home folder in which surveys were made, copied and deleted.
pub fn home(home: &Home, promised: &[String]) {
    // One opening sweeps what the kill left.
    let home = &Home::at(home.folder()).unwrap();
    let list = home.list().unwrap();
    for entry in &list {
        assert!(matches!(entry.found, Found::Survey(_)), "{entry:?}");
        Store::open(&entry.folder, AuthorId::random()).unwrap();
    }
    let names: Vec<String> = list.iter().map(facts::home::Entry::folder_name).collect();
    let deleted: Vec<&str> = promised.iter().filter_map(|line| line.strip_prefix("deleted ")).collect();
    for name in promised.iter().filter_map(|line| line.strip_prefix("made ")) {
        let is_there = names.iter().any(|there| there == name);
        let last = promised.last().is_some_and(|line| line.ends_with(name) && line.starts_with("made copy"));
        // A deletion that was begun and not acknowledged may have happened or not.
        assert!(last || is_there != deleted.contains(&name), "{name}");
    }
    for entry in fs::read_dir(home.folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(name.ends_with(".legwork"), "{name} was left");
    }
}

/// Checks that each file came whole or not at all: a file brings four parts of one group, each with its tag and a photo.
pub fn groups(ledger: &Ledger, promised: &[String]) {
    let mut found: BTreeMap<u64, usize> = BTreeMap::new();
    for about in ledger.subjects() {
        if let Some(group) = ledger.shown(about, "group") {
            assert!(ledger.shown(about, "tag").is_some(), "half an act came");
            *found.entry(group.value().as_u64().unwrap()).or_default() += 1;
        }
    }
    for (group, parts) in &found {
        assert_eq!(*parts, 4, "group {group} came by half");
    }
    for group in promised.iter().filter_map(|line| line.strip_prefix("taken ")) {
        assert!(found.contains_key(&group.parse().unwrap()), "group {group} is lost");
    }
}
