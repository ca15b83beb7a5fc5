//! A store as the document of a house: read as records, written in their words, packed with a page for people.

use std::path::Path;

use facts::fact::{ActId, Ledger, SubjectId, SurveyId, value_of};
use facts::file::{self, PackOptions, Packed, Watch};
use facts::photo::Picture;
use facts::store::Store;
use facts::{FactsError, Result};
use serde_json::{Value, json};

use crate::record::{Is, PhotoRole, Survey, field, fold};

/// What one photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Assignment {
    /// The photo.
    pub photo: SubjectId,
    /// The part or run that it shows; `None` takes it off whatever it was assigned to.
    pub of: Option<SubjectId>,
    /// What of it it shows.
    pub role: RoleSaid,
}

/// What an assignment says of the role of a photo.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoleSaid {
    /// It is this.
    Is(PhotoRole),
    /// Nothing is known of it any more.
    Gone,
    /// It stays as it is.
    Stays,
}

/// What is said of a photo when it is taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct PhotoSaid<'a> {
    /// The part or run that it shows; `None` where that is said later, as after a burst of labels.
    pub of: Option<SubjectId>,
    /// What of it it shows.
    pub role: Option<PhotoRole>,
    /// What its file is called, with or without its folder; `None` where that is no name of its owner's.
    pub file_name: Option<&'a str>,
}

/// A store, as who works on a house asks it.
pub trait Document {
    /// The records as they stand now: parts, runs, rooms, photos and the rest, worked out from the facts anew at each
    /// call.
    ///
    /// # Errors
    /// `TooManyParts`, which no survey written here has.
    fn survey(&self) -> Result<Survey>;

    /// Takes a picture in, as [`Store::take_photo`]. With `of` left out the part is said later
    /// ([`Document::assign_photos`]), as after a burst of labels. The same picture twice is two photos and one file:
    /// whoever would rather have one asks [`Survey::photo_with`] before.
    ///
    /// # Errors
    /// `Picture` if it is not one that is taken, `TooManyPhotos`, or what a write reports. Nothing is stored then.
    fn add_photo(
        &mut self,
        bytes: &[u8],
        of: Option<SubjectId>,
        role: Option<PhotoRole>,
    ) -> Result<SubjectId>;

    /// As [`Document::add_photo`], of a picture that is clean already, and with what its file is called.
    ///
    /// # Errors
    /// As [`Document::add_photo`].
    fn add_picture(&mut self, picture: &Picture, said: PhotoSaid<'_>) -> Result<SubjectId>;

    /// Says what photos show, all in one act.
    ///
    /// # Errors
    /// `NoSuchPhoto` if one is none, or what a write reports. Nothing is written then.
    fn assign_photos(&mut self, assignments: &[Assignment]) -> Result<ActId>;

    /// Adds a note on a part, a run, a room, or the survey as a whole. Each note is a subject of its own, so two
    /// people who add notes never disagree.
    ///
    /// # Errors
    /// `Fact` if the text is too long, or what a write reports.
    fn add_note(&mut self, about: Option<SubjectId>, text: &str) -> Result<SubjectId>;
}

impl Document for Store {
    fn survey(&self) -> Result<Survey> {
        fold(self.ledger(), self.survey_id())
    }

    fn add_photo(
        &mut self,
        bytes: &[u8],
        of: Option<SubjectId>,
        role: Option<PhotoRole>,
    ) -> Result<SubjectId> {
        self.add_picture(&Picture::clean(bytes)?, PhotoSaid { of, role, file_name: None })
    }

    fn add_picture(&mut self, picture: &Picture, said: PhotoSaid<'_>) -> Result<SubjectId> {
        self.take_picture(picture, facts_of(picture, said)?)
    }

    fn assign_photos(&mut self, assignments: &[Assignment]) -> Result<ActId> {
        let mut edits = Vec::new();
        for assignment in assignments {
            self.photo_image(assignment.photo)?;
            edits.push(field::photo::OF.put(assignment.photo, assignment.of.as_ref()));
            match assignment.role {
                RoleSaid::Is(role) => edits.push(field::photo::ROLE.set(assignment.photo, &role)),
                RoleSaid::Gone => edits.push(field::photo::ROLE.clear(assignment.photo)),
                RoleSaid::Stays => {}
            }
        }
        self.write(&edits)
    }

    fn add_note(&mut self, about: Option<SubjectId>, text: &str) -> Result<SubjectId> {
        let note = SubjectId::random();
        let mut edits = vec![Is::Note.begin(note), field::note::TEXT.set(note, text)];
        edits.extend(about.map(|about| field::note::ABOUT.set(note, &about)));
        self.write(&edits)?;
        Ok(note)
    }
}

/// Writes the report of a survey, as one page of HTML. Is given the facts that go into the file, folded and as they are:
/// the date of the newest is the only one that the page may carry, since the same facts must give the same bytes.
pub type Report<'a, E> = &'a dyn Fn(&Survey, &Ledger) -> Result<String, E>;

/// Packs a survey into a file at `path`, with its report as the page for people: see [`file::pack`].
///
/// # Errors
/// As [`file::pack`], `TooManyParts`, and what `report` returns. No file is left then.
pub fn pack<E: From<FactsError>>(
    store: &mut Store,
    options: &PackOptions,
    report: Report<'_, E>,
    path: &Path,
    watch: &mut dyn Watch,
) -> Result<Packed, E> {
    let page =
        |ledger: &Ledger, survey: SurveyId| -> Result<String, E> { report(&fold(ledger, survey)?, ledger) };
    file::pack(store, options, &page, path, watch)
}

/// What is written of a photo when it is taken in.
fn facts_of(picture: &Picture, said: PhotoSaid<'_>) -> Result<Vec<(&'static str, Value)>> {
    let mut facts: Vec<(&'static str, Value)> = Vec::new();
    if let Some(of) = said.of {
        facts.push((field::OF, json!(of)));
    }
    if let Some(role) = said.role {
        facts.push((field::ROLE, value_of(&role)?));
    }
    if let Some(name) = said.file_name.and_then(own_name) {
        facts.push((field::FILE_NAME, json!(name)));
    }
    if let Some(taken) = picture.taken() {
        facts.push((field::TAKEN, value_of(&taken)?));
    }
    Ok(facts)
}

/// A file's own name, without its folder, which may be that of another system; as long as names are on any disk.
fn own_name(path: &str) -> Option<&str> {
    const MOST_LETTERS: usize = 255;
    let name = path.rsplit(['/', '\\']).find(|name| !name.is_empty())?;
    let end = name.char_indices().nth(MOST_LETTERS).map_or(name.len(), |(at, _)| at);
    name.get(..end)
}
