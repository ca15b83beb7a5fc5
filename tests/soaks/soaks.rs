//! The proofs of `tests/soak`, each for as long as a test may take. They print their seed.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::process::Command;

fn soak(arguments: &[&str]) {
    let done = Command::new(env!("CARGO_BIN_EXE_soak")).args(arguments).output().unwrap();
    let (out, error) = (String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    println!("soak {arguments:?}\n{out}{error}");
    assert!(done.status.success(), "soak {arguments:?}: {out}{error}");
}

/// The writer that is killed must have been built before.
const WRITER: &str = env!("CARGO_BIN_EXE_record-writer");

#[test]
fn nothing_acknowledged_is_lost_and_nothing_is_half_there() {
    assert!(WRITER.ends_with("record-writer"));
    soak(&["kill", "--times", "200"]);
}

#[test]
fn copies_that_exchanged_files_in_any_order_are_equal() {
    soak(&["merge", "--histories", "12"]);
}
