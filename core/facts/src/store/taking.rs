//! Folders in a survey's folder for what a take brings before it counts: `.taking-<chance>`, held by a lock for as long
//! as the take runs. One that nobody holds was left by a process that died.
//!
//! They hold pictures that nobody may miss and somebody may want forgotten, so they go at the next opening.

use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use uuid::Uuid;

use super::disk;

const PREFIX: &str = ".taking-";
/// The file in such a folder that its take holds locked.
const LOCK: &str = "lock";
/// After this time a take that holds no lock was killed: where a system has no locks, and between the making of a
/// folder and that of its lock.
const STALE: Duration = Duration::from_secs(24 * 3600);
/// A sweep that falls between the making of a lock and its holding takes the folder away; twice in a row it does not.
const ATTEMPTS: u32 = 5;

/// A folder that is held. It goes with everything in it when this is dropped.
pub(crate) struct Taking {
    folder: PathBuf,
    /// Holds the lock.
    _lock: File,
}

impl Taking {
    /// Makes a folder in a survey's folder.
    pub(crate) fn begin(survey_folder: &Path) -> io::Result<Self> {
        for _ in 0..ATTEMPTS {
            let folder = survey_folder.join(format!("{PREFIX}{}", Uuid::now_v7().simple()));
            disk::make_folder(&folder)?;
            let lock = match disk::new_file(&folder.join(LOCK)) {
                Ok(lock) => lock,
                Err(error) => {
                    let _ = fs::remove_dir_all(&folder);
                    return Err(error);
                }
            };
            let swept = matches!(lock.try_lock(), Err(TryLockError::WouldBlock));
            // A sweep may also have come and gone: then the lock that is held now has no name any more.
            if !swept && folder.join(LOCK).exists() {
                return Ok(Self { folder, _lock: lock });
            }
        }
        Err(io::ErrorKind::ResourceBusy.into())
    }

    pub(crate) fn folder(&self) -> &Path {
        &self.folder
    }
}

impl Drop for Taking {
    fn drop(&mut self) {
        // What cannot be removed now goes at the next opening.
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// Removes the folders that nobody holds; returns how many there were.
pub(crate) fn sweep(survey_folder: &Path) -> io::Result<usize> {
    let mut swept = 0;
    for entry in fs::read_dir(survey_folder)? {
        let entry = entry?;
        let ours = entry.file_name().to_str().is_some_and(|name| name.starts_with(PREFIX));
        if ours && remove_if_left(&entry.path())? {
            swept += 1;
        }
    }
    Ok(swept)
}

fn remove_if_left(folder: &Path) -> io::Result<bool> {
    let lock = File::open(folder.join(LOCK));
    let left = match lock.as_ref().map(File::try_lock) {
        Ok(Ok(())) => true,
        Ok(Err(TryLockError::WouldBlock)) => false,
        Ok(Err(TryLockError::Error(_))) | Err(_) => {
            let changed = fs::metadata(folder).and_then(|found| found.modified());
            changed.is_ok_and(|then| then.elapsed().is_ok_and(|age| age > STALE))
        }
    };
    if !left {
        return Ok(false);
    }
    // The lock, where there is one, is held until the folder is gone.
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        Ok(()) | Err(_) => Ok(true),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_held_stays_and_what_was_left_goes() {
        let survey = tempfile::TempDir::new().unwrap();
        let held = Taking::begin(survey.path()).unwrap();
        let left = survey.path().join(".taking-left");
        fs::create_dir(&left).unwrap();
        fs::write(left.join("photo.jpg"), "x").unwrap();
        // Without a lock it may be in the making.
        assert_eq!(sweep(survey.path()).unwrap(), 0);
        fs::write(left.join(LOCK), "").unwrap();
        fs::create_dir(survey.path().join("somebody's own")).unwrap();
        assert_eq!(sweep(survey.path()).unwrap(), 1);
        assert!(!left.exists() && held.folder().is_dir() && survey.path().join("somebody's own").is_dir());
        let folder = held.folder().to_owned();
        drop(held);
        assert!(!folder.exists());
    }

    #[test]
    fn what_was_left_long_ago_without_a_lock_goes() {
        let survey = tempfile::TempDir::new().unwrap();
        let left = survey.path().join(".taking-left");
        fs::create_dir(&left).unwrap();
        let then = std::time::SystemTime::now() - STALE - Duration::from_secs(60);
        File::open(&left).unwrap().set_modified(then).unwrap();
        assert_eq!(sweep(survey.path()).unwrap(), 1);
    }
}
