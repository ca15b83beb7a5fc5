//! What goes on beside the screen: long work, and the app put aside and taken up again.

use std::path::PathBuf;
use std::time::Duration;

use facts::fact::ActId;
use telling::words::error::InWords;

use super::Guide;
use crate::error::{GuideError, Result, Trouble};
use crate::finish::notices_aloud;
use crate::place::Move;
use crate::screen::{NoticeRole, Screen};
use crate::session::{After, Keep, LongWork, Memory, OpenSurvey, Prints, Results, SentWork, WorkKind};

/// So long [`Guide::suspend`] waits for long work that it told to stop. A phone gives an app some seconds.
const LONGEST_WAIT: Duration = Duration::from_secs(2);

/// What is kept in memory of a survey while the app is put aside.
pub(super) struct Suspended {
    pub(super) folder: PathBuf,
    pub(super) screen: Screen,
    memory: Memory,
    last_act: Option<ActId>,
    results: Results,
    prints: Prints,
}

impl Guide {
    /// The work that is going on and takes a while, if there is any: a shell asks it how far it is. When it is over, the
    /// shell calls [`Guide::collect_long_work`] and draws the screen anew.
    pub fn long_work(&self) -> Option<LongWork> {
        let sent_work = self.session.sent_work.as_ref().map(SentWork::work).filter(|work| !work.is_done());
        let results = || self.session.open.as_ref()?.results.running();
        sent_work.or_else(results).cloned().or_else(|| self.session.print_waited_for())
    }

    /// Has the screen tell what came of long work that is over; waits for nothing. A shell that leaves it out shows a
    /// screen that says that it is over, with a press to go on.
    pub fn collect_long_work(&mut self) {
        self.collect_sent_work();
    }

    /// Waits until no long work is going on, and collects it: for tests, and where nothing can be drawn meanwhile.
    pub fn settle_long_work(&mut self) {
        while let Some(sent_work) = &self.session.sent_work {
            sent_work.work().wait();
            if !self.collect_sent_work() {
                break;
            }
        }
        while let Some(work) = self.long_work() {
            work.wait();
        }
        if let Some(weighing) = self.session.open.as_ref().and_then(|open| open.weighing.as_ref()) {
            weighing.work().wait();
        }
    }

    /// Puts the guide aside: long work is told to stop and waited for, at most two seconds; where one is and what is half
    /// typed is kept, and the survey's database is closed. Until [`Guide::resume`] the screen stays as it is. Long work
    /// that is not over by then leaves nothing half done, whether it goes on or the app is ended; it is collected later.
    ///
    /// # Errors
    /// If where one is cannot be written down; nothing is changed then.
    pub fn suspend(&mut self) -> Result<()> {
        self.photos = None;
        if let Some(sent_work) = &self.session.sent_work {
            sent_work.work().stop();
            if sent_work.work().wait_at_most(LONGEST_WAIT) {
                self.collect_sent_work();
            }
        }
        if self.session.open.is_none() {
            self.session.settle_name()?;
            // Others may change what there is meanwhile.
            self.session.listing_is_old = true;
            return Ok(());
        }
        self.session.remember(Keep::Now)?;
        let screen = self.screen_beneath();
        if let Some(open) = self.session.open.take() {
            open.results.stop();
            let folder = open.store.folder().to_owned();
            open.prints.stop_all();
            let OpenSurvey { memory, last_act, results, prints, .. } = open;
            self.suspended = Some(Suspended { folder, screen, memory, last_act, results, prints });
        }
        Ok(())
    }

    /// Takes the guide up again where it was put aside. [`Guide::act`] does so by itself. Opening a large survey may take
    /// longer than a touch: then the screen tells so, and [`Guide::long_work`] how far it is.
    ///
    /// # Errors
    /// If the survey cannot be opened any more: it was moved, or another program holds it. The screen stays as it is;
    /// try again, or [`Guide::close`].
    pub fn resume(&mut self) -> Result<()> {
        if std::mem::take(&mut self.session.listing_is_old) {
            self.session.list_if_wanted();
            self.be_patient();
        }
        let Some(suspended) = &self.suspended else { return Ok(()) };
        match &self.session.sent_work {
            // One that was not over when the guide was put aside belongs to the survey, and waits for it.
            Some(sent_work) if sent_work.kind != WorkKind::Open => {
                let open = self.session.opening().open(&suspended.folder)?;
                self.session.open = Some(open);
                self.take_up();
            }
            Some(_) => {}
            None => {
                let (opening, folder) = (self.session.opening(), suspended.folder.clone());
                self.session.send(WorkKind::Open, move |work| {
                    if !work.goes_on(0.0) {
                        return Err(Trouble::Stopped.into());
                    }
                    let open = opening.open(&folder);
                    Ok(After::new(move |session| {
                        session.open = Some(open?);
                        Ok(Move::Stay)
                    }))
                });
            }
        }
        self.be_patient();
        self.not_resumed.take().map_or(Ok(()), Err)
    }

    /// Takes up what was put aside, once its survey is open again.
    pub(super) fn take_up(&mut self) {
        let Some(open) = &mut self.session.open else { return };
        if let Some(Suspended { memory, last_act, results, prints, .. }) = self.suspended.take() {
            // What was worked out still counts if the house is as it was.
            open.revision = results.next_revision();
            (open.memory, open.last_act, open.results) = (memory, last_act, results);
            open.prints = prints;
            self.session.begin_if_wanted();
            self.session.read_prints_if_wanted();
        }
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
