//! Files made to harm, 150 and more: what is no file of ours is refused and changes nothing; what is one and lies is refused or
//! taken, nothing is lost by it without a yes, and all of it can be put back. None costs much memory.
//!
//! In a binary of its own, because it counts the memory of the whole process. What is counted is what Rust allocates;
//! SQLite, which is written in C, is not reached by a file that is refused.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where its preparation fails, and says at which file"
)]

mod cases;
#[path = "../file_support/mod.rs"]
mod file_support;
#[cfg(unix)]
mod odd_files;

use std::fs;

use cases::{ALL, LIES, small};
use facts::fact::AuthorId;
use facts::file::{Consent, Limits, look, put_back, take, take_as_new};
use facts::store::Store;
use file_support::*;
use peak_alloc::PeakAlloc;
use tempfile::TempDir;

#[global_allocator]
static COUNTED: PeakAlloc = PeakAlloc;

const MEMORY_MB: f32 = 64.0;

/// What is no file of ours. Returns how many there were.
fn refused(home: &TempDir, store: &mut Store) -> usize {
    let path = home.path().join("hostile.lwk");
    let survey = store.survey_id().to_string();
    let mut count = 0;
    for make in ALL {
        for (what, bytes) in make(&survey, store) {
            fs::write(&path, &bytes).unwrap();
            let length = bytes.len();
            drop(bytes);
            let folder = store.folder().to_owned();
            let before = snapshot(&folder);
            let start = COUNTED.current_usage_as_mb();
            COUNTED.reset_peak_usage();
            let refused = look(&path, Some(&mut *store), Limits::default(), &mut go_on);
            let refused = refused.err().unwrap_or_else(|| panic!("look: {what} is accepted"));
            let take_refused = take(&path, store, Consent::ALL, Limits::default(), &mut go_on);
            assert!(take_refused.is_err(), "take: {what} is accepted");
            let peak = COUNTED.peak_usage_as_mb() - start;
            assert!(peak < MEMORY_MB, "{what}: {peak} MB");
            assert!(snapshot(&folder) == before, "{what}: something changed");
            // As a survey of its own, nothing must be left either. What only collides with facts that are held may
            // well be right by itself.
            let fresh = home.path().join("fresh.legwork");
            let author = AuthorId::random();
            if take_as_new(&path, &fresh, author, Consent::NONE, Limits::default(), &mut go_on).is_err() {
                assert!(!fresh.exists(), "{what}: something is left");
            } else {
                assert!(what.contains("held"), "{what} is accepted as a survey of its own");
                fs::remove_dir_all(&fresh).unwrap();
            }
            let left = fs::read_dir(home.path()).unwrap().count();
            assert_eq!(left, 2, "{what}: something is left");
            println!("{what} ({length} bytes): {peak:.1} MB: {refused}");
            count += 1;
        }
    }
    count
}

/// What is a file of ours and lies. Returns how many there were.
fn lies(home: &TempDir, store: &mut Store) -> usize {
    let path = home.path().join("hostile.lwk");
    let survey = store.survey_id().to_string();
    let mut count = 0;
    for make in LIES {
        for (what, bytes) in make(&survey, store) {
            fs::write(&path, &bytes).unwrap();
            drop(bytes);
            let before = content(store);
            let start = COUNTED.current_usage_as_mb();
            COUNTED.reset_peak_usage();
            let looked = look(&path, Some(&mut *store), Limits::default(), &mut go_on);
            assert!(content(store) == before, "{what}: a look changed something");
            let taken =
                take(&path, store, Consent { forget: false, upheaval: true }, Limits::default(), &mut go_on);
            assert_eq!(looked.is_ok(), taken.is_ok(), "{what}: a look says something else than a take");
            let after = content(store);
            for line in before.0.lines() {
                assert!(after.0.contains(line), "{what}: {line} is lost");
            }
            assert!(
                before.1.iter().all(|photo| after.1.get(photo.0) == Some(photo.1)),
                "{what}: a photo is lost"
            );
            *store = Store::open(store.folder(), store.author()).unwrap();
            assert!(content(store) == after, "{what}: opened again, it is something else");
            if let Ok(taken) = &taken
                && !taken.facts.is_empty()
            {
                put_back(store).unwrap();
            }
            assert!(content(store) == before, "{what}: it cannot be put back");
            store.refuse_wishes().unwrap();
            let peak = COUNTED.peak_usage_as_mb() - start;
            assert!(peak < MEMORY_MB, "{what}: {peak} MB");
            let left = fs::read_dir(home.path()).unwrap().count();
            assert_eq!(left, 2, "{what}: something is left");
            let fate =
                taken.map_or_else(|error| error.to_string(), |taken| format!("{} taken", taken.facts.len()));
            println!("{what}: {peak:.1} MB: {fate}");
            count += 1;
        }
    }
    count
}

#[test]
fn hostile_files_are_refused_or_harmless_and_cost_little() {
    let mut chance = Chance::new();
    let (home, mut store) = house(&mut chance);
    let count = refused(&home, &mut store) + lies(&home, &mut store);
    #[cfg(unix)]
    let count = count + odd_files::refused(&home, &mut store);
    println!("{count} hostile files");
    assert!(count >= 150, "only {count}");
    #[cfg(unix)]
    odd_files::instead_of_a_database();
    let path = home.path().join("hostile.lwk");
    let survey = store.survey_id().to_string();
    // The way in is open for what is right.
    let good = small(&survey);
    fs::write(&path, zip(&stored(&good.entries()))).unwrap();
    assert_eq!(take(&path, &mut store, Consent::ALL, Limits::default(), &mut go_on).unwrap().facts.len(), 3);
}
