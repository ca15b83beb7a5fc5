//! Faults of a file, and of reading it, as errors that name it.

use std::io;
use std::path::Path;

use crate::error::{FactsError, FileFault};
use crate::store::fault::of_system;

impl FileFault {
    /// This fault, of the file at `path`.
    pub(super) fn of(self, path: &Path) -> FactsError {
        FactsError::File { file: path.to_owned(), fault: self }
    }
}

/// What can go wrong while an entry is read: the medium fails, or the content is wrong.
#[derive(Debug)]
pub(super) enum ReadFault {
    Medium(io::Error),
    Content(FileFault),
}

impl ReadFault {
    pub(super) fn of(self, path: &Path) -> FactsError {
        match self {
            Self::Medium(error) => of_system(path, &error),
            Self::Content(fault) => fault.of(path),
        }
    }
}

impl From<io::Error> for ReadFault {
    fn from(error: io::Error) -> Self {
        Self::Medium(error)
    }
}

impl From<FileFault> for ReadFault {
    fn from(fault: FileFault) -> Self {
        Self::Content(fault)
    }
}
