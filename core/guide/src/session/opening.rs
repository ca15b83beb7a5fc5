//! Opening surveys, and making new ones: both read a whole survey, and what the device knows besides.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::Writer;
use facts::home::Home;
use facts::store::Store;
use house::record::{Is, field};

use super::Session;
use super::long_work::LongWork;
use super::open_survey::OpenSurvey;
use super::pending::Pending;
use super::sent_work::{After, WorkKind};
use crate::error::{Result, Trouble};
use crate::place::{Move, Outside, Place};

/// How the surveys of this device are opened; it goes along with long work.
#[derive(Debug, Clone)]
pub(crate) struct Opening {
    home: Home,
    author: Writer,
    display_name: String,
}

impl Opening {
    /// A survey by its folder, with the way to where it was left.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub(crate) fn open(&self, folder: &Path) -> facts::Result<OpenSurvey> {
        self.opened(Store::open(folder, self.author)?)
    }

    /// A survey whose store is open already.
    ///
    /// # Errors
    /// What reading it gives.
    pub(crate) fn opened(&self, store: Store) -> facts::Result<OpenSurvey> {
        // Left behind by an app that died. That they stay is no reason not to open: nothing that was forgotten is among
        // them.
        let _ = store.drop_small_photos();
        let mut open = OpenSurvey::of(store, &self.home, &self.display_name)?;
        if open.memory.way.is_empty() {
            open.memory.go(Place::Overview);
        }
        Ok(open)
    }

    /// A new survey with its name. One whose name is not taken is gone again.
    fn make(&self, folder: &Path, name: &str) -> Result<OpenSurvey> {
        let named = || {
            let mut open = self.opened(Store::create(folder, self.author)?)?;
            let subject = open.survey.id;
            open.write(&[Is::Survey.begin(subject), field::room::NAME.set(subject, name)])?;
            Ok(open)
        };
        named().inspect_err(|_| {
            // That it stays is less than what was wrong.
            let _ = self.home.delete(folder);
        })
    }
}

impl Session {
    /// How surveys are opened here.
    pub(crate) fn opening(&self) -> Opening {
        Opening {
            home: self.home().clone(),
            author: self.author(),
            display_name: self.device().name().to_owned(),
        }
    }

    /// Opens a survey where it was left, however long that takes.
    ///
    /// # Errors
    /// If it cannot be opened; nothing is changed then.
    pub(crate) fn open(&mut self, folder: &Path) -> Result<()> {
        let open = self.opening().open(folder)?;
        self.enter(open)
    }

    /// Shows a survey that is open.
    pub(crate) fn enter(&mut self, open: OpenSurvey) -> Result<()> {
        self.close()?;
        self.open = Some(open);
        Ok(())
    }

    /// Sends the long work that opens a survey; `then` is done in it. One that turns out to be damaged leads to where it
    /// can be mended.
    pub(crate) fn send_open(
        &mut self,
        folder: PathBuf,
        then: impl FnOnce(&mut Self) -> Result<Move> + Send + 'static,
    ) {
        let opening = self.opening();
        self.send(WorkKind::Open, move |work| {
            if !work.goes_on(0.0) {
                return Err(Trouble::Stopped.into());
            }
            match opening.open(&folder) {
                Ok(open) => Ok(After::new(move |session| {
                    session.enter(open)?;
                    then(session)
                })),
                Err(FactsError::Damaged { .. }) => {
                    let mend = Outside::Mend { folder, found_damaged: true, has_lost: false };
                    Ok(After::new(move |_| Ok(Move::Outside(mend))))
                }
                // It is not what it was in the list: its own screen says what is wrong.
                Err(
                    FactsError::NotASurvey { .. }
                    | FactsError::Newer { .. }
                    | FactsError::Inaccessible { .. },
                ) => Ok(After::new(move |_| Ok(Move::Outside(Outside::Survey(folder))))),
                Err(error) => Err(error.into()),
            }
        });
    }

    /// Sends the long work that makes a new survey, and leads to `step` in it.
    ///
    /// # Errors
    /// If no folder can have its name.
    pub(crate) fn send_make(&mut self, name: String, step: Move) -> Result<()> {
        let (opening, folder) = (self.opening(), self.free_folder(&name)?);
        self.send(WorkKind::Make, move |work: &LongWork| {
            if !work.goes_on(0.0) {
                return Err(Trouble::Stopped.into());
            }
            let made = opening.make(&folder, &name);
            Ok(After::new(move |session| {
                session.enter(made?)?;
                session.new_survey = Pending::default();
                Ok(step)
            }))
        });
        Ok(())
    }
}
