//! Helpers shared by the checks that run across the crates.

pub mod chance;
