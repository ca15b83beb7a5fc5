//! A photo as `--json` answers with it, and the word for what one shows.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use facts::photo::TakenAt;
use facts::store::Store;
use house::record::{Part, PartKind, Photo, PhotoRole, field};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::names::Names;
use super::teller::{RecordTeller, ThingJson};
use crate::error::{DeskError, WrongThing};

/// A photo.
#[derive(Serialize)]
pub struct PhotoJson {
    photo: SubjectId,
    of: Option<ThingJson>,
    role: Option<PhotoRole>,
    sha256: String,
    ext: String,
    bytes: u64,
    pub width: u32,
    pub height: u32,
    author: Option<AuthorJson>,
    pub written_ms: Option<u64>,
    pub missing: bool,
    pub file_name: Option<String>,
    pub taken: Option<TakenAt>,
    pub path: String,
}

/// Photos of a survey by id, in the order in which they were taken in.
pub fn as_json(
    store: &Store,
    teller: &RecordTeller<'_>,
    photos: &[&Photo],
) -> Result<Vec<PhotoJson>, DeskError> {
    let missing: BTreeSet<SubjectId> = store.missing_photos()?.into_iter().collect();
    let one = |photo: &&Photo| {
        let intake = store.ledger().history(photo.id, field::IMAGE).first().copied();
        PhotoJson {
            photo: photo.id,
            of: photo.of.map(|of| teller.thing(of)),
            role: photo.role,
            sha256: photo.image.sha256.clone(),
            ext: photo.image.ext.clone(),
            bytes: photo.image.bytes,
            width: photo.image.width,
            height: photo.image.height,
            author: intake.map(|fact| teller.author(fact.by())),
            written_ms: intake.map(|fact| fact.id().ms()),
            missing: missing.contains(&photo.id),
            file_name: photo.file_name.clone(),
            taken: photo.taken,
            path: store.photos().join(photo.image.file_name()).display().to_string(),
        }
    };
    Ok(photos.iter().map(one).collect())
}

/// What a photo may show that a word names: a part, a cable, or the house as a whole (`survey`); a room stands for its one outlet.
///
/// # Errors
/// As [`Names::find`], and [`DeskError::WrongThing`].
pub fn part_or_run(names: &Names, word: &str) -> Result<SubjectId, DeskError> {
    let subject = names.find(word)?;
    let survey = names.survey();
    let is_shown = |id| survey.parts.contains_key(id) || survey.runs.contains_key(id) || *id == survey.id;
    if is_shown(&subject) {
        return Ok(subject);
    }
    let wrong = |what| Err(DeskError::WrongThing { word: word.to_owned(), what });
    if !survey.rooms.contains_key(&subject) {
        return wrong(WrongThing::NotForPhotos);
    }
    let in_room = |part: &&Part| part.room == Some(subject) && part.kind == PartKind::Outlet;
    let mut outlets = survey.parts.values().filter(in_room);
    match (outlets.next(), outlets.next()) {
        (Some(outlet), None) => Ok(outlet.id),
        _ => wrong(WrongThing::RoomForPhotos),
    }
}
