//! Keeping the facts of a survey in its folder.
//!
//! A survey is a folder `NAME.legwork` with `survey.db` (SQLite) and `photos/`. The whole log is read when the
//! store is opened; after that, memory holds it and the disk is only written. What [`Store::write`] has returned
//! is on the disk.
//!
//! Several processes may have one survey open. Each writes on top of what it has seen, so a fact that came from
//! another process meanwhile is never replaced unseen: both stand, as a disagreement.
//!
//! `survey.db` is opened through SQLite only, never as a plain file: closing such a file would drop every lock
//! that this process holds on it (POSIX advisory locks belong to the process).

mod create;
mod fault;
mod open;
mod pragma;
mod row;
mod schema;
mod taken;

use std::fmt;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::Result;
use crate::fact::{ActId, AuthorId, Edit, Fact, FactClock, FactId, Ledger, SurveyId};

pub(crate) use create::sync_folder;
pub(crate) use fault::of_system;
pub use taken::Returned;

/// The ending of a survey folder's name.
pub const FOLDER_EXTENSION: &str = "legwork";

/// The database in a survey's folder.
pub const DATABASE: &str = "survey.db";

/// The folder of photos in a survey's folder.
pub const PHOTOS: &str = "photos";

/// An open survey.
pub struct Store {
    folder: PathBuf,
    connection: Connection,
    survey: SurveyId,
    author: AuthorId,
    ledger: Ledger,
    clock: FactClock,
    /// SQLite's `data_version` when the ledger was last read: it changes when another connection commits.
    data_version: i64,
}

impl Store {
    /// Makes a new, empty survey at `folder` (`.../NAME.legwork`, whose parent exists) and opens it. It appears
    /// under its name only once it is whole.
    ///
    /// # Errors
    /// [`SurveyError::AlreadyThere`](crate::error::SurveyError::AlreadyThere) if anything has that name,
    /// `NotASurvey` if the name lacks its ending, `Inaccessible` or `DiskFull` if it cannot be written.
    pub fn create(folder: &Path, author: AuthorId) -> Result<Self> {
        create::create(folder, SurveyId::random(), |_| Ok(()))?;
        Self::open(folder, author)
    }

    /// Makes a copy of the survey `survey`, which was begun elsewhere, at `folder` and opens it. `fill` writes what is
    /// known of it; the survey appears under its name only after that. Also returns what `fill` returned.
    ///
    /// # Errors
    /// As [`Store::create`], and whatever `fill` gives; nothing is left then.
    pub(crate) fn create_filled<T>(
        folder: &Path,
        survey: SurveyId,
        author: AuthorId,
        fill: impl FnOnce(&mut Self) -> Result<T>,
    ) -> Result<(Self, T)> {
        let mut filled = None;
        create::create(folder, survey, |unfinished| {
            let mut store = Self::open(unfinished, author)?;
            filled = Some(fill(&mut store)?);
            // Closing moves the log into the file and syncs it.
            store.connection.close().map_err(|(_, error)| fault::of_sqlite(unfinished, error))
        })?;
        let filled = filled.ok_or(crate::SurveyError::Inner("a new survey was not filled"))?;
        Ok((Self::open(folder, author)?, filled))
    }

    /// Opens a survey, to be written in the name of `author`.
    ///
    /// # Errors
    /// `NotASurvey` if there is none, `Newer` if a later release wrote it, `Damaged` if what is there does not
    /// hold together, `Inaccessible` if the system does not let us write there. Nothing is changed then.
    pub fn open(folder: &Path, author: AuthorId) -> Result<Self> {
        Self::open_with(folder, author, FactClock::system())
    }

    /// As [`Store::open`], with a clock of the caller's.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_with(folder: &Path, author: AuthorId, clock: FactClock) -> Result<Self> {
        open::open(folder, author, clock)
    }

    /// The survey's folder, as it was given.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The folder of its photos.
    pub fn photos(&self) -> PathBuf {
        self.folder.join(PHOTOS)
    }

    /// The survey's id, the same in every copy.
    pub const fn survey_id(&self) -> SurveyId {
        self.survey
    }

    /// In whose name this store writes.
    pub const fn author(&self) -> AuthorId {
        self.author
    }

    /// The clock that dates what this store writes.
    pub(crate) const fn clock(&self) -> &FactClock {
        &self.clock
    }

    /// All facts known here.
    pub const fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// Writes what the user decided as one action, over what this store has seen so far. When this returns, it is
    /// on the disk. Edits to values that already stand give no fact, so the act may be empty.
    ///
    /// # Errors
    /// `Fact` if an edit does not fit, `Busy`, `DiskFull`, `Inaccessible` or `Database` if it cannot be written;
    /// nothing is then.
    pub fn write(&mut self, edits: &[Edit]) -> Result<ActId> {
        let act = ActId::random();
        // Planned before looking for what others wrote: the user has not seen that, so it must not be replaced.
        let facts = self.ledger.plan(act, self.author, &mut self.clock, edits)?;
        if !facts.is_empty() {
            self.append(facts, |_, _| Ok(()), |_, ledger, _| taken::check_size(ledger))?;
        }
        Ok(act)
    }

    /// Takes in facts of other authors, in any order, all or none, and returns the ids that are new here.
    /// The caller has made sure that they belong to this survey.
    ///
    /// # Errors
    /// As [`Ledger::merge`] and [`Store::write`].
    pub fn write_facts(&mut self, facts: Vec<Fact>) -> Result<Vec<FactId>> {
        self.append(facts, |clock, fact| clock.check(fact.id()), |_, ledger, _| taken::check_size(ledger))
    }

    /// Reads what other processes wrote since; returns whether there was anything.
    ///
    /// # Errors
    /// `Damaged` or `Database` if it cannot be read.
    pub fn refresh(&mut self) -> Result<bool> {
        let held = self.ledger.len();
        let transaction =
            self.connection.transaction().map_err(|error| fault::of_sqlite(&self.folder, error))?;
        row::catch_up(&transaction, &self.folder, &mut self.ledger, &mut self.clock, &mut self.data_version)?;
        Ok(self.ledger.len() > held)
    }

    /// Appends facts, all or none. `admit` looks at each new one alone, `beside` at all of them together, and writes
    /// what belongs to them in the same transaction.
    fn append(
        &mut self,
        facts: Vec<Fact>,
        admit: impl Fn(&FactClock, &Fact) -> Result<()>,
        beside: impl FnOnce(&Transaction<'_>, &Ledger, &[FactId]) -> Result<()>,
    ) -> Result<Vec<FactId>> {
        let Self { folder, connection, ledger, clock, data_version, .. } = self;
        let broken = |error| fault::of_sqlite(folder, error);
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        row::catch_up(&transaction, folder, ledger, clock, data_version)?;
        let new = ledger.insert_all(facts, |fact| admit(clock, fact))?;
        let written = row::write(&transaction, new.iter().filter_map(|&id| ledger.fact(id)))
            .map_err(broken)
            .and_then(|()| beside(&transaction, ledger, &new))
            .and_then(|()| transaction.commit().map_err(broken));
        if let Err(error) = written {
            ledger.take_back(&new);
            return Err(error);
        }
        if let Some(&greatest) = new.last() {
            clock.raise(greatest);
        }
        Ok(new)
    }
}

impl fmt::Debug for Store {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("Store")
            .field("folder", &self.folder)
            .field("survey", &self.survey)
            .field("facts", &self.ledger.len())
            .finish_non_exhaustive()
    }
}

#[cfg(test)]
mod tests;
