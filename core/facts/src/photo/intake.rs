//! Taking photos in.

use serde_json::Value;

use super::picture::read_bounded;
use crate::error::{FactsError, Result};
use crate::fact::{Edit, SubjectId, reserved, value_of};
use crate::photo::Picture;
use crate::store::{Store, disk, fault};
use crate::whole_file::{self, Existing, Readers};

/// The most photos that a survey holds: a file of it must not have more entries than its reader takes.
pub const MOST_PHOTOS: usize = 4_900;

impl Store {
    /// Takes a picture in: cleans it, stores it, and only then writes the facts that name it, with what else is said of
    /// the photo in the same act: fields and their values. The same picture twice is two photos and one file.
    ///
    /// # Errors
    /// `Picture` if it is not one that is taken, `TooManyPhotos`, or what a write reports. Nothing is stored then.
    pub fn take_photo(&mut self, bytes: &[u8], said: Vec<(&str, Value)>) -> Result<SubjectId> {
        self.take_picture(&Picture::clean(bytes)?, said)
    }

    /// As [`Store::take_photo`], of a picture that is clean already.
    ///
    /// # Errors
    /// As [`Store::take_photo`].
    pub fn take_picture(&mut self, picture: &Picture, said: Vec<(&str, Value)>) -> Result<SubjectId> {
        // Also proves that its pixels can be decoded.
        let small = picture.thumbnail()?;
        self.check_room()?;
        let photo = SubjectId::random();
        let image = picture.image();
        let mut edits = vec![
            Edit::new(photo, reserved::IS, reserved::PHOTO),
            Edit::new(photo, reserved::IMAGE, value_of(&image)?),
        ];
        edits.extend(said.into_iter().map(|(field, value)| Edit::new(photo, field, value)));
        let (folder, photos) = (self.folder().to_owned(), self.photos());
        self.write_photo(&edits, picture.sha256(), &small, || {
            let name = image.file_name();
            // Read and compared, not only looked for: a file of that name may have been damaged since.
            if read_bounded(&photos.join(&name)).is_ok_and(|there| there == picture.bytes()) {
                return disk::sync_folder(&photos).map_err(|error| fault::of_system(&folder, &error));
            }
            let place = photos.join(&name);
            whole_file::write(&place, picture.bytes(), Existing::IsReplaced, Readers::Owner)
                .map_err(|error| fault::of_system(&folder, &error))
        })?;
        Ok(photo)
    }

    fn check_room(&self) -> Result<()> {
        let most = MOST_PHOTOS;
        if self.photos_named().len() >= most { Err(FactsError::TooManyPhotos { most }) } else { Ok(()) }
    }
}
