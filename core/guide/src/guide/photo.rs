//! The files of photos, for a shell that shows them.

use std::path::PathBuf;

use facts::fact::SubjectId;

use super::Guide;
use crate::error::{GuideError, Result};
use crate::session::OpenSurvey;

impl Guide {
    /// The file of a small picture of a photo of the open survey, the right way up: a JPEG. It is there until the survey
    /// is closed.
    ///
    /// # Errors
    /// If no survey is open or it has no such photo; if the photo's file is lost; if nothing can be written.
    pub fn small_photo(&self, photo: &str) -> Result<PathBuf> {
        let (open, photo) = self.photo(photo)?;
        Ok(open.store.small_photo_path(photo)?)
    }

    /// The file of a whole photo of the open survey, as it was taken in: a JPEG or PNG that says itself which way up it
    /// is.
    ///
    /// # Errors
    /// If no survey is open or it has no such photo.
    pub fn whole_photo(&self, photo: &str) -> Result<PathBuf> {
        let (open, photo) = self.photo(photo)?;
        Ok(open.store.photo_path(photo)?)
    }

    fn photo(&self, photo: &str) -> Result<(&OpenSurvey, SubjectId)> {
        let open = self.session.open.as_ref();
        let open = open.ok_or_else(|| GuideError::Inner("no survey is open"))?;
        let id = photo.parse().map_err(|_| facts::error::FactsError::NoSuchPhoto)?;
        Ok((open, id))
    }
}
