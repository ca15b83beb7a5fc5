//! Every name of work that is not finished, and the sweep of what a process left that died. All of it is held by a lock for as
//! long as somebody works on it, so what nobody holds is swept whatever its age: it may hold what was forgotten since.
//!
//! | name | where | what |
//! |---|---|---|
//! | `NAME.<32 digits>.part` | beside any file | a file that is being written ([`whole_file`](crate::whole_file)), a small picture |
//! | `.<uuid>.unfinished` | in a home | a survey that is being made, copied, deleted or repaired from a file |
//! | `.taking-<32 digits>` | in a survey | photos of a file that is being taken in, a database that is built anew |
//! | `.legwork-<6 signs>` | in a home | a survey that an earlier release was making; it held no lock, so its age counts |
//! | `.<uuid>.part` | in `small` | a small picture that an earlier release was writing; it held no lock, so its age counts |

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
fn part_of(name: &OsStr) -> std::ffi::OsString {
    let mut part = name.to_owned();
    part.push(format!(".{}{PART}", Uuid::now_v7().simple()));
    part
}

/// Whether that is what a file is called that is not whole yet: ours end in the 32 digits of a UUID of version 7.
pub(crate) fn is_part(name: &str) -> bool {
    id_of_part(name).is_some_and(|(_, id)| id.len() == 32) || is_earlier_part(name)
}

/// Whether an earlier release called a small picture so that was not whole yet: by nothing but a UUID with its hyphens.
fn is_earlier_part(name: &str) -> bool {
    id_of_part(name).is_some_and(|(of, id)| of.is_empty() && id.len() == 36)
}

/// Of the name of a file that is not whole yet: what it is to be called, and the UUID.
fn id_of_part(name: &str) -> Option<(&str, &str)> {
    let (of, id) = name.strip_suffix(PART)?.rsplit_once('.')?;
    id.parse::<Uuid>().is_ok_and(|id| id.get_version_num() == 7).then_some((of, id))
}

/// Begins the file that is to stand at `place` with `make`, under a name of its own beside it, and holds it. Where it is,
/// and the file, which holds the lock.
pub(crate) fn begin_part(
    place: &Path,
    make: impl Fn(&Path) -> io::Result<File>,
) -> io::Result<(PathBuf, File)> {
    let name = place.file_name().ok_or(io::ErrorKind::InvalidInput)?;
    for _ in 0..ATTEMPTS {
        let part = place.with_file_name(part_of(name));
        let file = make(&part)?;
        // A sweep may have it, or may have come and gone in between.
        if !matches!(file.try_lock(), Err(TryLockError::WouldBlock)) && part.is_file() {
            return Ok((part, file));
        }
    }
    Err(io::ErrorKind::ResourceBusy.into())
}

/// A folder that is not a survey yet, or no more: held until this is dropped, and gone then unless it has another name by
/// that time.
#[derive(Debug)]
pub(crate) struct Unfinished {
    folder: PathBuf,
    _hold: Hold,
}

/// Holds a file or a folder until this is dropped: by a lock, where the system has one for it.
#[derive(Debug)]
pub(crate) struct Hold(#[expect(dead_code, reason = "it is there to be dropped")] Option<File>);

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
            if let Some(hold) = hold(&folder) {
                return Ok(Self { folder, _hold: hold });
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

/// Holds a folder that was just made; nothing if a sweep has it, or has come and gone in between.
fn hold(folder: &Path) -> Option<Hold> {
    let lock = File::open(folder).ok();
    let lock = match lock.as_ref().map(File::try_lock) {
        Some(Ok(())) => lock,
        Some(Err(TryLockError::WouldBlock)) => return None,
        Some(Err(TryLockError::Error(_))) | None => None,
    };
    folder.is_dir().then_some(Hold(lock))
}

/// Removes what nobody works on any more from a home folder, or from any folder that surveys or files are written into.
/// Returns how many things there were. What is not ours stays.
pub(crate) fn sweep(folder: &Path) -> usize {
    let mut swept = 0;
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let (path, name) = (entry.path(), entry.file_name());
        let Some(name) = name.to_str() else { continue };
        let is_folder = entry.file_type().is_ok_and(|kind| kind.is_dir());
        let left = if is_folder && is_earlier(name) || !is_folder && is_earlier_part(name) {
            is_stale(&path).then_some(Hold(None))
        } else if is_folder && is_unfinished(name) || !is_folder && is_part(name) {
            left_by_all(&path)
        } else {
            None
        };
        if let Some(hold) = left {
            let removed = if is_folder { fs::remove_dir_all(&path) } else { fs::remove_file(&path) };
            swept += usize::from(removed.is_ok());
            // Not before: whoever made it a moment ago would take it for theirs.
            drop(hold);
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

/// Holds a file or folder that nobody works on any more, to remove it; nothing if somebody does.
pub(crate) fn left_by_all(path: &Path) -> Option<Hold> {
    let lock = File::open(path).ok();
    match lock.as_ref().map(File::try_lock) {
        Some(Ok(())) => Some(Hold(lock)),
        Some(Err(TryLockError::WouldBlock)) => None,
        Some(Err(TryLockError::Error(_))) | None => is_stale(path).then_some(Hold(None)),
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
    fn what_a_sweep_holds_is_swept_and_made_anew() {
        let home = tempfile::TempDir::new().unwrap();
        let by_a_sweep = std::cell::RefCell::new(None);
        let held = Unfinished::make(home.path(), |folder| {
            fs::create_dir(folder)?;
            if by_a_sweep.borrow().is_none() {
                let sweep = File::open(folder)?;
                sweep.lock()?;
                by_a_sweep.replace(Some((sweep, folder.to_owned())));
            }
            Ok(())
        });
        let (_sweep, swept) = by_a_sweep.into_inner().unwrap();
        assert_ne!(held.unwrap().folder(), swept);
    }

    #[test]
    fn what_is_being_made_stays_however_often_somebody_sweeps() {
        let home = tempfile::TempDir::new().unwrap();
        let is_done = std::sync::atomic::AtomicBool::new(false);
        std::thread::scope(|scope| {
            scope.spawn(|| {
                while !is_done.load(std::sync::atomic::Ordering::Relaxed) {
                    sweep(home.path());
                }
            });
            let worked = (0..100).try_for_each(|number| {
                let held = Unfinished::make(home.path(), |folder| fs::create_dir(folder))?;
                fs::write(held.folder().join("photo.jpg"), "x")?;
                let place = home.path().join(format!("{number}.lwk"));
                let (existing, readers) =
                    (crate::whole_file::Existing::Stays, crate::whole_file::Readers::Owner);
                crate::whole_file::write(&place, b"whole", existing, readers)?;
                fs::metadata(held.folder().join("photo.jpg")).map(drop)
            });
            is_done.store(true, std::sync::atomic::Ordering::Relaxed);
            worked.unwrap();
        });
    }

    #[test]
    fn what_an_earlier_release_left_goes_once_it_is_old() {
        let home = tempfile::TempDir::new().unwrap();
        let place = |name: &str| home.path().join(name);
        let (making, small) = (place(".legwork-Ab12Cd"), place(&format!(".{}.part", Uuid::now_v7())));
        let mine =
            [place(&format!("mine.{}.part", Uuid::now_v7())), place(&format!(".{}.part", Uuid::nil()))];
        fs::create_dir(&making).unwrap();
        for file in mine.iter().chain([&small]) {
            fs::write(file, "half").unwrap();
        }
        assert_eq!(sweep(home.path()), 0, "it may be at work");
        let then = SystemTime::now() - STALE - Duration::from_secs(60);
        for left in mine.iter().chain([&making, &small]) {
            File::open(left).unwrap().set_modified(then).unwrap();
        }
        assert_eq!(sweep(home.path()), 2);
        assert!(!making.exists() && !small.exists() && mine.iter().all(|file| file.is_file()));
    }
}
