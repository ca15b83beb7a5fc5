//! The `legwork` command.
fn main() {}
