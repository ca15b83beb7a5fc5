//! A person with a device, who does everything through deeds; and two of them with one house.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use facts::fact::{AuthorId, REMOVED};
use facts::store::Store;
use guide::screen::{Block, FileAsked, MOST_ROWS, RowEntry};
use guide::{Deed, Device, Guide, Screen};
use serde_json::Value;

/// One person with a device.
pub struct Person {
    pub home: tempfile::TempDir,
    pub guide: Guide,
}

impl Person {
    pub fn new() -> Self {
        let home = tempfile::tempdir().unwrap();
        let guide = guide_at(home.path());
        Self { home, guide }
    }

    pub fn named(name: &str) -> Self {
        let mut person = Self::new();
        person.press("device");
        person.write("name", name);
        person.press("out");
        person
    }

    /// The app's death and next start.
    pub fn restart(&mut self) {
        self.guide = guide_at(self.home.path());
    }

    pub fn act(&mut self, deed: &Deed) {
        self.guide.act(deed).unwrap();
        check(&self.guide.screen());
        // A file is read or written beside.
        self.guide.settle_long_work();
        check(&self.guide.screen());
    }

    #[track_caller]
    pub fn press(&mut self, key: &str) {
        let screen = self.guide.screen();
        assert!(screen.keys().contains(&key), "no {key} on {}: {:?}", screen.name, screen.keys());
        self.act(&Deed::Press { key: key.into() });
    }

    #[track_caller]
    pub fn write(&mut self, key: &str, words: &str) {
        assert!(self.guide.screen().keys().contains(&key), "no {key} on {}", self.guide.screen().name);
        self.act(&Deed::Write { key: key.into(), words: words.into() });
    }

    #[track_caller]
    pub fn pick(&mut self, key: &str, picked: &[&str]) {
        assert!(self.guide.screen().keys().contains(&key), "no {key} on {}", self.guide.screen().name);
        let picked = picked.iter().map(|&option| option.to_owned()).collect();
        self.act(&Deed::Pick { key: key.into(), picked });
    }

    /// Gives a file to the press of the screen that asks for one.
    #[track_caller]
    pub fn file(&mut self, file: &Path) {
        let screen = self.guide.screen();
        let key = *screen.keys().iter().find(|key| FileAsked::of(key).is_some()).expect("a press for a file");
        let deed = Deed::File { key: key.into(), file: file.display().to_string() };
        self.act(&deed);
    }

    #[track_caller]
    pub fn on(&self, name: &str) -> Screen {
        let screen = self.guide.screen();
        assert_eq!(screen.name, name, "{:#?}", screen.spoken());
        screen
    }

    /// From wherever one is in a survey to a row of the overview.
    #[track_caller]
    pub fn go(&mut self, door: &str) {
        for _ in 0..30 {
            if self.guide.screen().name == "overview" {
                break;
            }
            self.act(&Deed::Back);
        }
        self.on("overview");
        if !self.guide.screen().keys().contains(&door) {
            self.press("more");
        }
        self.press(door);
    }

    #[track_caller]
    pub fn make(&mut self, name: &str) {
        self.press("new");
        self.write("name", name);
        self.press("make");
    }

    pub fn folder(&self) -> PathBuf {
        self.guide.open_folder().expect("an open survey")
    }

    #[track_caller]
    pub fn pack(&mut self, file: &Path) {
        self.go("pack");
        self.file(file);
        assert!(file.exists());
    }

    /// Out of the survey, to the list.
    #[track_caller]
    pub fn leave(&mut self) {
        self.go("acts");
        self.press("overview");
        self.press("out");
    }

    #[track_caller]
    pub fn look(&mut self, file: &Path) {
        self.go("take-in");
        self.file(file);
        self.on("share-take-in");
    }

    /// Answers the question about the plan, from wherever one is.
    pub fn plan(&mut self, down: &str) {
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

pub fn guide_at(home: &Path) -> Guide {
    let author = Device::at(home).unwrap().author().unwrap();
    let mut guide = Guide::at(home, author, guide::english(telling::words::Figures::default())).unwrap();
    guide.wait_for_long_work(Duration::MAX);
    guide
}

/// What holds for every screen: a way on, a name for everything, and not too long.
pub fn check(screen: &Screen) {
    assert!(!screen.keys().is_empty(), "{} has no way on", screen.name);
    assert!(screen.rows() <= MOST_ROWS, "{} has {} rows", screen.name, screen.rows());
    let spoken = screen.spoken();
    assert!(!screen.title.trim().is_empty(), "{} has no title", screen.name);
    for words in spoken {
        let looks_like_an_id = !words.contains(' ')
            && words.starts_with(|letter: char| letter.is_ascii_lowercase())
            && words.contains('-')
            && !words.contains('@');
        assert!(!looks_like_an_id, "{} says {words:?}", screen.name);
        assert!(!words.contains("{$") && !words.contains("{ $"), "{} says {words:?}", screen.name);
    }
}

pub fn rows(screen: &Screen) -> Vec<RowEntry> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(rows.rows.clone()),
        _ => None,
    });
    rows.flatten().collect()
}

#[track_caller]
pub fn row_of(screen: &Screen, head: &str) -> RowEntry {
    let found = rows(screen).into_iter().find(|row| row.head == head);
    found.unwrap_or_else(|| panic!("no row {head:?} on {}: {:#?}", screen.name, rows(screen)))
}

#[track_caller]
pub fn says(screen: &Screen, words: &str) {
    let spoken = screen.spoken();
    assert!(
        spoken.iter().any(|said| said.contains(words)),
        "{} does not say {words:?}: {spoken:#?}",
        screen.name
    );
}

/// Everything that a survey shows, read past the guide.
pub fn shown(folder: &Path) -> BTreeMap<(String, String), Value> {
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
pub fn picture(at: &Path) -> PathBuf {
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
pub fn two() -> (Person, Person, tempfile::TempDir) {
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
