//! A screen as plain text, and a typed line as a deed: the whole guide in a terminal, for remote help, for tests and
//! for whoever works without seeing.

mod cautions;
mod read;
mod show;

pub use cautions::{CAUTIONS, cautions};
pub use read::{Typed, read};
pub use show::show;
