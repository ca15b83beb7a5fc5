//! Writing a file that somebody asked for.

use std::io;
use std::path::Path;

use facts::whole_file::{self, Existing, Readers};

use crate::error::{Advice, DeskError};

/// Refuses a name that is taken, unless what has it is to be replaced.
///
/// # Errors
/// [`DeskError::Exists`].
pub fn refuse_if_there(out: &Path, replace: bool) -> Result<(), DeskError> {
    let there = out.symlink_metadata().is_ok();
    if there && !replace {
        return Err(DeskError::Exists { path: out.to_owned(), advice: Advice::Replace });
    }
    Ok(())
}

/// Writes a file whole.
///
/// # Errors
/// [`DeskError::Exists`] or [`DeskError::Write`]; nothing is changed then.
pub fn keep(out: &Path, bytes: &[u8], replace: bool) -> Result<(), DeskError> {
    let existing = if replace { Existing::IsReplaced } else { Existing::Stays };
    whole_file::write(out, bytes, existing, Readers::Usual).map_err(|source| match source.kind() {
        io::ErrorKind::AlreadyExists => DeskError::Exists { path: out.to_owned(), advice: Advice::Replace },
        _ => DeskError::Write { path: out.to_owned(), source },
    })
}
