//! The guide: what is shown now, and what a deed makes of it.
//!
//! Here, above all pages, a deed is handed to the page that is shown and its answer becomes the next screen. What a
//! page may do stands below, in [`Session`].

mod drawn;
mod errand;
mod photo;
mod screens;
mod standpoint;
mod suspend;

use std::path::{Path, PathBuf};

use facts::fact::AuthorId;
use telling::words::Language;
use telling::words::error::InWords;

use crate::deed::Deed;
use crate::done::Done;
use crate::error::{GuideError, Result};
use crate::place::{Move, Outside, Place, ResultPlace};
use crate::question::{next, way_on};
use crate::screen::WayTaken;
use crate::session::{Pending, Session};

pub use screens::names as screen_names;

/// The guide on one device: the surveys of a home folder, one of them open, and the screen that is shown.
///
/// [`Guide::screen`] draws, [`Guide::act`] does. Everything that was answered is on the disk when `act` returns; what
/// is half typed is kept too, and found again after the app's death.
pub struct Guide {
    session: Session,
    /// How one came to the screen that is shown.
    way: WayTaken,
    /// What was open when the app was put aside.
    suspended: Option<suspend::Suspended>,
}

impl Guide {
    /// The guide over a home folder, which is made if it is not there. `author` is whose device this is (a shell that
    /// keeps none of its own asks [`Device::author`](crate::Device::author)). What was settled for this device wins over
    /// what `language` comes with.
    ///
    /// # Errors
    /// If the folder cannot be made or written.
    pub fn at(home: &Path, author: AuthorId, language: Language) -> Result<Self> {
        Ok(Self { session: Session::at(home, author, language)?, way: WayTaken::Same, suspended: None })
    }

    /// Says with how many draws what follows from a survey is worked out from now on.
    pub fn work_out_with(&mut self, effort: advice::worklist::Options) {
        self.session.effort = effort;
    }

    /// Does what was done on the screen that is shown. A deed whose key the screen does not have changes nothing. What
    /// keeps a deed from being done is a notice on the screen; nothing is changed then, and what was typed is still there.
    ///
    /// # Errors
    /// [`GuideError::Inner`] alone: a fault of this release or of the shell.
    pub fn act(&mut self, deed: &Deed) -> Result<()> {
        if let Err(error) = self.resume() {
            return self.stays_aside(error);
        }
        let stood = self.standpoint();
        let done = self.done(deed);
        self.way = stood.way_to(&self.standpoint());
        self.told(done)
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

    fn done(&mut self, deed: &Deed) -> Result<()> {
        self.session.notices.clear();
        let deed = deed.plainly(self.session.language().figures().marks);
        let done = Done::of(&deed);
        if self.act_on_errand(done.as_ref()) {
            return Ok(());
        }
        // A key that no screen of this release has.
        let Some(done) = &done else { return Ok(()) };
        let stood = self.session.stands_at();
        let step = match (done, self.session.place()) {
            (Done::Back, Some(_)) => Move::Back,
            (Done::Back, None) => Move::Outside(self.session.outside.up()),
            (_, None) => {
                let outside = self.session.outside.clone();
                screens::take_outside(&mut self.session, &outside, done)?
            }
            (_, Some(place)) if self.offers(&place, deed.key())? => {
                screens::take(&mut self.session, &place, done)?
            }
            _ => Move::Stay,
        };
        self.go(step)?;
        if self.session.stands_at() != stood {
            self.session.begin_if_wanted();
        }
        self.session.remember()
    }

    /// Whether the screen of a place offers a key. What it does not offer changes nothing.
    fn offers(&self, place: &Place, key: Option<&str>) -> Result<bool> {
        if !matches!(place, Place::Field(_)) {
            return Ok(true);
        }
        let key = key.unwrap_or_default();
        self.session.with_scene(|scene| screens::show(scene, place).keys().contains(&key))
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
                if let Some(way) = self.session.with_scene(way_on)? {
                    let memory = &mut self.session.open_survey()?.memory;
                    memory.way = way;
                    memory.pending = Pending::default();
                    return Ok(());
                }
                let next = self.session.with_scene(next)?;
                let place = next.map_or(Place::Result(ResultPlace::Forecast), Place::Ask);
                self.session.open_survey()?.memory.go(place);
            }
            (Move::Out, _) => self.close()?,
            (Move::Outside(outside), _) => {
                self.close()?;
                // A file that was looked into goes along where it is to be taken in, and nowhere else.
                if outside != Outside::Sent {
                    self.session.looked = None;
                }
                self.session.outside = outside;
            }
            (Move::Stay, _) | (Move::Go(_) | Move::Swap(_) | Move::Back | Move::Next, None) => {}
        }
        Ok(())
    }

    /// Opens a survey where it was left.
    ///
    /// # Errors
    /// If it cannot be opened; nothing is changed then.
    pub fn open(&mut self, folder: &Path) -> Result<()> {
        self.close()?;
        self.session.open(folder)?;
        self.way = WayTaken::On;
        self.session.begin_if_wanted();
        Ok(())
    }

    /// Closes the survey that is open. It is found again where it was left. A file that is being read or written is
    /// stopped.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub fn close(&mut self) -> Result<()> {
        self.end_errand();
        self.session.close()?;
        self.suspended = None;
        self.way = WayTaken::Back;
        Ok(())
    }

    /// The folder of the survey that is open.
    pub fn open_folder(&self) -> Option<PathBuf> {
        let suspended = self.suspended.as_ref().map(|suspended| suspended.folder.clone());
        self.session.open.as_ref().map(|open| open.store.folder().to_owned()).or(suspended)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A shell may keep the guide on a thread of its own.
    #[test]
    fn the_guide_may_go_to_another_thread() {
        fn goes<T: Send + 'static>() {}
        goes::<Guide>();
    }
}
