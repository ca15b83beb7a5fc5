//! What a page may do: the open survey, whose device it is, the words, what is said on the screen, long work.
//!
//! It stands below questions and pages, and knows of them only where one is. Which page is shown and what a deed does
//! there is told above, in [`Guide`](crate::Guide).

mod device;
mod folder;
#[cfg(test)]
mod in_memory;
mod label_photo;
mod labels_seen;
mod listing;
mod long_work;
mod looked;
mod memory;
mod notice;
mod open_survey;
mod opening;
mod pack;
mod pending;
mod photo;
mod prints;
mod results;
mod sent_work;
mod snapshot;
mod stakes;

use std::path::Path;
use std::sync::Arc;

use facts::fact::Writer;
use facts::home::Home;
use house::record::Photo;
use phrase::{Arg, Phrase};
use telling::words::Language;

use crate::done::Done;
use crate::error::{GuideError, Result};
use crate::place::{FieldPlace, Key, Outside, Place};
use crate::screen::NoticeRole;
use stakes::{Stakes, Weighing};

use device::LONGEST_NAME;
pub use device::{Device, Working};
pub(crate) use folder::folder_name;
#[cfg(test)]
pub(crate) use in_memory::InMemory;
pub(crate) use label_photo::first_said;
pub(crate) use listing::Listing;
pub use long_work::LongWork;
pub(crate) use looked::{Looked, look};
pub(crate) use memory::{Keep, Memory};
pub(crate) use notice::Notices;
pub(crate) use open_survey::OpenSurvey;
pub(crate) use pack::{is_there, name_of, pack};
pub(crate) use pending::Pending;
pub(crate) use prints::{PrintModel, PrintRead, Prints, ToRead, to_read};
pub(crate) use results::{Results, Standing, Weighed, Worked};
pub(crate) use sent_work::{After, SentWork, WorkKind};
pub(crate) use snapshot::SurveySnapshot;
pub(crate) use stakes::question_of;

/// A page that is about a survey was shown without one.
const NONE_OPEN: &str = "no survey is open";

/// What holds while the guide runs on one device.
pub(crate) struct Session {
    home: Home,
    author: Writer,
    language: Arc<Language>,
    /// The survey that is open.
    pub(crate) open: Option<OpenSurvey>,
    /// The screen that is shown while none is.
    pub(crate) outside: Outside,
    /// What a screen outside any survey was given.
    pub(crate) pending: Pending,
    /// What a new survey was given before its screen was left: it stands there again.
    pub(crate) new_survey: Pending,
    /// What was wrong with the last deed, or what it did.
    pub(crate) notices: Notices,
    device: Device,
    /// A file that somebody sent, looked into outside any survey.
    pub(crate) looked: Option<Looked>,
    /// The surveys of this device as they were last looked at.
    pub(crate) listing: Listing,
    /// Whether others may have changed them since.
    pub(crate) listing_is_old: bool,
    /// What is being done beside, or was and is not collected yet.
    pub(crate) sent_work: Option<SentWork>,
    /// How much goes into a work list.
    pub(crate) effort: advice::worklist::Options,
    /// What reads print in photos, where this device has it.
    print_model: Option<PrintModel>,
}

impl Session {
    /// Over a home folder, which is made if it is not there.
    pub(crate) fn at(home: &Path, author: Writer, language: Language) -> Result<Self> {
        let home = Home::at(home)?;
        let device = Device::at(home.folder())?;
        let mut session = Self {
            home,
            author,
            language: Arc::new(language),
            open: None,
            outside: Outside::default(),
            pending: Pending::default(),
            new_survey: Pending::default(),
            notices: Notices::default(),
            device,
            looked: None,
            listing: Listing::default(),
            listing_is_old: false,
            sent_work: None,
            effort: advice::worklist::Options::default(),
            print_model: None,
        };
        session.speak_as_settled();
        Ok(session)
    }

    /// Has numbers written as this device has it.
    fn speak_as_settled(&mut self) {
        // A report that is being written holds the language; nothing can be settled while it is.
        if let (Some(length_unit), Some(language)) =
            (self.device.length_unit(), Arc::get_mut(&mut self.language))
        {
            language.set_length_unit(length_unit);
        }
    }

    /// Closes the survey that is open. It is found again where it was left.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub(crate) fn close(&mut self) -> Result<()> {
        self.remember(Keep::Now)?;
        self.settle_name()?;
        if let Some(open) = self.open.take() {
            // What stays goes at the next opening.
            let _ = open.store.drop_small_photos();
        }
        self.lead_outside(Outside::default());
        Ok(())
    }

    /// Leads to a screen outside any survey. What was typed of a new survey is kept until that is made.
    pub(crate) fn lead_outside(&mut self, outside: Outside) {
        let pending = std::mem::take(&mut self.pending);
        if self.outside == Outside::NewSurvey {
            self.new_survey = pending;
        }
        if outside == Outside::NewSurvey {
            self.pending = std::mem::take(&mut self.new_survey);
        }
        self.outside = outside;
    }

    /// Keeps where one is and what is half answered.
    pub(crate) fn remember(&mut self, when: Keep) -> Result<()> {
        if let Some(open) = &mut self.open {
            open.memory.keep(&mut open.store, when)?;
        }
        Ok(())
    }

    /// Settles the name that was typed for this device, once its screen is left: each letter of it would be a write.
    pub(crate) fn settle_name(&mut self) -> Result<()> {
        if self.open.is_some() || self.outside != Outside::Device {
            return Ok(());
        }
        self.device.was_told()?;
        match self.pending.written(&Key::Name).map(str::to_owned) {
            Some(name) => match Device::name_too_long(&name) {
                Some(found) => {
                    let told = Phrase::new("device-name-too-long").with("found", Arg::Count(found as u64));
                    self.tell(told.with("limit", Arg::Count(LONGEST_NAME as u64)));
                    Ok(())
                }
                None => self.settle_device(|device| device.set_name(&name)),
            },
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

    pub(crate) fn with_snapshot<T>(&self, look: impl FnOnce(&SurveySnapshot<'_>) -> T) -> Result<T> {
        let open = self.open.as_ref().ok_or(GuideError::Inner(NONE_OPEN))?;
        Ok(look(&SurveySnapshot::of(open, open.store.author(), &self.language)))
    }

    /// Works out what follows from the survey, where the screen tells of it and it is not there yet.
    pub(crate) fn begin_if_wanted(&mut self) {
        let Some(open) = &self.open else { return };
        let wanted = matches!(open.memory.way.last(), Some(Place::Result(place)) if place.wants_results());
        if wanted && !matches!(open.standing(), Standing::Ready(_) | Standing::Running(_)) {
            self.begin_long_work();
        }
    }

    /// Works out what the answers to open questions may change, where the screen is one of those that ask and nothing of it
    /// is of the house as it is.
    pub(crate) fn weigh_if_wanted(&mut self) {
        let effort = self.effort;
        let Some(open) = &mut self.open else { return };
        let asks = matches!(open.memory.way.last(), Some(Place::Ask(_) | Place::Enough(_)));
        if asks && !open.weighing.as_ref().is_some_and(|weighing| weighing.is_of(&open.survey)) {
            open.weighing = Weighing::begin(&open.survey, effort);
        }
    }

    /// Reads print in photos from now on, by the model in a folder.
    pub(crate) fn read_print_with(&mut self, folder: &Path) {
        self.print_model = Some(PrintModel::in_folder(folder.to_owned()));
        if let Some(open) = &mut self.open {
            open.prints.begin_anew();
        }
        self.read_prints_if_wanted();
    }

    /// Reads what is printed in the photos that the screen is about, where that was not done yet.
    pub(crate) fn read_prints_if_wanted(&mut self) {
        let (Some(model), Some(open)) = (&self.print_model, &mut self.open) else { return };
        let (photos, is_looked_at): (Vec<_>, bool) = match open.memory.way.last() {
            Some(Place::Ask(question)) => {
                // Each goes before those that wait: the last one first.
                (open.photos_asked_about(question).into_iter().rev().collect(), true)
            }
            Some(Place::Field(FieldPlace::Burst | FieldPlace::Assign)) => {
                (open.survey.photos_of(None).collect(), false)
            }
            _ => return,
        };
        let file =
            |photo: &Photo| Some((to_read(photo, &open.memory), open.store.photo_path(photo.id).ok()?));
        let photos: Vec<_> = photos.into_iter().filter_map(file).collect();
        open.prints.read(model, photos, is_looked_at);
    }

    /// The work that reads a photo of what is asked about: its screen waits for that.
    pub(crate) fn print_waited_for(&self) -> Option<LongWork> {
        let open = self.open.as_ref()?;
        let Some(Place::Ask(question)) = open.memory.way.last() else { return None };
        let mut photos = open.photos_asked_about(question).into_iter();
        photos.find_map(|photo| open.prints.work_on(&to_read(photo, &open.memory)))
    }

    /// Remembers what the answers may change, where it is worked out by now.
    pub(crate) fn take_up_stakes(&mut self) {
        let Some(open) = &mut self.open else { return };
        let of_results = match open.standing() {
            Standing::Ready(worked) => Some(Stakes::of(&open.survey, &worked.unknowns)),
            _ => None,
        };
        let weighed = || open.weighing.as_ref().and_then(Weighing::outcome).cloned();
        if let Some(stakes) = of_results.or_else(weighed) {
            open.memory.stakes = stakes;
        }
    }

    /// Works out what follows from the survey, from the beginning.
    pub(crate) fn begin_long_work(&mut self) {
        let effort = self.effort;
        if let Some(open) = &mut self.open {
            open.results.begin(open.store.folder(), &open.survey, open.revision, effort);
        }
    }

    /// Sends long work. The screen tells of it until it is over and collected.
    pub(crate) fn send(
        &mut self,
        kind: WorkKind,
        run: impl FnOnce(&LongWork) -> crate::error::Result<After> + Send + 'static,
    ) {
        self.sent_work = Some(SentWork::send(kind, run));
    }

    /// Says on the screen what was wrong.
    pub(crate) fn tell(&mut self, problem: Phrase) {
        self.notices.tell(NoticeRole::Problem, problem);
    }

    /// Says on the screen what was done.
    pub(crate) fn tell_done(&mut self, done: Phrase) {
        self.notices.tell(NoticeRole::Done, done);
    }

    /// Speaks another language from now on. What was settled for this device still wins.
    pub(crate) fn speak(&mut self, language: Language) {
        self.language = Arc::new(language);
        self.speak_as_settled();
    }

    pub(crate) fn author(&self) -> Writer {
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

    /// The words, for what goes on beside.
    pub(crate) fn shared_language(&self) -> Arc<Language> {
        Arc::clone(&self.language)
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
