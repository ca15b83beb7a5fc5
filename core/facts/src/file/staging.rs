//! Photos on their way in: written beside their place, synced, and named only when all of the file was found right.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use super::photo::PhotoName;
use super::syncer::Syncer;
use crate::error::Result;
use crate::photo::sha256_of;
use crate::store::disk::{self, sync_folder};
use crate::store::fault::of_system;
use crate::store::taking::Taking;

/// Photos that are not yet in place. Whatever is left of them goes when this is dropped.
pub(super) struct Staging {
    survey_folder: PathBuf,
    pub(super) photos: PathBuf,
    staged: Vec<PhotoName>,
    /// Where they are; made for the first of them.
    taking: Option<Taking>,
    /// Runs once there is something to sync.
    syncer: Option<Syncer>,
}

impl Staging {
    /// Prepares to receive photos for the survey in `survey_folder`, whose photos lie in `photos`. Makes nothing yet.
    pub(super) fn new(survey_folder: &Path, photos: PathBuf) -> Self {
        Self {
            survey_folder: survey_folder.to_owned(),
            photos,
            staged: Vec::new(),
            taking: None,
            syncer: None,
        }
    }

    /// Whether the survey does not have the photo, or has something else under its name: a damaged photo is brought
    /// back by any file that holds it.
    pub(super) fn lacks(&self, photo: PhotoName, bytes: u64) -> bool {
        let path = self.photos.join(photo.to_string());
        let same_length = fs::metadata(&path).is_ok_and(|held| held.is_file() && held.len() == bytes);
        !(same_length && sha256_of(&path).is_ok_and(|held| held == photo.sha256))
    }

    /// Opens a new file for a photo.
    pub(super) fn begin(&mut self, photo: PhotoName) -> Result<(PathBuf, File)> {
        let taking = match self.taking.take() {
            Some(taking) => taking,
            None => {
                Taking::begin(&self.survey_folder).map_err(|error| of_system(&self.survey_folder, &error))?
            }
        };
        let path = taking.folder().join(photo.to_string());
        self.taking = Some(taking);
        self.staged.push(photo);
        let file = disk::new_file(&path).map_err(|error| of_system(&path, &error))?;
        Ok((path, file))
    }

    /// Takes back a file that is complete, to bring it to the disk.
    pub(super) fn end(&mut self, file: File) -> Result<()> {
        let broken = |error: io::Error| of_system(&self.survey_folder, &error);
        let mut syncer = match self.syncer.take() {
            Some(running) => running,
            None => Syncer::start().map_err(broken)?,
        };
        syncer.sync(file).map_err(broken)?;
        self.syncer = Some(syncer);
        Ok(())
    }

    /// Waits until the photos' content is on the disk.
    pub(super) fn sync(&mut self) -> Result<()> {
        let synced = self.syncer.take().map_or(Ok(()), Syncer::finish);
        synced.map_err(|error| of_system(&self.survey_folder, &error))
    }

    /// Gives the photos their place. They are in `placed` afterwards, also after an error.
    pub(super) fn put_in_place(&self, placed: &mut Placed) -> Result<()> {
        let broken = |error: io::Error| of_system(&self.photos, &error);
        let Some(taking) = &self.taking else { return Ok(()) };
        for photo in &self.staged {
            let name = photo.to_string();
            let place = self.photos.join(&name);
            let was_there = place.exists();
            fs::rename(taking.folder().join(&name), &place).map_err(broken)?;
            placed.all.push(*photo);
            if !was_there {
                placed.new.push(*photo);
            }
        }
        sync_folder(&self.photos).map_err(broken)
    }
}

/// Photos that were given their place.
#[derive(Default)]
pub(super) struct Placed {
    /// All of them.
    pub(super) all: Vec<PhotoName>,
    /// Those of whose name there was nothing before.
    pub(super) new: Vec<PhotoName>,
}

impl Drop for Staging {
    fn drop(&mut self) {
        // It must have ended before its files go.
        self.syncer = None;
    }
}

/// Removes photos that were put in place for facts that did not follow. A photo that no fact names does no harm, so a
/// failure here is no failure of the work.
pub(super) fn remove(photos: &Path, names: &[PhotoName]) {
    for name in names {
        let _ = fs::remove_file(photos.join(name.to_string()));
    }
}
