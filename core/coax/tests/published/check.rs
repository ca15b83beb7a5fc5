//! Holds what the code says against a published figure, and writes a row of the table of such checks.
//!
//! A row goes to standard output (`cargo test -- --nocapture` shows it) and to a file for each test under
//! `target/published`, of which `tests/run` prints the table. Columns: held or off, source, what, published, found.
#![allow(dead_code, reason = "shared by several test programs, each of which uses a part of it")]

use std::collections::BTreeMap;
use std::fs::File;
use std::io::Write as _;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

/// The rows' files, by test: made anew by each run.
static FILES: Mutex<BTreeMap<String, File>> = Mutex::new(BTreeMap::new());

/// Fails unless `got` is within `tolerance` of what `source` gives as `expected`.
pub fn check(source: &str, what: &str, expected: f64, tolerance: f64, got: f64) {
    let published = format!("{expected} +- {}", rounded(tolerance));
    row((got - expected).abs() <= tolerance, source, what, &published, got);
}

/// Fails unless `got` lies between two published bounds (or a bound and an infinity).
pub fn check_between(source: &str, what: &str, low: f64, high: f64, got: f64) {
    let published = match (low.is_finite(), high.is_finite()) {
        (true, false) => format!("at least {low}"),
        (false, _) => format!("at most {high}"),
        _ => format!("{low} to {high}"),
    };
    row((low..=high).contains(&got), source, what, &published, got);
}

fn row(held: bool, source: &str, what: &str, published: &str, got: f64) {
    let verdict = if held { "held" } else { "OFF" };
    let line = format!("{verdict}\t{source}\t{what}\t{published}\t{}\n", rounded(got));
    print!("{line}");
    let test = std::thread::current().name().unwrap_or("main").replace("::", "-");
    {
        let mut files = FILES.lock().unwrap_or_else(PoisonError::into_inner);
        let file = files.entry(test).or_insert_with_key(|test| {
            let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).with_file_name("published");
            std::fs::create_dir_all(&folder).unwrap();
            File::create(folder.join(format!("{}-{test}.tsv", env!("CARGO_CRATE_NAME")))).unwrap()
        });
        file.write_all(line.as_bytes()).unwrap();
    }
    assert!(held, "{what}: found {got}, published {published} ({source})");
}

/// Six significant digits, without trailing zeros.
fn rounded(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap()
}
