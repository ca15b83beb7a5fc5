//! Which photo of a part is that of its label: where there are several, the last one.

use facts::fact::{FactId, Ledger, SubjectId};
use house::record::{Photo, PhotoRole, Survey, field};

use super::open_survey::OpenSurvey;
use super::snapshot::SurveySnapshot;

impl SurveySnapshot<'_> {
    /// The photo of a part's label that was taken in last, else the last of the part.
    pub(crate) fn label_photo(&self, part: SubjectId) -> Option<&Photo> {
        last_of(self.survey, self.ledger, part)
    }
}

impl OpenSurvey {
    /// The same, of the survey that is open.
    pub(crate) fn label_photo(&self, part: SubjectId) -> Option<&Photo> {
        last_of(&self.survey, self.store.ledger(), part)
    }
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
