//! Going through all screens of a home folder, keeping the first of each name.

use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use facts::fact::AuthorId;
use facts::store::Store;
use guide::screen::{Block, FileAsked};
use guide::{Deed, Guide, Screen};
use telling::words::{Figures, Language};
use tempfile::TempDir;

use crate::plain;
use crate::whole_house::{ann, fill, guide_in};
use crate::{shell, shell_drawn};

/// How far a way from the first screen may be.
const DEEPEST: usize = 7;

/// Presses that do something wherever they stand; all others only lead on.
const DOES: &[&str] = &[
    "again",
    "delete",
    "done",
    "could-not",
    "list-without",
    "long-work-stop",
    "finish",
    "keep",
    "keep-note",
    "later",
    "make",
    "mend-with-file",
    "put-back",
    "same",
    "save",
    "stop",
    "take",
    "unassign",
    "undo",
    "unsure",
    "work-out",
    "bring-back",
];

/// The same of one screen only, whose key leads on elsewhere.
const DOES_ON: &[(&str, &str)] = &[
    ("survey-rename", "rename"),
    ("survey-copy", "copy"),
    ("survey-mend", "mend"),
    ("free-here", "at"),
    ("one-survey", "aside"),
    ("one-survey", "back"),
    ("share-removed-thing", "back"),
    ("free-rooms", "add"),
    ("free-runs", "add"),
    ("free-services", "add"),
    ("free-assign", "new"),
    ("free-assign", "part"),
    ("free-assign", "run"),
];

/// Screens that lead on differently with another title.
const VARIED: [&str; 3] = ["stage", "one-survey", "free-part"];

/// One thing to do. A press takes the first key that begins so.
#[derive(Debug, Clone, Copy)]
enum Do {
    Press(&'static str),
    /// The first row whose words hold these.
    Row(&'static str),
    Pick(&'static str, &'static str),
    /// Gives a file of this name to the press that asks for one.
    File(&'static str),
    Back,
    /// Back to the whole job.
    Overview,
    /// On with the questions, each left for later, until a screen of this name.
    LaterUntil(&'static str),
}

/// A walk through everything.
pub struct Walk {
    /// The first screen of each name, as text.
    pub shown: BTreeMap<String, String>,
    pub guide: Guide,
    home: TempDir,
    /// The survey that has everything.
    pub folder: PathBuf,
    language: Language,
    /// What is tried on the first screen of each name.
    pub tried: Option<fn(&mut Self)>,
    /// What each word does in the terminal.
    acts: BTreeMap<String, String>,
    /// Every key that stood on some screen.
    pub known: BTreeSet<String>,
    /// What was done since the list of surveys or the overview, and what was seen first on the way.
    way: Vec<String>,
    /// The ways on which every screen is seen, one after the other: for the tests of shells.
    pub ways: Vec<String>,
}

/// The note of the house that has everything.
const NOTE: &str = "thing:00000000-0000-0000-0000-0000000f4241";

/// What is done from the overview for the screens that no press alone leads to.
const INSIDE: &[&[Do]] = &[
    // A question that is left for later.
    &[Do::Press("cables"), Do::Press("ask:"), Do::Press("later"), Do::Overview, Do::Press("put-off")],
    &[Do::Press("free-here"), Do::Press("at:splitter"), Do::Back],
    // A speed that is not among those offered.
    &[
        Do::Press("more"),
        Do::Press("free-rooms"),
        Do::Row("Office"),
        Do::Press("wish"),
        Do::Press("other-speed"),
    ],
    // The part of the photo of a label that is read.
    &[Do::Press("splits"), Do::Press("ask:2"), Do::Press("photo-part")],
    // An outlet test.
    &[Do::Press("tests"), Do::Press("test:"), Do::Pick("kind", "house")],
    // One change that is done.
    &[Do::Press("work"), Do::Press("step:0"), Do::Press("done"), Do::Pick("fine", "yes"), Do::Overview],
    &[Do::Press("work"), Do::Press("ended:")],
    // Forgetting, as far as its second question.
    &[Do::Press("more"), Do::Press("things"), Do::Press(NOTE), Do::Press("forget"), Do::Press("forget")],
    // A file that is written.
    &[Do::Press("pack"), Do::File("mill.lwk")],
    // Adapters that are there, one of them beside the modem: the last question at the router.
    &[
        Do::Press("router"),
        Do::Press("ask:1"),
        Do::Pick("adapters", "25"),
        Do::Overview,
        Do::Press("router"),
        Do::Press("ask:4"),
    ],
    // No adapters yet, the second question at the router: they are placed after the work.
    &[
        Do::Press("router"),
        Do::Press("ask:1"),
        Do::Pick("adapters", "none"),
        Do::Overview,
        Do::Press("placing"),
    ],
    // All that a first forecast stands on is answered or left for later.
    &[Do::LaterUntil("enough")],
];

impl Walk {
    pub fn over_everything() -> Self {
        Self::over_everything_in(guide::english)
    }

    /// The same in another language.
    pub fn over_everything_in(language: fn(Figures) -> Language) -> Self {
        let home = tempfile::tempdir().unwrap();
        let folder = fill(home.path());
        let mut guide = guide_in(home.path(), language(Figures::default()));
        // What goes on beside has a screen, too.
        guide.wait_for_long_work(Duration::ZERO);
        let language = language(Figures::default());
        let (shown, known) = (BTreeMap::new(), BTreeSet::new());
        let (way, ways) = (Vec::new(), Vec::new());
        Self { shown, guide, home, folder, language, tried: None, acts: BTreeMap::new(), known, way, ways }
    }

    /// Keeps the home folder as it is for the tests of shells, if that is to be written anew.
    pub fn keep_home_for_shells(&self) {
        if let Some(shells) = shells_anew() {
            copy(self.home(), &shells.join("home"));
            // Whoever opens it is who filled it.
            let device = format!("{{\"author\":\"{}\"}}\n", ann());
            fs::write(shells.join("home/device.json"), device).unwrap();
        }
    }

    /// Every screen there is.
    pub fn through_everything(&mut self) {
        self.lead_on_outside();
        self.lead_on_inside();
        for deeds in INSIDE {
            self.inside(deeds);
        }
    }

    /// The home folder.
    pub fn home(&self) -> &Path {
        self.home.path()
    }

    /// Keeps the screen if it is the first of its name; returns whether it is.
    fn keep(&mut self) -> bool {
        self.guide.settle_long_work();
        let screen = self.guide.screen();
        assert_eq!(self.guide.screen(), screen, "drawn anew, everything keeps its id");
        shell::assert_for_shells(&screen);
        if !self.language.is_right_to_left() {
            // The marks of the pseudo-language that reads from right to left would count as letters.
            shell_drawn::assert_heads_short(&screen);
        }
        shell_drawn::assert_drawings(&self.guide, &screen);
        shell_drawn::assert_photos(&self.guide, &screen);
        self.keep_this(&screen)
    }

    fn keep_this(&mut self, screen: &Screen) -> bool {
        if self.shown.contains_key(&screen.name) {
            return false;
        }
        let (text, marked) = plain::show(screen, &self.language);
        self.acts_keep_their_words(screen, &marked);
        self.shown.insert(screen.name.clone(), same_each_run(&text, self.home.path()));
        self.way.push(format!("see {}", screen.name));
        self.known.extend(screen.keys().into_iter().map(str::to_owned));
        if let Some(tried) = self.tried {
            tried(self);
        }
        true
    }

    /// In the terminal one word stands for one act on every screen, and no mark for two things of a screen.
    fn acts_keep_their_words(&mut self, screen: &Screen, marked: &plain::Marked) {
        let mut seen = BTreeSet::new();
        for (mark, target) in &marked.marks {
            assert!(seen.insert(mark), "{}: {mark} stands for two things", screen.name);
            let (plain::Target::Press { key, .. } | plain::Target::Confirm { key, .. }) = target else {
                continue;
            };
            if mark == plain::WAY_ON || mark.ends_with(|sign: char| sign.is_ascii_digit()) {
                continue;
            }
            // What follows in a key is what the act is about; of a file, its name up to the ending.
            let file = FileAsked::of(key).and(key.rsplit('.').next());
            let act = key.split(':').next().unwrap().to_owned() + file.unwrap_or_default();
            let of = self.acts.entry(mark.clone()).or_insert_with(|| act.clone());
            assert_eq!(*of, act, "{}: {mark} is another act elsewhere", screen.name);
            let words = self.acts.iter().filter(|(_, of)| **of == act).count();
            assert_eq!(words, 1, "{}: {act} has another word elsewhere than {mark}", screen.name);
        }
    }

    fn act(&mut self, deed: &Deed) {
        self.way.push(step(deed));
        self.guide
            .act(deed)
            .unwrap_or_else(|error| panic!("{}: {deed:?}: {error}", self.guide.screen().name));
        // What is read or written beside has a screen too; it is shown as it is when it is over.
        while self.guide.screen().name == "long-work"
            && !self.guide.long_work().is_none_or(|work| work.is_done())
        {
            std::thread::yield_now();
        }
        let screen = self.guide.screen();
        if screen.name == "long-work" {
            self.keep_this(&screen);
        }
        self.guide.settle_long_work();
    }

    fn press(&mut self, key: &str) {
        self.act(&Deed::Press { key: key.into() });
    }

    /// Every screen that presses alone lead to from the list of surveys.
    fn lead_on_outside(&mut self) {
        self.lead_on(|walk| {
            walk.guide.close().unwrap();
            walk.guide.settle_long_work();
        });
    }

    /// Every screen that presses alone lead to from the overview; nothing is written meanwhile.
    fn lead_on_inside(&mut self) {
        self.lead_on(Self::go_to_overview);
    }

    fn facts(&self) -> usize {
        Store::open(&self.folder, AuthorId::random()).unwrap().ledger().facts().count()
    }

    pub fn go_to_overview(&mut self) {
        if self.guide.open_folder().as_ref() != Some(&self.folder) {
            self.guide.open(&self.folder.clone()).unwrap();
        }
        for _ in 0..80 {
            let screen = self.guide.screen();
            if screen.name == "overview" {
                return;
            }
            if screen.keys().contains(&"overview") { self.press("overview") } else { self.act(&Deed::Back) }
        }
        panic!("no way to the whole job from {}", self.guide.screen().name);
    }

    fn lead_on(&mut self, mut start: impl FnMut(&mut Self)) {
        let mut ways: VecDeque<Vec<String>> = VecDeque::from([Vec::new()]);
        let mut gone_on = BTreeSet::new();
        while let Some(way) = ways.pop_front() {
            start(self);
            let is_open = self.guide.open_folder().is_some();
            self.way = vec![self.guide.screen().name];
            for key in &way {
                let (name, had) = (self.guide.screen().name, self.facts());
                self.press(key);
                assert_eq!(
                    self.facts(),
                    had,
                    "{name}: {key} was thought to lead on only, and wrote something"
                );
            }
            let same_side = self.guide.open_folder().is_some() == is_open;
            if self.keep() {
                self.ways.push(self.way.join(", "));
            }
            let screen = self.guide.screen();
            let here = (
                screen.name.clone(),
                if VARIED.contains(&screen.name.as_str()) { screen.title.clone() } else { String::new() },
            );
            if !gone_on.insert(here) || !same_side || way.len() == DEEPEST {
                continue;
            }
            for key in leads(&screen) {
                ways.push_back(way.iter().cloned().chain([key]).collect());
            }
        }
    }

    /// From the overview, one deed after the other; every screen on the way is kept.
    fn inside(&mut self, deeds: &[Do]) {
        self.go_to_overview();
        self.way = vec!["overview".into()];
        for deed in deeds {
            self.one(*deed);
            self.keep();
        }
        self.ways.push(self.way.join(", "));
    }

    fn one(&mut self, deed: Do) {
        let screen = self.guide.screen();
        let missing = || -> ! { panic!("{deed:?} on {}: {:?}", screen.name, screen.keys()) };
        match deed {
            Do::Press(begins) => {
                let key = screen.keys().into_iter().find(|key| key.starts_with(begins));
                let key = key.unwrap_or_else(|| missing()).to_owned();
                self.press(&key);
            }
            Do::Row(words) => {
                let rows = screen.blocks.iter().filter_map(|block| match block {
                    Block::Rows(rows) => Some(&rows.rows),
                    _ => None,
                });
                let key = rows.flatten().find(|row| row.head.contains(words)).and_then(|row| row.key.clone());
                self.press(&key.unwrap_or_else(|| missing()));
            }
            Do::Pick(key, option) => {
                self.act(&Deed::Pick { key: key.into(), picked: vec![option.into()] });
            }
            Do::File(name) => {
                let asks = screen.keys().into_iter().find(|key| FileAsked::of(key).is_some());
                let key = asks.unwrap_or_else(|| missing()).to_owned();
                let file = self.home.path().join(name).display().to_string();
                self.act(&Deed::File { key, file });
            }
            Do::Back => self.act(&Deed::Back),
            Do::LaterUntil(name) => {
                self.press("next");
                for _ in 0..60 {
                    if self.guide.screen().name == name {
                        return;
                    }
                    self.press("later");
                }
                missing();
            }
            Do::Overview => {
                let way = std::mem::take(&mut self.way);
                self.go_to_overview();
                self.way = way.into_iter().chain(["overview".into()]).collect();
            }
        }
    }
}

/// The keys of a screen that only lead on; from a question only an answer does.
fn leads(screen: &Screen) -> Vec<String> {
    if screen.name.starts_with("ask-") {
        return Vec::new();
    }
    let keys: Vec<String> = screen.blocks.iter().flat_map(of_block).collect();
    let does = |key: &String| {
        let word = key.split(':').next().unwrap_or_default();
        DOES.contains(&word)
            || DOES_ON.contains(&(screen.name.as_str(), word))
            || FileAsked::of(key).is_some()
    };
    keys.into_iter().filter(|key| !does(key)).collect()
}

fn of_block(block: &Block) -> Vec<String> {
    match block {
        Block::Press(press) => vec![press.key.clone()],
        Block::Rows(rows) => rows.rows.iter().filter_map(|row| row.key.clone()).collect(),
        Block::Part(part) => part.key.iter().cloned().collect(),
        Block::PhotoSlot(slot) => slot.photos.iter().filter_map(|photo| photo.key.clone()).collect(),
        _ => Vec::new(),
    }
}

/// The folder of what the tests of shells walk, if it is to be written anew.
pub fn shells_anew() -> Option<PathBuf> {
    std::env::var_os("LEGWORK_SHELLS")?;
    Some(shells())
}

/// The folder of what the tests of shells walk.
pub fn shells() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/shells")
}

/// Copies a folder with all that is in it, in the place of what was there.
fn copy(from: &Path, to: &Path) {
    let _ = fs::remove_dir_all(to);
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let there = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &there);
        } else if entry.path().extension().is_none_or(|end| end != "db-shm") {
            // That one SQLite makes anew for each process: it is no part of the database.
            fs::copy(entry.path(), &there).unwrap();
        }
    }
}

/// A deed as it stands in a way.
fn step(deed: &Deed) -> String {
    match deed {
        Deed::Press { key } => format!("press {key}"),
        Deed::Pick { key, picked } => format!("pick {key} {}", picked.join(" ")),
        Deed::File { file, .. } => {
            format!("file {}", Path::new(file).file_name().unwrap_or_default().display())
        }
        Deed::Back => "back".into(),
        other => panic!("{other:?} leads to no screen"),
    }
}

/// Days, times and the home folder are another each run.
fn same_each_run(text: &str, home: &Path) -> String {
    let home = fs::canonicalize(home).unwrap_or_else(|_| home.to_owned());
    let text = text.replace(&home.display().to_string(), "HOME");
    let mut told = String::new();
    let mut rest = text.as_str();
    while let Some(sign) = rest.chars().next() {
        let begins = !told.ends_with(|last: char| last.is_ascii_digit());
        let length = if begins && fits(rest, "0000-00-00") {
            told.push_str("2026-01-02");
            10
        } else if begins && fits(rest, "00:00") {
            told.push_str("10:11");
            5
        } else {
            told.push(sign);
            sign.len_utf8()
        };
        rest = &rest[length..];
    }
    told
}

/// Whether a text begins like a form in which 0 stands for any digit.
fn fits(text: &str, form: &str) -> bool {
    let signs: Vec<char> = text.chars().take(form.len()).collect();
    signs.len() == form.len()
        && signs.iter().zip(form.chars()).all(
            |(sign, form)| {
                if form == '0' { sign.is_ascii_digit() } else { *sign == form }
            },
        )
}
