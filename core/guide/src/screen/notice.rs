//! What is said about the last deed.

use super::Aloud;

/// What a notice is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoticeRole {
    /// Something was wrong with what was given, or could not be done; with what to do about it.
    Problem,
    /// Something was done.
    Done,
}

/// What is said about the last deed. It stands above everything else, and is gone after the next deed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoticeShown {
    /// Its id: the same as long as it is the same notice. The same words said anew are a new notice, to be read out again.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What it is for.
    pub role: NoticeRole,
    /// The words.
    pub words: String,
}
