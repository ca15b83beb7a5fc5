//! Which photo of a part is that of its label: where there are several, the last one; and which photos are of a cable's jacket.

use facts::fact::{FactId, Ledger, SubjectId};
use house::record::{Photo, PhotoRole, Survey, field};

use super::open_survey::OpenSurvey;
use super::snapshot::SurveySnapshot;
use crate::place::Question;

impl<'a> SurveySnapshot<'a> {
    /// The photo of a part's label that was taken in last, else the last of the part.
    pub(crate) fn label_photo(&self, part: SubjectId) -> Option<&Photo> {
        last_of(self.survey, self.ledger, part)
    }

    /// The photos of a cable's jacket, the last one first.
    pub(crate) fn jacket_photos(&self, run: SubjectId) -> Vec<&'a Photo> {
        jackets(self.survey, self.ledger, run)
    }
}

impl OpenSurvey {
    /// The same, of the survey that is open.
    pub(crate) fn label_photo(&self, part: SubjectId) -> Option<&Photo> {
        last_of(&self.survey, self.store.ledger(), part)
    }

    /// The photos in which that is printed which a question asks for, the last one first.
    pub(crate) fn photos_asked_about(&self, question: &Question) -> Vec<&Photo> {
        match question {
            Question::Label(part) => self.label_photo(*part).into_iter().collect(),
            Question::Cable(run) => jackets(&self.survey, self.store.ledger(), *run),
            _ => Vec::new(),
        }
    }
}

/// Photos of one cable's jacket that are looked at: the last ones.
const MOST_JACKETS: usize = 6;

/// The photos of a cable's jacket, the last one first.
fn jackets<'a>(survey: &'a Survey, ledger: &Ledger, run: SubjectId) -> Vec<&'a Photo> {
    let shows_print = |photo: &&Photo| photo.role.is_none_or(|role| role == PhotoRole::Label);
    let mut photos: Vec<_> = survey.photos_of(Some(run)).filter(shows_print).collect();
    photos.sort_by_cached_key(|photo| std::cmp::Reverse((first_said(ledger, photo.id), photo.id)));
    photos.truncate(MOST_JACKETS);
    photos
}

/// Whoever takes another photo of a label does so because the one before was no good.
fn last_of<'a>(survey: &'a Survey, ledger: &Ledger, part: SubjectId) -> Option<&'a Photo> {
    let photos = survey.photos_of(Some(part));
    photos.max_by_key(|photo| (photo.role == Some(PhotoRole::Label), first_said(ledger, photo.id), photo.id))
}

/// What was first said of a thing: ids of things tell no order, those of facts do.
pub(crate) fn first_said(ledger: &Ledger, subject: SubjectId) -> Option<FactId> {
    ledger.history(subject, field::IS).iter().map(|fact| fact.id()).min()
}
