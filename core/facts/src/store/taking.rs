//! Folders in a survey's folder for what a take brings before it counts, and for a database that is built anew:
//! `.taking-<chance>`, held by a lock for as long as the work runs. One that nobody holds was left by a process that died.
//!
//! They hold pictures that nobody may miss and somebody may want forgotten, so they go at the next opening.

use std::fs::{self, File, TryLockError};
use std::io;
use std::path::Path;

use uuid::Uuid;

use super::disk;
use crate::unfinished::{TAKING, Unfinished, left_by_all};

/// The file in such a folder that a take of an earlier release holds locked.
const LOCK: &str = "lock";

/// A folder that is held. It goes with everything in it when this is dropped.
pub(crate) struct Taking(Unfinished);

impl Taking {
    /// Makes a folder in a survey's folder.
    pub(crate) fn begin(survey_folder: &Path) -> io::Result<Self> {
        let name = || survey_folder.join(format!("{TAKING}{}", Uuid::now_v7().simple()));
        Unfinished::make_as(name, disk::make_folder).map(Self)
    }

    pub(crate) fn folder(&self) -> &Path {
        self.0.folder()
    }
}

/// Removes the folders that nobody holds; returns how many there were.
pub(crate) fn sweep(survey_folder: &Path) -> io::Result<usize> {
    let mut swept = 0;
    for entry in fs::read_dir(survey_folder)? {
        let entry = entry?;
        let ours = entry.file_name().to_str().is_some_and(|name| name.starts_with(TAKING));
        if ours && remove_if_left(&entry.path())? {
            swept += 1;
        }
    }
    Ok(swept)
}

fn remove_if_left(folder: &Path) -> io::Result<bool> {
    let earlier = File::open(folder.join(LOCK));
    if matches!(earlier.as_ref().map(File::try_lock), Ok(Err(TryLockError::WouldBlock))) {
        return Ok(false);
    }
    let Some(hold) = left_by_all(folder) else { return Ok(false) };
    let removed = fs::remove_dir_all(folder);
    drop(hold);
    match removed {
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
        let [left, earlier] = ["left", "earlier"].map(|name| survey.path().join(format!("{TAKING}{name}")));
        for folder in [&left, &earlier] {
            fs::create_dir(folder).unwrap();
            fs::write(folder.join("photo.jpg"), "x").unwrap();
        }
        // A take of an earlier release holds the file in it.
        let lock = File::create(earlier.join(LOCK)).unwrap();
        lock.lock().unwrap();
        fs::create_dir(survey.path().join("somebody's own")).unwrap();
        assert_eq!(sweep(survey.path()).unwrap(), 1);
        assert!(!left.exists() && earlier.is_dir());
        assert!(held.folder().is_dir() && survey.path().join("somebody's own").is_dir());
        drop(lock);
        assert_eq!(sweep(survey.path()).unwrap(), 1);
        let folder = held.folder().to_owned();
        drop(held);
        assert!(!folder.exists());
    }
}
