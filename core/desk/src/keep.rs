//! Writing a file that has its name only once all of it is on the disk.

use std::io::{self, Write};
use std::path::Path;

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
    refuse_if_there(out, replace)?;
    write(out, bytes, replace).map_err(|source| match source.kind() {
        io::ErrorKind::AlreadyExists => DeskError::Exists { path: out.to_owned(), advice: Advice::Replace },
        _ => DeskError::Write { path: out.to_owned(), source },
    })
}

fn write(out: &Path, bytes: &[u8], replace: bool) -> io::Result<()> {
    let folder = out.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    builder.prefix(".legwork-").suffix(".part");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // As for any new file, less what the user's umask takes away.
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    let mut new = builder.tempfile_in(folder)?;
    new.write_all(bytes)?;
    new.as_file().sync_all()?;
    if replace {
        new.persist(out)?
    } else {
        new.persist_noclobber(out)?
    };
    Ok(())
}
