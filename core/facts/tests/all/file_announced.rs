//! What a look says that a file brings is what taking it brings. Ids are fixed, files are written by hand.
#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fs;
use std::path::{Path, PathBuf};

use facts::FactsError;
use facts::fact::{AuthorId, Fact, SubjectId};
use facts::file::{Consent, Look, look, take, take_as_new};
use facts::store::Store;
use serde_json::json;
use tempfile::TempDir;

use super::file_support::{
    Bag, Chance, NO_LIMIT, add_photo, empty, go_on, id, line, pack, sha256_hex, stored, zip,
};

const SURVEY: &str = "00000000-0000-4000-8000-0000000000c1";

fn numbered(number: u64) -> String {
    id(1_760_000_000_000 + number)
}

fn word(number: u64, about: &[u64]) -> String {
    let about: Vec<String> = about.iter().map(|&about| numbered(about)).collect();
    line(number, 900 + number, "forget", &json!({ "facts": about }), &[])
}

fn frame_of(line: &str) -> String {
    let fact = Fact::from_line(line).unwrap();
    let over = fact.over().to_vec();
    let frame = Fact::forgotten(fact.id(), fact.act(), fact.by(), fact.subject(), fact.field(), over);
    frame.unwrap().to_line().unwrap()
}

fn file_of(home: &TempDir, survey: &str, lines: &[String], photos: &[Vec<u8>]) -> PathBuf {
    let mut bag = Bag::new(survey, lines.to_vec());
    bag.photos = photos.iter().map(|bytes| (format!("{}.jpg", sha256_hex(bytes)), bytes.clone())).collect();
    let path = home.path().join(format!("{}.lwk", SubjectId::random()));
    fs::write(&path, zip(&stored(&bag.entries()))).unwrap();
    path
}

/// Looks and takes without a yes to forgetting; everything that was announced is there, and nothing else.
fn comes_as_announced(path: &Path, store: &mut Store) -> Look {
    let seen = look(path, Some(store), NO_LIMIT, &mut go_on).unwrap();
    let before = store.ledger().len();
    let taken = take(path, store, Consent::NONE, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!(store.ledger().len(), before + seen.new_facts);
    assert_eq!((taken.facts.len(), taken.photos.len()), (seen.new_facts, seen.new_photos));
    assert_eq!((taken.waiting, store.wishes().unwrap()), (seen.forgotten.len(), seen.forgotten.clone()));
    assert_eq!(store.ledger().disagreements().len(), seen.new_disagreements.len());
    seen
}

#[test]
fn a_word_about_what_comes_with_it_is_announced_as_a_question() {
    let home = TempDir::new().unwrap();
    let tag = line(1, 1, "tag", &json!("S1"), &[]);
    let path = file_of(&home, SURVEY, &[tag.clone(), word(2, &[1])], &[]);
    let seen = look(&path, None, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.facts, seen.new_facts, seen.new_words), (2, 1, 1));
    let [wish] = seen.forgotten.as_slice() else { panic!("{:?}", seen.forgotten) };
    assert_eq!((wish.subject, wish.field.as_str()), (Fact::from_line(&tag).unwrap().subject(), "tag"));
    for (consent, facts, waiting) in [(Consent::NONE, 1, 1), (Consent::ALL, 2, 0)] {
        let folder = home.path().join(format!("{facts}.legwork"));
        let (store, taken) =
            take_as_new(&path, &folder, AuthorId::random(), consent, NO_LIMIT, &mut go_on).unwrap();
        assert_eq!((taken.facts.len(), taken.waiting), (facts, waiting));
        assert_eq!(store.wishes().unwrap().len(), waiting);
        assert_eq!(store.ledger().fact(taken.facts[0]).unwrap().is_forgotten(), waiting == 0);
    }
    // One about its frame, or about what is nowhere, is no question.
    for (tag, words, comes) in [(frame_of(&tag), word(2, &[1]), 2), (tag, word(2, &[7]), 1)] {
        let seen = look(&file_of(&home, SURVEY, &[tag, words], &[]), None, NO_LIMIT, &mut go_on).unwrap();
        assert_eq!((seen.new_facts, seen.new_words, seen.forgotten.len()), (comes, 2 - comes, 0));
    }
}

#[test]
fn what_was_said_after_something_forgotten_comes_without_a_yes() {
    let (home, mut store) = empty();
    let survey = store.survey_id().to_string();
    let (first, next) = (line(1, 1, "tag", &json!("S1"), &[]), line(3, 1, "tag", &json!("S2"), &[1]));
    comes_as_announced(&file_of(&home, &survey, std::slice::from_ref(&first), &[]), &mut store);
    let about = Fact::from_line(&first).unwrap().subject();
    let lines = [frame_of(&first), word(2, &[1]), next];
    let seen = comes_as_announced(&file_of(&home, &survey, &lines, &[]), &mut store);
    assert_eq!((seen.new_facts, seen.new_words, seen.forgotten.len()), (1, 1, 1));
    assert_eq!(store.ledger().shown(about, "tag").unwrap().value(), "S2");
    assert_eq!(store.ledger().history(about, "tag")[0].value(), "S1");
}

#[test]
fn what_was_forgotten_before_it_came_is_announced_as_a_frame() {
    let (home, mut store) = empty();
    let survey = store.survey_id().to_string();
    let picture = Chance::new().picture(300);
    let image = json!({"sha256": sha256_hex(&picture), "ext": "jpg", "bytes": 300, "width": 4, "height": 3});
    let lines = [
        line(1, 1, "image", &image, &[]),
        line(2, 2, "tag", &json!("S1"), &[]),
        line(3, 2, "tag", &json!("S2"), &[]),
    ];
    store.write_facts(vec![Fact::from_line(&word(9, &[1, 3])).unwrap()]).unwrap();
    let seen =
        comes_as_announced(&file_of(&home, &survey, &lines, std::slice::from_ref(&picture)), &mut store);
    assert_eq!((seen.new_facts, seen.photos, seen.new_photos), (3, 1, 0));
    assert_eq!(fs::read_dir(store.photos()).unwrap().count(), 0);
    // As a survey that no word was said in, all of it comes.
    let seen = look(&file_of(&home, SURVEY, &lines, &[picture]), None, NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.new_facts, seen.new_photos, seen.new_disagreements.len()), (3, 1, 1));
}

#[test]
fn what_was_forgotten_before_it_came_turns_nothing_upside_down() {
    let (home, mut store) = empty();
    let survey = store.survey_id().to_string();
    let (is_part, is_room) = (line(1, 1, "is", &json!("part"), &[]), line(3, 1, "is", &json!("room"), &[]));
    let held = [&is_part, &word(9, &[3])].map(|line| Fact::from_line(line).unwrap());
    store.write_facts(held.to_vec()).unwrap();
    let path = file_of(&home, &survey, &[is_part.clone(), is_room], &[]);
    let seen = comes_as_announced(&path, &mut store);
    assert_eq!((seen.new_facts, seen.upheaval.things, seen.upheaval.gone), (1, 1, 0));
    // Where nobody forgot it, the part would be a room.
    let folder = home.path().join("other.legwork");
    let first = file_of(&home, &survey, &[is_part], &[]);
    let (author, consent) = (AuthorId::random(), Consent::NONE);
    let mut other = take_as_new(&first, &folder, author, consent, NO_LIMIT, &mut go_on).unwrap().0;
    let seen = look(&path, Some(&mut other), NO_LIMIT, &mut go_on).unwrap();
    assert_eq!((seen.upheaval.gone, seen.upheaval.asks_first()), (1, true));
    let taken = take(&path, &mut other, consent, NO_LIMIT, &mut go_on);
    assert!(matches!(taken, Err(FactsError::Upheaval { gone: 1, .. })));
}

#[test]
fn a_damaged_photo_that_a_file_mends_is_announced_and_told() {
    let (home, mut store) = empty();
    let picture = Chance::new().picture(300);
    add_photo(&mut store, SubjectId::random(), &picture);
    let path = home.path().join("sent.lwk");
    pack(&mut store, &path);
    assert_eq!(comes_as_announced(&path, &mut store).new_photos, 0);
    let place = store.photos().join(format!("{}.jpg", sha256_hex(&picture)));
    fs::write(&place, &picture[..299]).unwrap();
    assert_eq!(comes_as_announced(&path, &mut store).new_photos, 1);
    assert_eq!(fs::read(&place).unwrap(), picture);
}
