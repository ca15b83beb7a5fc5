//! Why an act cannot be undone.

/// Why an act cannot be undone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum UndoFault {
    /// The act said nothing, or is not known here.
    #[error("that action changed nothing here")]
    Nothing,
    /// Something that the act said was replaced.
    #[error("what it said was changed again since; undo that first, or write the older value anew")]
    ReplacedSince,
    /// Something that the act created has been added to.
    #[error("what it added was added to or removed since; undo that first, or remove it")]
    ChangedSince,
    /// The act made something forgotten.
    #[error("forgetting is for ever")]
    Forgets,
    /// Something that the act said was forgotten.
    #[error("what it said was forgotten, and what stood before may not come back")]
    Forgotten,
}
