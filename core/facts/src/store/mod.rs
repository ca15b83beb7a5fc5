//! Keeping the facts of a survey in its folder.
//!
//! A survey is a folder `NAME.legwork` with `survey.db` (SQLite) and `photos/`. The whole log is read when the
//! store is opened; after that, memory holds it and the disk is only written. What [`Store::write`] has returned
//! is on the disk.
//!
//! Several processes may have one survey open. Each writes on top of what it has seen, so a fact that came from
//! another process meanwhile is never replaced unseen: both stand, as a disagreement.
//!
//! What a screen needs of a survey: [`Store::open`] and [`Store::create`]; [`Store::ledger`] for what stands now;
//! [`Store::write`] for all edits of one action; [`Store::undo_last`], [`Store::redo_last`] and [`Store::steps`];
//! [`Store::save_draft`], [`Store::drafts`] and [`Store::finish_draft`] for what is half typed; [`Store::take_photo`],
//! [`Store::thumbnail`] and [`Store::photo_crop`]; [`Store::suspend`] when nobody looks and
//! [`Suspended::resume`]; [`Store::refresh`] for what other programs wrote.
//!
//! `survey.db` is opened through SQLite only, never as a plain file: closing such a file would drop every lock
//! that this process holds on it (POSIX advisory locks belong to the process).

mod create;
pub(crate) mod disk;
mod draft;
pub(crate) mod fault;
mod layout;
mod meta;
mod open;
mod peek;
mod pragma;
mod read_only;
mod repair;
mod row;
mod schema;
mod scrub;
mod standing;
mod stood_before;
mod sum;
mod summary;
mod suspend;
mod taken;
pub(crate) mod taking;
mod thumbnail;
mod waiting;
mod worked_out;

use std::cell::Cell;
use std::collections::BTreeSet;
use std::fmt;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::{FactsError, Result};
use crate::fact::PhotoImage;
use crate::fact::{
    ActId, AuthorId, Edit, Fact, FactClock, FactId, Ledger, SubjectId, SurveyId, Taken, Writer,
};
use crate::unfinished::Unfinished;

pub use draft::{Draft, MAX_DRAFT_BYTES, NOTHING_TYPED};
pub(crate) use peek::is_open;
pub use peek::{Peek, peek};
pub use repair::{Lost, Rebuilt, Salvage, rebuild, salvage};
pub(crate) use scrub::SMALL;
pub use standing::{Standing, standing};
pub use summary::{Progress, Summary};
pub use suspend::Suspended;
pub use taken::{RETURNABLE_MS, Returnable, Returned};
pub use worked_out::{Mark, keep_worked_out, worked_out};

/// The ending of a survey folder's name.
pub const FOLDER_EXTENSION: &str = "legwork";

/// The database in a survey's folder. A copy of it in the same folder must have a name that begins so: then it is
/// deleted when something is forgotten.
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
    summary: Summary,
    /// What was written since the log was last moved into the database, in acts of the usual size.
    in_log: Cell<usize>,
    /// Whether it was opened where nothing may be written.
    reads_only: bool,
    /// What was copied out of a folder that may only be read. Goes after the connection to it.
    #[expect(dead_code, reason = "it is there to be dropped")]
    copy: Option<Unfinished>,
}

/// So many acts are written before the log is moved into the database: some two megabytes.
const ACTS_IN_LOG: usize = 64;

/// So many facts go into the log like one act.
const FACTS_IN_ACT: usize = 16;

impl Store {
    /// Makes a new, empty survey at `folder` (`.../NAME.legwork`, whose parent exists) and opens it. It appears
    /// under its name only once it is whole.
    ///
    /// # Errors
    /// [`FactsError::AlreadyThere`] if anything has that name,
    /// `NotASurvey` if the name lacks its ending, `Inaccessible` or `DiskFull` if it cannot be written.
    pub fn create(folder: &Path, author: impl Into<Writer>) -> Result<Self> {
        create::create(folder, SurveyId::random(), |_| Ok(()))?;
        Self::open(folder, author)
    }

    /// As [`Store::create`], for a survey whose id is given, such as one that comes in a file. `fill` is called with
    /// the folder under its temporary name and may open a store in it; the survey gets its name after that.
    ///
    /// # Errors
    /// As [`Store::create`], and what `fill` returns; nothing is left then.
    pub fn create_with(
        folder: &Path,
        author: impl Into<Writer>,
        survey: SurveyId,
        fill: impl FnOnce(&Path) -> Result<()>,
    ) -> Result<Self> {
        create::create(folder, survey, fill)?;
        Self::open(folder, author)
    }

    /// Opens a survey, to be written in the name of `author`.
    ///
    /// # Errors
    /// `NotASurvey` if there is none, `Newer` if a later release wrote it, `Damaged` if what is there does not
    /// hold together, `Inaccessible` if the system does not let us write there. Nothing is changed then.
    pub fn open(folder: &Path, author: impl Into<Writer>) -> Result<Self> {
        Self::open_with(folder, author, FactClock::system())
    }

    /// As [`Store::open`], with a clock of the caller's.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_with(folder: &Path, author: impl Into<Writer>, clock: FactClock) -> Result<Self> {
        open::open(folder, author.into(), clock)
    }

    /// Opens a survey to read in it. Where nothing may be written (a read-only folder, a stick, a backup) it is opened all the
    /// same: every write then fails with `Inaccessible`, and nothing is kept. It shows what stood there when it was opened.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_to_read(folder: &Path, author: impl Into<Writer>) -> Result<Self> {
        let author = author.into();
        match Self::open(folder, author) {
            // Where it still cannot be read, the first answer says why.
            Err(error @ (FactsError::Inaccessible { .. } | FactsError::DiskFull { .. })) => {
                read_only::open(folder, author, FactClock::system()).map_err(|_| error)
            }
            other => other,
        }
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

    /// What a list shows of this survey.
    pub const fn summary(&self) -> &Summary {
        &self.summary
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
            self.append(facts, |_, _| Ok(()), |_, _, _| Ok(()))?;
        }
        Ok(act)
    }

    /// As [`Store::write`]; `beside` runs in the same transaction, also if no fact is to be written.
    fn write_with(
        &mut self,
        edits: &[Edit],
        beside: impl FnOnce(&Transaction<'_>) -> Result<()>,
    ) -> Result<ActId> {
        let act = ActId::random();
        let facts = self.ledger.plan(act, self.author, &mut self.clock, edits)?;
        self.append(facts, |_, _| Ok(()), |transaction, _, _| beside(transaction))?;
        Ok(act)
    }

    /// Writes facts that were planned over this ledger by other means than edits.
    pub(crate) fn write_planned(
        &mut self,
        plan: impl FnOnce(&Ledger, AuthorId, &mut FactClock) -> Result<Vec<Fact>>,
    ) -> Result<()> {
        let facts = plan(&self.ledger, self.author, &mut self.clock)?;
        if !facts.is_empty() {
            self.append(facts, |_, _| Ok(()), |_, _, _| Ok(()))?;
        }
        Ok(())
    }

    /// Writes edits and a photo's small picture. `place` puts the photo's file where it belongs; it runs while
    /// nobody else can write to this survey, before the facts are written.
    pub(crate) fn write_photo(
        &mut self,
        edits: &[Edit],
        sha256: &[u8; 32],
        thumbnail: &[u8],
        place: impl FnOnce() -> Result<()>,
    ) -> Result<ActId> {
        let folder = self.folder.clone();
        self.write_with(edits, |transaction| {
            place()?;
            thumbnail::write(transaction, sha256, thumbnail).map_err(|error| fault::of_sqlite(&folder, error))
        })
    }

    /// Runs `work` while nobody else can write to this survey, after having read what others wrote.
    pub(crate) fn alone<T>(&mut self, work: impl FnOnce(&Ledger) -> Result<T>) -> Result<T> {
        let Self { folder, connection, ledger, clock, data_version, survey, summary, .. } = self;
        let broken = |error| fault::of_sqlite(folder, error);
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        if row::catch_up(&transaction, folder, ledger, clock, data_version)? {
            *summary = Summary::of(ledger, *survey);
        }
        work(ledger)
    }

    /// Takes in facts of other authors, in any order, all or none, and returns the ids that are new here.
    /// The caller has made sure that they belong to this survey.
    ///
    /// # Errors
    /// As [`Ledger::merge`] and [`Store::write`].
    pub fn write_facts(&mut self, facts: Vec<Fact>) -> Result<Vec<FactId>> {
        self.append(facts, |clock, fact| clock.check(fact.id()), |_, _, _| Ok(()))
    }

    /// Reads what other processes wrote since; returns whether there was anything.
    ///
    /// # Errors
    /// `Damaged` or `Database` if it cannot be read.
    pub fn refresh(&mut self) -> Result<bool> {
        if self.reads_only {
            return Ok(false);
        }
        let transaction =
            self.connection.transaction().map_err(|error| fault::of_sqlite(&self.folder, error))?;
        let Self { folder, ledger, clock, data_version, .. } = self;
        let changed = row::catch_up(&transaction, folder, ledger, clock, data_version)?;
        drop(transaction);
        if changed {
            self.summary = Summary::of(&self.ledger, self.survey);
        }
        Ok(changed)
    }

    /// Appends facts, all or none. `admit` looks at each new one alone, `beside` at all that changes, and writes what
    /// belongs to it in the same transaction.
    fn append(
        &mut self,
        facts: Vec<Fact>,
        admit: impl Fn(&FactClock, &Fact) -> Result<()>,
        beside: impl FnOnce(&Transaction<'_>, &Ledger, &Taken) -> Result<()>,
    ) -> Result<Vec<FactId>> {
        self.append_chosen(|_, _, _| Ok(facts), admit, beside)
    }

    /// As [`Store::append`]; `choose` says which facts, once nobody else can write.
    fn append_chosen(
        &mut self,
        choose: impl FnOnce(&Transaction<'_>, &Ledger, &mut FactClock) -> Result<Vec<Fact>>,
        admit: impl Fn(&FactClock, &Fact) -> Result<()>,
        beside: impl FnOnce(&Transaction<'_>, &Ledger, &Taken) -> Result<()>,
    ) -> Result<Vec<FactId>> {
        let Self { folder, connection, ledger, clock, data_version, survey, summary, .. } = self;
        let broken = |error| fault::of_sqlite(folder, error);
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        if row::catch_up(&transaction, folder, ledger, clock, data_version)? {
            *summary = Summary::of(ledger, *survey);
        }
        let facts = choose(&transaction, ledger, clock)?;
        let subjects: BTreeSet<SubjectId> = facts.iter().map(Fact::subject).collect();
        let mut counted = summary.clone();
        counted.take_out(ledger, &subjects);
        let taken = ledger.insert_all(facts, |fact| admit(clock, fact))?;
        if taken.forgotten.is_empty() {
            counted.add(ledger, *survey, &subjects);
        } else {
            counted = Summary::of(ledger, *survey);
        }
        let written = taken::check_size(ledger, summary, &counted)
            .and_then(|()| put(&transaction, ledger, &taken, &counted).map_err(broken))
            .and_then(|()| beside(&transaction, ledger, &taken))
            .and_then(|()| transaction.commit().map_err(broken));
        if let Err(error) = written {
            ledger.take_back(taken);
            return Err(error);
        }
        *summary = counted;
        if let Some(&greatest) = taken.new.last() {
            clock.raise(greatest);
        }
        if !taken.forgotten.is_empty() {
            // It is forgotten for good already. What cannot be cleared now is cleared at the next opening.
            self.scrub().ok();
        }
        self.tend_log(1 + taken.new.len() / FACTS_IN_ACT);
        Ok(taken.new)
    }

    /// Counts what was written, and moves the log into the database where it has become long.
    fn tend_log(&self, acts: usize) {
        let in_log = self.in_log.get().saturating_add(acts);
        // What cannot be moved now is moved with a later act; all of it is on the disk as it is.
        let moved = in_log >= ACTS_IN_LOG && pragma::move_log(&self.connection).is_ok();
        self.in_log.set(if moved { 0 } else { in_log });
    }

    /// The names of the photos that facts name, replaced facts included.
    pub(crate) fn photos_named(&self) -> BTreeSet<String> {
        photos_named(&self.ledger)
    }
}

/// The names of the photos that facts name, replaced facts included.
pub(crate) fn photos_named(ledger: &Ledger) -> BTreeSet<String> {
    ledger.facts().filter_map(PhotoImage::of_fact).map(|image| image.file_name()).collect()
}

/// Writes what a batch changed.
fn put(
    transaction: &Transaction<'_>,
    ledger: &Ledger,
    taken: &Taken,
    summary: &Summary,
) -> rusqlite::Result<()> {
    let new = || taken.new.iter().filter_map(|&id| ledger.fact(id));
    let written = row::write(transaction, new())?;
    if !taken.new.is_empty() || !taken.forgotten.is_empty() {
        let total = total_after(transaction, ledger, taken, written)?;
        summary.write(transaction, total)?;
    }
    if taken.forgotten.is_empty() {
        return Ok(());
    }
    row::forget(transaction, taken.forgotten.iter().filter_map(|was| ledger.fact(was.id())))?;
    let kept = photos_named(ledger);
    let mut gone = BTreeSet::new();
    for was in &taken.forgotten {
        if let Some(image) = PhotoImage::of_fact(was)
            && !kept.contains(&image.file_name())
        {
            if let Some(sha256) = image.digest() {
                thumbnail::delete(transaction, &sha256)?;
            }
            gone.insert(image.file_name());
        }
    }
    draft::forget(transaction, &taken.forgotten)?;
    scrub::demand(transaction, &gone)
}

/// What the sums of all facts add up to once a batch is written, of which the new ones come to `new`.
fn total_after(
    transaction: &Transaction<'_>,
    ledger: &Ledger,
    taken: &Taken,
    new: i64,
) -> rusqlite::Result<i64> {
    let total_of = |facts: &mut dyn Iterator<Item = &Fact>| {
        sum::total(facts).map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))
    };
    let Some(before) = summary::total(transaction)? else {
        return total_of(&mut ledger.facts());
    };
    let was = || taken.forgotten.iter().filter(|was| taken.new.binary_search(&was.id()).is_err());
    let lost = total_of(&mut was())?;
    let left = total_of(&mut was().filter_map(|was| ledger.fact(was.id())))?;
    Ok(before.wrapping_add(new).wrapping_sub(lost).wrapping_add(left))
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
