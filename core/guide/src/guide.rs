//! The guide: what is shown now, and what a deed makes of it.
//!
//! Here, above all pages, a deed is handed to the page that is shown and its answer becomes the next screen. What a
//! page may do stands below, in [`Session`].

mod drawn;
mod photo;
mod screens;
mod sent_work;
mod standpoint;
mod suspend;
mod token;

use std::path::{Path, PathBuf};
use std::time::Duration;

use facts::fact::Writer;
use facts::home::Home;
use telling::words::Language;
use telling::words::error::InWords;

use crate::deed::Deed;
use crate::done::Done;
use crate::error::{GuideError, Result};
use crate::finish::cautions;
use crate::place::{Move, Outside, Place, ResultPlace};
use crate::question::{Onward, onward, way_on};
use crate::screen::{Screen, WayTaken};
use crate::session::{Device, Keep, Pending, Session};

pub use screens::names as screen_names;

/// The guide on one device: the surveys of a home folder, one of them open, and the screen that is shown.
///
/// [`Guide::screen`] draws, [`Guide::act`] does. Everything that was answered is on the disk when `act` returns; what
/// is half typed is kept too, about each second, and found again after the app's death. Whatever may take longer than a
/// touch goes on beside, as a [`LongWork`](crate::LongWork) that tells how far it is and can be stopped.
pub struct Guide {
    session: Session,
    /// How one came to the screen that is shown.
    way: WayTaken,
    /// What was open when the app was put aside.
    suspended: Option<suspend::Suspended>,
    /// Why it could not be taken up again.
    not_resumed: Option<GuideError>,
    /// Photos that were taken while another one was taken in: for which place and key, and their files.
    photos: Option<sent_work::Photos>,
    /// So long a deed waits for the long work that it began.
    patience: Duration,
}

/// So long a deed waits for the long work that it began, where nobody said otherwise: what is over by then is never seen.
const PATIENCE: Duration = Duration::from_millis(40);

impl Guide {
    /// The guide over a home folder, which is made if it is not there. `author` is whose device this is (a shell that
    /// keeps none of its own asks [`Device::author`](crate::Device::author)). What was settled for this device wins over
    /// what `language` comes with.
    ///
    /// # Errors
    /// If the folder cannot be made or written.
    pub fn at(home: &Path, author: impl Into<Writer>, language: Language) -> Result<Self> {
        let session = Session::at(home, author.into(), language)?;
        let way = WayTaken::Same;
        let mut guide =
            Self { session, way, suspended: None, not_resumed: None, photos: None, patience: PATIENCE };
        guide.session.list_if_wanted();
        guide.be_patient();
        guide.way = way;
        Ok(guide)
    }

    /// The same for a shell that keeps no author of its own: this device's.
    ///
    /// # Errors
    /// As [`Guide::at`], and if the author is new and cannot be kept.
    pub fn on_device(home: &Path, language: Language) -> Result<Self> {
        let folder = Home::at(home)?;
        let author = Device::at(folder.folder())?.author()?;
        Self::at(home, author, language)
    }

    /// Says how long a deed waits for the long work that it began, before the screen tells how far that is: 40 ms if
    /// nobody says otherwise. Where nothing can be drawn meanwhile, as long as it takes.
    pub fn wait_for_long_work(&mut self, patience: Duration) {
        self.patience = patience;
        self.be_patient();
    }

    /// Says with how many draws what follows from a survey is worked out from now on.
    pub fn work_out_with(&mut self, effort: advice::worklist::Options) {
        self.session.effort = effort;
    }

    /// Reads what is printed in photos of labels from now on, by the model in this folder (`core/print/model`); without it a label is typed.
    /// What is read is offered, and counts once somebody takes it.
    pub fn read_print_with(&mut self, folder: &Path) {
        self.session.read_print_with(folder);
    }

    /// Does what was done on the screen that is shown. A deed that the screen does not offer
    /// ([`Screen::offers`](crate::Screen::offers)) changes nothing and writes nothing. What keeps a deed from being done
    /// is a notice on the screen; nothing is changed then, and what was typed is still there. It stands there until
    /// something else is done: of several photos for one place, the next one is nothing else.
    ///
    /// # Errors
    /// [`GuideError::Inner`] alone: a fault of this release or of the shell.
    pub fn act(&mut self, deed: &Deed) -> Result<()> {
        if let Err(error) = self.resume() {
            return self.stays_aside(error);
        }
        if self.wait_in_line(deed) {
            return Ok(());
        }
        let screen = self.screen();
        if !screen.offers(deed) {
            return Ok(());
        }
        let deed = deed.plainly(self.session.language().figures().marks);
        // A key that no screen of this release has stands on none.
        let Some(done) = Done::of(&deed) else { return Ok(()) };
        let stood = self.standpoint();
        self.has_read(&screen, &done);
        self.session.take_up_stakes();
        if self.is_next_of_series(&done) {
            self.session.notices.keep_refusals();
        } else {
            self.session.notices.clear();
        }
        let went = if self.act_on_sent_work(&done) { Ok(()) } else { self.act_on_screen(&done) };
        self.be_patient();
        self.way = stood.way_to(&self.standpoint());
        self.told(went)
    }

    /// Whoever takes the answer of a screen, or says that it is done, has read the cautions that stood open on it.
    fn has_read(&mut self, screen: &Screen, done: &Done) {
        let takes = match done {
            Done::Press(key) => cautions::takes(key),
            Done::Pick(..) => screen.dock.answers_lead_on,
            _ => false,
        };
        if let Some(open) = self.session.open.as_mut().filter(|_| takes) {
            open.memory.read.extend(cautions::unread(screen));
        }
    }

    /// Says on the screen what a person can act on; what is left is a fault of ours.
    fn told(&mut self, done: Result<()>) -> Result<()> {
        match done {
            Err(GuideError::Trouble(trouble)) => {
                self.session.tell(trouble.phrase());
                Ok(())
            }
            done => done,
        }
    }

    /// Hands what was done to the page that is shown.
    fn act_on_screen(&mut self, done: &Done) -> Result<()> {
        let stood = self.session.stands_at();
        let step = match (done, self.session.place()) {
            (Done::Back, Some(_)) => Move::Back,
            (Done::Back, None) => Move::Outside(self.session.outside.up()),
            (_, None) => {
                let outside = self.session.outside.clone();
                screens::take_outside(&mut self.session, &outside, done)?
            }
            (_, Some(place)) => {
                if let Done::Photo(key, _) = done {
                    self.photos = Some(sent_work::Photos::at(place.clone(), key.clone()));
                }
                screens::take(&mut self.session, &place, done)?
            }
        };
        self.settle(step, stood)
    }

    /// Goes where a deed or long work leads, and keeps where one is.
    fn settle(&mut self, step: Move, stood: Option<(Option<Place>, u64)>) -> Result<()> {
        self.go(step)?;
        let stands = self.session.stands_at();
        if stands != stood {
            self.session.begin_if_wanted();
            self.session.weigh_if_wanted();
            self.session.read_prints_if_wanted();
        }
        // What was answered is no longer half answered, also after the app's death.
        let has_written = stands.map(|(_, revision)| revision) != stood.map(|(_, revision)| revision);
        self.session.remember(if has_written { Keep::Now } else { Keep::Soon })
    }

    /// Keeps where one is and what is half typed, if that was not kept for a second. [`Guide::act`] does so by itself; a
    /// shell calls it when nothing was done for a second, so that not even the last letters are lost with the app. It
    /// costs nothing where nothing changed, and no sync.
    ///
    /// # Errors
    /// If it cannot be written.
    pub fn keep_drafts(&mut self) -> Result<()> {
        self.session.remember(Keep::Soon)
    }

    fn go(&mut self, step: Move) -> Result<()> {
        match (step, &mut self.session.open) {
            (Move::Go(place), Some(open)) => open.memory.go(place),
            (Move::Swap(place), Some(open)) => open.memory.swap(place),
            (Move::Back, Some(open)) => {
                if !open.memory.back() {
                    open.memory.go(Place::Overview);
                }
            }
            (Move::Next, Some(_)) => {
                if let Some(way) = self.session.with_snapshot(way_on)? {
                    let memory = &mut self.session.open_survey()?.memory;
                    memory.way = way;
                    memory.pending = Pending::default();
                    return Ok(());
                }
                let place = match self.session.with_snapshot(onward)? {
                    Onward::Ask(question) => Place::Ask(question),
                    Onward::Enough(round) => Place::Enough(round),
                    Onward::Done => Place::Result(ResultPlace::Forecast),
                };
                self.session.open_survey()?.memory.go(place);
            }
            (Move::Out, _) => {
                self.close_survey()?;
                self.session.list_if_wanted();
            }
            (Move::Outside(outside), _) => {
                self.close_survey()?;
                // A file that was looked into goes along where it is to be taken in, and nowhere else.
                if outside != Outside::Sent {
                    self.session.looked = None;
                }
                self.session.lead_outside(outside);
                self.session.list_if_wanted();
            }
            (Move::Stay, _) | (Move::Go(_) | Move::Swap(_) | Move::Back | Move::Next, None) => {}
        }
        Ok(())
    }

    /// Opens a survey where it was left, however long that takes: for where it is not a screen that leads there.
    ///
    /// # Errors
    /// If it cannot be opened; nothing is changed then.
    pub fn open(&mut self, folder: &Path) -> Result<()> {
        self.close_survey()?;
        self.session.open(folder)?;
        // The list is not wanted any more.
        self.end_sent_work();
        self.way = WayTaken::On;
        self.session.begin_if_wanted();
        self.session.read_prints_if_wanted();
        Ok(())
    }

    /// Closes the survey that is open. It is found again where it was left. Long work is stopped.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub fn close(&mut self) -> Result<()> {
        self.close_survey()?;
        self.session.list_if_wanted();
        self.be_patient();
        Ok(())
    }

    /// Speaks another language from now on, as when the device's own was changed meanwhile.
    pub fn speak(&mut self, language: Language) {
        self.session.speak(language);
    }

    /// The language that it speaks.
    pub fn language(&self) -> &Language {
        self.session.language()
    }

    fn close_survey(&mut self) -> Result<()> {
        self.end_sent_work();
        self.session.close()?;
        (self.suspended, self.photos) = (None, None);
        self.way = WayTaken::Back;
        Ok(())
    }

    /// The folder of the survey that is open.
    pub fn open_folder(&self) -> Option<PathBuf> {
        let suspended = self.suspended.as_ref().map(|suspended| suspended.folder.clone());
        self.session.open.as_ref().map(|open| open.store.folder().to_owned()).or(suspended)
    }
}

impl Drop for Guide {
    fn drop(&mut self) {
        // What was answered is on the disk; what cannot be kept now was half typed.
        let _ = self.session.remember(Keep::Now).and_then(|()| self.session.settle_name());
    }
}

#[cfg(test)]
mod tests;
