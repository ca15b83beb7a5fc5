//! The files of photos in a survey's folder.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::picture::read_bounded;
use crate::error::{FactsError, Result};
use crate::fact::{PhotoImage, SubjectId, reserved};
use crate::hex::hex;
use crate::photo::{Crop, Picture};
use crate::store::{Store, fault};

/// How much is read at once.
const CHUNK_BYTES: usize = 128 * 1024;

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

    /// Pixels across and down of a photo, the right way up.
    ///
    /// # Errors
    /// As [`Store::photo_bytes`].
    pub fn photo_size(&self, photo: SubjectId) -> Result<(u32, u32)> {
        Ok(self.whole_photo(photo)?.upright_size())
    }

    /// A photo whose file is what its name says.
    pub(super) fn whole_photo(&self, photo: SubjectId) -> Result<Picture> {
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

    /// The photos whose file is not there or is not what its name says: every byte is looked at.
    ///
    /// # Errors
    /// What the system reports.
    pub fn lacking_photos(&self) -> Result<Vec<SubjectId>> {
        let photos = self.photos();
        let mut looked_at: BTreeMap<String, bool> = BTreeMap::new();
        let mut lacking = Vec::new();
        for subject in self.ledger().subjects() {
            let Ok(image) = self.photo_image(subject) else { continue };
            let name = image.file_name();
            let is_sound = match looked_at.get(&name) {
                Some(&is_sound) => is_sound,
                None => is_sound(&photos.join(&name), &name)
                    .map_err(|error| fault::of_system(self.folder(), &error))?,
            };
            looked_at.insert(name, is_sound);
            if !is_sound {
                lacking.push(subject);
            }
        }
        Ok(lacking)
    }
}

/// The bytes of a photo's file, if it is what its name says.
pub(crate) fn sound_photo(path: &Path, name: &str) -> Option<Vec<u8>> {
    open_photo(path).ok()?;
    let bytes = read_bounded(path).ok()?;
    (name.split('.').next() == Some(&hex(&Sha256::digest(&bytes)))).then_some(bytes)
}

fn is_sound(path: &Path, name: &str) -> io::Result<bool> {
    match sha256_of(path) {
        Ok(sha256) => Ok(name.split('.').next() == Some(&hex(&sha256))),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// Opens a photo's file. What lies in its place and is no file counts as missing: a pipe would be waited for for ever.
pub(crate) fn open_photo(path: &Path) -> io::Result<File> {
    if fs::metadata(path)?.is_file() { File::open(path) } else { Err(io::ErrorKind::NotFound.into()) }
}

/// The SHA-256 of a file, read piece by piece.
pub(crate) fn sha256_of(path: &Path) -> io::Result<[u8; 32]> {
    let mut file = open_photo(path)?;
    let (mut sha256, mut chunk) = (Sha256::new(), vec![0; CHUNK_BYTES]);
    loop {
        match file.read(&mut chunk)? {
            0 => return Ok(sha256.finalize().into()),
            read => sha256.update(chunk.get(..read).unwrap_or_default()),
        }
    }
}
