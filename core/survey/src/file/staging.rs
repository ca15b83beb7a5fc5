//! Photos on their way in: written beside their place, synced, and named only when all of the file was found right.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use uuid::Uuid;

use super::photo::PhotoName;
use crate::error::Result;
use crate::fact::SurveyId;
use crate::store::{of_system, sync_folder};

/// Folders of this beginning in a survey's folder are of takes that run, or were killed.
const PREFIX: &str = ".taking-";
/// After this time a take was killed, and does not run any more.
const STALE: Duration = Duration::from_secs(24 * 3600);

/// A folder for photos that are not yet in place. Whatever is left in it goes when this is dropped.
pub(super) struct Staging {
    folder: PathBuf,
    photos: PathBuf,
    staged: Vec<PhotoName>,
}

impl Staging {
    /// Prepares to receive photos for the survey in `survey_folder`, whose photos lie in `photos`. Makes nothing yet.
    pub(super) fn new(survey_folder: &Path, photos: PathBuf) -> Self {
        remove_stale(survey_folder);
        let chance: Uuid = SurveyId::random().uuid();
        let folder = survey_folder.join(format!("{PREFIX}{}", chance.simple()));
        Self { folder, photos, staged: Vec::new() }
    }

    /// Whether the survey does not have the photo, or has one of another length under its name.
    pub(super) fn lacks(&self, photo: PhotoName, bytes: u64) -> bool {
        !fs::metadata(self.photos.join(photo.to_string())).is_ok_and(|held| held.is_file() && held.len() == bytes)
    }

    /// Opens a new file for a photo.
    pub(super) fn begin(&mut self, photo: PhotoName) -> Result<(PathBuf, File)> {
        if self.staged.is_empty() {
            fs::create_dir(&self.folder).map_err(|error| of_system(&self.folder, &error))?;
        }
        self.staged.push(photo);
        let path = self.folder.join(photo.to_string());
        let file = File::create_new(&path).map_err(|error| of_system(&path, &error))?;
        Ok((path, file))
    }

    /// Brings the photos to the disk, then to their place. Returns those that were not there before.
    pub(super) fn put_in_place(self) -> Result<Vec<PhotoName>> {
        if self.staged.is_empty() {
            return Ok(Vec::new());
        }
        let broken = |error: io::Error| of_system(&self.photos, &error);
        for photo in &self.staged {
            // Opened to write: some systems sync no other files.
            let file = fs::OpenOptions::new().write(true).open(self.folder.join(photo.to_string()));
            file.and_then(|file| file.sync_all()).map_err(broken)?;
        }
        let mut new = Vec::new();
        for photo in &self.staged {
            let name = photo.to_string();
            let place = self.photos.join(&name);
            let was_there = place.exists();
            if let Err(error) = fs::rename(self.folder.join(&name), &place) {
                remove(&self.photos, &new);
                return Err(broken(error));
            }
            if !was_there {
                new.push(*photo);
            }
        }
        if let Err(error) = sync_folder(&self.photos) {
            remove(&self.photos, &new);
            return Err(broken(error));
        }
        Ok(new)
    }
}

impl Drop for Staging {
    fn drop(&mut self) {
        if !self.staged.is_empty() {
            // What cannot be removed now goes with a later take.
            let _ = fs::remove_dir_all(&self.folder);
        }
    }
}

/// Removes photos that were put in place for facts that did not follow. A photo that no fact names does no harm, so a
/// failure here is no failure of the work.
pub(super) fn remove(photos: &Path, names: &[PhotoName]) {
    for name in names {
        let _ = fs::remove_file(photos.join(name.to_string()));
    }
}

fn remove_stale(survey_folder: &Path) {
    for entry in fs::read_dir(survey_folder).into_iter().flatten().flatten() {
        let ours = entry.file_name().to_str().is_some_and(|name| name.starts_with(PREFIX));
        let age = entry.metadata().and_then(|found| found.modified()).ok().and_then(|then| then.elapsed().ok());
        if ours && age.is_some_and(|age| age > STALE) {
            let _ = fs::remove_dir_all(entry.path());
        }
    }
}
