//! Proofs that take as long as one lets them: one subcommand a file.

mod chance;
mod kill;
mod merge;
mod sample;
mod shown;
mod speed;

use std::error::Error;
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

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
    /// Packs and takes in photos, and compares with a plain copy that is hashed.
    Speed {
        /// How much photos there are.
        #[arg(long, default_value_t = 1024)]
        megabytes: usize,
        /// How many times; the median counts.
        #[arg(long, default_value_t = 7)]
        rounds: usize,
        /// A folder on the disk to be measured.
        #[arg(long, default_value = ".")]
        folder: PathBuf,
    },
}

fn main() -> ExitCode {
    let done = match Arguments::parse().proof {
        Proof::Merge { histories, seed } => merge::run(histories, chance::seed(seed)),
        Proof::Kill { times, seed } => kill::run(times, chance::seed(seed)),
        Proof::Sample { file, seed } => sample::run(&file, chance::seed(seed)),
        Proof::Shown { file } => shown::run(&file),
        Proof::Speed { megabytes, rounds, folder } => speed::run(megabytes, rounds, &folder),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
