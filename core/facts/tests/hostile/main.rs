//! Files made to harm: every one is refused, costs little memory, and changes nothing.
//!
//! In a binary of its own, because it counts the memory of the whole process. What is counted is what Rust allocates;
//! SQLite, which is written in C, is not reached by a file that is refused.
#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

mod cases;
#[path = "../file_support/mod.rs"]
mod file_support;

use std::fs;

use cases::{ALL, small};
use facts::fact::AuthorId;
use facts::file::{Consent, Limits, look, take, take_as_new};
use file_support::*;
use peak_alloc::PeakAlloc;

#[global_allocator]
static COUNTED: PeakAlloc = PeakAlloc;

const MEMORY_MB: f32 = 64.0;

#[test]
fn hostile_files_are_refused_cheaply_and_change_nothing() {
    let mut chance = Chance::new();
    let (home, mut store) = house(&mut chance);
    let path = home.path().join("hostile.lwk");
    let survey = store.survey_id().to_string();
    let mut count = 0;
    for make in ALL {
        for (what, bytes) in make(&survey, &store) {
            fs::write(&path, &bytes).unwrap();
            let length = bytes.len();
            drop(bytes);
            let folder = store.folder().to_owned();
            let before = snapshot(&folder);
            let start = COUNTED.current_usage_as_mb();
            COUNTED.reset_peak_usage();
            let refused = look(&path, Some(&mut store), Limits::default(), &mut go_on);
            let refused = refused.err().unwrap_or_else(|| panic!("look: {what} is accepted"));
            let take_refused = take(&path, &mut store, Consent::ALL, Limits::default(), &mut go_on);
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
    println!("{count} hostile files");
    assert!(count >= 40, "only {count}");
    // The way in is open for what is right.
    let good = small(&survey);
    fs::write(&path, zip(&stored(&good.entries()))).unwrap();
    assert_eq!(take(&path, &mut store, Consent::ALL, Limits::default(), &mut go_on).unwrap().facts.len(), 3);
}
