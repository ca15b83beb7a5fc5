//! What the database and the system report, as this crate's errors.

use std::fmt::Display;
use std::io;
use std::path::Path;

use rusqlite::{Error, ErrorCode, ffi};

use crate::error::{FactsError, NotASurvey, SystemFault};

/// A failure of the database in `folder`.
pub(super) fn of_sqlite(folder: &Path, source: Error) -> FactsError {
    let folder = folder.to_owned();
    let failure = match &source {
        Error::SqliteFailure(failure, _) => failure,
        // What stands in a row is not what any release writes there.
        Error::FromSqlConversionFailure(..) | Error::InvalidColumnType(..) | Error::Utf8Error(..) => {
            return FactsError::Damaged { folder, report: source.to_string() };
        }
        _ => return FactsError::Database { folder, source },
    };
    match failure.code {
        ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked => FactsError::Busy { folder },
        ErrorCode::DiskFull => FactsError::DiskFull { folder },
        // The index of the write-ahead log could not be made long enough.
        ErrorCode::SystemIoFailure if failure.extended_code == ffi::SQLITE_IOERR_SHMSIZE => {
            FactsError::DiskFull { folder }
        }
        ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied => {
            let why = match failure.code {
                // The system's reason is not handed on.
                ErrorCode::CannotOpen => SystemFault::Other,
                _ => SystemFault::NotAllowed,
            };
            FactsError::Inaccessible { folder, why, reason: source.to_string() }
        }
        ErrorCode::NotADatabase => FactsError::NotASurvey { folder, why: NotASurvey::NotSqlite },
        ErrorCode::DatabaseCorrupt | ErrorCode::TypeMismatch => {
            FactsError::Damaged { folder, report: source.to_string() }
        }
        _ => FactsError::Database { folder, source },
    }
}

/// A failure of the system at `folder`.
pub(crate) fn of_system(folder: &Path, error: &io::Error) -> FactsError {
    let folder = folder.to_owned();
    match SystemFault::from(error) {
        SystemFault::Full => FactsError::DiskFull { folder },
        why => FactsError::Inaccessible { folder, why, reason: error.to_string() },
    }
}

/// Something in the rows of the database that no release ever writes.
pub(super) fn damaged(folder: &Path, report: &dyn Display) -> FactsError {
    FactsError::Damaged { folder: folder.to_owned(), report: report.to_string() }
}
