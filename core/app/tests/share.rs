//! Two people, two devices, one house: files to and fro through deeds alone; surveys from outside; what holds for a
//! device.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use app::screen::{Block, FileAsked, MOST_ROWS, RowEntry};
use app::{Deed, Device, Guide, Screen, Working};
use serde_json::Value;
use survey::fact::{AuthorId, REMOVED};
use survey::store::Store;
use survey::words::LengthUnit;

/// One person with a device.
struct Person {
    home: tempfile::TempDir,
    guide: Guide,
}

impl Person {
    fn new() -> Self {
        let home = tempfile::tempdir().unwrap();
        let guide = guide_at(home.path());
        Self { home, guide }
    }

    fn named(name: &str) -> Self {
        let mut person = Self::new();
        person.press("device");
        person.write("name", name);
        person.press("out");
        person
    }

    /// The app's death and next start.
    fn restart(&mut self) {
        self.guide = guide_at(self.home.path());
    }

    fn act(&mut self, deed: &Deed) {
        self.guide.act(deed).unwrap();
        check(&self.guide.screen());
    }

    #[track_caller]
    fn press(&mut self, key: &str) {
        let screen = self.guide.screen();
        assert!(screen.keys().contains(&key), "no {key} on {}: {:?}", screen.name, screen.keys());
        self.act(&Deed::Press { key: key.into() });
    }

    #[track_caller]
    fn write(&mut self, key: &str, words: &str) {
        assert!(self.guide.screen().keys().contains(&key), "no {key} on {}", self.guide.screen().name);
        self.act(&Deed::Write { key: key.into(), words: words.into() });
    }

    #[track_caller]
    fn pick(&mut self, key: &str, picked: &[&str]) {
        assert!(self.guide.screen().keys().contains(&key), "no {key} on {}", self.guide.screen().name);
        let picked = picked.iter().map(|&option| option.to_owned()).collect();
        self.act(&Deed::Pick { key: key.into(), picked });
    }

    /// Gives a file to the press of the screen that asks for one.
    #[track_caller]
    fn file(&mut self, file: &Path) {
        let screen = self.guide.screen();
        let key = *screen.keys().iter().find(|key| FileAsked::of(key).is_some()).expect("a press for a file");
        let deed = Deed::File { key: key.into(), file: file.display().to_string() };
        self.act(&deed);
    }

    #[track_caller]
    fn on(&self, name: &str) -> Screen {
        let screen = self.guide.screen();
        assert_eq!(screen.name, name, "{:#?}", screen.spoken());
        screen
    }

    /// From wherever one is in a survey to a row of the overview.
    #[track_caller]
    fn go(&mut self, door: &str) {
        for _ in 0..30 {
            if self.guide.screen().name == "overview" {
                break;
            }
            self.act(&Deed::Back);
        }
        self.on("overview");
        self.press(door);
    }

    #[track_caller]
    fn make(&mut self, name: &str) {
        self.press("new");
        self.write("name", name);
        self.press("make");
    }

    fn folder(&self) -> PathBuf {
        self.guide.open_folder().expect("an open survey")
    }

    #[track_caller]
    fn pack(&mut self, file: &Path) {
        self.go("pack");
        self.file(file);
        assert!(file.exists());
    }

    #[track_caller]
    fn look(&mut self, file: &Path) {
        self.go("take-in");
        self.file(file);
        self.on("share-take-in");
    }

    /// Answers the question about the plan, from wherever one is.
    fn plan(&mut self, down: &str) {
        self.go("house");
        let row = row_of(&self.guide.screen(), "The internet plan");
        self.press(&row.key.expect("a row that leads on"));
        self.on("ask-plan");
        for key in ["down", "up"] {
            let typed = if key == "down" { down } else { "50" };
            self.act(&Deed::Measure { key: key.into(), typed: typed.into(), unit: "mbps".into() });
        }
        self.press("next");
    }
}

fn guide_at(home: &Path) -> Guide {
    let author = Device::at(home).unwrap().author().unwrap();
    Guide::at(home, author, app::english(survey::words::Figures::default())).unwrap()
}

/// What holds for every screen: a way on, a name for everything, and not too long.
fn check(screen: &Screen) {
    assert!(!screen.keys().is_empty(), "{} has no way on", screen.name);
    assert!(screen.rows() <= MOST_ROWS, "{} has {} rows", screen.name, screen.rows());
    let spoken = screen.spoken();
    assert!(!screen.title.trim().is_empty(), "{} has no title", screen.name);
    for words in spoken {
        let looks_like_an_id = !words.contains(' ')
            && words.starts_with(|letter: char| letter.is_ascii_lowercase())
            && words.contains('-')
            && !words.contains("@");
        assert!(!looks_like_an_id, "{} says {words:?}", screen.name);
        assert!(!words.contains("{$") && !words.contains("{ $"), "{} says {words:?}", screen.name);
    }
}

fn rows(screen: &Screen) -> Vec<RowEntry> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(rows.rows.clone()),
        _ => None,
    });
    rows.flatten().collect()
}

#[track_caller]
fn row_of(screen: &Screen, head: &str) -> RowEntry {
    let found = rows(screen).into_iter().find(|row| row.head == head);
    found.unwrap_or_else(|| panic!("no row {head:?} on {}: {:#?}", screen.name, rows(screen)))
}

#[track_caller]
fn says(screen: &Screen, words: &str) {
    let spoken = screen.spoken();
    assert!(
        spoken.iter().any(|said| said.contains(words)),
        "{} does not say {words:?}: {spoken:#?}",
        screen.name
    );
}

/// Everything that a survey shows, read past the guide.
fn shown(folder: &Path) -> BTreeMap<(String, String), Value> {
    let store = Store::open(folder, AuthorId::random()).unwrap();
    let ledger = store.ledger();
    let mut shown = BTreeMap::new();
    for subject in ledger.subjects() {
        for name in ledger.fields(subject).filter(|name| *name != REMOVED) {
            if let Some(fact) = ledger.shown(subject, name) {
                shown.insert((subject.to_string(), name.to_owned()), fact.value().clone());
            }
        }
    }
    shown
}

/// A pixel of a photo that is one.
fn picture(at: &Path) -> PathBuf {
    // The smallest PNG of the specification's chunks (PNG, 3rd edition): one grey pixel, made with zlib and crc32.
    let bytes: &[u8] = &[
        0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, 0x49, 0x48, 0x44, 0x52, 0, 0, 0, 1, 0,
        0, 0, 1, 8, 0, 0, 0, 0, 0x3a, 0x7e, 0x9b, 0x55, 0, 0, 0, 0x0a, 0x49, 0x44, 0x41, 0x54, 0x78, 0x9c,
        0x63, 0x60, 0, 0, 0, 2, 0, 1, 0x48, 0xaf, 0xa4, 0x71, 0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42,
        0x60, 0x82,
    ];
    let file = at.join("label.png");
    fs::write(&file, bytes).unwrap();
    file
}

/// Ann begins a house, Bo takes her file in as a new survey.
fn two() -> (Person, Person, tempfile::TempDir) {
    let between = tempfile::tempdir().unwrap();
    let mut ann = Person::named("Ann");
    ann.make("Mill House");
    ann.plan("100");
    let file = between.path().join("first.lwk");
    ann.pack(&file);

    let mut bo = Person::named("Bo");
    bo.press("sent");
    bo.file(&file);
    let looked = bo.on("sent");
    says(&looked, "Mill House");
    says(&looked, "Ann");
    assert!(bo.guide.open_folder().is_none(), "a look takes nothing in");
    bo.press("take");
    bo.on("overview");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
    (ann, bo, between)
}

#[test]
fn edits_apart_meet_disagree_and_are_settled_so_that_both_show_the_same() {
    let (mut ann, mut bo, between) = two();
    ann.plan("300");
    bo.plan("1000");
    // What only one of them wrote.
    bo.go("house");
    let row = row_of(&bo.guide.screen(), "Whose wiring");
    bo.press(&row.key.unwrap());
    bo.pick("whose", &["rented"]);
    let from_bo = between.path().join("bo.lwk");
    bo.pack(&from_bo);

    let before = shown(&ann.folder());
    ann.look(&from_bo);
    let look = ann.guide.screen();
    // Three: Bo's name, the plan, whose wiring it is.
    says(&look, "3 new records, 1 disagreement, no new photos, nothing forgotten");
    says(&look, "the internet plan of the survey");
    let from = row_of(&look, "Bo");
    assert_eq!(from.says, "3 records");
    assert_eq!(shown(&ann.folder()), before, "a look changes nothing");

    ann.press("take");
    says(&ann.guide.screen(), "Taken in: 3 new records");
    assert_ne!(shown(&ann.folder()), before);
    ann.press("put-back");
    assert_eq!(shown(&ann.folder()), before, "put back is as it was");
    ann.look(&from_bo);
    ann.press("take");

    ann.press("settle");
    let list = ann.on("share-disagreements");
    let row = row_of(&list, "the internet plan of the survey");
    assert!(row.says.contains("you said") && row.says.contains("Bo said"), "{}", row.says);
    ann.press(&row.key.unwrap());
    let screen = ann.on("share-disagreement");
    says(&screen, "Before, it was 100 Mb/s");
    let Some(Block::Choice(choice)) = screen.blocks.iter().find(|block| matches!(block, Block::Choice(_)))
    else {
        panic!("no choice")
    };
    assert_eq!(choice.options.len(), 2);
    // Nothing chosen yet: nothing is settled.
    ann.press("settle");
    ann.on("share-disagreement");
    let mine = choice.options.iter().find(|option| option.words.contains("300 Mb/s")).unwrap();
    assert!(mine.about.contains("you"), "{}", mine.about);
    let key = mine.key.clone();
    ann.pick("right", &[&key]);
    ann.press("settle");
    says(&ann.on("share-disagreements"), "There is nothing to settle");

    // Something was written since: not put back as a whole any more.
    ann.go("take-in");
    assert!(!ann.guide.screen().keys().contains(&"put-back"));
    says(&ann.guide.screen(), "cannot be put back as a whole any more");

    let from_ann = between.path().join("ann.lwk");
    ann.pack(&from_ann);
    bo.look(&from_ann);
    says(&bo.guide.screen(), "no disagreements");
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
    bo.go("disagreements");
    says(&bo.guide.screen(), "There is nothing to settle");
    // Taken in once, the same file brings nothing.
    bo.look(&from_ann);
    says(&bo.guide.screen(), "is here already");
    assert!(!bo.guide.screen().keys().contains(&"take"));
}

#[test]
fn a_file_leaves_out_what_was_asked_and_replaces_only_when_told() {
    let (mut ann, mut bo, between) = two();
    let file = between.path().join("quiet.lwk");
    ann.go("pack");
    ann.pick("without", &["owner"]);
    let screen = ann.guide.screen();
    let keys = screen.keys();
    assert!(
        !keys.iter().any(|key| key.contains("Mill")),
        "the proposed name says whose house it is: {keys:?}"
    );
    ann.file(&file);
    let mut cy = Person::new();
    cy.press("sent");
    cy.file(&file);
    let look = cy.guide.screen();
    says(&look, "left out who and where");
    assert!(!look.spoken().iter().any(|words| words.contains("Mill") || words.contains("Ann")));

    // A file of that name is there: it stays until told otherwise.
    let first = fs::read(&file).unwrap();
    ann.plan("250");
    ann.pack(&file);
    assert_eq!(fs::read(&file).unwrap(), first);
    ann.press("replace");
    assert_ne!(fs::read(&file).unwrap(), first);
    // In a folder it gets the name that was proposed.
    ann.go("pack");
    ann.file(between.path());
    assert!(between.path().join("Mill House.lwk").exists());

    // A file of a survey that is here is not taken in beside it.
    leave(&mut bo);
    bo.press("sent");
    bo.file(&file);
    says(&bo.guide.screen(), "on this device already");
    bo.press("there");
    bo.on("share-take-in");
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));

    // And one of another survey leads out of the one that is open.
    let mut dan = Person::new();
    dan.make("Another");
    dan.look(&file);
    dan.press("apart");
    dan.on("sent");
    dan.press("take");
    assert!(dan.folder().ends_with("Mill House.legwork"));
}

#[test]
fn what_is_no_file_of_ours_is_refused_and_changes_nothing() {
    let (mut ann, _, between) = two();
    let junk = between.path().join("junk.lwk");
    fs::write(&junk, b"PK\x03\x04 not one of ours").unwrap();
    let before = shown(&ann.folder());
    ann.go("take-in");
    let key = FileAsked::ToRead;
    let screen = ann.guide.screen();
    let key = *screen.keys().iter().find(|one| FileAsked::of(one).as_ref() == Some(&key)).unwrap();
    for file in [junk.display().to_string(), "/nowhere/at all.lwk".into(), String::new()] {
        let error = ann.guide.act(&Deed::File { key: key.into(), file }).unwrap_err();
        assert!(!error.to_string().is_empty());
        ann.on("share-take-in");
    }
    // A press without a file says what is missing.
    ann.act(&Deed::Press { key: key.into() });
    says(&ann.guide.screen(), "Please choose the file");
    assert_eq!(shown(&ann.folder()), before);
}

#[test]
fn who_said_what_is_told_and_taken_back() {
    let (mut ann, mut bo, between) = two();
    ann.plan("300");
    ann.go("acts");
    let newest = rows(&ann.on("share-acts")).remove(0);
    assert!(newest.head.starts_with("you, "), "{}", newest.head);
    assert!(newest.says.contains("the internet plan of the survey: 300 Mb/s"), "{}", newest.says);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    says(&ann.on("share-act"), "the internet plan of the survey: 100 Mb/s");
    // And that in turn.
    ann.press("undo");
    says(&ann.on("share-act"), "300 Mb/s");

    // The story of the field, oldest first; the first step was changed later and says why it stays.
    ann.go("things");
    let thing = row_of(&ann.guide.screen(), "the survey");
    ann.press(&thing.key.unwrap());
    let plan = row_of(&ann.on("share-thing"), "the internet plan");
    assert!(plan.remark.contains("said 3 times before"), "{}", plan.remark);
    ann.press(&plan.key.unwrap());
    let story = rows(&ann.on("share-field"));
    assert_eq!(story.len(), 4);
    ann.press(story[0].key.as_ref().unwrap());
    let screen = ann.on("share-act");
    assert!(!screen.keys().contains(&"undo"));
    says(&screen, "was changed again later");

    // Somebody else's step says what follows for them.
    let file = between.path().join("ann.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    bo.go("acts");
    let newest = rows(&bo.guide.screen()).remove(0);
    assert!(newest.head.starts_with("Ann, "), "{}", newest.head);
    bo.press(&newest.key.unwrap());
    says(&bo.guide.screen(), "taken back for them too");
    bo.press("undo");
    says(&bo.guide.screen(), "100 Mb/s");
}

#[test]
fn what_one_removed_and_another_changed_stays_and_is_decided() {
    let (mut ann, mut bo, between) = two();
    ann.go("house");
    let row = row_of(&ann.guide.screen(), "The rooms");
    ann.press(&row.key.unwrap());
    ann.pick("rooms", &["office"]);
    ann.press("next");
    let file = between.path().join("rooms.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    // Ann takes the room back, which removes it; Bo says what it should be good for.
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    assert!(newest.says.contains("was added"), "{}", newest.says);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    ann.go("removed");
    let gone = rows(&ann.on("share-removed"));
    assert_eq!(gone.len(), 1, "{gone:#?}");
    assert!(gone[0].head.contains("Office"), "a removed thing keeps its name: {gone:#?}");
    // Brought back, and removed again by taking that back.
    ann.press(gone[0].key.as_ref().unwrap());
    ann.press("back");
    says(&ann.guide.screen(), "Nothing was removed");
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    ann.press(&newest.key.unwrap());
    ann.press("undo");

    bo.go("house");
    let row = row_of(&bo.guide.screen(), "Office: what is wished for");
    bo.press(&row.key.unwrap());
    bo.pick("wish", &["fast"]);
    let file = between.path().join("bo.lwk");
    bo.pack(&file);
    ann.look(&file);
    ann.press("take");
    ann.go("removed");
    let screen = ann.on("share-removed");
    let flagged = rows(&screen).remove(0);
    assert!(flagged.says.contains("removed by you, changed by Bo"), "{}", flagged.says);
    ann.press(&flagged.key.unwrap());
    ann.press("back");
    says(&ann.guide.screen(), "Nothing was removed");
    let file = between.path().join("kept.lwk");
    ann.pack(&file);
    bo.look(&file);
    bo.press("take");
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
}

#[test]
fn forgetting_asks_twice_and_reaches_others() {
    let (mut ann, mut bo, between) = two();
    let holds = |folder: &Path, word: &str| {
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_file()).any(
            |path| {
                let bytes = fs::read(path).unwrap();
                bytes.windows(word.len()).any(|window| window == word.as_bytes())
            },
        )
    };
    ann.go("things");
    let me = row_of(&ann.guide.screen(), "you");
    ann.press(&me.key.unwrap());
    let name = row_of(&ann.on("share-thing"), "the name");
    assert_eq!(name.says, "Ann");
    ann.press(&name.key.unwrap());
    ann.press("forget");
    says(&ann.on("share-forget"), "Forgetting is for ever");
    ann.press("keep");
    ann.on("share-field");
    ann.press("forget");
    ann.press("forget");
    says(&ann.on("share-forget-for-others"), "everybody who takes in a file");
    assert!(holds(&ann.folder(), "\"Ann\""), "not before the second yes");
    ann.press("forget");
    says(&ann.guide.screen(), "Forgotten");
    let folder = ann.folder();
    assert!(!holds(&folder, "\"Ann\""));
    let file = between.path().join("forgot.lwk");
    // Whoever writes on gives the name of this device again; without one, nothing is said.
    ann.press("overview");
    ann.press("out");
    ann.press("device");
    ann.write("name", "");
    ann.press("out");
    ann.press("open:Mill House");
    ann.pack(&file);
    assert!(!String::from_utf8_lossy(&fs::read(&file).unwrap()).contains("\"Ann\""));

    bo.look(&file);
    says(&bo.guide.screen(), "1 thing forgotten for ever");
    bo.press("take");
    says(&bo.guide.screen(), "that is for ever");
    assert!(!bo.guide.screen().keys().contains(&"put-back"));
    assert!(!holds(&bo.folder(), "\"Ann\""));
    assert_eq!(shown(&ann.folder()), shown(&bo.folder()));
}

#[test]
fn photos_travel_and_can_be_left_out() {
    let (mut ann, mut bo, between) = two();
    let picture = picture(between.path());
    // A photo is taken in through the store: which screen takes one is not this test's business.
    let folder = ann.folder();
    leave(&mut ann);
    let mut store = Store::open(&folder, AuthorId::random()).unwrap();
    store.add_photo(&fs::read(picture).unwrap(), None, None).unwrap();
    drop(store);
    ann.press("open:Mill House");
    ann.go("pack");
    ann.pick("without", &["photos"]);
    let without = between.path().join("without.lwk");
    ann.file(&without);
    says(&ann.guide.screen(), "no photos");
    let with = between.path().join("with.lwk");
    ann.pack(&with);
    says(&ann.guide.screen(), "1 photo");
    bo.look(&without);
    says(&bo.guide.screen(), "no new photos");
    bo.press("take");
    bo.look(&with);
    says(&bo.guide.screen(), "no new records, no disagreements, 1 new photo");
    bo.press("take");
    says(&bo.guide.screen(), "no new records, 1 new photo");
}

#[test]
fn surveys_are_renamed_copied_set_aside_brought_back_and_deleted() {
    let mut ann = Person::new();
    ann.make("Mill House");
    ann.plan("100");
    let original = shown(&ann.folder());
    leave(&mut ann);

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
    leave(&mut ann);

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
    leave(&mut ann);
    ann.make("Same");
    let first = ann.folder();
    leave(&mut ann);
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

fn leave(person: &mut Person) {
    person.go("acts");
    person.press("overview");
    person.press("out");
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
        // A file of another survey: refused where the damaged one can be told from it, else shown for what it is.
        leave(&mut bo);
        bo.make("Other");
        let other = between.path().join("other.lwk");
        bo.pack(&other);
        let screen = ann.guide.screen();
        let key = screen.keys().into_iter().find(|key| FileAsked::of(key).is_some()).unwrap().to_owned();
        let given = ann.guide.act(&Deed::File { key, file: other.display().to_string() });
        if table.is_some() {
            assert!(given.unwrap_err().to_string().contains("another survey"));
        } else {
            says(&ann.guide.screen(), "Other");
        }
        ann.file(&file);
        says(&ann.guide.screen(), "Mill House");
        ann.press("mend-with-file");
        says(&ann.on("one-survey"), "built anew");
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
    leave(&mut ann);
    damage(&folder, Some("fact_by_subject"));
    ann.press("open:Mill House");
    ann.on("survey-mend");
    ann.press("mend");
    says(&ann.on("one-survey"), "nothing was lost");
    ann.press("open");
    assert_eq!(shown(&ann.folder()), before);
}

#[test]
fn a_survey_of_a_newer_release_says_so() {
    let mut ann = Person::new();
    ann.make("Mill House");
    let folder = ann.folder();
    leave(&mut ann);
    rusqlite::Connection::open(folder.join("survey.db"))
        .unwrap()
        .pragma_update(None, "user_version", 999)
        .unwrap();
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
    leave(&mut ann);
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
    let store = Store::open(&ann.folder(), AuthorId::random()).unwrap();
    assert_eq!(survey::story::author_name(store.ledger(), author), Some("Ann"));
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
    leave(&mut ann);
    ann.press("device");
    ann.write("name", "Ann of the office");
    ann.press("out");
    ann.press("open:Mill House");
    ann.plan("100");
    ann.go("acts");
    let newest = rows(&ann.guide.screen()).remove(0);
    ann.press(&newest.key.unwrap());
    ann.press("undo");
    let store = Store::open(&ann.folder(), AuthorId::random()).unwrap();
    let author = Device::at(ann.home.path()).unwrap().author().unwrap();
    assert_eq!(survey::story::author_name(store.ledger(), author), Some("Ann of the office"));
}
