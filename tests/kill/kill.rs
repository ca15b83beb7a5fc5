//! A writer that acknowledges each step is killed at random moments: nothing acknowledged is lost, nothing is half
//! there.
//!
//! SIGKILL proves what a process's death does. It does not prove what a power cut does: what the system has taken it
//! keeps after a kill. That files are synced before they are named is shown by `record/strace.sh`; that a medium
//! keeps what was synced cannot be shown here.
//!
//! `LEGWORK_KILLS` says how many times (200 if not said), `LEGWORK_SEED` repeats a run.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeMap;
use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, SystemTime, UNIX_EPOCH};

use serde_json::json;
use survey::fact::{AuthorId, SubjectId};
use survey::home::{Found, Home};
use survey::photo::Picture;
use survey::store::Store;
use tempfile::TempDir;

/// The moments of killing. Seeded, so that a run can be repeated as far as the system lets it.
struct Moments(u64);

impl Moments {
    fn below(&mut self, most: u64) -> u64 {
        // Xorshift (G. Marsaglia, "Xorshift RNGs", 2003).
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % most
    }
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok().map(|text| text.parse().unwrap())
}

/// Runs the writer, kills it after so long, and returns the lines that it finished.
fn killed_after(mode: &str, folder: &Path, seed: u64, after: Duration) -> Vec<String> {
    let mut writer = Command::new(env!("CARGO_BIN_EXE_record-writer"))
        .args([mode, folder.to_str().unwrap(), &seed.to_string()])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut out = writer.stdout.take().unwrap();
    let reader = std::thread::spawn(move || {
        let mut text = String::new();
        out.read_to_string(&mut text).unwrap();
        text
    });
    std::thread::sleep(after);
    assert!(writer.try_wait().unwrap().is_none(), "the writer of {mode} ended by itself");
    writer.kill().unwrap();
    writer.wait().unwrap();
    let text = reader.join().unwrap();
    // A line that was cut off is no promise.
    text.rsplit_once('\n').map(|(whole, _)| whole.lines().map(str::to_owned).collect()).unwrap_or_default()
}

fn subject(text: &str) -> SubjectId {
    text.parse().unwrap()
}

/// Checks all that was ever promised about a survey, and that nothing else is there by half.
fn check(folder: &Path, promised: &[String]) {
    let mut store = Store::open(folder, AuthorId::random()).unwrap();
    let drafts: BTreeMap<SubjectId, String> =
        store.drafts().unwrap().into_iter().map(|draft| (draft.subject, draft.text)).collect();
    let ledger = store.ledger();
    let shown = |about: &str, field: &str| ledger.shown(subject(about), field).unwrap().value().clone();
    let finished: Vec<&str> =
        promised.iter().filter_map(|line| line.strip_prefix("finished ")?.split(' ').next()).collect();
    for line in promised {
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
                assert_eq!(is_fact, !drafts.contains_key(&subject(about)), "{line}");
                assert!(is_fact || drafts[&subject(about)] == text, "{line}");
                assert!(is_fact || !finished.contains(&about), "{line}");
            }
            ["finished", about, number] => assert_eq!(shown(about, "text"), json!(format!("half {number}"))),
            ["undone", part] => assert_eq!(shown(part, "tag"), json!(null), "{line}"),
            ["forgot", secret] => assert!(!lies_below(folder, secret.as_bytes()), "{line}"),
            ["open"] => {}
            _ => unreachable!("{line}"),
        }
    }
    // Every act of the writer has two facts, but for the one that makes a draft a fact or forgets something.
    for act in survey::story::acts(ledger) {
        let single = act.facts.iter().all(|fact| ["text", "forget"].contains(&fact.field()));
        assert_eq!(act.facts.len(), if single { 1 } else { 2 }, "{:?}", act.facts);
    }
    assert!(store.missing_photos().unwrap().is_empty());
    // What was taken in by half counts for nothing and goes.
    store.sweep_photos(Duration::ZERO).unwrap();
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

fn lies_below(folder: &Path, part: &[u8]) -> bool {
    fs::read_dir(folder).unwrap().any(|entry| {
        let path = entry.unwrap().path();
        if path.is_dir() {
            lies_below(&path, part)
        } else {
            fs::read(&path).unwrap().windows(part.len()).any(|window| window == part)
        }
    })
}

/// A survey of layout 1, as the release that wrote it left it.
fn old_survey(home: &Path) -> PathBuf {
    let folder = home.join("old.legwork");
    fs::create_dir_all(folder.join("photos")).unwrap();
    let database = rusqlite::Connection::open(folder.join("survey.db")).unwrap();
    database.pragma_update(None, "journal_mode", "WAL").unwrap();
    database.execute_batch(include_str!("../../core/survey/tests/layouts/v1.sql")).unwrap();
    folder
}

/// Checks a home folder in which surveys were made, copied and deleted.
fn check_home(home: &Home, promised: &[String]) {
    home.sweep(Duration::ZERO).unwrap();
    let list = home.list().unwrap();
    for entry in &list {
        assert!(matches!(entry.found, Found::Survey(_)), "{entry:?}");
        Store::open(&entry.folder, AuthorId::random()).unwrap();
    }
    let names: Vec<String> = list.iter().map(survey::home::Entry::folder_name).collect();
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

#[test]
fn nothing_acknowledged_is_lost_and_nothing_is_half_there() {
    let seed = number("LEGWORK_SEED").unwrap_or_else(|| {
        let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap();
        now.as_nanos().try_into().unwrap_or(1)
    });
    let kills = number("LEGWORK_KILLS").unwrap_or(200);
    println!("LEGWORK_SEED={seed} LEGWORK_KILLS={kills}");
    let mut moments = Moments(seed | 1);
    let mut acknowledged = 0;
    let modes = ["edit", "photo", "mixed", "forget", "open", "make"];
    for (place, mode) in modes.into_iter().enumerate() {
        let times = kills / modes.len() as u64 + u64::from((place as u64) < kills % modes.len() as u64);
        let place = TempDir::new().unwrap();
        let folder = place.path().join("house.legwork");
        Store::create(&folder, AuthorId::random()).unwrap();
        let mut promised = Vec::new();
        for round in 0..times {
            let after = Duration::from_micros(moments.below(100_000));
            match mode {
                "open" => {
                    let home = TempDir::new().unwrap();
                    let old = old_survey(home.path());
                    killed_after(mode, &old, 0, after);
                    let store = Store::open(&old, AuthorId::random()).unwrap();
                    assert_eq!((store.ledger().len(), store.drafts().unwrap().len()), (8, 1));
                }
                "make" => {
                    let home = Home::at(&place.path().join(format!("home {round}"))).unwrap();
                    let promised = killed_after(mode, home.folder(), 0, after * 3);
                    acknowledged += promised.len();
                    check_home(&home, &promised);
                }
                _ => {
                    // Every process goes on in the same survey, with numbers that none had before.
                    promised.extend(killed_after(mode, &folder, round * 10_000 + 1, after));
                    if round % 8 == 7 || round + 1 == times {
                        check(&folder, &promised);
                    } else {
                        // The next writer finds what the kill left, not what a check has put in order.
                    }
                }
            }
        }
        acknowledged += promised.len();
    }
    println!("{kills} kills, {acknowledged} steps acknowledged");
    assert!(acknowledged as u64 > kills / 4, "hardly anything was acknowledged: {acknowledged}");
}
