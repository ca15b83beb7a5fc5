//! What a page may do: the open survey, whose device it is, the words, what is said on the screen, long work.
//!
//! It stands below questions and pages, and knows of them only where one is. Which page is shown and what a deed does
//! there is told above, in [`Guide`](crate::Guide).

mod device;
mod errand;
mod folder;
#[cfg(test)]
mod in_memory;
mod labels_seen;
mod long_work;
mod looked;
mod memory;
mod notice;
mod open_survey;
mod pack;
mod pending;
mod results;
mod scene;

use std::path::Path;

use facts::fact::{AuthorId, Edit};
use facts::home::Home;
use facts::store::Store;
use house::record::field;
use phrase::Phrase;
use telling::words::Language;

use crate::done::Done;
use crate::error::{GuideError, Result};
use crate::place::{Move, Outside, Place};
use crate::screen::NoticeRole;

pub use device::{Device, Working};
pub(crate) use errand::{After, Doing, Errand};
pub(crate) use folder::folder_name;
#[cfg(test)]
pub(crate) use in_memory::InMemory;
pub use long_work::LongWork;
pub(crate) use looked::{Looked, look};
pub(crate) use notice::Notices;
pub(crate) use open_survey::OpenSurvey;
pub(crate) use pack::{is_there, name_of, pack};
pub(crate) use pending::Pending;
pub(crate) use results::{Results, Standing, Weighed, Worked};
pub(crate) use scene::Scene;

/// A page that is about a survey was shown without one.
const NONE_OPEN: &str = "no survey is open";

/// What holds while the guide runs on one device.
pub(crate) struct Session {
    home: Home,
    author: AuthorId,
    language: Language,
    /// The survey that is open.
    pub(crate) open: Option<OpenSurvey>,
    /// The screen that is shown while none is.
    pub(crate) outside: Outside,
    /// What a screen outside any survey was given.
    pub(crate) pending: Pending,
    /// What was wrong with the last deed, or what it did.
    pub(crate) notices: Notices,
    device: Device,
    /// A file that somebody sent, looked into outside any survey.
    pub(crate) looked: Option<Looked>,
    /// A file that is being read or written, or was and is not collected yet.
    pub(crate) errand: Option<Errand>,
    /// How much goes into a work list.
    pub(crate) effort: advice::worklist::Options,
}

impl Session {
    /// Over a home folder, which is made if it is not there.
    pub(crate) fn at(home: &Path, author: AuthorId, language: Language) -> Result<Self> {
        let home = Home::at(home)?;
        let device = Device::at(home.folder())?;
        let mut session = Self {
            home,
            author,
            language,
            open: None,
            outside: Outside::default(),
            pending: Pending::default(),
            notices: Notices::default(),
            device,
            looked: None,
            errand: None,
            effort: advice::worklist::Options::default(),
        };
        session.speak_as_settled();
        Ok(session)
    }

    /// Has numbers written as this device has it.
    fn speak_as_settled(&mut self) {
        if let Some(length_unit) = self.device.length_unit() {
            self.language.set_length_unit(length_unit);
        }
    }

    /// Opens a survey where it was left.
    ///
    /// # Errors
    /// If it cannot be opened; nothing is changed then.
    pub(crate) fn open(&mut self, folder: &Path) -> Result<()> {
        self.close()?;
        let mut open = self.opened(folder)?;
        // Left behind by an app that died. That they stay is no reason not to open: nothing that was forgotten is among
        // them.
        let _ = open.store.drop_small_photos();
        if open.memory.way.is_empty() {
            open.memory.go(Place::Overview);
        }
        self.open = Some(open);
        Ok(())
    }

    /// A survey of this device, open and not shown yet.
    pub(crate) fn opened(&self, folder: &Path) -> Result<OpenSurvey> {
        let store = Store::open(folder, self.author)?;
        OpenSurvey::of(store, &self.home, self.device.name())
    }

    /// Opens a survey. One that turns out to be damaged leads to where it can be mended.
    pub(crate) fn open_or_mend(&mut self, folder: &Path) -> Result<Move> {
        match self.open(folder) {
            Ok(()) => Ok(Move::Stay),
            Err(error) if error.is_damage() => {
                Ok(Move::Outside(Outside::Mend { folder: folder.to_owned(), found_damaged: true }))
            }
            Err(error) => Err(error),
        }
    }

    /// Makes a new survey and opens it.
    pub(crate) fn make(&mut self, name: &str) -> Result<()> {
        let folder = self.free_folder(name)?;
        let store = Store::create(&folder, self.author)?;
        match self.named(store, name) {
            Ok(open) => {
                self.close()?;
                self.open = Some(open);
                Ok(())
            }
            Err(error) => {
                // A name that is not taken leaves no survey without one. That it stays is less than what was wrong.
                let _ = self.home.delete(&folder);
                Err(error)
            }
        }
    }

    /// A survey that was just made, with its name.
    fn named(&self, store: Store, name: &str) -> Result<OpenSurvey> {
        let mut open = OpenSurvey::of(store, &self.home, self.device.name())?;
        let subject = open.survey.id;
        open.write(&[Edit::new(subject, field::IS, "survey"), Edit::new(subject, field::NAME, name)])?;
        open.memory.go(Place::Overview);
        Ok(open)
    }

    /// Closes the survey that is open. It is found again where it was left.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub(crate) fn close(&mut self) -> Result<()> {
        self.remember()?;
        if let Some(open) = self.open.take() {
            // What stays goes at the next opening.
            let _ = open.store.drop_small_photos();
        }
        self.outside = Outside::default();
        self.pending = Pending::default();
        Ok(())
    }

    /// Writes down where one is.
    pub(crate) fn remember(&mut self) -> Result<()> {
        match &mut self.open {
            Some(open) => open.memory.keep(&mut open.store, crate::clock::now_ms()),
            None => Ok(()),
        }
    }

    /// Where one stands in the survey that is open.
    pub(crate) fn place(&self) -> Option<Place> {
        let open = self.open.as_ref()?;
        Some(open.memory.way.last().cloned().unwrap_or(Place::Overview))
    }

    /// The screen and the count of writes.
    pub(crate) fn stands_at(&self) -> Option<(Option<Place>, u64)> {
        self.open.as_ref().map(|open| (open.memory.way.last().cloned(), open.revision))
    }

    pub(crate) fn open_survey(&mut self) -> Result<&mut OpenSurvey> {
        self.open.as_mut().ok_or(GuideError::Inner(NONE_OPEN))
    }

    /// The survey that is open, and the words to tell of it.
    pub(crate) fn open_and_language(&mut self) -> Result<(&mut OpenSurvey, &Language)> {
        let open = self.open.as_mut().ok_or(GuideError::Inner(NONE_OPEN))?;
        Ok((open, &self.language))
    }

    pub(crate) fn with_scene<T>(&self, look: impl FnOnce(&Scene<'_>) -> T) -> Result<T> {
        let open = self.open.as_ref().ok_or(GuideError::Inner(NONE_OPEN))?;
        Ok(look(&Scene::of(open, self.author, &self.language)))
    }

    /// Works out what follows from the survey, where the screen tells of it and it is not there yet.
    pub(crate) fn begin_if_wanted(&mut self) {
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

    /// Sends an errand. The screen tells of it until it is over and collected.
    pub(crate) fn send(
        &mut self,
        doing: Doing,
        run: impl FnOnce(&LongWork) -> crate::error::Result<After> + Send + 'static,
    ) {
        self.errand = Some(Errand::send(doing, run));
    }

    /// Says on the screen what was wrong.
    pub(crate) fn tell(&mut self, problem: Phrase) {
        self.notices.tell(NoticeRole::Problem, problem);
    }

    /// Says on the screen what was done.
    pub(crate) fn tell_done(&mut self, done: Phrase) {
        self.notices.tell(NoticeRole::Done, done);
    }

    /// Tells the other copies of the open survey on this device what was forgotten in it.
    pub(crate) fn forget_elsewhere(&self) -> Result<usize> {
        match &self.open {
            Some(open) => Ok(self.home.forget_elsewhere(&open.store)?),
            None => Ok(0),
        }
    }

    pub(crate) fn author(&self) -> AuthorId {
        self.author
    }

    pub(crate) fn device(&self) -> &Device {
        &self.device
    }

    /// Settles something for this device; it is on the disk when this returns.
    pub(crate) fn settle_device(&mut self, settle: impl FnOnce(&mut Device) -> Result<()>) -> Result<()> {
        settle(&mut self.device)?;
        self.speak_as_settled();
        Ok(())
    }

    pub(crate) fn home(&self) -> &Home {
        &self.home
    }

    pub(crate) fn language(&self) -> &Language {
        &self.language
    }

    pub(crate) fn pending(&self) -> &Pending {
        &self.pending
    }

    pub(crate) fn keep_outside(&mut self, done: &Done) {
        self.pending.keep(done);
    }

    pub(crate) fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }
}
