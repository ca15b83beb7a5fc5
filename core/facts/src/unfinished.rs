//! Every name of work that is not finished, and the sweep of what a process left that died. All of it is held by a lock for as
//! long as somebody works on it, so what nobody holds is swept whatever its age: it may hold what was forgotten since.
//!
//! | name | where | what |
//! |---|---|---|
//! | `NAME.<32 digits>.part` | beside any file | a file that is being written ([`whole_file`](crate::whole_file)) |
//! | `.<uuid>.unfinished` | in a home | a survey that is being made, copied, deleted or repaired from a file |
//! | `.taking-<32 digits>` | in a survey | photos of a file that is being taken in, a database that is built anew |
//! | `.legwork-<6 signs>` | in a home | a survey that an earlier release was making; it held no lock, so its age counts |

use std::ffi::OsStr;
use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use uuid::Uuid;

/// The ending of a file that is not whole yet.
const PART: &str = ".part";
/// The ending of a folder that is not a survey yet, or no more.
const UNFINISHED: &str = "unfinished";
/// The beginning of a folder within a survey.
pub(crate) const TAKING: &str = ".taking-";
/// The beginning of a folder in which an earlier release made a survey.
const EARLIER: &str = ".legwork-";

/// After this time what holds no lock was left: where a system has no locks for folders, and between the making of a folder
/// and its holding.
const STALE: Duration = Duration::from_secs(24 * 3600);

/// A sweep that falls between the making of a folder and its holding takes it away; twice in a row it does not.
const ATTEMPTS: u32 = 5;

/// The name of a file that is not whole yet.
pub(crate) fn part_of(name: &OsStr) -> std::ffi::OsString {
    let mut part = name.to_owned();
    part.push(format!(".{}{PART}", Uuid::now_v7().simple()));
    part
}

/// What a file will be called that is not whole yet: ours end in the 32 digits of a UUID of version 7.
pub(crate) fn is_part(name: &str) -> bool {
    let Some((_, digits)) = name.strip_suffix(PART).and_then(|rest| rest.rsplit_once('.')) else {
        return false;
    };
    digits.len() == 32 && digits.parse::<Uuid>().is_ok_and(|id| id.get_version_num() == 7)
        // As in the oldest releases' tests, whatever its version.
        || digits.len() == 32 && digits.bytes().all(|digit| digit == b'0')
}

/// A folder that is not a survey yet, or no more: held until this is dropped, and gone then unless it has another name by
/// that time.
#[derive(Debug)]
pub(crate) struct Unfinished {
    folder: PathBuf,
    /// Holds the lock, where a system locks folders.
    _lock: Option<File>,
}

impl Unfinished {
    /// Makes such a folder in `parent` with `make`, and holds it. Hidden, no survey by its ending, and short.
    pub(crate) fn make(parent: &Path, make: impl Fn(&Path) -> io::Result<()>) -> io::Result<Self> {
        Self::make_as(|| Self::free_name(parent), make)
    }

    /// As [`Unfinished::make`], under a name of another kind; a new one each time it is asked for.
    pub(crate) fn make_as(
        name: impl Fn() -> PathBuf,
        make: impl Fn(&Path) -> io::Result<()>,
    ) -> io::Result<Self> {
        for _ in 0..ATTEMPTS {
            let folder = name();
            make(&folder)?;
            let lock = hold(&folder);
            // A sweep may have come and gone in between.
            if folder.is_dir() {
                return Ok(Self { folder, _lock: lock });
            }
        }
        Err(io::ErrorKind::ResourceBusy.into())
    }

    /// A name for a folder that is to go.
    pub(crate) fn free_name(parent: &Path) -> PathBuf {
        parent.join(format!(".{}.{UNFINISHED}", Uuid::now_v7()))
    }

    pub(crate) fn folder(&self) -> &Path {
        &self.folder
    }
}

impl Drop for Unfinished {
    fn drop(&mut self) {
        // What cannot be removed now is swept later.
        let _ = fs::remove_dir_all(&self.folder);
    }
}

fn hold(folder: &Path) -> Option<File> {
    let lock = File::open(folder).ok()?;
    lock.try_lock().ok().map(|()| lock)
}

/// Removes what nobody works on any more from a home folder, or from any folder that surveys or files are written into.
/// Returns how many things there were. What is not ours stays.
pub(crate) fn sweep(folder: &Path) -> usize {
    let mut swept = 0;
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let (path, name) = (entry.path(), entry.file_name());
        let Some(name) = name.to_str() else { continue };
        let is_folder = entry.file_type().is_ok_and(|kind| kind.is_dir());
        let is_left = if is_folder {
            is_unfinished(name) && is_held_by_nobody(&path) || is_earlier(name) && is_stale(&path)
        } else {
            is_part(name) && is_held_by_nobody(&path)
        };
        if is_left {
            let removed = if is_folder { fs::remove_dir_all(&path) } else { fs::remove_file(&path) };
            swept += usize::from(removed.is_ok());
        }
    }
    swept
}

fn is_unfinished(name: &str) -> bool {
    name.strip_prefix('.')
        .and_then(|name| name.strip_suffix(UNFINISHED)?.strip_suffix('.'))
        .is_some_and(|id| id.parse::<Uuid>().is_ok())
}

fn is_earlier(name: &str) -> bool {
    name.strip_prefix(EARLIER)
        .is_some_and(|rest| rest.len() == 6 && rest.bytes().all(|sign| sign.is_ascii_alphanumeric()))
}

/// Whether nobody works on a file or folder any more.
pub(crate) fn is_held_by_nobody(path: &Path) -> bool {
    match File::open(path).as_ref().map(File::try_lock) {
        Ok(Ok(())) => true,
        Ok(Err(TryLockError::WouldBlock)) => false,
        Ok(Err(TryLockError::Error(_))) | Err(_) => is_stale(path),
    }
}

/// Whether nobody has touched it for [`STALE`], nor what lies in it.
fn is_stale(path: &Path) -> bool {
    let inner = fs::read_dir(path).into_iter().flatten().flatten().map(|entry| entry.path());
    inner.chain([path.to_owned()]).all(|path| {
        let changed = fs::symlink_metadata(path).and_then(|found| found.modified());
        changed.is_ok_and(|at| SystemTime::now().duration_since(at).is_ok_and(|age| age > STALE))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_nobody_holds_goes_whatever_its_age_and_nothing_else() {
        let home = tempfile::TempDir::new().unwrap();
        let place = |name: &str| home.path().join(name);
        let left = place(&format!(".{}.unfinished", Uuid::now_v7()));
        fs::create_dir_all(left.join("photos")).unwrap();
        fs::write(place(&format!("sent.lwk.{}.part", Uuid::now_v7().simple())), "half").unwrap();
        for other in [".mine.unfinished", ".legwork-notes", "house.legwork", ".legwork-Ab12Cd"] {
            fs::create_dir(place(other)).unwrap();
        }
        for other in ["film.part", "film.deadbeef.part", "a.00000000000040008000000000000001.part"] {
            fs::write(place(other), "mine").unwrap();
        }
        let held = Unfinished::make(home.path(), |folder| fs::create_dir(folder)).unwrap();
        assert_eq!(sweep(home.path()), 2);
        assert!(!left.exists() && held.folder().is_dir());
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 8);
        let folder = held.folder().to_owned();
        drop(held);
        assert!(!folder.exists());
    }

    #[test]
    fn what_an_earlier_release_left_goes_once_it_is_old() {
        let home = tempfile::TempDir::new().unwrap();
        let left = home.path().join(".legwork-Ab12Cd");
        fs::create_dir(&left).unwrap();
        let then = SystemTime::now() - STALE - Duration::from_secs(60);
        File::open(&left).unwrap().set_modified(then).unwrap();
        assert_eq!(sweep(home.path()), 1);
    }
}
