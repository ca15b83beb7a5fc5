//! The guide: what is shown now, and what a deed makes of it.

mod aside;
mod errand;
mod open_survey;

use std::path::{Path, PathBuf};

use survey::fact::{AuthorId, Edit};
use survey::home::Home;
use survey::record::field;
use survey::store::Store;
use survey::words::{Language, Phrase};

use crate::deed::Deed;
use crate::device::Device;
use crate::errand::Errand;
use crate::error::{GuideError, Result};
use crate::given::Pending;
use crate::journey;
use crate::memory::Keep;
use crate::page::{self, Looked};
use crate::place::{Move, Outside, Place};
use crate::results::Standing;
use crate::scene::Scene;
use crate::screen::{Block, Screen, WordsBlock, WordsRole};

pub(crate) use open_survey::OpenSurvey;

/// The guide on one device: the surveys of a home folder, one of them open, and the screen that is shown.
///
/// [`Guide::screen`] draws, [`Guide::act`] does. Everything that was answered is on the disk when `act` returns; what
/// is half typed is kept too, and found again after the app's death.
pub struct Guide {
    home: Home,
    author: AuthorId,
    language: Language,
    open: Option<OpenSurvey>,
    outside: Outside,
    /// What a screen outside any survey was given.
    pending: Pending,
    /// What was wrong with the last deed, or what it did.
    notices: Vec<(WordsRole, Phrase)>,
    device: Device,
    /// A file that somebody sent, looked into outside any survey.
    pub(crate) looked: Option<Looked>,
    /// A file that is being read or written, or was and is not collected yet.
    errand: Option<Errand>,
    /// How much goes into a work list.
    effort: survey::worklist::Options,
    /// What was open when the app was put aside.
    suspended: Option<aside::Suspended>,
}

impl Guide {
    /// The guide over a home folder, which is made if it is not there. `author` is whose device this is (a shell that
    /// keeps none of its own asks [`Device::author`]). What was settled for this device wins over what `language` comes
    /// with.
    ///
    /// # Errors
    /// If the folder cannot be made or written.
    pub fn at(home: &Path, author: AuthorId, language: Language) -> Result<Self> {
        let home = Home::at(home)?;
        let device = Device::at(home.folder())?;
        let mut guide = Self {
            home,
            author,
            language,
            open: None,
            outside: Outside::default(),
            pending: Pending::default(),
            notices: Vec::new(),
            device,
            looked: None,
            errand: None,
            effort: survey::worklist::Options::default(),
            suspended: None,
        };
        guide.speak_as_settled();
        Ok(guide)
    }

    /// Has numbers written as this device has it.
    fn speak_as_settled(&mut self) {
        if let Some(length_unit) = self.device.length_unit() {
            self.language.set_length_unit(length_unit);
        }
    }

    /// Says with how many draws what follows from a survey is worked out from now on.
    pub fn work_out_with(&mut self, effort: survey::worklist::Options) {
        self.effort = effort;
    }

    /// The screen as it stands. Drawing changes nothing.
    pub fn screen(&self) -> Screen {
        if let Some(suspended) = &self.suspended {
            return suspended.screen.clone();
        }
        if let Some(errand) = &self.errand {
            return page::show_errand(self, errand);
        }
        let mut screen = match &self.open {
            None => page::show_outside(self, &self.outside),
            Some(open) => {
                let scene = self.scene(open);
                let place = open.memory.way.last().cloned().unwrap_or(Place::Overview);
                let mut screen = page::show(open, &scene, &place);
                screen.back = open.memory.way.len() > 1;
                screen
            }
        };
        page::in_order(&mut screen);
        screen.back |= self.open.is_none() && self.outside != Outside::default();
        let notices = self.notices.iter().map(|(role, phrase)| {
            let words = self.language.say(phrase);
            Block::Words(WordsBlock { role: *role, words })
        });
        screen.blocks.splice(0..0, notices);
        screen
    }

    /// Does what was done on the screen that is shown. A deed whose key the screen does not have changes nothing.
    ///
    /// # Errors
    /// What keeps it from being done; nothing is changed then, and what was typed is still there.
    pub fn act(&mut self, deed: &Deed) -> Result<()> {
        self.resume()?;
        self.notices.clear();
        if self.act_on_errand(deed) {
            return Ok(());
        }
        let deed = &deed.plainly(self.language.figures().marks);
        let stood = self.stands_at();
        let step = match (deed, &self.open) {
            (Deed::Back, Some(_)) => Move::Back,
            (Deed::Back, None) => Move::Outside(self.outside.up()),
            (_, None) => {
                let outside = self.outside.clone();
                page::take_outside(self, &outside, deed)?
            }
            (_, Some(open)) => {
                let place = open.memory.way.last().cloned().unwrap_or(Place::Overview);
                page::take(self, &place, deed)?
            }
        };
        self.go(step)?;
        let stands = self.stands_at();
        if stands != stood {
            self.begin_if_wanted();
        }
        // What was answered is no longer half answered, also after the app's death.
        let has_written = stands.map(|(_, revision)| revision) != stood.map(|(_, revision)| revision);
        self.remember(if has_written { Keep::Now } else { Keep::Soon })
    }

    /// The screen and the count of writes.
    fn stands_at(&self) -> Option<(Option<Place>, u64)> {
        self.open.as_ref().map(|open| (open.memory.way.last().cloned(), open.revision))
    }

    fn go(&mut self, step: Move) -> Result<()> {
        match (step, &mut self.open) {
            (Move::Go(place), Some(open)) => open.memory.go(place),
            (Move::Swap(place), Some(open)) => open.memory.swap(place),
            (Move::Back, Some(open)) => {
                if !open.memory.back() {
                    open.memory.go(Place::Overview);
                }
            }
            (Move::Next, Some(_)) => {
                if let Some(way) = self.with_scene(page::way_on)? {
                    let memory = &mut self.open_survey()?.memory;
                    memory.way = way;
                    memory.pending = Pending::default();
                    return Ok(());
                }
                let next = self.with_scene(journey::next)?;
                let place = next.map_or(Place::Result(page::ResultPlace::Forecast), Place::Ask);
                self.open_survey()?.memory.go(place);
            }
            (Move::Out, _) => self.close()?,
            (Move::Outside(outside), _) => {
                self.close()?;
                // A file that was looked into goes along where it is to be taken in, and nowhere else.
                if outside != Outside::Sent {
                    self.looked = None;
                }
                self.outside = outside;
                self.pending = Pending::default();
            }
            (Move::Stay, _) | (Move::Go(_) | Move::Swap(_) | Move::Back | Move::Next, None) => {}
        }
        Ok(())
    }

    /// Keeps where one is and what is half answered.
    fn remember(&mut self, when: Keep) -> Result<()> {
        match &mut self.open {
            Some(open) => open.memory.keep(&mut open.store, when),
            None => Ok(()),
        }
    }

    /// Keeps where one is and what is half typed, if that was not kept for a second. [`Guide::act`] does so by itself; a
    /// shell calls it when nothing was done for a second, so that not even the last letters are lost with the app. It
    /// costs nothing where nothing changed, and no sync.
    ///
    /// # Errors
    /// If it cannot be written.
    pub fn keep_drafts(&mut self) -> Result<()> {
        self.remember(Keep::Soon)
    }

    /// Opens a survey where it was left.
    ///
    /// # Errors
    /// If it cannot be opened; nothing is changed then.
    pub fn open(&mut self, folder: &Path) -> Result<()> {
        self.close()?;
        let store = Store::open(folder, self.author)?;
        let mut open = OpenSurvey::of(store, &self.home, self.device.name())?;
        if open.memory.way.is_empty() {
            open.memory.go(Place::Overview);
        }
        self.open = Some(open);
        self.begin_if_wanted();
        Ok(())
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

    /// Closes the survey that is open. It is found again where it was left. A file that is being read or written is
    /// stopped.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub fn close(&mut self) -> Result<()> {
        self.end_errand();
        self.remember(Keep::Now)?;
        self.open = None;
        self.suspended = None;
        self.outside = Outside::default();
        self.pending = Pending::default();
        Ok(())
    }

    /// The folder of the survey that is open.
    pub fn open_folder(&self) -> Option<PathBuf> {
        let suspended = self.suspended.as_ref().map(|suspended| suspended.folder.clone());
        self.open.as_ref().map(|open| open.store.folder().to_owned()).or(suspended)
    }

    pub(crate) fn open_survey(&mut self) -> Result<&mut OpenSurvey> {
        let message = "no survey is open".to_owned();
        self.open.as_mut().ok_or(GuideError::Failed { message })
    }

    /// The survey that is open, and the words to tell of it.
    pub(crate) fn open_and_language(&mut self) -> Result<(&mut OpenSurvey, &Language)> {
        let message = "no survey is open".to_owned();
        let open = self.open.as_mut().ok_or(GuideError::Failed { message })?;
        Ok((open, &self.language))
    }

    pub(crate) fn with_scene<T>(&self, look: impl FnOnce(&Scene<'_>) -> T) -> Result<T> {
        let message = "no survey is open".to_owned();
        let open = self.open.as_ref().ok_or(GuideError::Failed { message })?;
        Ok(look(&self.scene(open)))
    }

    fn scene<'a>(&'a self, open: &'a OpenSurvey) -> Scene<'a> {
        Scene {
            survey: &open.survey,
            ledger: open.store.ledger(),
            me: self.author,
            memory: &open.memory,
            seen: &open.seen,
            language: &self.language,
            worked: match open.standing() {
                Standing::Ready(worked) => Some(worked),
                _ => None,
            },
        }
    }

    /// Says on the screen what was wrong.
    pub(crate) fn tell(&mut self, problem: Phrase) {
        self.notices.push((WordsRole::Problem, problem));
    }

    /// Says on the screen what was done.
    pub(crate) fn tell_done(&mut self, done: Phrase) {
        self.notices.push((WordsRole::Lead, done));
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

    /// A folder in the home folder for a survey of this name, numbered where there is one already.
    pub(crate) fn free_folder(&self, name: &str) -> Result<PathBuf> {
        let plain = folder_name(name);
        let mut folder = self.home.place(&plain)?;
        let mut number = 2_u32;
        while folder.symlink_metadata().is_ok() {
            folder = self.home.place(&format!("{plain} {number}"))?;
            number += 1;
        }
        Ok(folder)
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

    pub(crate) fn keep_outside(&mut self, deed: &Deed) {
        self.pending.keep(deed);
    }

    pub(crate) fn say(&self, phrase: &Phrase) -> String {
        self.language.say(phrase)
    }
}

impl Drop for Guide {
    fn drop(&mut self) {
        // What was answered is on the disk; what cannot be kept now was half typed.
        let _ = self.remember(Keep::Now);
    }
}

/// A folder's name out of a survey's name: what no system forbids.
pub(crate) fn folder_name(name: &str) -> String {
    let plain: String = name
        .chars()
        .map(|sign| if sign.is_alphanumeric() || matches!(sign, ' ' | '-' | '_') { sign } else { ' ' })
        .collect();
    let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    let short: String = plain.chars().take(45).collect();
    if short.is_empty() { "survey".into() } else { short }
}
