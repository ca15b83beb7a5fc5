//! The typed document of a house, both ways: facts become records, and what changed in records becomes edits; what parts,
//! fields and values are called, as phrases; what a label makes of a part.

pub mod document;
pub mod label_seen;
pub mod naming;
pub mod rating;
pub mod record;
pub mod story;
