//! Who writes.
//!
//! An author is a random id and nothing else. On a device it is made from the device's key, one for each survey, so that
//! nobody tells by it that two surveys are by one hand. A display name is an ordinary fact about the author.

use uuid::Uuid;

use super::Ledger;
use super::id::{AuthorId, DeviceKey, SubjectId, SurveyId};

impl AuthorId {
    /// The author as the subject of facts about them, such as the display name.
    pub const fn subject(self) -> SubjectId {
        SubjectId::from_uuid(self.uuid())
    }
}

/// In whose name a device writes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Writer {
    /// Under one id, whichever survey it is.
    As(AuthorId),
    /// Under an id of its own in each survey.
    Device {
        /// What the ids are made from. It is in no survey.
        key: DeviceKey,
        /// The id under which releases before that wrote into all surveys of the device. A survey that has it keeps it.
        before: Option<AuthorId>,
    },
}

impl Writer {
    /// The author's id in a survey; `wrote` says who wrote in it.
    pub fn in_survey(self, survey: SurveyId, wrote: impl Fn(AuthorId) -> bool) -> AuthorId {
        match self {
            Self::As(author) => author,
            Self::Device { key, before } => {
                let own = AuthorId::of_device(key, survey);
                before.filter(|before| wrote(*before) && !wrote(own)).unwrap_or(own)
            }
        }
    }

    /// The same, in a survey whose facts are at hand.
    pub(crate) fn in_ledger(self, survey: SurveyId, ledger: &Ledger) -> AuthorId {
        self.in_survey(survey, |author| ledger.facts().any(|fact| fact.by() == author))
    }
}

impl From<AuthorId> for Writer {
    fn from(author: AuthorId) -> Self {
        Self::As(author)
    }
}

impl AuthorId {
    /// A UUID of version 5 (RFC 9562, 5.5): the same on this device whenever it is asked for, also after the survey was
    /// deleted and came back in a file; without the key nobody makes or knows it.
    fn of_device(key: DeviceKey, survey: SurveyId) -> Self {
        Self::from_uuid(Uuid::new_v5(&key.uuid(), survey.uuid().as_bytes()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_device_has_an_id_in_each_survey_and_keeps_what_it_had() {
        let (key, old) = (DeviceKey::random(), AuthorId::random());
        let [one, two] = [(); 2].map(|()| SurveyId::random());
        let writer = Writer::Device { key, before: Some(old) };
        let fresh = |survey| writer.in_survey(survey, |_| false);
        assert_ne!(fresh(one), fresh(two));
        assert_eq!(fresh(one), Writer::Device { key, before: None }.in_survey(one, |_| true));
        assert_ne!(
            fresh(one),
            Writer::Device { key: DeviceKey::random(), before: None }.in_survey(one, |_| false)
        );
        assert_eq!(writer.in_survey(one, |author| author == old), old);
        assert_eq!(writer.in_survey(one, |_| true), fresh(one), "who has begun anew goes on so");
        assert_eq!(Writer::from(old).in_survey(one, |_| false), old);
    }
}
