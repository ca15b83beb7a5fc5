//! Published figures, worked examples and textbook values against the code, the source beside each. Every one is a row of the
//! table that the run prints: see `check.rs`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a test fails by panicking, and its helpers stand outside the test functions"
)]

mod bench;
mod cable;
mod channels;
mod check;
mod echoes;
mod filters;
mod levels;
mod link;
mod rates;
mod splits;
