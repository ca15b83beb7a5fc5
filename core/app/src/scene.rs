//! What a screen of a survey is drawn from.

use facts::fact::{AuthorId, Ledger};
use house::record::Survey;
use telling::words::Language;

use crate::given::Pending;
use crate::memory::Memory;
use crate::page::Seen;
use crate::results::Worked;

/// What a screen of a survey is drawn from. Nothing of it changes while it is drawn.
#[derive(Clone, Copy)]
pub(crate) struct Scene<'a> {
    /// The survey as it stands.
    pub(crate) survey: &'a Survey,
    /// Every fact of it.
    pub(crate) ledger: &'a Ledger,
    /// Whose device this is.
    pub(crate) me: AuthorId,
    /// What the guide remembers.
    pub(crate) memory: &'a Memory,
    /// Label texts of this device.
    pub(crate) seen: &'a Seen,
    /// The words.
    pub(crate) language: &'a Language,
    /// What follows from the survey, if it is worked out and of the survey as it is.
    pub(crate) worked: Option<&'a Worked>,
}

impl<'a> Scene<'a> {
    /// What the screen was given so far.
    pub(crate) fn pending(&self) -> &'a Pending {
        &self.memory.pending
    }
}
