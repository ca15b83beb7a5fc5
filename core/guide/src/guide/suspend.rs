//! What goes on beside the screen: long work, and the app put aside and taken up again.

use std::path::PathBuf;

use facts::fact::ActId;
use telling::words::error::InWords;

use super::Guide;
use crate::error::{GuideError, Result};
use crate::finish::notices_aloud;
use crate::screen::{NoticeRole, Screen};
use crate::session::{Errand, LongWork, Results};

/// What is kept in memory of a survey while the app is put aside.
pub(super) struct Suspended {
    pub(super) folder: PathBuf,
    pub(super) screen: Screen,
    last_act: Option<ActId>,
    results: Results,
}

impl Guide {
    /// The work that is going on and takes a while, if there is any: a shell asks it how far it is. When it is over, the
    /// shell calls [`Guide::collect_long_work`] and draws the screen anew.
    pub fn long_work(&self) -> Option<LongWork> {
        let errand = self.session.errand.as_ref().map(Errand::work).filter(|work| !work.is_done());
        let results = || self.session.open.as_ref()?.results.running();
        errand.or_else(results).cloned()
    }

    /// Has the screen tell what came of long work that is over; waits for nothing. A shell that leaves it out shows a
    /// screen that says that it is over, with a press to go on.
    pub fn collect_long_work(&mut self) {
        self.collect_errand();
    }

    /// Waits until no long work is going on, and collects it: for tests, and where nothing can be drawn meanwhile.
    pub fn settle_long_work(&mut self) {
        if let Some(errand) = &self.session.errand {
            errand.work().wait();
            self.collect_errand();
        }
        if let Some(work) = self.long_work() {
            work.wait();
        }
    }

    /// Puts the guide aside: long work stops, where one is and what is half typed is written down, and the survey's
    /// database is closed. Until [`Guide::resume`] the screen stays as it is.
    ///
    /// # Errors
    /// If where one is cannot be written down; nothing is changed then.
    pub fn suspend(&mut self) -> Result<()> {
        self.end_errand();
        if self.session.open.is_none() {
            return Ok(());
        }
        self.session.remember()?;
        let screen = self.screen();
        if let Some(open) = self.session.open.take() {
            open.results.stop();
            let folder = open.store.folder().to_owned();
            self.suspended =
                Some(Suspended { folder, screen, last_act: open.last_act, results: open.results });
        }
        Ok(())
    }

    /// Takes the guide up again where it was put aside. [`Guide::act`] does so by itself.
    ///
    /// # Errors
    /// If the survey cannot be opened any more: it was moved, or another program holds it. The screen stays as it is;
    /// try again, or [`Guide::close`].
    pub fn resume(&mut self) -> Result<()> {
        let Some(suspended) = &self.suspended else { return Ok(()) };
        let mut open = self.session.opened(&suspended.folder)?;
        if let Some(Suspended { last_act, results, .. }) = self.suspended.take() {
            // What was worked out still counts if the house is as it was.
            open.revision = results.next_revision();
            (open.last_act, open.results) = (last_act, results);
        }
        self.session.open = Some(open);
        self.session.begin_if_wanted();
        Ok(())
    }

    /// Says on the screen that stays why the guide cannot be taken up again; what is left is a fault of ours.
    pub(super) fn stays_aside(&mut self, error: GuideError) -> Result<()> {
        let GuideError::Trouble(trouble) = error else { return Err(error) };
        let Some(suspended) = &mut self.suspended else { return Ok(()) };
        let mut notices = std::mem::take(&mut self.session.notices);
        suspended.screen.notices =
            notices.alone(NoticeRole::Problem, trouble.phrase(), self.session.language());
        notices_aloud(&mut suspended.screen);
        self.session.notices = notices;
        Ok(())
    }
}
