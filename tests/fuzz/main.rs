//! Changed inputs for everything that reads what comes from outside: a file, a label's text, a sheet, the line of a
//! fact, a picture. Each input is refused or true, never a panic, never a hang, and memory stays within bounds.
//!
//! Inputs come from the committed corpus by mutation, half of them by the input's own structure, so that they get past
//! its checksums. There is no look into the code's branches, which needs a compiler that is not stable; instead an
//! input whose outcome was not seen before joins the pool that is mutated.

#![expect(clippy::unwrap_used, reason = "a proof stops where its preparation fails")]

mod bag;
mod fact;
mod file;
mod label;
mod mutate;
mod picture;
mod shape;
mod sheet;
mod target;
mod watchdog;

use std::fs;
use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Duration;

use clap::Parser;
use peak_alloc::PeakAlloc;
use proofs::chance;

use target::{TARGETS, Target};

/// Counts what is allocated, so that a bound on memory is one.
#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

#[derive(Parser)]
#[command(about = "Changed inputs for all that reads what comes from outside")]
struct Arguments {
    /// How long, all targets together.
    #[arg(long, default_value_t = 60.0)]
    seconds: f64,
    /// The seed; printed with each run.
    #[arg(long)]
    seed: Option<u64>,
    /// Only this target: fact, label, sheet, picture, file.
    #[arg(long)]
    target: Option<String>,
    /// Only this one input of the target, as a failed run left it.
    #[arg(long, requires = "target")]
    input: Option<PathBuf>,
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let chosen: Vec<&Target> = TARGETS
        .iter()
        .filter(|target| arguments.target.as_deref().is_none_or(|name| name == target.name))
        .collect();
    if chosen.is_empty() {
        eprintln!("there is no such target");
        return ExitCode::FAILURE;
    }
    // A panic is caught and told with its input; the trace of each would hide that.
    std::panic::set_hook(Box::new(|panic| eprintln!("{panic}")));
    if let (Some(path), Some(target)) = (&arguments.input, chosen.first()) {
        let found = target::outcome(target, &fs::read(path).unwrap());
        println!("{found:?}");
        return if found.is_ok() { ExitCode::SUCCESS } else { ExitCode::FAILURE };
    }
    let seed = chance::seed(arguments.seed);
    let weights: f64 = chosen.iter().map(|target| target.weight).sum();
    let mut failed = false;
    for target in chosen {
        let share = Duration::from_secs_f64(arguments.seconds * target.weight / weights);
        failed |= target::run(target, seed, share).inspect_err(|error| eprintln!("{error}")).is_err();
    }
    if failed { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}
