//! The proofs of `tests/soak`, each for as long as a test may take. They print their seed.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::path::Path;
use std::process::Command;

fn soak(arguments: &[&str]) {
    let done = Command::new(env!("CARGO_BIN_EXE_soak")).args(arguments).output().unwrap();
    let (out, error) = (String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    println!("soak {arguments:?}\n{out}{error}");
    assert!(done.status.success(), "soak {arguments:?}: {out}{error}");
}

#[test]
fn nothing_acknowledged_is_lost_and_nothing_is_half_there() {
    // The writer that is killed stands beside the soak.
    assert!(Path::new(env!("CARGO_BIN_EXE_record-writer")).is_file());
    soak(&["kill", "--times", "200"]);
}

#[test]
fn copies_that_exchanged_files_in_any_order_are_equal() {
    soak(&["merge", "--histories", "12"]);
}

#[test]
fn changed_inputs_are_refused_or_true() {
    assert!(Path::new(env!("CARGO_BIN_EXE_fuzzer")).is_file());
    soak(&["fuzz", "--minutes", "1"]);
}
