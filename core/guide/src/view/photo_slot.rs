//! A place for photos of a part.

use facts::fact::SubjectId;
use house::record::PhotoRole;
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
    let fits = |photo: &&house::record::Photo| photo.role.is_none_or(|shown| shown == role);
    let photos = snapshot.survey.photos_of(Some(of)).filter(fits).take(20).map(|photo| {
        let name = match photo.role {
            Some(PhotoRole::Before) => "photo-before",
            Some(PhotoRole::After) => "photo-after",
            Some(PhotoRole::Label) if is_run => "photo-jacket",
            Some(PhotoRole::Label) => "photo-label",
            Some(PhotoRole::Place) => "photo-place",
            None => "photo-of-part",
        };
        builder.photo(photo.id, &Phrase::new(name), None)
    });
    let photos: Vec<_> = photos.collect();
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
