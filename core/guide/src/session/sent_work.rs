//! Long works: whatever may take longer than a touch, such as reading and writing files, opening, listing, copying. They run
//! beside the screen, one at a time.
//!
//! A page that sends one says two things: what runs beside, over a connection to the survey of its own, and what is to
//! be done in the session once that is over.

use std::fmt;
use std::sync::{Mutex, PoisonError};

use facts::file::Progress;
use phrase::Phrase;

use super::Session;
use super::long_work::{LongWork, LongWorkOf};
use crate::error::{GuideError, Result};
use crate::place::Move;

/// What long work does, for the words on the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum WorkKind {
    /// Writing one file for the next person.
    Pack,
    /// Looking into a file.
    Look,
    /// Taking a file into the survey that it belongs to.
    Take,
    /// Taking a file in as a survey of its own.
    TakeNew,
    /// Mending a damaged survey.
    Mend,
    /// Looking at every survey of the device, for the list.
    List,
    /// Opening a survey.
    Open,
    /// Making a new one.
    Make,
    /// Copying one.
    Copy,
    /// Giving one another name.
    Rename,
    /// Deleting one.
    Delete,
    /// Taking a photo in.
    Photo,
    /// Writing the report.
    Report,
    /// Forgetting something, here and in every copy on the device.
    Forget,
}

impl WorkKind {
    /// What is being done. The message's `.stop` says what stays if it is stopped.
    pub(crate) fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::Pack => "long-work-pack",
            Self::Look => "long-work-look",
            Self::Take => "long-work-take",
            Self::TakeNew => "long-work-take-new",
            Self::Mend => "long-work-mend",
            Self::List => "long-work-list",
            Self::Open => "long-work-open",
            Self::Make => "long-work-make",
            Self::Copy => "long-work-copy",
            Self::Rename => "long-work-rename",
            Self::Delete => "long-work-delete",
            Self::Photo => "long-work-photo",
            Self::Report => "long-work-report",
            Self::Forget => "long-work-forget",
        })
    }
}

/// What is to be done in the session once long work is over, which is once.
pub(crate) struct After(Mutex<Option<Box<Then>>>);

type Then = dyn FnOnce(&mut Session) -> Result<Move> + Send;

impl After {
    pub(crate) fn new(then: impl FnOnce(&mut Session) -> Result<Move> + Send + 'static) -> Self {
        Self(Mutex::new(Some(Box::new(then))))
    }

    pub(crate) fn run(&self, session: &mut Session) -> Result<Move> {
        let then = self.0.lock().unwrap_or_else(PoisonError::into_inner).take();
        then.map_or(Ok(Move::Stay), |then| then(session))
    }
}

impl fmt::Debug for After {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("After")
    }
}

/// Long work that was sent and whose outcome is not collected yet.
#[derive(Debug)]
pub(crate) struct SentWork {
    /// What it does.
    pub(crate) kind: WorkKind,
    task: LongWorkOf<After>,
}

impl SentWork {
    /// Sends it.
    pub(crate) fn send(
        kind: WorkKind,
        run: impl FnOnce(&LongWork) -> crate::error::Result<After> + Send + 'static,
    ) -> Self {
        Self { kind, task: LongWorkOf::begin(run) }
    }

    /// To ask how far it is, and to stop it.
    pub(crate) fn work(&self) -> &LongWork {
        self.task.work()
    }

    /// What is to be done now, or why it failed; `None` while it is going on. One that was told to stop a moment too
    /// late was done all the same.
    pub(crate) fn outcome(&self) -> Option<&std::result::Result<After, GuideError>> {
        self.task.outcome()
    }
}

impl Drop for SentWork {
    fn drop(&mut self) {
        // It writes: nobody who has let go of the guide should find it still at work.
        self.work().stop();
        self.work().wait();
    }
}

impl LongWork {
    /// Watches the reading or writing of a file.
    pub(crate) fn watch_file(&self) -> impl FnMut(Progress) -> bool + '_ {
        |progress| self.goes_on(progress.done_bytes as f64 / progress.of_bytes.max(1) as f64)
    }
}
