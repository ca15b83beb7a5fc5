//! Taking a photo into the open survey.

use std::path::PathBuf;

use facts::error::FactsError;
use facts::fact::SubjectId;
use facts::photo::Picture;
use facts::store::Store;
use house::document::{Document, PhotoSaid};
use house::record::PhotoRole;

use super::Session;
use super::sent_work::{After, WorkKind};
use crate::error::{GuideError, Result, Trouble};
use crate::place::Move;

/// Which share is done once the picture is read and clean; the rest is making it small, and writing it.
const READ: f64 = 0.3;

impl Session {
    /// Sends the long work that takes a photo in from a file.
    pub(crate) fn add_photo(
        &mut self,
        file: &str,
        of: Option<SubjectId>,
        role: Option<PhotoRole>,
    ) -> Result<()> {
        let open = self.open_survey()?;
        open.introduce()?;
        let (folder, author) = (open.store.folder().to_owned(), open.store.author());
        let file = PathBuf::from(file);
        self.send(WorkKind::Photo, move |work| {
            let picture = match Picture::read(&file) {
                Ok(picture) => picture.map_err(FactsError::from)?,
                Err(error) => {
                    return Ok(After::new(move |_| Err(GuideError::of_file(&file, &error))));
                }
            };
            if !work.goes_on(READ) {
                return Err(Trouble::Stopped.into());
            }
            let said = PhotoSaid { of, role, file_name: None };
            Store::open(&folder, author)?.add_picture(&picture, said)?;
            Ok(After::new(|session| {
                session.open_survey()?.refresh()?;
                Ok(Move::Stay)
            }))
        });
        Ok(())
    }
}
