//! Published figures, worked examples and textbook values against the code, the source beside each. Every one is a row of the
//! table that the run prints: see `check.rs`.

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
