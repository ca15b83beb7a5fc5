//! A writer that acknowledges each step is killed at random moments: nothing acknowledged is lost, nothing is half
//! there.
//!
//! SIGKILL proves what a process's death does. It does not prove what a power cut does: what the system has taken it
//! keeps after a kill. That files are synced before they are named is shown by `record/strace.sh`; that a medium
//! keeps what was synced cannot be shown here.

#![expect(clippy::unwrap_used, reason = "a proof stops where its preparation fails")]

mod check;
mod travel;

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use facts::fact::AuthorId;
use facts::home::Home;
use facts::store::Store;
use tempfile::TempDir;

use crate::Outcome;
use proofs::chance::Chance;

/// What the writer is doing when it is killed: editing, taking photos in, drafts, undo and all that mixed, forgetting,
/// bringing an old layout up, making and copying surveys, packing, taking in, taking in as a new survey, repairing a
/// damaged survey from a file, making one from a sheet.
const MODES: [&str; 11] =
    ["edit", "photo", "mixed", "forget", "open", "make", "pack", "take", "take-new", "repair", "sheet"];

/// Kills `times` writers, and checks what each left.
pub fn run(times: u64, seed: u64) -> Outcome {
    let mut harness = Harness {
        writer: crate::beside("record-writer")?,
        chance: Chance(seed),
        acknowledged: 0,
        leftovers: 0,
    };
    let modes = MODES.len() as u64;
    for (place, mode) in MODES.into_iter().enumerate() {
        let times = times / modes + u64::from((place as u64) < times % modes);
        match mode {
            "open" => harness.migrate(times),
            "make" => harness.make(times),
            "pack" => harness.pack(times),
            "take" => harness.take(times),
            "take-new" => harness.take_new(times),
            "repair" => harness.repair(times),
            "sheet" => harness.sheet(times)?,
            _ => harness.write(mode, times),
        }
    }
    let Harness { acknowledged, leftovers, .. } = harness;
    println!("{times} kills, {acknowledged} steps acknowledged, {leftovers} unfinished things swept");
    if acknowledged < times / 4 {
        return Err(format!("hardly anything was acknowledged: {acknowledged}").into());
    }
    Ok(())
}

struct Harness {
    writer: PathBuf,
    chance: Chance,
    acknowledged: u64,
    /// How many kills left something under a temporary name.
    leftovers: u64,
}

impl Harness {
    /// Runs the writer, kills it within so many milliseconds, and returns the lines that it finished.
    fn killed(&mut self, mode: &str, folder: &Path, number: u64, most_ms: usize) -> Vec<String> {
        let after = Duration::from_micros(self.chance.below(most_ms * 1000) as u64);
        let mut writer = Command::new(&self.writer)
            .args([mode, folder.to_str().unwrap(), &number.to_string()])
            .env("LEGWORK_HOME", folder.with_file_name("author"))
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
        let whole = text.rsplit_once('\n').map_or("", |(whole, _)| whole);
        let lines: Vec<String> = whole.lines().map(str::to_owned).collect();
        self.acknowledged += lines.len() as u64;
        lines
    }

    /// Writers in one survey, each with numbers that none had before.
    fn write(&mut self, mode: &str, times: u64) {
        let place = TempDir::new().unwrap();
        let folder = place.path().join("house.legwork");
        Store::create(&folder, AuthorId::random()).unwrap();
        let mut promised = Vec::new();
        for round in 0..times {
            promised.extend(self.killed(mode, &folder, round * 10_000 + 1, 100));
            // Otherwise the next writer finds what the kill left, not what a check has put in order.
            if round % 8 == 7 || round + 1 == times {
                check::survey(&folder, &promised);
            }
        }
    }

    /// Opening a survey of an older layout.
    fn migrate(&mut self, times: u64) {
        for round in 0..times {
            let home = TempDir::new().unwrap();
            let old = old_survey(home.path(), LAYOUTS[usize::from(round % 2 == 1)]);
            self.killed("open", &old, 0, 100);
            let store = Store::open(&old, AuthorId::random()).unwrap();
            assert_eq!((store.ledger().len(), store.drafts().unwrap().len()), (8, 1));
        }
    }

    /// Making, copying and deleting surveys.
    fn make(&mut self, times: u64) {
        for _ in 0..times {
            let place = TempDir::new().unwrap();
            let home = Home::at(place.path()).unwrap();
            let promised = self.killed("make", home.folder(), 0, 300);
            check::home(&home, &promised);
        }
    }
}

/// Surveys of older layouts, as the releases that wrote them left them.
const LAYOUTS: [&str; 2] = [
    include_str!("../../../core/facts/tests/layouts/v1.sql"),
    include_str!("../../../core/facts/tests/layouts/v2.sql"),
];

fn old_survey(home: &Path, layout: &str) -> PathBuf {
    let folder = home.join("old.legwork");
    fs::create_dir_all(folder.join("photos")).unwrap();
    let database = rusqlite::Connection::open(folder.join("survey.db")).unwrap();
    database.pragma_update(None, "journal_mode", "WAL").unwrap();
    database.execute_batch(layout).unwrap();
    folder
}
