//! soon
fn main() {}
