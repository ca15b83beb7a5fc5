//! What became of a change that the work list proposed.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use super::{ChangeKind, Part, Run};

/// How a piece of work ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutcomeKind {
    /// It was done.
    Done,
    /// It could not be done.
    CouldNot,
    /// It was done, and then undone again.
    PutBack,
}

/// How a piece of work ended, and whether TV and internet were still fine afterwards: one decision.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Outcome {
    /// How it ended.
    pub end: OutcomeKind,
    /// Whether what else uses the coax was still fine; `None` while nobody looked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub others_fine: Option<bool>,
}

/// One change of the work list, and what became of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// Its identity.
    pub id: SubjectId,
    /// The change.
    pub change: ChangeKind,
    /// How it ended.
    pub outcome: Outcome,
    /// What it changed or took out.
    pub before: Before,
}

/// What a piece of work changed or took out, as it was before it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Before {
    /// Parts.
    pub parts: Vec<Part>,
    /// Runs.
    pub runs: Vec<Run>,
}
