//! Taking photos in, and saying afterwards what they show.

use serde_json::{Value, json};

use super::picture::read_bounded;
use crate::error::{Result, SurveyError};
use crate::fact::{ActId, Edit, SubjectId, value_of};
use crate::photo::Picture;
use crate::record::{PhotoRole, field};
use crate::store::{Store, disk, fault};

/// The most photos that a survey holds: a file of it must not have more entries than its reader takes.
pub const MOST_PHOTOS: usize = 4_900;

/// What one photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Assignment {
    /// The photo.
    pub photo: SubjectId,
    /// The part or run that it shows; `None` takes it off whatever it was assigned to.
    pub of: Option<SubjectId>,
    /// What of it it shows; `None` leaves that as it is.
    pub role: Option<PhotoRole>,
}

impl Store {
    /// Takes a picture in: cleans it, stores it, and only then writes the facts that name it. With `of` left out the
    /// part is said later ([`Store::assign_photos`]), as after a burst of labels. The same picture twice is two
    /// photos and one file.
    ///
    /// # Errors
    /// `Picture` if it is not one that is taken, `TooManyPhotos`, or what a write reports. Nothing is stored then.
    pub fn add_photo(
        &mut self,
        bytes: &[u8],
        of: Option<SubjectId>,
        role: Option<PhotoRole>,
    ) -> Result<SubjectId> {
        self.add_picture(&Picture::clean(bytes)?, of, role)
    }

    /// As [`Store::add_photo`], of a picture that is clean already.
    ///
    /// # Errors
    /// As [`Store::add_photo`].
    pub fn add_picture(
        &mut self,
        picture: &Picture,
        of: Option<SubjectId>,
        role: Option<PhotoRole>,
    ) -> Result<SubjectId> {
        // Also proves that its pixels can be decoded.
        let small = picture.thumbnail()?;
        self.check_room()?;
        let photo = SubjectId::random();
        let image = picture.image();
        let mut edits =
            vec![Edit::new(photo, field::IS, "photo"), Edit::new(photo, field::IMAGE, value_of(&image)?)];
        edits.extend(of.map(|of| Edit::new(photo, field::OF, json!(of))));
        if let Some(role) = role {
            edits.push(Edit::new(photo, field::ROLE, value_of(&role)?));
        }
        let (folder, photos) = (self.folder().to_owned(), self.photos());
        self.write_photo(&edits, picture.sha256(), &small, || {
            let name = image.file_name();
            // Read and compared, not only looked for: a file of that name may have been damaged since.
            if read_bounded(&photos.join(&name)).is_ok_and(|there| there == picture.bytes()) {
                return disk::sync_folder(&photos).map_err(|error| fault::of_system(&folder, &error));
            }
            disk::write_whole(&photos, &name, picture.bytes())
                .map_err(|error| fault::of_system(&folder, &error))
        })?;
        Ok(photo)
    }

    /// Says what photos show, all in one act.
    ///
    /// # Errors
    /// [`SurveyError::NoSuchPhoto`] if one is none, or what a write reports. Nothing is written then.
    pub fn assign_photos(&mut self, assignments: &[Assignment]) -> Result<ActId> {
        let mut edits = Vec::new();
        for assignment in assignments {
            self.photo_image(assignment.photo)?;
            let of = assignment.of.map_or(Value::Null, |of| json!(of));
            edits.push(Edit::new(assignment.photo, field::OF, of));
            if let Some(role) = assignment.role {
                edits.push(Edit::new(assignment.photo, field::ROLE, value_of(&role)?));
            }
        }
        self.write(&edits)
    }

    /// Adds a note on a part, a run, a room, or the survey as a whole. Each note is a subject of its own, so two
    /// people who add notes never disagree.
    ///
    /// # Errors
    /// `Fact` if the text is too long, or what a write reports.
    pub fn add_note(&mut self, about: Option<SubjectId>, text: &str) -> Result<SubjectId> {
        let note = SubjectId::random();
        let mut edits = vec![Edit::new(note, field::IS, "note"), Edit::new(note, field::TEXT, text)];
        edits.extend(about.map(|about| Edit::new(note, field::ABOUT, json!(about))));
        self.write(&edits)?;
        Ok(note)
    }

    fn check_room(&self) -> Result<()> {
        let most = MOST_PHOTOS;
        if self.photos_named().len() >= most { Err(SurveyError::TooManyPhotos { most }) } else { Ok(()) }
    }
}
