//! The screens that are about other people: files, disagreements, who said what.

use facts::fact::{ActId, SubjectId};
use serde::{Deserialize, Serialize};

/// A screen that is about other people.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum SharePlace {
    /// Writing a file for the next person.
    Pack,
    /// Taking in a file that somebody sent.
    TakeIn,
    /// What people said differently.
    Disagreements,
    /// One field that people said differently.
    Disagreement(SubjectId, String),
    /// Who did what, the newest first.
    Acts,
    /// One action.
    Act(ActId),
    /// Everything that something was said about.
    Things,
    /// What was said about one thing.
    Thing(SubjectId),
    /// What was said about one field of it.
    Field(SubjectId, String),
    /// What was removed.
    Removed,
    /// One thing that was removed.
    RemovedThing(SubjectId),
    /// Forgetting a field, or a thing as a whole: that it is for ever.
    Forget(SubjectId, Option<String>),
    /// The same: that it holds for others too.
    ForgetForOthers(SubjectId, Option<String>),
    /// What files asked to be forgotten here.
    Wishes,
}
