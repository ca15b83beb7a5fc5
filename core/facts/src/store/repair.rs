//! A damaged database: saving the facts that can still be read, and building a new database from them.
//!
//! The damaged one is never deleted: it stays beside the new one, as `survey.db.damaged-N`, until something is
//! forgotten.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags};
use uuid::Uuid;

use super::create::{SURVEY_KEY, build_database};
use super::disk::sync_folder;
use super::row::{self, Bytes};
use super::{DATABASE, Summary, fault, schema};
use crate::error::{FactsError, Result};
use crate::fact::{Fact, FactId, Ledger, SurveyId};

/// A new database that is whole and waits to take the damaged one's place.
pub(super) const REBUILT: &str = "survey.db.rebuilt";

/// What could still be read of a damaged survey.
#[derive(Debug, Clone, Default)]
pub struct Salvage {
    /// The survey's id, if it could be read.
    pub survey: Option<SurveyId>,
    /// The facts that could be read and whose forerunners could be read too, by id.
    pub facts: Vec<Fact>,
    /// Whether that is everything: all tables of facts were read to their ends, and every fact fits.
    pub is_complete: bool,
}

/// What a repair brought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rebuilt {
    /// How many facts the new database holds.
    pub facts: usize,
    /// Where the damaged database lies now; nothing if there was none.
    pub damaged: Option<PathBuf>,
}

/// Reads what can be read of a survey, damaged or not. Changes nothing.
///
/// # Errors
/// `NotASurvey` if there is no database, `Newer` if a later release wrote it, or `Inaccessible`. Damage is no error.
pub fn salvage(folder: &Path) -> Result<Salvage> {
    super::open::look_at_folder(folder)?;
    let log_at_hand =
        super::open::length(&folder.join(format!("{DATABASE}-wal"))).is_some_and(|length| length > 0);
    // A connection that may only read would leave an empty log and its index behind; this one is kept from writing.
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let Ok(connection) = Connection::open_with_flags(folder.join(DATABASE), flags) else {
        return Ok(Salvage::default());
    };
    let kept_from_writing = connection
        .pragma_update(None, "query_only", true)
        .and_then(|()| connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, log_at_hand));
    if kept_from_writing.is_err() {
        return Ok(Salvage::default());
    }
    match schema::version(&connection) {
        Ok(found) if found > schema::NEWEST => {
            return Err(FactsError::Newer { folder: folder.to_owned(), found, known: schema::NEWEST });
        }
        Ok(_) | Err(_) => {}
    }
    let survey = connection
        .query_row("SELECT value FROM meta WHERE key = ?1", [SURVEY_KEY], |row| row.get::<_, String>(0))
        .ok()
        .and_then(|id| id.parse().ok());
    let (over, over_is_whole) = read_over(&connection);
    let (rows, rows_are_whole) = read_facts(&connection, &over);
    let read = rows.len();
    let mut ledger = Ledger::new();
    // Where the table of what replaces what is damaged, a fact may seem to replace nothing; such a fact would stand
    // as a disagreement with all it replaced. So only a file helps then.
    if over_is_whole {
        for fact in rows.into_values() {
            // A fact whose forerunner is lost has no place.
            let _ = ledger.insert(fact);
        }
    }
    let is_complete = over_is_whole && rows_are_whole && ledger.len() == read && survey.is_some();
    Ok(Salvage { survey, facts: ledger.facts().cloned().collect(), is_complete })
}

/// Reads a table from both ends, so that a damaged page in the middle hides no more than itself.
fn read_both_ways(
    connection: &Connection,
    select: &str,
    order: &str,
    mut each: impl FnMut(&rusqlite::Row<'_>) -> bool,
) -> bool {
    let mut whole = true;
    for direction in ["ASC", "DESC"] {
        let order = order.replace("DIR", direction);
        let Ok(mut statement) = connection.prepare(&format!("{select} NOT INDEXED ORDER BY {order}")) else {
            return false;
        };
        let Ok(mut rows) = statement.query(()) else { return false };
        loop {
            match rows.next() {
                Ok(Some(row)) => whole &= each(row),
                Ok(None) => break,
                Err(_) => {
                    whole = false;
                    break;
                }
            }
        }
    }
    whole
}

fn read_over(connection: &Connection) -> (BTreeMap<Uuid, Vec<Uuid>>, bool) {
    let mut over: BTreeMap<Uuid, BTreeSet<Uuid>> = BTreeMap::new();
    let whole =
        read_both_ways(connection, "SELECT fact, replaced FROM fact_over", "fact DIR, replaced DIR", |row| {
            let (Ok(fact), Ok(replaced)) = (row.get::<_, Bytes>(0), row.get::<_, Bytes>(1)) else {
                return false;
            };
            over.entry(fact.0).or_default().insert(replaced.0);
            true
        });
    (over.into_iter().map(|(fact, replaced)| (fact, replaced.into_iter().collect())).collect(), whole)
}

fn read_facts(connection: &Connection, over: &BTreeMap<Uuid, Vec<Uuid>>) -> (BTreeMap<FactId, Fact>, bool) {
    let mut facts = BTreeMap::new();
    let select = "SELECT id, act, author, subject, field, value, extra FROM fact";
    let whole = read_both_ways(connection, select, "id DIR", |row| {
        let Ok(id) = row.get::<_, Bytes>(0) else { return false };
        let replaced = over.get(&id.0).map(Vec::as_slice).unwrap_or_default();
        match row::read(row, id.0, replaced) {
            Ok(fact) => {
                facts.insert(fact.id(), fact);
                true
            }
            Err(_) => false,
        }
    });
    (facts, whole)
}

/// Builds the database of a survey anew from these facts: those that were salvaged, those of a file, or both.
/// No other program may have the survey open.
///
/// # Errors
/// As [`Ledger::insert`] if the facts do not fit together, `Inaccessible` or `DiskFull` if it cannot be written.
/// The damaged database is then still in its place.
pub fn rebuild(folder: &Path, survey: SurveyId, facts: Vec<Fact>) -> Result<Rebuilt> {
    let mut ledger = Ledger::new();
    ledger.insert_all(facts, |_| Ok(()))?;
    let system = |error: io::Error| fault::of_system(folder, &error);
    let part = folder.join(format!("{DATABASE}.part"));
    for left in [format!("{DATABASE}.part"), format!("{DATABASE}.part-wal"), format!("{DATABASE}.part-shm")] {
        remove_if_there(&folder.join(left)).map_err(system)?;
    }
    build_database(folder, &part, survey)?;
    write_facts(&part, survey, &ledger).map_err(|error| fault::of_sqlite(folder, error))?;
    File::open(&part).and_then(|file| file.sync_all()).map_err(system)?;
    fs::rename(&part, folder.join(REBUILT)).map_err(system)?;
    sync_folder(folder).map_err(system)?;
    let damaged = finish(folder)?.filter(|path| path.exists());
    Ok(Rebuilt { facts: ledger.len(), damaged })
}

fn write_facts(path: &Path, survey: SurveyId, ledger: &Ledger) -> rusqlite::Result<()> {
    let mut connection = Connection::open(path)?;
    super::pragma::set(&connection)?;
    let transaction = connection.transaction()?;
    row::write(&transaction, ledger.facts())?;
    Summary::of(ledger, survey).write(&transaction)?;
    transaction.commit()?;
    connection.close().map_err(|(_, error)| error)
}

/// Puts a database that was built anew in the place of the damaged one. A process may die at any moment in here:
/// the next opening goes on.
pub(super) fn finish(folder: &Path) -> Result<Option<PathBuf>> {
    let rebuilt = folder.join(REBUILT);
    if !rebuilt.exists() {
        return Ok(None);
    }
    put_in_place(folder, &rebuilt).map(Some).map_err(|error| fault::of_system(folder, &error))
}

fn put_in_place(folder: &Path, rebuilt: &Path) -> io::Result<PathBuf> {
    let database = folder.join(DATABASE);
    let damaged = free_name(folder);
    // First the log, which must not be there when the new database takes the name: it would be played into it.
    for ending in ["-wal", "-shm", ""] {
        let from = folder.join(format!("{DATABASE}{ending}"));
        let mut to = damaged.clone().into_os_string();
        to.push(ending);
        match fs::rename(&from, &to) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
            Ok(()) | Err(_) => {}
        }
    }
    fs::rename(rebuilt, &database)?;
    sync_folder(folder)?;
    Ok(damaged)
}

fn free_name(folder: &Path) -> PathBuf {
    (1_u32..=10_000)
        .map(|number| folder.join(format!("{DATABASE}.damaged-{number}")))
        .find(|path| !path.exists())
        .unwrap_or_else(|| folder.join(format!("{DATABASE}.damaged")))
}

fn remove_if_there(path: &Path) -> io::Result<()> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        Ok(()) | Err(_) => Ok(()),
    }
}
