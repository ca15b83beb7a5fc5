//! The files of photos, for a shell that shows them.

use std::path::PathBuf;

use facts::fact::SubjectId;
use facts::photo::Piece;

use super::Guide;
use crate::error::{GuideError, Result};
use crate::screen::PhotoPiece;
use crate::session::{OpenSurvey, PrintRead, ToRead};

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

    /// Pixels across and down of a photo of the open survey, the right way up.
    ///
    /// # Errors
    /// As [`Guide::whole_photo`], and if it cannot be read.
    pub fn photo_size(&self, photo: &str) -> Result<(u32, u32)> {
        let (open, photo) = self.photo(photo)?;
        Ok(open.store.photo_size(photo)?)
    }

    /// The file of a piece of a photo of the open survey that the screen shows: a JPEG, the right way up, there as long as small
    /// pictures are. Those of one photo are made with one look at it.
    ///
    /// # Errors
    /// If no survey is open or it has no such photo; if nobody shows such a piece of it; if the photo's file is lost; if nothing
    /// can be written.
    pub fn photo_piece(&self, piece: &PhotoPiece) -> Result<PathBuf> {
        let (open, photo) = self.photo(&piece.photo)?;
        let unknown = || GuideError::from(facts::error::FactsError::NoSuchPhoto);
        let asked = Piece::new(piece.left, piece.top, piece.width, piece.height).ok_or_else(unknown)?;
        let part = open.memory.part_of(photo);
        let mut shown = vec![Piece::WHOLE];
        shown.extend(part);
        let wanted = ToRead { sum: open.store.photo_image(photo)?.sha256, part };
        if let Some(PrintRead::Read(read)) = open.prints.of(&wanted) {
            shown.extend(read.pieces());
        }
        shown.sort_unstable();
        shown.dedup();
        let place = shown.iter().position(|one| *one == asked).ok_or_else(unknown)?;
        open.store.photo_piece_paths(photo, &shown)?.into_iter().nth(place).ok_or_else(unknown)
    }

    fn photo(&self, photo: &str) -> Result<(&OpenSurvey, SubjectId)> {
        let open = self.session.open.as_ref();
        let open = open.ok_or_else(|| GuideError::Inner("no survey is open"))?;
        let id = photo.parse().map_err(|_| facts::error::FactsError::NoSuchPhoto)?;
        Ok((open, id))
    }
}
