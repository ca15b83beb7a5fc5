//! A screen as plain text, and a typed line as a deed: the whole guide in a terminal, for remote help, for tests and
//! for whoever works without seeing.

mod read;
mod show;

pub use read::{Typed, read};
pub use show::{CAUTIONS, cautions, show};
