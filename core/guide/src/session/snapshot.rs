//! What a screen of a survey is drawn from.

use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::path::Path;

use facts::error::CannotPutBack;
use facts::fact::{AuthorId, Ledger, Wish};
use facts::file::LeftOut;
use facts::store::Returnable;
use house::record::{Photo, Survey};
use telling::figure::Figure;
use telling::words::Language;

use super::labels_seen::LabelsSeen;
use super::looked::Looked;
use super::memory::Memory;
use super::open_survey::OpenSurvey;
use super::pending::Pending;
use super::prints::{PrintRead, Prints, to_read};
use super::results::{Standing, Worked};
use crate::place::Key;
use crate::screen::FigureDrawn;

/// What a screen of a survey is drawn from. Nothing of it changes while it is drawn, and nothing is read from a disk.
pub(crate) struct SurveySnapshot<'a> {
    /// The survey as it stands.
    pub(crate) survey: &'a Survey,
    /// Every fact of it.
    pub(crate) ledger: &'a Ledger,
    /// Whose device this is.
    pub(crate) me: AuthorId,
    /// What the guide remembers.
    pub(crate) memory: &'a Memory,
    /// Label texts of this device.
    pub(crate) seen: &'a LabelsSeen,
    /// The words.
    pub(crate) language: &'a Language,
    /// How what follows from the survey stands.
    pub(crate) standing: Standing<'a>,
    /// A file that was looked into and not taken in.
    pub(crate) looked: Option<&'a Looked>,
    /// The place for a file that was given, where one is already.
    pub(crate) file_there: Option<&'a Path>,
    /// What the last file brought, if it can be put back.
    pub(crate) returnable: &'a std::result::Result<Returnable, CannotPutBack>,
    /// What files asked to be forgotten here, and nobody has answered.
    pub(crate) wishes: &'a [Wish],
    /// What is printed in photos, as far as that was read.
    pub(crate) prints: &'a Prints,
    /// Counts what was written.
    pub(crate) revision: u64,
    /// The map in each layout, once it was drawn.
    pub(crate) maps: OnceCell<Vec<(Figure, FigureDrawn)>>,
}

impl<'a> SurveySnapshot<'a> {
    /// Of a survey that is open.
    pub(super) fn of(open: &'a OpenSurvey, me: AuthorId, language: &'a Language) -> Self {
        Self {
            survey: &open.survey,
            ledger: open.store.ledger(),
            me,
            memory: &open.memory,
            seen: &open.seen,
            language,
            standing: open.standing(),
            looked: open.looked.as_ref(),
            file_there: open.file_there.as_deref(),
            returnable: &open.returnable,
            wishes: &open.wishes,
            prints: &open.prints,
            revision: open.revision,
            maps: OnceCell::new(),
        }
    }

    /// The same survey for somebody who gave nothing on any screen.
    pub(crate) fn untouched<'b>(&'b self, memory: &'b Memory) -> SurveySnapshot<'b> {
        SurveySnapshot {
            survey: self.survey,
            ledger: self.ledger,
            me: self.me,
            memory,
            seen: self.seen,
            language: self.language,
            standing: self.standing,
            looked: self.looked,
            file_there: self.file_there,
            returnable: self.returnable,
            wishes: self.wishes,
            prints: self.prints,
            revision: self.revision,
            maps: OnceCell::new(),
        }
    }

    /// What the screen was given so far.
    pub(crate) fn pending(&self) -> &'a Pending {
        &self.memory.pending
    }

    /// How the print of a photo stands, or of the part of it that somebody chose; `None` where nobody wanted it.
    pub(crate) fn print_of(&self, photo: &Photo) -> Option<PrintRead> {
        self.prints.of(&to_read(photo, self.memory))
    }

    /// What is to stay out of a file, as far as that was said.
    pub(crate) fn left_out(&self) -> BTreeSet<LeftOut> {
        let picked: Option<Vec<LeftOut>> = self.pending().picked(&Key::LeaveOut);
        picked.unwrap_or_default().into_iter().collect()
    }

    /// What follows from the survey, if it is worked out and of the survey as it is.
    pub(crate) fn worked(&self) -> Option<&'a Worked> {
        match self.standing {
            Standing::Ready(worked) => Some(worked),
            _ => None,
        }
    }
}
