//! The zip container: ISO/IEC 21320-1, and of that only what a survey file needs.
//!
//! General zip libraries are made to forgive. Here every byte has one meaning or the file is refused: entries follow
//! each other without a gap from the first byte, then the directory, then the end; each local header says what the
//! directory says. So no two programs can see two different contents in one file.
//!
//! Field names and numbers in brackets are those of APPNOTE.TXT 6.3.10, the specification that the standard refers to.

mod directory;
mod entry;
mod layout;
mod write;

pub(super) use directory::{Entry, read_directory};
pub(super) use entry::EntryReader;
pub(super) use write::ZipWriter;

#[cfg(test)]
mod tests;
