//! A file that was looked into and not taken in.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::file::{self, Limits, Look};
use facts::store::Store;

use crate::long_work::LongWork;

/// A file that was looked into and not taken in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Looked {
    /// The file.
    pub(crate) file: PathBuf,
    /// What it would bring.
    pub(crate) look: Look,
    /// What the survey was when it was held against it.
    pub(crate) revision: u64,
}

impl Looked {
    /// Looks into a file; what it would bring as a survey of its own.
    pub(in crate::page) fn into(file: &Path, work: &LongWork) -> Result<Self, FactsError> {
        let look = file::look(file, None, Limits::default(), &mut work.watch_file())?;
        Ok(Self { file: file.to_owned(), look, revision: 0 })
    }

    /// Looks into a file; what it would bring to a survey as it was at a count of writes.
    pub(super) fn against(
        store: &mut Store,
        revision: u64,
        file: &Path,
        work: &LongWork,
    ) -> Result<Self, FactsError> {
        let look = file::look(file, Some(store), Limits::default(), &mut work.watch_file())?;
        Ok(Self { file: file.to_owned(), look, revision })
    }
}
