//! What was found in a house, and what follows from it.

pub mod error;
pub mod fact;
pub mod store;
