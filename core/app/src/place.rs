//! Which screen one is on. A place can be written down and found again after the app's death.

use serde::{Deserialize, Serialize};
use survey::fact::SubjectId;

use crate::ask::Question;
use crate::page::{FieldPlace, ResultPlace, SharePlace};
use crate::stage::Stage;

/// A screen of the guide within one survey.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Place {
    /// The whole job: every stage and how far it is.
    Overview,
    /// One question.
    Ask(Question),
    /// The questions of one stage, answered or not.
    Stage(Stage),
    /// What was put off.
    PutOff,
    /// What follows from the survey.
    Result(ResultPlace),
    /// Field work without being led.
    Field(FieldPlace),
    /// With others.
    Share(SharePlace),
}

/// A screen outside any survey.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Outside {
    /// The surveys of this device.
    #[default]
    Surveys,
    /// A new one.
    NewSurvey,
}

/// Where a deed leads.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Move {
    /// Nowhere: the same screen, drawn anew.
    Stay,
    /// On to a screen.
    Go(Place),
    /// To a screen in place of this one, so that back leads past it.
    Swap(Place),
    /// One screen back.
    Back,
    /// To the next open question, or what follows when there is none.
    Next,
    /// Out of the survey, to the list.
    Out,
    /// To another screen outside any survey.
    Outside(Outside),
}

/// The key of a place for one thing: `part:<id>`.
pub(crate) fn key_of(prefix: &str, subject: SubjectId) -> String {
    format!("{prefix}:{subject}")
}

/// The thing that such a key names.
pub(crate) fn subject_of(key: &str, prefix: &str) -> Option<SubjectId> {
    key.strip_prefix(prefix)?.strip_prefix(':')?.parse().ok()
}
