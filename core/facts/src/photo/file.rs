//! The files of photos in a survey's folder.

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::PathBuf;
use std::time::{Duration, SystemTime};

use super::picture::read_bounded;
use crate::error::{FactsError, Result};
use crate::fact::{PhotoImage, SubjectId, reserved};
use crate::photo::{Crop, Picture};
use crate::store::{Store, disk, fault, photos_named};

/// What a sweep deleted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Swept {
    /// Files that were never finished.
    pub unfinished: usize,
    /// Photos that no fact names: their intake was cut off before it counted.
    pub unnamed: usize,
}

impl Store {
    /// The image of a photo, as it is shown.
    ///
    /// # Errors
    /// [`FactsError::NoSuchPhoto`].
    pub fn photo_image(&self, photo: SubjectId) -> Result<PhotoImage> {
        self.ledger()
            .shown(photo, reserved::IMAGE)
            .and_then(PhotoImage::of_fact)
            .ok_or(FactsError::NoSuchPhoto)
    }

    /// The file of a photo.
    ///
    /// # Errors
    /// [`FactsError::NoSuchPhoto`]. Whether the file is there is another question: see
    /// [`Store::missing_photos`].
    pub fn photo_path(&self, photo: SubjectId) -> Result<PathBuf> {
        Ok(self.photos().join(self.photo_image(photo)?.file_name()))
    }

    /// A photo as it was stored: the bytes of a JPEG or PNG, which way up it is in a tag.
    ///
    /// # Errors
    /// [`FactsError::NoSuchPhoto`]; [`FactsError::PhotoLost`] if its file is not there or no longer what its name
    /// says.
    pub fn photo_bytes(&self, photo: SubjectId) -> Result<Vec<u8>> {
        self.whole_photo(photo).map(Picture::into_bytes)
    }

    /// A part of a photo, or all of it, no larger than asked for: the bytes of a JPEG, the right way up. For a screen,
    /// and for looking closely at a label.
    ///
    /// # Errors
    /// As [`Store::photo_bytes`], and `Picture` if its pixels cannot be read or nothing of it lies in the crop.
    pub fn photo_crop(&self, photo: SubjectId, crop: Crop) -> Result<Vec<u8>> {
        Ok(self.whole_photo(photo)?.crop(crop)?)
    }

    /// A photo whose file is what its name says.
    fn whole_photo(&self, photo: SubjectId) -> Result<Picture> {
        let image = self.photo_image(photo)?;
        let bytes = match read_bounded(&self.photos().join(image.file_name())) {
            Ok(bytes) => bytes,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Err(FactsError::PhotoLost),
            Err(error) => return Err(fault::of_system(self.folder(), &error)),
        };
        let picture = Picture::clean(&bytes).map_err(|_| FactsError::PhotoLost)?;
        if picture.image() == image { Ok(picture) } else { Err(FactsError::PhotoLost) }
    }

    /// A small picture of a photo: the bytes of a JPEG, the right way up.
    ///
    /// # Errors
    /// As [`Store::photo_bytes`], `Picture` if its pixels cannot be read, or what reading reports.
    pub fn thumbnail(&self, photo: SubjectId) -> Result<Vec<u8>> {
        let image = self.photo_image(photo)?;
        let digest = image.digest().ok_or(FactsError::NoSuchPhoto)?;
        if let Some(kept) = self.kept_thumbnail(&digest)? {
            return Ok(kept);
        }
        let small = self.whole_photo(photo)?.thumbnail()?;
        self.keep_thumbnail(&digest, &small)?;
        Ok(small)
    }

    /// The photos whose file is not there or has another length: their pictures are lost here, unless a copy or a
    /// file of this survey brings them back.
    ///
    /// # Errors
    /// What the system reports.
    pub fn missing_photos(&self) -> Result<Vec<SubjectId>> {
        let photos = self.photos();
        let mut missing = Vec::new();
        for subject in self.ledger().subjects() {
            let Ok(image) = self.photo_image(subject) else { continue };
            match fs::metadata(photos.join(image.file_name())) {
                Ok(found) if found.len() == image.bytes => {}
                Ok(_) => missing.push(subject),
                Err(error) if error.kind() == io::ErrorKind::NotFound => missing.push(subject),
                Err(error) => return Err(fault::of_system(self.folder(), &error)),
            }
        }
        Ok(missing)
    }

    /// Deletes what an intake left that was cut off. Only files that nobody has touched for `age` are looked at,
    /// because another program may just be taking photos in.
    ///
    /// # Errors
    /// What the system reports, or `Busy`.
    pub fn sweep_photos(&mut self, age: Duration) -> Result<Swept> {
        let (photos, folder) = (self.photos(), self.folder().to_owned());
        self.alone(|ledger| {
            let named = photos_named(ledger);
            sweep(&photos, &named, age).map_err(|error| fault::of_system(&folder, &error))
        })
    }
}

fn sweep(photos: &std::path::Path, named: &BTreeSet<String>, age: Duration) -> io::Result<Swept> {
    let mut swept = Swept::default();
    let now = SystemTime::now();
    for entry in fs::read_dir(photos)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let (unfinished, unnamed) = (
            entry.path().extension() == Some(OsStr::new("part")),
            PhotoImage::is_file_name(&name) && !named.contains(&name),
        );
        let rests = entry
            .metadata()?
            .modified()
            .is_ok_and(|at| now.duration_since(at).is_ok_and(|since| since >= age));
        if rests && (unfinished || unnamed) {
            fs::remove_file(entry.path())?;
            swept.unfinished += usize::from(unfinished);
            swept.unnamed += usize::from(unnamed);
        }
    }
    if swept == Swept::default() { Ok(swept) } else { disk::sync_folder(photos).map(|()| swept) }
}
