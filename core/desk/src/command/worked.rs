//! What follows from a survey, for the commands that tell it: taken from what is kept beside it, or worked out, with a line
//! that says how far that is.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use advice::forecast::Forecast;
use advice::worklist::{BridgePlace, Options, Stake, WorkList};
use facts::fact::AuthorId;
use facts::store::Store;
use guide::kept::Beside;
use house::record::{Survey, Without, fold};

use super::context::Context;
use crate::error::DeskError;
use crate::progress::Shown;
use crate::read_only;
use crate::stop::Stop;

/// A survey that is read, and the folder that it lies in.
pub struct Opened {
    /// Its records.
    pub survey: Survey,
    folder: PathBuf,
}

impl Opened {
    /// The survey in a folder. Reading needs no author, so none is made.
    ///
    /// # Errors
    /// If it cannot be read.
    pub fn at(context: &Context, folder: &Path) -> Result<Self, DeskError> {
        let store = Store::open_to_read(folder, AuthorId::random())?;
        read_only::tell(context, folder);
        Ok(Self { survey: fold(store.ledger(), store.survey_id())?, folder: folder.to_owned() })
    }

    /// The same where these kinds of work, and no others, are left out of the work list.
    pub fn without(self, left_out: &BTreeSet<Without>) -> Self {
        // What was chosen for the house is kept beside it as it is.
        if self.survey.without() == *left_out {
            return self;
        }
        Self { survey: self.survey.where_not_wanted(left_out), ..self }
    }

    /// The forecast of the house as it is.
    ///
    /// # Errors
    /// What working it out gives, also that it was stopped.
    pub fn forecast(&self, context: &Context) -> Result<Forecast, DeskError> {
        watched(context, "desk-doing-forecast", |watch| self.beside().forecast(watch))
    }

    /// Where the network could start, while nobody has said where it does.
    ///
    /// # Errors
    /// As [`Opened::forecast`].
    pub fn bridge_places(&self, context: &Context) -> Result<Vec<BridgePlace>, DeskError> {
        watched(context, "desk-doing-forecast", |watch| self.beside().bridge_places(watch))
    }

    /// The work list.
    ///
    /// # Errors
    /// As [`Opened::forecast`].
    pub fn work_list(&self, context: &Context) -> Result<WorkList, DeskError> {
        work_list(context, &self.folder, &self.survey)
    }

    fn beside(&self) -> Beside<'_> {
        Beside::of(Some(&self.folder), &self.survey, Options::default())
    }
}

/// The work list of a survey that was read from `folder`.
///
/// # Errors
/// As [`Opened::forecast`].
pub fn work_list(context: &Context, folder: &Path, survey: &Survey) -> Result<WorkList, DeskError> {
    let beside = Beside::of(Some(folder), survey, Options::default());
    watched(context, "desk-doing-worklist", |watch| beside.work_list(watch))
}

/// The work list, and what is at stake with each of what is not known.
///
/// # Errors
/// As [`Opened::forecast`].
pub fn all(
    context: &Context,
    folder: &Path,
    survey: &Survey,
) -> Result<(WorkList, Vec<Option<Stake>>), DeskError> {
    let beside = Beside::of(Some(folder), survey, Options::default());
    watched(context, "desk-doing-worklist", |watch| beside.all(watch))
}

/// Works something out, says how far it is, and ends it on Ctrl-C.
///
/// # Errors
/// What working it out gives, also that it was stopped.
pub fn watched<T, E>(
    context: &Context,
    id: &str,
    work: impl FnOnce(&mut dyn FnMut(f64) -> bool) -> Result<T, E>,
) -> Result<T, DeskError>
where
    DeskError: From<E>,
{
    let stop = Stop::listen()?;
    let mut shown = Shown::new(&stop, &context.language, id);
    Ok(work(&mut |share| shown.goes_on_at(share))?)
}
