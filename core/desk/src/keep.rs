//! Writing a file that has its name only once all of it is on the disk.

use std::io::{self, Write};
use std::path::Path;
use std::time::Duration;

use crate::error::{Advice, DeskError};

/// How the temporary name of a file begins.
const PREFIX: &str = ".legwork-";
/// How the temporary name of a file ends.
const SUFFIX: &str = ".part";
/// What a process left that died while it wrote goes after this time.
const STALE: Duration = Duration::from_secs(24 * 3600);

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
    remove_left(folder);
    let mut builder = tempfile::Builder::new();
    builder.prefix(PREFIX).suffix(SUFFIX);
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

/// Removes what others left in a folder that died while they wrote. That it cannot be removed hinders nothing.
fn remove_left(folder: &Path) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let is_ours = name.to_str().is_some_and(|name| name.starts_with(PREFIX) && name.ends_with(SUFFIX));
        let changed = || entry.metadata().and_then(|found| found.modified()).ok()?.elapsed().ok();
        if is_ours && changed().is_some_and(|age| age > STALE) {
            let _ = std::fs::remove_file(entry.path());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_left_long_ago_goes_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let [old, new, other] = [".legwork-a1.part", ".legwork-b2.part", "mine.part"].map(|name| {
            let path = folder.path().join(name);
            std::fs::write(&path, "half").unwrap();
            path
        });
        let then = std::time::SystemTime::now() - STALE - Duration::from_secs(60);
        for path in [&old, &other] {
            std::fs::File::options().write(true).open(path).unwrap().set_modified(then).unwrap();
        }
        keep(&folder.path().join("out"), b"whole", false).unwrap();
        assert_eq!((old.exists(), new.exists(), other.exists()), (false, true, true));
    }
}
