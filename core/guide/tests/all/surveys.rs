//! Surveys from outside: renamed, copied, set aside, deleted, mended; and what holds for a device.

use std::fs;
use std::path::Path;

use crate::person::{Person, row_of, rows, says, shown, two};
use facts::store::Store;
use guide::screen::{Block, FileAsked};
use guide::{Deed, Device, Working};
use telling::words::LengthUnit;

#[test]
fn surveys_are_renamed_copied_set_aside_brought_back_and_deleted() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.plan("100");
    let original = shown(&ann.folder());
    ann.leave();

    ann.press("order");
    ann.press("survey:Mill House");
    ann.press("rename");
    ann.write("name", "Mill House: 2/3?");
    ann.press("rename");
    assert_eq!(ann.on("one-survey").title, "Mill House: 2/3?");
    ann.press("copy");
    ann.press("copy");
    assert_eq!(ann.on("one-survey").title, "Mill House: 2/3?, copy");
    ann.press("open");
    let copied = shown(&ann.folder());
    assert_eq!(copied.len(), original.len());
    assert!(copied.values().any(|value| value == "Mill House: 2/3?, copy"));
    ann.leave();

    let listed = |person: &Person| -> Vec<String> {
        let screen = person.guide.screen();
        rows(&screen).into_iter().map(|row| row.head).collect()
    };
    assert_eq!(listed(&ann).len(), 2);
    ann.press("order");
    let row = row_of(&ann.guide.screen(), "Mill House: 2/3?");
    ann.press(&row.key.unwrap());
    ann.press("aside");
    assert_eq!(listed(&ann), ["Mill House: 2/3?, copy"]);
    ann.restart();
    ann.press("aside");
    let row = row_of(&ann.on("surveys-aside"), "Mill House: 2/3?");
    ann.press(&row.key.unwrap());
    assert!(!ann.guide.screen().keys().contains(&"open"));
    ann.act(&Deed::Back);
    let row = row_of(&ann.on("surveys-aside"), "Mill House: 2/3?");
    ann.press(&row.key.unwrap());
    ann.press("back");
    assert_eq!(listed(&ann).len(), 2);

    ann.press("order");
    let row = row_of(&ann.guide.screen(), "Mill House: 2/3?, copy");
    ann.press(&row.key.unwrap());
    let screen = ann.guide.screen();
    assert!(
        screen.blocks.iter().any(|block| matches!(block, Block::Confirm(confirm) if confirm.key == "delete"))
    );
    ann.press("delete");
    assert_eq!(listed(&ann), ["Mill House: 2/3?"]);
    let open = row_of(&ann.guide.screen(), "Mill House: 2/3?");
    ann.press(&open.key.unwrap());
    let now = shown(&ann.folder());
    assert_eq!(now.len(), original.len());

    // Two houses may have one name; their folders do not.
    ann.leave();
    ann.make("Same");
    let first = ann.folder();
    ann.leave();
    ann.make("Same");
    assert_ne!(ann.folder(), first);
}

/// Overwrites the first page of a table of the database, or all pages but the first.
fn damage(folder: &Path, table: Option<&str>) {
    let file = folder.join("survey.db");
    let root = table.map(|table| {
        let database = rusqlite::Connection::open(&file).unwrap();
        let find = "SELECT rootpage FROM sqlite_schema WHERE name = ?1";
        usize::try_from(database.query_row(find, [table], |row| row.get::<_, i64>(0)).unwrap()).unwrap()
    });
    let mut bytes = fs::read(&file).unwrap();
    // A database names the size of its pages in its 17th and 18th byte (SQLite's file format, 1.3).
    let page = usize::from(u16::from_be_bytes([bytes[16], bytes[17]]));
    match root {
        Some(root) => bytes[(root - 1) * page..root * page].fill(0xff),
        None => bytes[page..].fill(0xff),
    }
    fs::write(&file, bytes).unwrap();
    // A crash leaves a log; then the structure is checked at opening.
    fs::write(folder.join("survey.db-wal"), "x").unwrap();
}

#[test]
fn a_damaged_survey_says_so_and_is_mended_with_a_file() {
    for table in [Some("fact"), None] {
        let (mut ann, mut bo, between) = two();
        let file = between.path().join("safe.lwk");
        ann.plan("300");
        ann.pack(&file);
        let folder = ann.folder();
        let before = shown(&folder);
        ann.press("overview");
        ann.press("out");
        damage(&folder, table);
        ann.restart();
        ann.press("open:Mill House");
        if ann.guide.screen().name == "one-survey" {
            says(&ann.guide.screen(), "damaged");
            ann.press("mend");
        }
        ann.on("survey-mend");
        ann.press("mend");
        says(&ann.on("survey-mend"), "is needed to repair it");
        // Where nothing can be read there is nothing to keep.
        assert_eq!(ann.guide.screen().keys().contains(&"mend-without-lost"), table.is_some());
        // A file of another survey: refused where the damaged one can be told from it, else shown for what it is.
        bo.leave();
        bo.make("Other");
        let other = between.path().join("other.lwk");
        bo.pack(&other);
        let screen = ann.guide.screen();
        let key = screen.keys().into_iter().find(|key| FileAsked::of(key).is_some()).unwrap().to_owned();
        ann.act(&Deed::File { key, file: other.display().to_string() });
        if table.is_some() {
            says(&ann.guide.screen(), "another survey");
        } else {
            says(&ann.guide.screen(), "Other");
        }
        ann.file(&file);
        says(&ann.guide.screen(), "Mill House");
        ann.press("mend-with-file");
        says(&ann.on("one-survey"), "rebuilt");
        ann.press("open");
        assert_eq!(shown(&ann.folder()), before);
        // Nothing is left beside the surveys.
        let left = fs::read_dir(ann.home.path()).unwrap().map(|entry| entry.unwrap().file_name());
        let left: Vec<_> = left.filter(|name| name.to_string_lossy().starts_with('.')).collect();
        assert!(left.is_empty(), "{left:?}");
    }
}

#[test]
fn a_damaged_survey_whose_facts_can_be_read_is_mended_from_itself() {
    let (mut ann, _, _between) = two();
    let folder = ann.folder();
    let before = shown(&folder);
    ann.leave();
    damage(&folder, Some("draft"));
    ann.press("open:Mill House");
    // Nothing is given up before what is here was tried.
    assert!(!ann.on("survey-mend").keys().contains(&"mend-without-lost"));
    ann.press("mend");
    says(&ann.on("one-survey"), "nothing was lost");
    ann.press("open");
    assert_eq!(shown(&ann.folder()), before);
}

#[test]
fn what_is_lost_is_given_up_only_where_it_is_and_the_rest_stays() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.plan("300");
    let folder = ann.folder();
    let before = shown(&folder);
    ann.leave();
    // Two bytes of the name, as it was said: more than can be put right.
    let file = folder.join("survey.db");
    let mut bytes = fs::read(&file).unwrap();
    let name = b"\"Mill House\"";
    let at = bytes.windows(name.len()).position(|part| part == name).unwrap();
    bytes[at + 2] ^= 0x15;
    bytes[at + 4] ^= 0x12;
    fs::write(&file, bytes).unwrap();
    ann.restart();
    ann.press("open:Mill House");
    assert!(!ann.on("survey-mend").keys().contains(&"mend-without-lost"));
    ann.press("mend");
    says(&ann.on("survey-mend"), "is needed to repair it");
    // It is still offered after the app's death.
    let token = ann.guide.token().unwrap();
    ann.restart();
    ann.guide.restore(&token).unwrap();
    ann.on("survey-mend");
    ann.press("mend-without-lost");
    says(&ann.on("one-survey"), "1 detail is lost");
    ann.press("open");
    let after = shown(&ann.folder());
    assert_ne!(after, before);
    assert_eq!(ann.guide.screen().name, "overview");
    ann.go("house");
    assert_eq!(row_of(&ann.guide.screen(), "The internet plan").says, "300 Mb/s, 50 Mb/s");
}

#[test]
fn a_survey_of_a_newer_release_says_so() {
    let mut ann = Person::new();
    ann.make("Mill House");
    let folder = ann.folder();
    ann.leave();
    rusqlite::Connection::open(folder.join("survey.db"))
        .unwrap()
        .pragma_update(None, "user_version", 999)
        .unwrap();
    // The list was made before: what is wrong is said where the row leads.
    ann.press("open:Mill House");
    says(&ann.on("one-survey"), "newer release");
    ann.press("out");
    let row = row_of(&ann.guide.screen(), "Mill House");
    assert!(row.says.contains("cannot be opened"));
    ann.press(&row.key.unwrap());
    let screen = ann.on("one-survey");
    says(&screen, "newer release");
    assert!(!screen.keys().contains(&"mend"), "there is nothing to mend");
}

#[test]
fn a_survey_that_is_whole_is_told_to_be() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.leave();
    ann.press("order");
    ann.press("survey:Mill House");
    ann.press("mend");
    ann.press("mend");
    says(&ann.on("one-survey"), "This survey is whole");
}

#[test]
fn what_holds_for_the_device_survives_and_is_used() {
    let mut ann = Person::new();
    let author = Device::at(ann.home.path()).unwrap().author().unwrap();
    ann.press("device");
    ann.write("name", "Ann");
    ann.pick("unit", &["feet"]);
    ann.pick("working", &["freely"]);
    ann.restart();
    let mut device = Device::at(ann.home.path()).unwrap();
    assert_eq!(device.author().unwrap(), author);
    assert_eq!((device.name(), device.length_unit()), ("Ann", Some(LengthUnit::Feet)));
    assert_eq!(device.working(), Working::Freely);
    ann.press("device");
    let screen = ann.on("device");
    let picked: Vec<&str> = screen
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::Choice(choice) => choice.options.iter().find(|option| option.picked),
            _ => None,
        })
        .map(|option| option.key.as_str())
        .collect();
    assert_eq!(picked, ["feet", "freely"]);
    // Whoever works freely sees the whole job first.
    ann.press("out");
    ann.make("Mill House");
    ann.on("overview");
    let store = Store::open(&ann.folder(), author).unwrap();
    assert_eq!(facts::act::author_name(store.ledger(), store.author()), Some("Ann"));
    drop(store);
    // And whoever wants to be led is asked.
    ann.press("out");
    ann.press("device");
    ann.pick("working", &["led"]);
    ann.press("out");
    ann.make("Other");
    ann.on("ask-whose");
}

#[test]
fn a_name_changed_later_stands_in_the_next_thing_written_and_is_not_taken_back_with_it() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.leave();
    ann.press("device");
    ann.write("name", "Ann of the office");
    ann.press("out");
    ann.press("open:Mill House");
    ann.plan("100");
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    let author = Device::at(ann.home.path()).unwrap().author().unwrap();
    let store = Store::open(&ann.folder(), author).unwrap();
    assert_eq!(facts::act::author_name(store.ledger(), store.author()), Some("Ann of the office"));
}
