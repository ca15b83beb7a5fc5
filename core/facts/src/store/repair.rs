//! A damaged database: saving the facts that can still be read, and building a new database from them.
//!
//! The damaged one is never deleted: it stays beside the new one, as `survey.db.damaged-N`, until something is
//! forgotten.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, Transaction};
use uuid::Uuid;

use super::create::{SURVEY_KEY, build_database};
use super::disk::sync_folder;
use super::row::{self, Bytes, Names};
use super::scrub;
use super::sum::{self, Columns};
use super::summary::Kept;
use super::taken;
use super::taking::Taking;
use super::{DATABASE, Summary, draft, fault, meta, schema, waiting};
use crate::error::{FactsError, Result};
use crate::fact::{Fact, FactId, Ledger, SubjectId, SurveyId};

/// A new database that is whole and waits to take the damaged one's place.
pub(super) const REBUILT: &str = "survey.db.rebuilt";

/// How the name of a damaged database begins that was replaced.
pub(super) const DAMAGED: &str = "survey.db.damaged";

/// What could still be read of a damaged survey.
#[derive(Debug, Clone, Default)]
pub struct Salvage {
    /// The survey's id, if it could be read.
    pub survey: Option<SurveyId>,
    /// The facts that could be read and whose forerunners could be read too, by id.
    pub facts: Vec<Fact>,
    /// Whether that is everything: all tables of facts were read to their ends, every fact is what was written and fits, and
    /// none is missing.
    pub is_complete: bool,
    /// How many facts had one bit changed, which their sum puts right.
    pub put_right: usize,
    /// The records that are not what was written and cannot be put right.
    pub lost: Vec<Lost>,
    /// Facts that can be read, but replace one that cannot.
    pub stranded: Vec<Fact>,
    /// How many facts there were, if that could be read.
    pub counted: Option<usize>,
}

/// A record that is lost, as far as what it was about can still be read: it may be that which has changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lost {
    /// Its id.
    pub id: Option<FactId>,
    /// What it spoke of.
    pub subject: SubjectId,
    /// Of which field.
    pub field: String,
}

impl Salvage {
    /// Whether these facts, taken together, leave none lost.
    pub fn is_made_whole_by(&self, facts: &Ledger) -> bool {
        self.survey.is_some()
            && self.lost.iter().all(|lost| lost.id.is_some_and(|id| facts.contains(id)))
            && self.stranded.iter().all(|fact| facts.contains(fact.id()))
            && self.counted.is_some_and(|counted| facts.len() >= counted)
    }

    /// Whether these facts are all that there were, and no others.
    fn is_just(&self, facts: &Ledger) -> bool {
        self.is_complete && self.counted == Some(facts.len())
    }
}

/// What a repair brought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rebuilt {
    /// How many facts the new database holds.
    pub facts: usize,
    /// Where the damaged database lies now; nothing if there was none, or it went.
    pub damaged: Option<PathBuf>,
    /// Whether it went with what was still to be forgotten: nothing in it was lost.
    pub damaged_is_forgotten: bool,
}

/// Reads what can be read of a survey, damaged or not: what is not what was written is put right or named. Changes nothing.
///
/// # Errors
/// `NotASurvey` if there is no database, `Newer` if a later release wrote it, or `Inaccessible`. Damage is no error.
pub fn salvage(folder: &Path) -> Result<Salvage> {
    super::open::look_at_folder(folder)?;
    let Some(connection) = look_into(folder) else { return Ok(Salvage::default()) };
    match schema::version(&connection) {
        Ok(found) if found > schema::NEWEST => {
            return Err(FactsError::Newer { folder: folder.to_owned(), found, known: schema::NEWEST });
        }
        Ok(_) | Err(_) => {}
    }
    let survey = meta::get_put_right(&connection, SURVEY_KEY).and_then(|id| id.parse().ok());
    let (over, over_is_whole) = read_over(&connection);
    let with_sums = meta::has_sums(&connection).unwrap_or(true);
    let rows = read_facts(&connection, &over, with_sums);
    let kept = Summary::read(&connection).unwrap_or(Kept::Changed);
    let read = rows.facts.len();
    let mut ledger = Ledger::new();
    let mut stranded = Vec::new();
    // Where the table of what replaces what is damaged, a fact of a layout without sums may seem to replace nothing; such a
    // fact would stand as a disagreement with all it replaced. So only a file helps then.
    if over_is_whole || with_sums {
        for fact in rows.facts.into_values() {
            // A fact whose forerunner is lost has no place.
            if ledger.insert(fact.clone()).is_err() {
                stranded.push(fact);
            }
        }
    }
    let (counted, none_is_missing) = match kept {
        Kept::Whole(kept, total) => {
            let counted = usize::try_from(kept.facts).unwrap_or(usize::MAX);
            let adds_up = !with_sums || sum::total(ledger.facts()).is_ok_and(|found| found == total);
            (Some(counted), counted == ledger.len() && adds_up)
        }
        // Nothing tells how many there were: those that are there are whole.
        Kept::Changed | Kept::Nothing => (None, true),
    };
    let is_complete = over_is_whole
        && rows.are_whole
        && none_is_missing
        && rows.lost.is_empty()
        && ledger.len() == read
        && survey.is_some();
    Ok(Salvage {
        survey,
        facts: ledger.facts().cloned().collect(),
        is_complete,
        put_right: rows.put_right,
        lost: rows.lost,
        stranded,
        counted,
    })
}

/// A connection to a damaged database, if there can be one.
fn look_into(folder: &Path) -> Option<Connection> {
    let log_at_hand = super::open::has_log(&folder.join(DATABASE));
    // A connection that may only read would leave an empty log and its index behind; this one is kept from writing.
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(folder.join(DATABASE), flags).ok()?;
    connection.pragma_update(None, "query_only", true).ok()?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, log_at_hand).ok()?;
    Some(connection)
}

/// Reads a table from both ends, so that a damaged page in the middle hides no more than itself.
pub(super) fn read_both_ways(
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

/// What the rows of facts are.
#[derive(Default)]
struct Rows {
    facts: BTreeMap<FactId, Fact>,
    /// Whether all rows could be read, whatever stands in them.
    are_whole: bool,
    put_right: usize,
    lost: Vec<Lost>,
}

fn read_facts(connection: &Connection, over: &BTreeMap<Uuid, Vec<Uuid>>, with_sums: bool) -> Rows {
    let mut found: BTreeMap<Uuid, (Columns, Option<i64>)> = BTreeMap::new();
    let sum = if with_sums { "sum" } else { "NULL" };
    let select = format!("SELECT id, act, author, subject, field, value, extra, {sum} FROM fact");
    let are_whole = read_both_ways(connection, &select, "id DIR", |row| {
        let Ok(id) = row.get::<_, Bytes>(0) else { return false };
        let replaced = over.get(&id.0).map(Vec::as_slice).unwrap_or_default();
        match (row::columns(row, replaced), row.get(7)) {
            (Ok(columns), Ok(sum)) => {
                found.insert(id.0, (columns.to_columns(), sum));
                true
            }
            _ => false,
        }
    });
    // What replaces something and is no fact: the id of a fact that has changed.
    let strays: Vec<(&Uuid, &Vec<Uuid>)> = over.iter().filter(|(id, _)| !found.contains_key(*id)).collect();
    let mut rows = Rows { are_whole, ..Rows::default() };
    let mut names = Names::default();
    for (id, (columns, sum)) in &found {
        let (whole, was_changed) = match sum {
            None if !with_sums => (Some(columns.clone()), false),
            Some(sum) if columns.sum() == *sum => (Some(columns.clone()), false),
            Some(sum) => (put_right(columns, *sum, &strays), true),
            None => (None, true),
        };
        match whole.and_then(|whole| row::of_columns(&whole.seen(), &mut names).ok()) {
            Some(fact) => {
                rows.put_right += usize::from(was_changed);
                rows.facts.insert(fact.id(), fact);
            }
            None => rows.lost.push(Lost {
                id: FactId::try_from(*id).ok(),
                subject: SubjectId::from_uuid(columns.subject()),
                field: String::from_utf8_lossy(&columns.field).into_owned(),
            }),
        }
    }
    rows
}

/// A row with the one bit put right that has changed in it, or in the table of what it replaces.
fn put_right(columns: &Columns, sum: i64, strays: &[(&Uuid, &Vec<Uuid>)]) -> Option<Columns> {
    if let Some(whole) = columns.clone().put_right(sum) {
        return Some(whole);
    }
    let differs_by_one = |stray: &Uuid| (stray.as_u128() ^ columns.id().as_u128()).is_power_of_two();
    strays.iter().filter(|(stray, _)| differs_by_one(stray)).find_map(|(_, replaced)| {
        let mut with = columns.clone();
        with.over.extend(replaced.iter().copied());
        with.over.sort_unstable();
        if with.sum() == sum { Some(with) } else { with.put_right(sum) }
    })
}

/// Builds the database of a survey anew from these facts: those that were salvaged, those of a file, or both. `found` is what
/// could be read of the damaged one. No other program may have the survey open.
///
/// # Errors
/// As [`Ledger::insert`] if the facts do not fit together, `Inaccessible` or `DiskFull` if it cannot be written.
/// The damaged database is then still in its place.
pub fn rebuild(folder: &Path, survey: SurveyId, facts: Vec<Fact>, found: &Salvage) -> Result<Rebuilt> {
    let mut ledger = Ledger::new();
    ledger.insert_all(facts, |_| Ok(()))?;
    let system = |error: io::Error| fault::of_system(folder, &error);
    // Swept by the next opening if this process dies.
    let building = Taking::begin(folder).map_err(system)?;
    let part = building.folder().join(DATABASE);
    build_database(folder, &part, survey)?;
    // None where nothing is left of it.
    let damaged = if folder.join(DATABASE).is_file() { look_into(folder) } else { None };
    fill(&part, survey, &ledger, damaged.as_ref().map(|damaged| (damaged, found)))
        .map_err(|error| fault::of_sqlite(folder, error))?;
    drop(damaged);
    File::open(&part).and_then(|file| file.sync_all()).map_err(system)?;
    fs::rename(&part, folder.join(REBUILT)).map_err(system)?;
    sync_folder(folder).map_err(system)?;
    let damaged = finish(folder)?.filter(|path| path.exists());
    Ok(Rebuilt { facts: ledger.len(), damaged, damaged_is_forgotten: false })
}

fn fill(
    path: &Path,
    survey: SurveyId,
    ledger: &Ledger,
    damaged: Option<(&Connection, &Salvage)>,
) -> rusqlite::Result<()> {
    let mut connection = Connection::open(path)?;
    super::pragma::set(&connection)?;
    let transaction = connection.transaction()?;
    row::write(&transaction, ledger.facts())?;
    let total = sum::total(ledger.facts())
        .map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))?;
    Summary::of(ledger, survey).write(&transaction, total)?;
    if let Some((damaged, found)) = damaged {
        carry_over(damaged, found, &transaction, ledger)?;
    }
    transaction.commit()?;
    connection.close().map_err(|(_, error)| error)
}

/// Carries over what no fact says and belongs to this copy alone: what files asked to be forgotten and what was answered, what
/// is half typed, what can be put back, what is still to be cleared. Small pictures are made again.
fn carry_over(
    from: &Connection,
    found: &Salvage,
    to: &Transaction<'_>,
    facts: &Ledger,
) -> rusqlite::Result<()> {
    let with_sums = meta::has_sums(from).unwrap_or(true);
    waiting::carry_over(from, to)?;
    draft::carry_over(from, to, with_sums)?;
    taken::carry_over(from, to, found.is_just(facts))?;
    scrub::carry_over(from, to, found.is_complete || found.is_made_whole_by(facts))
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
        .map(|number| folder.join(format!("{DAMAGED}-{number}")))
        .find(|path| !path.exists())
        .unwrap_or_else(|| folder.join(DAMAGED))
}
