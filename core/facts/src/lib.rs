//! What was said of a house, kept: facts, the store of a survey, the file in which it travels, photos, the home folder,
//! undo and forgetting. Bytes, ids and SQLite.
//!
//! This crate knows no house: it takes fields and values as they are, but for the few names in [`fact::reserved`].
//! Who works on a house folds the facts of [`Store::ledger`](store::Store::ledger) into records, and writes
//! [`Edit`](fact::Edit)s.
//!
//! ```
//! use facts::fact::{AuthorId, Edit, SubjectId};
//! use facts::store::Store;
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let home = tempfile::tempdir()?;
//! let mut store = Store::create(&home.path().join("invented.legwork"), AuthorId::random())?;
//!
//! let part = SubjectId::random();
//! let act = store.write(&[Edit::new(part, "is", "part"), Edit::new(part, "tag", "S1")])?;
//! assert_eq!(store.ledger().shown(part, "tag").map(|fact| fact.value()), Some(&"S1".into()));
//!
//! store.undo(act)?;
//! assert_eq!(store.summary().progress.parts, 0);
//! # Ok(())
//! # }
//! ```
//!
//! From below upwards, each knows only those before it: `hex` (a hash in text), `unfinished` (names of work that is not finished), `whole_file` (a file that is whole or not there), `fact` (who said
//! what), `error`, `store` (one survey on
//! the disk), `photo` (a picture cleaned, and in a store), `act` (undo), `forget`, `file` (the file that travels), `home`
//! (all surveys of a device). Only what is said of a single fact stands below `error`.

pub mod act;
pub mod error;
pub mod fact;
pub mod file;
pub mod forget;
mod hex;
pub mod home;
pub mod photo;
pub mod store;
mod unfinished;
pub mod whole_file;
pub mod written_kind;

pub use error::{CannotPutBack, FactsError, NotASurvey, Result};
