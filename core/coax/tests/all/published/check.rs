//! Holds what the code says against a published figure, and writes a row of the table of such checks.
//!
//! A row says how the figure found came about ([`Check`]), so that nobody takes a copied constant for a proof.
//!
//! It goes to standard output (`cargo test -- --nocapture` shows it) and to a file for each test under `target/published`,
//! of which `tests/run` prints the table. Columns: held or off, how found, source, what, published, found.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::Write as _;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

/// How the figure that is held against the published one came about.
#[derive(Clone, Copy)]
pub enum Check {
    /// The code works it out, and the figure is not among what goes in.
    WorkedOut,
    /// The code's constants were fitted to these very figures: the row shows what the fit misses.
    Fitted,
    /// The test puts the figure in (a label, a rating), and the model must hand it back.
    PutIn,
    /// The code holds the figure, or nothing but others from the same place: a row finds a slip of the pen, no more.
    Copied,
}

/// The rows' files, by test: made anew by each run.
static FILES: Mutex<BTreeMap<String, File>> = Mutex::new(BTreeMap::new());

/// Fails unless `got`, which the code worked out, is within `tolerance` of what `source` gives as `expected`.
pub fn check(source: &str, what: &str, expected: f64, tolerance: f64, got: f64) {
    Check::WorkedOut.about(source, what, expected, tolerance, got);
}

/// Fails unless `got`, which the code worked out, lies between two published bounds (or a bound and an infinity).
pub fn check_between(source: &str, what: &str, low: f64, high: f64, got: f64) {
    Check::WorkedOut.between(source, what, low, high, got);
}

impl Check {
    /// Fails unless `got` is within `tolerance` of what `source` gives as `expected`.
    pub fn about(self, source: &str, what: &str, expected: f64, tolerance: f64, got: f64) {
        let published = format!("{expected} +- {}", rounded(tolerance));
        self.row((got - expected).abs() <= tolerance, source, what, &published, got);
    }

    /// Fails unless `got` lies between two published bounds (or a bound and an infinity).
    pub fn between(self, source: &str, what: &str, low: f64, high: f64, got: f64) {
        let published = match (low.is_finite(), high.is_finite()) {
            (true, false) => format!("at least {low}"),
            (false, _) => format!("at most {high}"),
            _ => format!("{low} to {high}"),
        };
        self.row((low..=high).contains(&got), source, what, &published, got);
    }

    /// The mark in the table.
    const fn mark(self) -> &'static str {
        match self {
            Self::WorkedOut => "worked out",
            Self::Fitted => "fitted",
            Self::PutIn => "put in",
            Self::Copied => "constant copied",
        }
    }

    fn row(self, held: bool, source: &str, what: &str, published: &str, got: f64) {
        let verdict = if held { "held" } else { "OFF" };
        let line = format!("{verdict}\t{}\t{source}\t{what}\t{published}\t{}\n", self.mark(), rounded(got));
        print!("{line}");
        let test = std::thread::current().name().unwrap_or("main").replace("::", "-");
        {
            let mut files = FILES.lock().unwrap_or_else(PoisonError::into_inner);
            let file = files.entry(test).or_insert_with_key(|test| {
                let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).with_file_name("published");
                std::fs::create_dir_all(&folder).unwrap();
                // Package, program and test: `coax-all-published-cable-a_warm_run_loses_more.tsv`.
                let name = format!("{}-{}-{test}.tsv", env!("CARGO_PKG_NAME"), env!("CARGO_CRATE_NAME"));
                File::create(folder.join(name)).unwrap()
            });
            file.write_all(line.as_bytes()).unwrap();
        }
        assert!(held, "{what}: found {got}, published {published} ({source})");
    }
}

/// Six significant digits, without trailing zeros.
fn rounded(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap()
}
