//! A file that appears under its name only once it is whole and on the disk.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use crate::error::{FactsError, Result, SystemFault};
use crate::fact::SurveyId;
use crate::store::disk::sync_folder;
use crate::store::fault::of_system;

/// The ending of a file that is not whole yet.
const PART: &str = ".part";

/// A file being written as `NAME.<random>.part`. Dropped before [`PartFile::finish`], it is removed.
pub(super) struct PartFile {
    path: PathBuf,
    place: PathBuf,
    replace: bool,
    finished: bool,
    /// Holds the lock that tells others that the file is being written.
    file: File,
}

impl PartFile {
    /// Starts a file that is to stand at `place`. Removes what killed processes left beside it.
    pub(super) fn create(place: &Path, replace: bool) -> Result<Self> {
        refuse_existing(place, replace)?;
        let name = place.file_name().ok_or_else(|| FactsError::Inaccessible {
            folder: place.to_owned(),
            why: SystemFault::Other,
            reason: "it names no file".into(),
        })?;
        remove_abandoned(place, name);
        let mut part = name.to_owned();
        part.push(format!(".{}{PART}", SurveyId::random().uuid().simple()));
        let path = place.with_file_name(part);
        let broken = |error: io::Error| of_system(place, &error);
        let file = File::options().read(true).write(true).create_new(true).open(&path).map_err(broken)?;
        let part = Self { path, place: place.to_owned(), replace, finished: false, file };
        // A system without locks leaves what is abandoned; it takes nothing from what is written.
        let _ = part.file.try_lock();
        Ok(part)
    }

    pub(super) fn file(&self) -> &File {
        &self.file
    }

    /// Cuts the file to `length`, brings it to the disk and gives it its name.
    pub(super) fn finish(mut self, length: u64) -> Result<()> {
        let broken = |error: io::Error| of_system(&self.place, &error);
        self.file.set_len(length).map_err(broken)?;
        self.file.sync_all().map_err(broken)?;
        refuse_existing(&self.place, self.replace)?;
        fs::rename(&self.path, &self.place).map_err(broken)?;
        sync_folder(folder_of(&self.place)).map_err(broken)?;
        self.finished = true;
        Ok(())
    }
}

impl Drop for PartFile {
    fn drop(&mut self) {
        if !self.finished {
            // What cannot be removed now goes with a later one of the same name.
            let _ = fs::remove_file(&self.path);
        }
    }
}

fn refuse_existing(place: &Path, replace: bool) -> Result<()> {
    match fs::symlink_metadata(place) {
        Ok(found) if !replace || !found.is_file() => Err(FactsError::FileThere { file: place.to_owned() }),
        Ok(_) => Ok(()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        Err(error) => Err(of_system(place, &error)),
    }
}

fn folder_of(place: &Path) -> &Path {
    place.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."))
}

/// Removes part files of the same name that nobody writes any more.
fn remove_abandoned(place: &Path, name: &std::ffi::OsStr) {
    let mut start: OsString = name.to_owned();
    start.push(".");
    for entry in fs::read_dir(folder_of(place)).into_iter().flatten().flatten() {
        let found = entry.file_name();
        let middle = found
            .as_encoded_bytes()
            .strip_prefix(start.as_encoded_bytes())
            .and_then(|rest| rest.strip_suffix(PART.as_bytes()));
        let is_part =
            middle.is_some_and(|chance| chance.len() == 32 && chance.iter().all(u8::is_ascii_hexdigit));
        if is_part && File::open(entry.path()).is_ok_and(|file| file.try_lock().is_ok()) {
            let _ = fs::remove_file(entry.path());
        }
    }
}
