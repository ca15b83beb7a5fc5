//! Small pictures of photos as files, for a program that shows pictures by their path.
//!
//! They stand beside the photos and are made anew whenever they are not there: nothing is lost with them, so nothing is
//! synced. What is forgotten must not live on in one of them: forgetting drops them all.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::error::Result;
use crate::fact::SubjectId;
use crate::store::{SMALL, Store, disk, fault};
use crate::unfinished;

impl Store {
    /// The file of a photo's small picture: a JPEG, the right way up. It is there until
    /// [`Store::drop_small_photos`].
    ///
    /// # Errors
    /// As [`Store::thumbnail`], or what writing reports.
    pub fn small_photo_path(&self, photo: SubjectId) -> Result<PathBuf> {
        let folder = self.folder().join(SMALL);
        let path = folder.join(format!("{}.jpg", self.photo_image(photo)?.sha256));
        if !path.is_file() {
            let bytes = self.thumbnail(photo)?;
            write(&folder, &path, &bytes).map_err(|error| fault::of_system(self.folder(), &error))?;
        }
        Ok(path)
    }

    /// Deletes the small pictures that stand as files. They come again when they are asked for.
    ///
    /// # Errors
    /// What the system reports; that there are none is no error.
    pub fn drop_small_photos(&self) -> Result<()> {
        match fs::remove_dir_all(self.folder().join(SMALL)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => {
                Err(fault::of_system(self.folder(), &error))
            }
            Ok(()) | Err(_) => Ok(()),
        }
    }
}

/// Writes it whole or not at all: somebody may be reading it.
fn write(folder: &Path, path: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Err(error) = disk::make_folder(folder)
        && error.kind() != io::ErrorKind::AlreadyExists
    {
        return Err(error);
    }
    // Held as long as it is not whole.
    let (part, mut file) = unfinished::begin_part(path, disk::new_file)?;
    file.write_all(bytes)?;
    fs::rename(&part, path)
}
