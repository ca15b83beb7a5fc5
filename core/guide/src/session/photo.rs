//! Taking a photo into the open survey.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::SubjectId;
use facts::photo::Picture;
use facts::store::Store;
use house::document::{Assignment, Document, PhotoSaid, RoleSaid};
use house::record::PhotoRole;
use house::story;
use phrase::Phrase;
use uuid::Uuid;

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
            let mut store = Store::open(&folder, author)?;
            let notice = taken_in(&mut store, &picture, of, role, own_name(&file))?;
            Ok(After::new(move |session| {
                session.open_survey()?.refresh()?;
                if let Some(notice) = notice {
                    session.tell_done(notice);
                }
                Ok(Move::Stay)
            }))
        });
        Ok(())
    }
}

/// Takes a picture in. One that is there already is not taken in twice but where it now stands with another part too; what came
/// of it is to be said.
fn taken_in(
    store: &mut Store,
    picture: &Picture,
    of: Option<SubjectId>,
    role: Option<PhotoRole>,
    file_name: Option<&str>,
) -> Result<Option<Phrase>> {
    let survey = store.survey()?;
    let same = || survey.photos.values().filter(|photo| photo.image.sha256 == picture.image().sha256);
    let shows = |of| story::thing(&survey, of);
    if let Some(there) = same().find(|photo| of.is_none() || photo.of == of) {
        let of = there.of.map(|of| Phrase::new("photo-already-of").phrase("thing", shows(of)));
        return Ok(Some(of.unwrap_or_else(|| Phrase::new("photo-already"))));
    }
    if let (Some(waiting), Some(thing)) = (same().find(|photo| photo.of.is_none()), of) {
        let role = role.map_or(RoleSaid::Stays, RoleSaid::Is);
        store.assign_photos(&[Assignment { photo: waiting.id, of, role }])?;
        return Ok(Some(Phrase::new("photo-already-now-of").phrase("thing", shows(thing))));
    }
    let elsewhere = same().find_map(|photo| photo.of);
    store.add_picture(picture, PhotoSaid { of, role, file_name })?;
    Ok(elsewhere.map(|other| Phrase::new("photo-already-elsewhere").phrase("thing", shows(other))))
}

/// What a file is called by its owner: a camera of a phone writes where it is told to, and the name that it is told is a random
/// id, which says nothing.
fn own_name(file: &Path) -> Option<&str> {
    let stem = file.file_stem()?.to_str()?;
    if Uuid::try_parse(stem).is_ok() { None } else { file.file_name()?.to_str() }
}
