//! Proofs that take as long as one lets them: one subcommand a file.

mod kill;
mod merge;
mod sample;
mod shown;
mod speed;

use std::error::Error;
use std::path::PathBuf;
use std::process::{Command, ExitCode};

use clap::{Parser, Subcommand};
use proofs::chance;

type Outcome<T = ()> = Result<T, Box<dyn Error>>;

#[derive(Parser)]
#[command(about = "Proofs that take as long as one lets them")]
struct Arguments {
    #[command(subcommand)]
    proof: Proof,
}

#[derive(Subcommand)]
enum Proof {
    /// Random histories of two to five copies that exchange files in any order: all end up the same.
    Merge {
        /// How many histories.
        #[arg(long, default_value_t = 100)]
        histories: usize,
        /// The seed of the first one; printed with each run.
        #[arg(long)]
        seed: Option<u64>,
    },
    /// Kills a writer at random moments of all that writes: nothing acknowledged is lost, nothing is half there.
    Kill {
        /// How many times.
        #[arg(long, default_value_t = 200)]
        times: u64,
        /// The seed of the moments; printed with each run. The system's timing is not in it.
        #[arg(long)]
        seed: Option<u64>,
    },
    /// Changed inputs for all that reads what comes from outside: refused or true, no panic, bounded memory.
    Fuzz {
        /// How long, all targets together.
        #[arg(long, default_value_t = 1.0)]
        minutes: f64,
        /// The seed; printed with each run.
        #[arg(long)]
        seed: Option<u64>,
        /// Only this target: fact, label, sheet, picture, file.
        #[arg(long)]
        target: Option<String>,
        /// Only this one input of the target, as a failed run left it.
        #[arg(long, requires = "target")]
        input: Option<PathBuf>,
    },
    /// Packs an invented survey with a random history into a file, for other programs to read.
    Sample {
        /// The file.
        file: PathBuf,
        /// The seed; printed with each run.
        #[arg(long)]
        seed: Option<u64>,
    },
    /// Prints what a file's survey shows, one JSON object a line.
    Shown {
        /// The file.
        file: PathBuf,
    },
    /// How fast: an edit against a raw SQLite row, opening, listing, packing and taking in against a plain copy.
    Speed {
        /// How much photos are packed and taken in; 0 leaves that out.
        #[arg(long, default_value_t = 1024)]
        megabytes: usize,
        /// How many times; the median counts.
        #[arg(long, default_value_t = 7)]
        rounds: usize,
        /// A folder on the disk to be measured.
        #[arg(long, default_value = ".")]
        folder: PathBuf,
    },
    /// How long the forecast and the work list of an invented house take, with nothing kept.
    Advice {
        /// Of how many parts.
        #[arg(long, default_value_t = 60)]
        parts: usize,
        /// How many times; the median counts.
        #[arg(long, default_value_t = 3)]
        rounds: usize,
    },
}

/// A program that was built beside this one.
fn beside(name: &str) -> Outcome<PathBuf> {
    let path = std::env::current_exe()?.with_file_name(format!("{name}{}", std::env::consts::EXE_SUFFIX));
    if path.is_file() { Ok(path) } else { Err(format!("{name} was not built; use tests/soak").into()) }
}

/// Runs the fuzzer, which counts its memory and therefore is a program of its own.
fn fuzz(minutes: f64, seed: Option<u64>, target: Option<String>, input: Option<PathBuf>) -> Outcome {
    let mut fuzzer = Command::new(beside("fuzzer")?);
    fuzzer.args(["--seconds", &(minutes * 60.0).to_string()]);
    fuzzer.args(seed.iter().flat_map(|seed| ["--seed".to_owned(), seed.to_string()]));
    fuzzer.args(target.into_iter().flat_map(|target| ["--target".to_owned(), target]));
    fuzzer.args(input.into_iter().flat_map(|input| ["--input".into(), input.into_os_string()]));
    if fuzzer.status()?.success() { Ok(()) } else { Err("the fuzzer found a defect".into()) }
}

fn main() -> ExitCode {
    let done = match Arguments::parse().proof {
        Proof::Merge { histories, seed } => merge::run(histories, chance::seed(seed)),
        Proof::Kill { times, seed } => kill::run(times, chance::seed(seed)),
        Proof::Fuzz { minutes, seed, target, input } => fuzz(minutes, seed, target, input),
        Proof::Sample { file, seed } => sample::run(&file, chance::seed(seed)),
        Proof::Shown { file } => shown::run(&file),
        Proof::Speed { megabytes, rounds, folder } => speed::run(megabytes, rounds, &folder),
        Proof::Advice { parts, rounds } => speed::advice::run(parts, rounds),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
