//! A place for photos of a part or a cable, and what such a photo is called.

use facts::fact::SubjectId;
use house::record::{Photo, PhotoRole, Survey};
use phrase::Phrase;

use super::builder::ScreenBuilder;
use crate::place::Key;
use crate::screen::Ability;
use crate::session::SurveySnapshot;

/// A place for photos of a part, or of a cable, with those that are there.
pub(crate) fn photo_slot(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    key: &Key,
    of: SubjectId,
    role: PhotoRole,
) {
    let is_run = snapshot.survey.runs.contains_key(&of);
    // A photo of nothing in particular may show anything.
    let fits = |photo: &&Photo| photo.role.is_none_or(|shown| shown == role);
    let photos = snapshot.survey.photos_of(Some(of)).filter(fits).take(20);
    let photos: Vec<_> =
        photos.map(|photo| builder.photo(photo.id, &photo_name(snapshot.survey, photo), None)).collect();
    let name = match role {
        PhotoRole::Before => "take-photo-before",
        PhotoRole::After => "take-photo-after",
        PhotoRole::Label if is_run => "take-photo-jacket",
        PhotoRole::Label => "take-photo-label",
        PhotoRole::Place => "take-photo-place",
    };
    builder.able(Ability::Torch);
    builder.photo_slot(key, &Phrase::new(name), photos, false);
}

/// What a photo is, for those who do not see it.
pub(crate) fn photo_name(survey: &Survey, photo: &Photo) -> Phrase {
    let is_of_run = photo.of.is_some_and(|of| survey.runs.contains_key(&of));
    Phrase::new(match photo.role {
        Some(PhotoRole::Before) => "photo-before",
        Some(PhotoRole::After) => "photo-after",
        Some(PhotoRole::Label) if is_of_run => "photo-jacket",
        Some(PhotoRole::Label) => "photo-label",
        Some(PhotoRole::Place) => "photo-place",
        None => "photo-of-part",
    })
}
