//! What is fuzzed, and one run of it.

use std::collections::BTreeSet;
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use proofs::chance::Chance;

use crate::mutate::Mutator;
use crate::watchdog::Watchdog;
use crate::{MEMORY, fact, file, label, picture, sheet};

/// Whether an input was taken, and in which way: equal texts are equal outcomes.
#[derive(Debug, PartialEq)]
pub struct Verdict {
    pub taken: bool,
    pub way: String,
}

impl Verdict {
    pub fn taken(way: impl Into<String>) -> Self {
        Self { taken: true, way: way.into() }
    }

    pub fn refused(way: impl Into<String>) -> Self {
        Self { taken: false, way: way.into() }
    }
}

/// Something that reads what comes from outside.
pub struct Target {
    pub name: &'static str,
    /// How much of the time it gets.
    pub weight: f64,
    /// The longest input.
    pub most_bytes: usize,
    /// Reads an input. An error is a defect.
    pub check: fn(&[u8]) -> Result<Verdict, String>,
    /// Changes an input by its structure; may give it up.
    pub shape: fn(&mut Chance, &[u8]) -> Option<Vec<u8>>,
    /// Words that mean something in such an input.
    pub words: &'static [&'static [u8]],
    /// The most memory that one input may take, in bytes.
    pub most_memory: usize,
}

pub const TARGETS: &[Target] = &[fact::TARGET, label::TARGET, sheet::TARGET, picture::TARGET, file::TARGET];

/// The most inputs that are kept to be changed.
const POOL: usize = 600;

/// Reads one input; a panic, or more memory than allowed, is an error.
pub fn outcome(target: &Target, input: &[u8]) -> Result<Verdict, String> {
    let before = MEMORY.current_usage();
    MEMORY.reset_peak_usage();
    let verdict = catch_unwind(AssertUnwindSafe(|| (target.check)(input)))
        .unwrap_or_else(|_| Err("it panicked".into()))?;
    let memory = MEMORY.peak_usage().saturating_sub(before);
    if memory > target.most_memory {
        return Err(format!("it took {memory} bytes of memory"));
    }
    Ok(verdict)
}

fn corpus(target: &Target) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/corpus").join(target.name);
    let mut paths: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| fs::read(path).unwrap()).collect()
}

/// Fuzzes a target for so long.
pub fn run(target: &Target, seed: u64, time: Duration) -> Result<(), String> {
    let start = Instant::now();
    let mut chance = Chance(seed);
    let watchdog = Watchdog::start(target.name);
    let (mut pool, mut ways) = (corpus(target), BTreeSet::new());
    let (mut taken, mut refused, mut longest) = (0_u64, 0_u64, Duration::ZERO);
    let seeds = pool.len();
    for number in 0.. {
        let input = match pool.get(number) {
            Some(seed) if number < seeds => seed.clone(),
            _ if start.elapsed() >= time => break,
            _ => Mutator { chance: &mut chance, target }.changed(&pool),
        };
        let begun = watchdog.begin(&input);
        let verdict = outcome(target, &input).map_err(|error| {
            let kept = watchdog.keep(&input);
            format!(
                "{}: {error}. Again: tests/soak fuzz --target {} --input {}",
                target.name,
                target.name,
                kept.display()
            )
        })?;
        longest = longest.max(begun.elapsed());
        taken += u64::from(verdict.taken);
        refused += u64::from(!verdict.taken);
        if ways.insert(verdict.way) && number >= seeds && pool.len() < POOL {
            pool.push(input);
        }
    }
    println!(
        "{}: {} inputs, {taken} taken and true, {refused} refused, {} outcomes, longest {} ms",
        target.name,
        taken + refused,
        ways.len(),
        longest.as_millis()
    );
    // A run in which nothing was taken, or nothing refused, proves nothing.
    if taken == 0 || refused == 0 { Err(format!("{}: one-sided", target.name)) } else { Ok(()) }
}
