//! What the system reports, as far as a person can do something about it.

use std::io;

/// Why the system did not read or write. Its own words are for logs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SystemFault {
    /// No space is left, or none that this user may take.
    #[error("no space left")]
    Full,
    /// This user may not, or what is there may only be read.
    #[error("not allowed")]
    NotAllowed,
    /// Another program has it.
    #[error("busy")]
    Busy,
    /// It is not there, or its folder is not.
    #[error("not there")]
    Missing,
    /// Something of that name is there already.
    #[error("there already")]
    AlreadyThere,
    /// Longer than is read.
    #[error("too long")]
    TooLong,
    /// Anything else.
    #[error("other")]
    Other,
}

impl From<io::ErrorKind> for SystemFault {
    fn from(kind: io::ErrorKind) -> Self {
        use io::ErrorKind as Kind;
        match kind {
            Kind::StorageFull | Kind::QuotaExceeded => Self::Full,
            Kind::PermissionDenied | Kind::ReadOnlyFilesystem => Self::NotAllowed,
            Kind::ResourceBusy | Kind::WouldBlock | Kind::ExecutableFileBusy => Self::Busy,
            Kind::NotFound | Kind::NotADirectory => Self::Missing,
            Kind::AlreadyExists => Self::AlreadyThere,
            Kind::FileTooLarge => Self::TooLong,
            _ => Self::Other,
        }
    }
}

impl From<&io::Error> for SystemFault {
    fn from(error: &io::Error) -> Self {
        error.kind().into()
    }
}
