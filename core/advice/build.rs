//! Sums up the sources of all that has a say in what is worked out: what was kept of an earlier program's work is not
//! taken for this one's.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

/// The crates on which a forecast or a work list depends, from this one's folder.
const SOURCES: [&str; 6] =
    ["../coax/src", "../phrase/src", "../label/src", "../facts/src/fact", "../house/src", "src"];

fn main() {
    let mut files = Vec::new();
    for folder in SOURCES {
        println!("cargo::rerun-if-changed={folder}");
        files_in(Path::new(folder), &mut files);
    }
    files.sort();
    let mut sum = Sha256::new();
    for file in files {
        sum.update(file.to_string_lossy().as_bytes());
        sum.update(fs::read(&file).unwrap_or_default());
    }
    // Another machine may round otherwise.
    sum.update(std::env::var("TARGET").unwrap_or_default());
    let text = sum.finalize().iter().fold(String::new(), |mut text, byte| {
        // Writing to a text cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    });
    println!("cargo::rustc-env=LEGWORK_ADVICE_SOURCES={text}");
}

fn files_in(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            files_in(&path, files);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            files.push(path);
        }
    }
}
