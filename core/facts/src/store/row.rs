//! Facts as rows of the database.

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Row, params};
use serde_json::{Map, Value};
use uuid::Uuid;

use super::fault;
use super::sum::{self, Columns};
use crate::error::Result;
use crate::fact::FactFault;
use crate::fact::{ActId, AuthorId, Fact, FactClock, FactId, Ledger, SubjectId};

/// An id as the 16 bytes of its UUID.
#[derive(Clone, Copy)]
pub(super) struct Bytes(pub(super) Uuid);

impl ToSql for Bytes {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.0.as_bytes().as_slice().into())
    }
}

impl FromSql for Bytes {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        Uuid::from_slice(value.as_blob()?).map(Self).map_err(FromSqlError::other)
    }
}

/// Writes facts in the order given, each after those it replaces.
pub(super) fn write<'a>(
    connection: &Connection,
    facts: impl Iterator<Item = &'a Fact>,
) -> rusqlite::Result<()> {
    let mut insert = connection.prepare_cached(
        "INSERT INTO fact (id, act, author, subject, field, value, extra, sum) \
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
    )?;
    let mut insert_over =
        connection.prepare_cached("INSERT INTO fact_over (fact, replaced) VALUES (?1, ?2)")?;
    for fact in facts {
        let columns = columns_of(fact)?;
        let [id, act, author, subject] = columns.ids.map(Bytes);
        let sum = columns.sum();
        let text = |bytes: Option<Vec<u8>>| bytes.map(String::from_utf8).transpose().map_err(not_text);
        insert.execute(params![
            id,
            act,
            author,
            subject,
            fact.field(),
            text(columns.value)?,
            text(columns.extra)?,
            sum
        ])?;
        for over in columns.over {
            insert_over.execute(params![id, Bytes(over)])?;
        }
    }
    Ok(())
}

fn columns_of(fact: &Fact) -> rusqlite::Result<Columns> {
    sum::columns_of(fact).map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))
}

fn not_text(fault: std::string::FromUtf8Error) -> rusqlite::Error {
    rusqlite::Error::ToSqlConversionFailure(Box::new(fault))
}

/// Drops what facts said, which are forgotten already as they are given.
pub(super) fn forget<'a>(
    connection: &Connection,
    frames: impl Iterator<Item = &'a Fact>,
) -> rusqlite::Result<()> {
    let mut update =
        connection.prepare_cached("UPDATE fact SET value = NULL, extra = NULL, sum = ?2 WHERE id = ?1")?;
    for frame in frames {
        let columns = columns_of(frame)?;
        update.execute(params![Bytes(frame.id().uuid()), columns.sum()])?;
    }
    Ok(())
}

/// Gives the rows of an older layout their sums.
pub(super) fn fill_sums(connection: &Connection) -> rusqlite::Result<()> {
    let mut over = read_over(connection)?;
    let mut sums = Vec::new();
    {
        let mut select =
            connection.prepare("SELECT id, act, author, subject, field, value, extra FROM fact")?;
        let mut rows = select.query(())?;
        while let Some(row) = rows.next()? {
            let id: Bytes = row.get(0)?;
            let replaced = over.remove(&id.0).unwrap_or_default();
            sums.push((columns(row, &replaced)?.sum(), id));
        }
    }
    let mut update = connection.prepare("UPDATE fact SET sum = ?1 WHERE id = ?2")?;
    for (sum, id) in sums {
        update.execute(params![sum, id])?;
    }
    Ok(())
}

/// A row as it stands, whatever stands in it.
pub(super) fn columns(row: &Row<'_>, replaced: &[Uuid]) -> rusqlite::Result<Columns> {
    let uuid = |column: usize| row.get::<_, Bytes>(column).map(|bytes| bytes.0);
    let bytes = |column: usize| -> rusqlite::Result<Option<Vec<u8>>> {
        Ok(row.get_ref(column)?.as_bytes_or_null()?.map(<[u8]>::to_vec))
    };
    let mut over = replaced.to_vec();
    over.sort_unstable();
    Ok(Columns {
        ids: [uuid(0)?, uuid(1)?, uuid(2)?, uuid(3)?],
        field: bytes(4)?.unwrap_or_default(),
        value: bytes(5)?,
        extra: bytes(6)?,
        over,
    })
}

/// SQLite's count of commits by other connections. Only a difference means anything.
pub(super) fn data_version(connection: &Connection) -> rusqlite::Result<i64> {
    // A read first, so that the answer is that of the transaction we are in.
    connection.query_row("SELECT count(*) FROM meta", (), |_| Ok(()))?;
    connection.pragma_query_value(None, "data_version", |row| row.get(0))
}

/// Reads what other connections committed since `seen`; returns whether that changed any fact. To be called within
/// a transaction.
pub(super) fn catch_up(
    connection: &Connection,
    folder: &Path,
    ledger: &mut Ledger,
    clock: &mut FactClock,
    seen: &mut i64,
) -> Result<bool> {
    let now = data_version(connection).map_err(|error| fault::of_sqlite(folder, error))?;
    let changed = now != *seen && read_new(connection, folder, ledger, clock)?;
    *seen = now;
    Ok(changed)
}

/// Makes the ledger what the database holds, and raises the clock; returns whether that changed anything. Another
/// process's facts need not have greater ids than ours, so all ids are looked at. Facts that are held and no longer
/// there were put back by another process.
pub(super) fn read_new(
    connection: &Connection,
    folder: &Path,
    ledger: &mut Ledger,
    clock: &mut FactClock,
) -> Result<bool> {
    let read = read_missing(connection, folder, ledger, clock)?;
    if read.there == ledger.len() {
        return Ok(read.changed);
    }
    *ledger = Ledger::new();
    read_missing(connection, folder, ledger, clock)?;
    Ok(true)
}

/// Reads all facts into an empty ledger; returns what the sums of their rows add up to.
pub(super) fn read_all(
    connection: &Connection,
    folder: &Path,
    ledger: &mut Ledger,
    clock: &mut FactClock,
) -> Result<i64> {
    read_missing(connection, folder, ledger, clock).map(|read| read.total)
}

/// What was found while all rows were read.
struct Read {
    /// How many facts there are.
    there: usize,
    /// Whether the ledger changed.
    changed: bool,
    /// What the sums of all rows add up to.
    total: i64,
}

/// Reads every fact that the ledger does not hold yet, or not as forgotten.
fn read_missing(
    connection: &Connection,
    folder: &Path,
    ledger: &mut Ledger,
    clock: &mut FactClock,
) -> Result<Read> {
    let broken = |error| fault::of_sqlite(folder, error);
    let mut over = read_over(connection).map_err(broken)?;
    let mut select = connection
        .prepare("SELECT id, act, author, subject, field, value, extra, sum FROM fact ORDER BY id")
        .map_err(broken)?;
    let mut rows = select.query(()).map_err(broken)?;
    let (mut there, mut changed, mut total) = (0, false, 0_i64);
    while let Some(row) = rows.next().map_err(broken)? {
        there += 1;
        total = total.wrapping_add(row.get::<_, Option<i64>>(7).map_err(broken)?.unwrap_or(0));
        let id: Bytes = row.get(0).map_err(broken)?;
        let replaced = over.remove(&id.0).unwrap_or_default();
        if let Some(held) = FactId::try_from(id.0).ok().and_then(|id| ledger.fact(id)) {
            let id = held.id();
            if !held.is_forgotten() && row.get_ref(5).map_err(broken)? == ValueRef::Null {
                changed |= ledger.forget_held(id).is_some();
            }
            continue;
        }
        let columns = columns(row, &replaced).map_err(broken)?;
        if row.get::<_, Option<i64>>(7).map_err(broken)? != Some(columns.sum()) {
            return Err(fault::damaged(
                folder,
                &format_args!("record {} has changed since it was written", id.0),
            ));
        }
        let fact = of_columns(columns).map_err(|error| fault::damaged(folder, &error))?;
        clock.raise(fact.id());
        changed |= ledger.insert(fact).map_err(|error| fault::damaged(folder, &error))?;
    }
    Ok(Read { there, changed, total })
}

fn read_over(connection: &Connection) -> rusqlite::Result<BTreeMap<Uuid, Vec<Uuid>>> {
    let mut select = connection.prepare("SELECT fact, replaced FROM fact_over")?;
    let mut rows = select.query(())?;
    let mut over: BTreeMap<Uuid, Vec<Uuid>> = BTreeMap::new();
    while let Some(row) = rows.next()? {
        over.entry(row.get::<_, Bytes>(0)?.0).or_default().push(row.get::<_, Bytes>(1)?.0);
    }
    Ok(over)
}

/// Why a row is no fact.
#[derive(Debug, thiserror::Error)]
pub(super) enum RowFault {
    #[error("{0}")]
    Fact(#[from] FactFault),
    #[error("a field's name is not text")]
    Text,
    #[error("a value is not JSON")]
    Json(#[from] serde_json::Error),
}

/// The fact of columns that are whole.
pub(super) fn of_columns(columns: Columns) -> Result<Fact, RowFault> {
    let [id, act, by, subject] = columns.ids;
    let id = FactId::try_from(id)?;
    let over = columns.over.into_iter().map(FactId::try_from).collect::<Result<_, _>>()?;
    let field = String::from_utf8(columns.field).map_err(|_| RowFault::Text)?;
    let (act, by, subject) = (ActId::from_uuid(act), AuthorId::from_uuid(by), SubjectId::from_uuid(subject));
    let Some(value) = columns.value else {
        return Ok(Fact::forgotten(id, act, by, subject, &field, over)?);
    };
    let value: Value = serde_json::from_slice(&value)?;
    let extra = columns.extra.map_or_else(|| Ok(Map::new()), |text| serde_json::from_slice(&text))?;
    Ok(Fact::kept(id, act, by, subject, field, value, over, extra)?)
}
