//! What the system reports.

use std::path::Path;

use facts::error::SystemFault;
use phrase::Phrase;

use super::file_name;

/// What keeps a file of this path from being read or written. It is called by its name alone.
pub fn system(fault: SystemFault, file: &Path) -> Phrase {
    phrase_of(fault, file_name(file))
}

pub(super) fn phrase_of(fault: SystemFault, name: String) -> Phrase {
    let id = match fault {
        SystemFault::Full => "error-full",
        SystemFault::NotAllowed => "error-not-allowed",
        SystemFault::Busy => "error-busy",
        SystemFault::Missing => "error-missing",
        SystemFault::AlreadyThere => "error-name-taken",
        SystemFault::TooLong => "error-too-long",
        SystemFault::Other => "error-system",
    };
    Phrase::new(id).text("name", name)
}
