//! What goes on beside the screen: long work, and the app put aside and taken up again.

use std::path::PathBuf;

use survey::fact::ActId;
use survey::store::Store;

use super::{Guide, OpenSurvey};
use crate::errand::Errand;
use crate::error::Result;
use crate::long_work::LongWork;
use crate::memory::Keep;
use crate::place::Place;
use crate::results::{Results, Standing};
use crate::screen::Screen;

/// What is kept in memory of a survey while the app is put aside.
pub(super) struct Suspended {
    pub(super) folder: PathBuf,
    pub(super) screen: Screen,
    last_act: Option<ActId>,
    results: Results,
}

impl Guide {
    /// Works out what follows from the survey, where the screen tells of it and it is not there yet.
    pub(super) fn begin_if_wanted(&mut self) {
        let Some(open) = &self.open else { return };
        let wanted = matches!(open.memory.way.last(), Some(Place::Result(place)) if place.wants_results());
        if wanted && !matches!(open.standing(), Standing::Ready(_) | Standing::Running(_)) {
            self.begin_long_work();
        }
    }

    /// Works out what follows from the survey, from the beginning.
    pub(crate) fn begin_long_work(&mut self) {
        let effort = self.effort;
        if let Some(open) = &mut self.open {
            open.results.begin(&open.survey, open.revision, effort);
        }
    }

    /// The work that is going on and takes a while, if there is any: a shell asks it how far it is. When it is over, the
    /// shell calls [`Guide::collect_long_work`] and draws the screen anew.
    pub fn long_work(&self) -> Option<LongWork> {
        let errand = self.errand.as_ref().map(Errand::work).filter(|work| !work.is_done());
        let results = || self.open.as_ref()?.results.running();
        errand.or_else(results).cloned()
    }

    /// Has the screen tell what came of long work that is over; waits for nothing. A shell that leaves it out shows a
    /// screen that says that it is over, with a press to go on.
    pub fn collect_long_work(&mut self) {
        self.collect_errand();
    }

    /// Waits until no long work is going on, and collects it: for tests, and where nothing can be drawn meanwhile.
    pub fn settle_long_work(&mut self) {
        if let Some(errand) = &self.errand {
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
        if self.open.is_none() {
            return Ok(());
        }
        self.remember(Keep::Now)?;
        let screen = self.screen();
        if let Some(open) = self.open.take() {
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
        let store = Store::open(&suspended.folder, self.author)?;
        let mut open = OpenSurvey::of(store, &self.home, self.device.name())?;
        if let Some(Suspended { last_act, results, .. }) = self.suspended.take() {
            // What was worked out still counts if the house is as it was.
            open.revision = results.next_revision();
            (open.last_act, open.results) = (last_act, results);
        }
        self.open = Some(open);
        self.begin_if_wanted();
        Ok(())
    }
}
