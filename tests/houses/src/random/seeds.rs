//! Many seeds one after the other, and what is kept of those that show a defect.
//!
//! `LEGWORK_HOUSES` is how many houses are looked at, `LEGWORK_SEED` the seed of the first.

use std::path::Path;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use house::record::Survey;

use crate::as_sheet::as_sheet;

/// The number that a variable of the surroundings holds, or another one where nobody set it.
pub fn asked(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).map_or(otherwise, |text| text.parse().expect("a number"))
}

/// So much is told at once of one house.
const MOST_TOLD: usize = 6;

/// How far one has got is told after so many houses.
const TOLD_EACH: u64 = 25;

/// Looks at the houses of many seeds, on all processors: so many where nobody says how many. Gives what was found, by seed.
pub fn over_seeds(houses: u64, found_in: impl Fn(u64) -> Vec<String> + Sync) -> Vec<(u64, String)> {
    let first = asked("LEGWORK_SEED", 0);
    let end = first + asked("LEGWORK_HOUSES", houses);
    let (next, done, all) = (AtomicU64::new(first), AtomicU64::new(0), Mutex::new(Vec::new()));
    let work = || {
        loop {
            let seed = next.fetch_add(1, Ordering::Relaxed);
            if seed >= end {
                break;
            }
            let found = found_in(seed);
            // Said at once: whoever watches many houses need not wait for the last.
            for what in found.iter().take(MOST_TOLD) {
                eprintln!("seed {seed}: {what}");
            }
            all.lock().expect("no panic inside").extend(found.into_iter().map(|what| (seed, what)));
            let looked_at = done.fetch_add(1, Ordering::Relaxed) + 1;
            if looked_at.is_multiple_of(TOLD_EACH) {
                eprintln!("{looked_at} houses of {}", end - first);
            }
        }
    };
    let processors = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        let threads: Vec<_> = (0..processors).map(|_| scope.spawn(work)).collect();
        for thread in threads {
            thread.join().expect("a house that panics is a defect");
        }
    });
    let mut all = all.into_inner().expect("no panic inside");
    all.sort();
    all
}

/// Fails if anything was found; the houses are then written out as sheets into a folder, for whoever looks at them.
pub fn none(found: &[(u64, String)], folder: &Path, survey: impl Fn(u64) -> Survey) {
    let mut last = None;
    for (seed, _) in found {
        if last.replace(seed) != Some(seed) {
            let place = folder.join(format!("house-{seed}.toml"));
            std::fs::write(&place, as_sheet(&survey(*seed))).expect("a place to write");
            eprintln!("seed {seed}: {}", place.display());
        }
    }
    assert!(found.is_empty(), "{} laws are broken", found.len());
}
