//! Rows that lead from the overview to screens: key, name, and what stands beside it.

pub(super) mod field;
pub(super) mod result;
pub(super) mod share;

use phrase::Phrase;

use crate::place::Key;

/// Rows that lead to screens: key, name, and what stands beside it.
pub(super) type Doors = Vec<(Key, Phrase, Option<Phrase>)>;
