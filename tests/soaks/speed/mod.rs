//! How fast the record is: each row against what it is compared with, in one run, on one disk, medians.

pub mod advice;
mod daily;
mod travel;

use std::path::Path;
use std::time::Instant;

use crate::Outcome;

/// Measures everything on the disk that holds `folder`; photos of 3 MB, `megabytes` in all, or none at 0.
pub fn run(megabytes: usize, rounds: usize, folder: &Path) -> Outcome {
    // First, so that the peaks of memory hold nothing of the others.
    if megabytes > 0 {
        travel::photos(megabytes, rounds, folder)?;
    }
    daily::edit(rounds, folder)?;
    daily::open(rounds, folder)?;
    daily::list(rounds, folder)
}

fn seconds(work: impl FnOnce() -> Outcome) -> Outcome<f64> {
    let start = Instant::now();
    work()?;
    Ok(start.elapsed().as_secs_f64())
}

fn median(mut seconds: Vec<f64>) -> f64 {
    seconds.sort_by(f64::total_cmp);
    seconds.get(seconds.len() / 2).copied().unwrap_or(f64::NAN)
}
