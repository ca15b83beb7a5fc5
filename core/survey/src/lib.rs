//! What was found in a house, and what follows from it.

pub mod label;
