//! The home folder: list, rename, copy, set aside, bring back, delete, sweep, repair.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fs;
use std::path::{Path, PathBuf};

use facts::fact::{AuthorId, Edit, Fact, SubjectId};
use facts::home::{Found, Home, Repaired};
use facts::store::{Store, Summary, peek, salvage};
use facts::{FactsError, file};
use house::document::Document;
use house::label_seen::labels_seen;
use house::record::{field, fold};
use serde_json::json;
use tempfile::TempDir;

fn home() -> (TempDir, Home) {
    let folder = TempDir::new().unwrap();
    let home = Home::at(&folder.path().join("surveys")).unwrap();
    (folder, home)
}

fn make(home: &Home, name: &str) -> Store {
    let mut store = Store::create(&home.place(name).unwrap(), AuthorId::random()).unwrap();
    let about = store.survey_id().subject();
    store
        .write(&[
            Edit::new(about, field::NAME, format!("{name} house")),
            Edit::new(about, field::PLACE, "Nowhere"),
        ])
        .unwrap();
    for kind in ["room", "part", "part", "run"] {
        store.write(&[Edit::new(SubjectId::random(), field::IS, kind)]).unwrap();
    }
    store
}

fn summaries(home: &Home) -> Vec<Summary> {
    home.list()
        .unwrap()
        .into_iter()
        .map(|entry| match entry.found {
            Found::Survey(look) => look.summary,
            Found::Trouble(error) => unreachable!("{error}"),
        })
        .collect()
}

#[test]
fn what_is_not_a_surveys_own_keeps_its_place_when_the_survey_is_deleted() {
    let (_folder, home) = home();
    let store = make(&home, "mine");
    let folder = store.folder().to_owned();
    store.close().unwrap();
    let strange = ["letter.txt", "photos/letter.txt", "small/letter.txt", "photos/trip/letter.txt"];
    for place in strange {
        let place = folder.join(place);
        fs::create_dir_all(place.parent().unwrap()).unwrap();
        fs::write(&place, place.to_str().unwrap()).unwrap();
    }
    let small = format!("{}.jpg", "0f".repeat(32));
    fs::write(folder.join("small").join(&small), "made anew").unwrap();
    // Half a small picture, as an earlier release named it.
    let half = format!(".{}.part", uuid::Uuid::now_v7());
    fs::write(folder.join("small").join(&half), "half").unwrap();
    fs::create_dir(home.folder().join("mine.kept")).unwrap();
    let kept = home.delete(&folder).unwrap().unwrap();
    assert_eq!(kept, home.folder().join("mine 2.kept"));
    for place in strange {
        assert_eq!(fs::read_to_string(kept.join(place)).unwrap(), folder.join(place).to_str().unwrap());
    }
    assert!(!kept.join("small").join(small).exists() && !folder.exists());
    assert!(!kept.join("small").join(half).exists());
}

#[test]
fn a_survey_is_not_deleted_where_a_folder_in_it_cannot_be_looked_through() {
    let (_folder, home) = home();
    for inner in ["photos", "small"] {
        let store = make(&home, inner);
        let folder = store.folder().to_owned();
        store.close().unwrap();
        fs::write(folder.join("letter.txt"), "mine").unwrap();
        let place = folder.join(inner);
        let _ = fs::remove_dir_all(&place);
        // A file where a folder belongs: nobody can list what is in it, not even a machine's owner.
        fs::write(&place, "somebody's").unwrap();
        assert!(home.delete(&folder).is_err());
        assert_eq!(fs::read_to_string(&place).unwrap(), "somebody's");
        assert_eq!(fs::read_to_string(folder.join("letter.txt")).unwrap(), "mine");
        // Not there at all: nothing to look through.
        fs::remove_file(&place).unwrap();
        assert!(home.delete(&folder).unwrap().is_some());
        assert!(!folder.exists());
    }
}

#[test]
fn the_list_shows_each_without_opening_it() {
    let (_folder, home) = home();
    let old = make(&home, "old").summary().clone();
    let mut open = make(&home, "open");
    // Written and not closed: the list shows it all the same.
    open.write(&[Edit::new(SubjectId::random(), field::IS, "room")]).unwrap();
    assert_eq!(summaries(&home), [open.summary().clone(), old.clone()]);
    assert_eq!(old.name.as_deref(), Some("old house"));
    assert_eq!(old.place.as_deref(), Some("Nowhere"));
    assert_eq!((old.progress.rooms, old.progress.parts, old.progress.runs), (1, 2, 1));
    assert_eq!(open.summary().progress.rooms, 2);
    let newest = open.ledger().facts().last().unwrap().id();
    assert_eq!(open.summary().newest, Some(newest));
    drop(open);
    summaries(&home);
    // A look leaves nothing behind.
    let mut names: Vec<String> = fs::read_dir(home.place("open").unwrap())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(names, ["photos", "survey.db"]);
}

#[test]
fn what_is_in_trouble_is_in_the_list_with_its_reason() {
    let (_folder, home) = home();
    drop(make(&home, "fine"));
    fs::create_dir(home.place("empty").unwrap()).unwrap();
    drop(make(&home, "newer"));
    let database = rusqlite::Connection::open(home.place("newer").unwrap().join("survey.db")).unwrap();
    database.pragma_update(None, "user_version", 99).unwrap();
    drop(database);
    let list = home.list().unwrap();
    assert_eq!(
        list.iter().map(facts::home::Entry::folder_name).collect::<Vec<_>>(),
        ["fine", "empty", "newer"]
    );
    assert!(matches!(list[1].found, Found::Trouble(FactsError::NotASurvey { .. })));
    assert!(matches!(list[2].found, Found::Trouble(FactsError::Newer { found: 99, .. })));
}

#[test]
fn two_hundred_surveys_are_listed() {
    let (_folder, home) = home();
    let first = make(&home, "0");
    let from = first.folder().to_owned();
    drop(first);
    for number in 1..200 {
        let to = home.place(&number.to_string()).unwrap();
        fs::create_dir(&to).unwrap();
        fs::copy(from.join("survey.db"), to.join("survey.db")).unwrap();
    }
    assert_eq!(home.list().unwrap().len(), 200);
}

#[test]
fn rename_set_aside_bring_back_delete() {
    let (_folder, home) = home();
    drop(make(&home, "one"));
    drop(make(&home, "two"));
    let (one, two) = (home.place("one").unwrap(), home.place("two").unwrap());
    assert!(matches!(home.rename(&one, "two"), Err(FactsError::AlreadyThere { .. })));
    for wrong in ["", ".", "..", "a/b", "a\\b", "a:b", "a\n", ".hidden", "end ", &"x".repeat(201)] {
        let refused = home.rename(&one, wrong);
        let too_long = matches!(refused, Err(FactsError::FolderNameTooLong { found, most: 200 }) if found == wrong.len());
        assert!(matches!(refused, Err(FactsError::FolderName)) || too_long, "{wrong:?}");
        assert_eq!(too_long, wrong.len() > 200, "{wrong:?}");
    }
    let three = home.rename(&one, "three").unwrap();
    assert!(!one.exists() && Store::open(&three, AuthorId::random()).is_ok());

    let aside = home.set_aside(&two).unwrap();
    assert_eq!((home.list().unwrap().len(), home.set_aside_list().unwrap().len()), (1, 1));
    drop(make(&home, "two"));
    let back = home.bring_back(&aside).unwrap();
    assert_eq!(back, home.place("two 2").unwrap());
    assert_eq!((home.list().unwrap().len(), home.set_aside_list().unwrap().len()), (3, 0));

    home.delete(&back).unwrap();
    assert!(matches!(home.delete(&back), Err(FactsError::NotASurvey { .. })));
    fs::write(home.folder().join("letter.txt"), "mine").unwrap();
    assert!(home.delete(&home.folder().join("letter.txt")).is_err());
    assert_eq!(home.list().unwrap().len(), 2);
    assert!(home.folder().join("letter.txt").exists());
}

#[test]
fn a_survey_that_is_open_is_neither_moved_nor_deleted() {
    let (_folder, home) = home();
    let mut store = make(&home, "one");
    let one = store.folder().to_owned();
    let refused = |store: &Store| {
        let before = state_of(home.folder());
        for refused in [home.rename(&one, "two").err(), home.set_aside(&one).err(), home.delete(&one).err()] {
            assert!(matches!(refused, Some(FactsError::Busy { .. })), "{refused:?}");
        }
        assert_eq!(state_of(home.folder()).keys().collect::<Vec<_>>(), before.keys().collect::<Vec<_>>());
        assert!(store.survey().is_ok());
    };
    refused(&store);
    store.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    refused(&store);
    drop(store);
    // A log that a dead process left hinders nobody.
    let (database, log) = (one.join("survey.db"), one.join("survey.db-wal"));
    let mut store = Store::open(&one, AuthorId::random()).unwrap();
    store.write(&[Edit::new(SubjectId::random(), "is", "room")]).unwrap();
    let left = (fs::read(&database).unwrap(), fs::read(&log).unwrap());
    let facts = store.ledger().len();
    drop(store);
    fs::write(&database, &left.0).unwrap();
    fs::write(&log, &left.1).unwrap();
    let two = home.rename(&one, "two").unwrap();
    assert_eq!(peek(&two).unwrap().summary.facts, facts as u64, "with what stood in the log alone");
    // Nor does one that is damaged.
    fs::write(two.join("survey.db"), vec![7; 8192]).unwrap();
    fs::write(two.join("survey.db-wal"), "x").unwrap();
    home.delete(&two).unwrap();
}

#[test]
fn leftovers_are_swept_and_nothing_else() {
    let (_folder, home) = home();
    drop(make(&home, "one"));
    let leftover = home.folder().join(".00000000-0000-4000-8000-0000000000aa.unfinished");
    let others = home.folder().join(".mine.unfinished");
    for folder in [&leftover, &others] {
        fs::create_dir_all(folder.join("photos")).unwrap();
    }
    assert_eq!(home.sweep().unwrap(), 1);
    assert!(!leftover.exists() && others.exists() && home.list().unwrap().len() == 1);
}

#[test]
fn a_copy_is_a_survey_of_its_own() {
    let (_folder, home) = home();
    let mut first = make(&home, "first");
    let part = SubjectId::random();
    let about = first.survey_id().subject();
    let mut other = Store::open(first.folder(), AuthorId::random()).unwrap();
    first.write(&[Edit::new(part, field::IS, "part"), Edit::new(part, "tag", "S1")]).unwrap();
    // Written without having seen the first: a disagreement.
    other.write(&[Edit::new(part, "tag", "S2")]).unwrap();
    first.refresh().unwrap();
    let note = first.add_note(Some(about), "about the whole").unwrap();
    let picture =
        fs::read(format!("{}/../facts/tests/pictures/grey.jpg", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let photo = first.add_photo(&picture, Some(part), None).unwrap();
    let gone = SubjectId::random();
    first.write(&[Edit::new(gone, field::IS, "room"), Edit::new(gone, field::NAME, "gone")]).unwrap();
    first.remove(&[gone]).unwrap();
    first.forget_field(about, field::PLACE).unwrap();

    let copy = home.copy(&first, "second", AuthorId::random()).unwrap();
    assert_ne!(copy.survey_id(), first.survey_id());
    for fact in copy.ledger().facts() {
        assert!(first.ledger().fact(fact.id()).is_none() && fact.by() == copy.author());
    }
    assert_eq!(story_acts(&copy), 1);
    let records = fold(copy.ledger(), copy.survey_id()).unwrap();
    assert_eq!((records.name.as_deref(), records.place.as_deref()), (Some("second"), None));
    assert_eq!(records.notes[&note].about, Some(copy.survey_id().subject()));
    assert_eq!((records.parts.len(), records.rooms.len()), (3, 1));
    assert_eq!(copy.ledger().disagreements().len(), 1);
    assert_eq!(
        fs::read(copy.photo_path(photo).unwrap()).unwrap(),
        fs::read(first.photo_path(photo).unwrap()).unwrap()
    );
    assert!(copy.missing_photos().unwrap().is_empty());
    assert!(!copy.ledger().to_lines().unwrap().contains("gone"));
}

fn story_acts(store: &Store) -> usize {
    facts::act::acts(store.ledger()).len()
}

/// A survey with many facts, closed, and those facts.
fn large(home: &Home) -> (PathBuf, Vec<Fact>, Store) {
    let mut store = make(home, "large");
    for _ in 0..40 {
        let edits: Vec<Edit> =
            (0..10).map(|_| Edit::new(SubjectId::random(), "text", json!("word ".repeat(30)))).collect();
        store.write(&edits).unwrap();
    }
    let facts = store.ledger().facts().cloned().collect();
    let folder = store.folder().to_owned();
    let (survey, author) = (store.survey_id(), store.author());
    drop(store);
    let other = Store::create_with(&home.place("other").unwrap(), author, survey, |_| Ok(())).unwrap();
    (folder, facts, other)
}

/// Overwrites the pages of a table or index with 0xFF.
fn damage(folder: &Path, name: &str, most: usize) {
    let path = folder.join("survey.db");
    let database = rusqlite::Connection::open(&path).unwrap();
    let root: i64 = database
        .query_row("SELECT rootpage FROM sqlite_schema WHERE name = ?1", [name], |row| row.get(0))
        .unwrap();
    drop(database);
    let mut bytes = fs::read(&path).unwrap();
    let root = usize::try_from(root).unwrap();
    // The root and, for `most` above 1, the pages that its first cells point to (file format, 1.6: an interior page
    // starts its cells with the number of a page).
    let page = bytes[(root - 1) * 4096..root * 4096].to_vec();
    let mut pages = vec![root];
    if most > 1 && matches!(page[0], 2 | 5) {
        let cells = usize::from(u16::from_be_bytes([page[3], page[4]]));
        pages = (0..cells.min(most - 1))
            .map(|cell| {
                let at = usize::from(u16::from_be_bytes([page[12 + 2 * cell], page[13 + 2 * cell]]));
                u32::from_be_bytes(page[at..at + 4].try_into().unwrap()) as usize
            })
            .collect();
    }
    for page in pages {
        bytes[(page - 1) * 4096..page * 4096].fill(0xFF);
    }
    fs::write(path, bytes).unwrap();
}

#[test]
fn a_damaged_table_beside_the_facts_is_built_anew_from_them() {
    for name in ["draft", "thumbnail", "summary"] {
        let (_folder, home) = home();
        let (folder, facts, other) = large(&home);
        damage(&folder, name, 1);
        // A crash leaves a log; then the structure is checked at opening.
        fs::write(folder.join("survey.db-wal"), "x").unwrap();
        let repaired = match Repaired::open(&folder, AuthorId::random()) {
            Ok(repaired) => repaired,
            Err(error) => unreachable!("{name}: {error}"),
        };
        assert_eq!(repaired.store.ledger().facts().cloned().collect::<Vec<_>>(), facts, "{name}");
        assert_eq!(repaired.store.survey_id(), other.survey_id());
        let rebuilt = repaired.rebuilt.unwrap();
        assert_eq!(rebuilt.facts, facts.len());
        assert!(rebuilt.damaged.unwrap().exists(), "{name}: the damaged one is kept");
        drop(repaired.store);
        assert!(Repaired::open(&folder, AuthorId::random()).unwrap().rebuilt.is_none());
    }
}

#[test]
fn lost_facts_come_back_from_a_file() {
    let (_folder, home) = home();
    let (folder, facts, other) = large(&home);
    damage(&folder, "fact", 4);
    let found = salvage(&folder).unwrap();
    assert!(!found.is_complete);
    assert!(!found.facts.is_empty() && found.facts.len() < facts.len(), "{}", found.facts.len());
    let before = fs::read(folder.join("survey.db")).unwrap();
    assert!(matches!(Repaired::open(&folder, AuthorId::random()), Err(FactsError::Damaged { .. })));
    assert_eq!(fs::read(folder.join("survey.db")).unwrap(), before);
    let stranger = facts::fact::SurveyId::random();
    let wrong = Repaired::open_with_facts(&folder, AuthorId::random(), stranger, facts.clone());
    assert!(matches!(wrong, Err(FactsError::OtherSurveyInFile)));
    // The file is older than the newest facts that can still be read: both together are everything.
    let newest = found.facts.last().unwrap().id();
    assert_eq!(facts.last().unwrap().id(), newest);
    let file: Vec<Fact> = facts[..facts.len() - 3].to_vec();
    let repaired = Repaired::open_with_facts(&folder, AuthorId::random(), other.survey_id(), file).unwrap();
    assert_eq!(repaired.store.ledger().facts().cloned().collect::<Vec<_>>(), facts);
}

#[test]
fn a_repair_that_was_cut_off_goes_on() {
    let (_folder, home) = home();
    let (folder, facts, mut other) = large(&home);
    other.write_facts(facts.clone()).unwrap();
    let whole = other.folder().join("survey.db");
    drop(other);
    // As after a kill between the two renames: the new database waits, the damaged one is already aside.
    fs::copy(&whole, folder.join("survey.db.rebuilt")).unwrap();
    fs::rename(folder.join("survey.db"), folder.join("survey.db.damaged-1")).unwrap();
    // A look shows what will be there, and changes nothing.
    assert_eq!(peek(&folder).unwrap().summary.facts, facts.len() as u64);
    assert!(folder.join("survey.db.rebuilt").exists());
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    assert_eq!(store.ledger().facts().cloned().collect::<Vec<_>>(), facts);
    assert!(!folder.join("survey.db.rebuilt").exists());
}

#[test]
fn labels_typed_in_any_survey_are_seen_and_nothing_replaced_or_forgotten() {
    let (_folder, home) = home();
    let label = |store: &mut Store, text: &str| {
        let part = SubjectId::random();
        store.write(&[Edit::new(part, field::IS, "part"), Edit::new(part, field::LABEL, text)]).unwrap();
        part
    };
    let mut one = make(&home, "one");
    label(&mut one, "4-WAY 5-1000MHz 7dB");
    let mistyped = label(&mut one, "2-WAY 5-100MHz");
    one.write(&[Edit::new(mistyped, field::LABEL, "2-WAY 5-1000MHz 3.5dB")]).unwrap();
    let forgotten = label(&mut one, "Serial 12345");
    one.forget_field(forgotten, field::LABEL).unwrap();
    // The same print on another part, with other spaces, and set right by hand: that is what is offered.
    let mut two = make(&home, "two");
    let part = label(&mut two, "4-way  5-1000MHz 7dB");
    two.write(&[Edit::new(part, field::RATING, json!({"legs": 4, "leg_losses_db": [7, 7, 7, 7]}))]).unwrap();
    let seen = labels_seen(&home).unwrap();
    let told: Vec<_> = seen.iter().map(|seen| (seen.text.as_str(), seen.parts)).collect();
    assert_eq!(told, [("4-way  5-1000MHz 7dB", 2), ("2-WAY 5-1000MHz 3.5dB", 1)]);
    assert_eq!(seen[0].rating.as_ref().map(|rating| rating.legs), Some(4));
    assert_eq!(seen[1].rating, None);
    // A survey in trouble hides no other.
    fs::create_dir(home.place("broken").unwrap()).unwrap();
    assert_eq!(labels_seen(&home).unwrap(), seen);
}

/// A survey with photos, closed, and a file of it.
fn with_file(home: &Home) -> (PathBuf, PathBuf, Vec<Fact>) {
    let mut store = make(home, "house");
    for name in ["baseline.jpg", "colour.png"] {
        let bytes =
            fs::read(format!("{}/../facts/tests/pictures/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap();
        store.add_photo(&bytes, None, None).unwrap();
    }
    let file = home.folder().join("house.lwk");
    let page = |_: &house::record::Survey, _: &facts::fact::Ledger| Ok::<_, FactsError>(String::new());
    house::document::pack(
        &mut store,
        &file::PackOptions::default(),
        &page,
        &file,
        &mut |_: file::Progress| true,
    )
    .unwrap();
    (store.folder().to_owned(), file, store.ledger().facts().cloned().collect())
}

/// What destroys a survey in its folder.
type Ruin = &'static dyn Fn(&Path);

#[test]
fn a_file_brings_back_whatever_is_left_of_a_survey() {
    fn database(folder: &Path) -> PathBuf {
        folder.join("survey.db")
    }
    let ruins: [(&str, Ruin); 5] = [
        ("beginning", &|folder| {
            let mut bytes = fs::read(database(folder)).unwrap();
            bytes[..100].fill(0);
            fs::write(database(folder), bytes).unwrap();
        }),
        ("half", &|folder| {
            let bytes = fs::read(database(folder)).unwrap();
            fs::write(database(folder), &bytes[..bytes.len() / 2]).unwrap();
        }),
        ("emptied", &|folder| fs::write(database(folder), "").unwrap()),
        ("gone", &|folder| fs::remove_file(database(folder)).unwrap()),
        ("table", &|folder| damage(folder, "fact", 1)),
    ];
    for (name, ruin) in ruins {
        let (_folder, home) = home();
        let (folder, file, facts) = with_file(&home);
        ruin(&folder);
        // One photo is gone, one is not what its name says.
        let photos: Vec<PathBuf> =
            fs::read_dir(folder.join("photos")).unwrap().map(|photo| photo.unwrap().path()).collect();
        fs::remove_file(&photos[0]).unwrap();
        fs::write(&photos[1], "something else").unwrap();
        assert!(Repaired::open(&folder, AuthorId::random()).is_err(), "{name}");
        let with = |watch: &mut dyn file::Watch| {
            Repaired::open_with_file(&folder, AuthorId::random(), &file, file::Limits::default(), watch)
        };
        // Stopped at every point where it can be: nothing is changed, nothing is left.
        let before = state_of(home.folder());
        let mut stopped = 0;
        let repaired = loop {
            let mut left = stopped;
            let mut stop = |_: file::Progress| {
                left -= 1;
                left >= 0
            };
            match with(&mut stop) {
                Ok(repaired) => break repaired,
                Err(FactsError::Stopped) => assert_eq!(state_of(home.folder()), before, "{name}"),
                Err(error) => unreachable!("{name}: {error}"),
            }
            stopped += 1;
        };
        assert!(stopped > 2, "{name}: {stopped}");
        assert_eq!(repaired.store.ledger().facts().cloned().collect::<Vec<_>>(), facts, "{name}");
        for photo in &repaired.store.survey().unwrap().photos {
            repaired.store.photo_bytes(*photo.0).unwrap();
        }
        let damaged = repaired.rebuilt.unwrap().damaged;
        assert_eq!((damaged.is_none(), repaired.photos_back), (name == "gone", 2), "{name}");
        let names: Vec<_> =
            state_of(home.folder()).into_keys().filter(|name| name.contains("unfinished")).collect();
        assert!(names.is_empty(), "{names:?}");
    }
}

#[test]
fn a_file_makes_no_survey_of_a_folder_that_never_was_one() {
    let (_folder, home) = home();
    let (_, file, _) = with_file(&home);
    let plain = home.folder().join("holiday");
    fs::create_dir_all(plain.join("photos")).unwrap();
    let empty = home.place("empty").unwrap();
    fs::create_dir(&empty).unwrap();
    for folder in [plain, empty] {
        let limits = file::Limits::default();
        let refused =
            Repaired::open_with_file(&folder, AuthorId::random(), &file, limits, &mut |_: file::Progress| {
                true
            });
        assert!(matches!(refused, Err(FactsError::NotASurvey { .. })), "{}", folder.display());
        assert!(!folder.join("survey.db").exists());
    }
}

/// Every file in a folder, by its path, with what it holds.
fn state_of(folder: &Path) -> std::collections::BTreeMap<String, Vec<u8>> {
    let mut found = std::collections::BTreeMap::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                found.insert(path.display().to_string(), fs::read(&path).unwrap());
            }
        }
    }
    found
}

#[test]
fn a_copy_can_be_stopped_and_leaves_nothing() {
    let (_folder, home) = home();
    let mut store = make(&home, "first");
    let picture =
        fs::read(format!("{}/../facts/tests/pictures/baseline.jpg", env!("CARGO_MANIFEST_DIR"))).unwrap();
    store.add_photo(&picture, None, None).unwrap();
    let mut told = Vec::new();
    let stopped = home.copy_watched(&store, "second", store.author(), &mut |progress: file::Progress| {
        told.push(progress);
        false
    });
    assert!(matches!(stopped, Err(facts::FactsError::Stopped)), "{stopped:?}");
    assert!(told[0].of_bytes > 0 && told[0].done_bytes == 0, "{told:?}");
    let names: Vec<_> =
        fs::read_dir(home.folder()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names, ["first.legwork"]);
    let copy = home.copy_watched(&store, "second", store.author(), &mut |_: file::Progress| true).unwrap();
    assert!(copy.missing_photos().unwrap().is_empty());
}
