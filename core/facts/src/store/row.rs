//! Facts as rows of the database.

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Row, params};
use serde_json::{Map, Value};
use uuid::Uuid;

use super::fault;
use crate::error::Result;
use crate::fact::FactFault;
use crate::fact::{ActId, AuthorId, Fact, FactClock, FactId, Ledger, SubjectId, canonical};

/// An id as the 16 bytes of its UUID.
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
        "INSERT INTO fact (id, act, author, subject, field, value, extra) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
    )?;
    let mut insert_over =
        connection.prepare_cached("INSERT INTO fact_over (fact, replaced) VALUES (?1, ?2)")?;
    let text = |json: &Value| {
        canonical(json).map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))
    };
    for fact in facts {
        let extra = match fact.extra() {
            none if none.is_empty() => None,
            some => Some(text(&Value::Object(some.clone()))?),
        };
        insert.execute(params![
            Bytes(fact.id().uuid()),
            Bytes(fact.act().uuid()),
            Bytes(fact.by().uuid()),
            Bytes(fact.subject().uuid()),
            fact.field(),
            if fact.is_forgotten() { None } else { Some(text(fact.value())?) },
            extra,
        ])?;
        for over in fact.over() {
            insert_over.execute(params![Bytes(fact.id().uuid()), Bytes(over.uuid())])?;
        }
    }
    Ok(())
}

/// Drops what facts said.
pub(super) fn forget(connection: &Connection, ids: impl Iterator<Item = FactId>) -> rusqlite::Result<()> {
    let mut update = connection.prepare_cached("UPDATE fact SET value = NULL, extra = NULL WHERE id = ?1")?;
    for id in ids {
        update.execute([Bytes(id.uuid())])?;
    }
    Ok(())
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
    let (there, changed) = read_missing(connection, folder, ledger, clock)?;
    if there == ledger.len() {
        return Ok(changed);
    }
    *ledger = Ledger::new();
    read_missing(connection, folder, ledger, clock)?;
    Ok(true)
}

/// Reads every fact that the ledger does not hold yet, or not as forgotten. Returns how many facts there are, and
/// whether the ledger changed.
fn read_missing(
    connection: &Connection,
    folder: &Path,
    ledger: &mut Ledger,
    clock: &mut FactClock,
) -> Result<(usize, bool)> {
    let broken = |error| fault::of_sqlite(folder, error);
    let mut over = read_over(connection).map_err(broken)?;
    let mut select = connection
        .prepare("SELECT id, act, author, subject, field, value, extra FROM fact ORDER BY id")
        .map_err(broken)?;
    let mut rows = select.query(()).map_err(broken)?;
    let (mut there, mut changed) = (0, false);
    while let Some(row) = rows.next().map_err(broken)? {
        there += 1;
        let id: Bytes = row.get(0).map_err(broken)?;
        let replaced = over.remove(&id.0).unwrap_or_default();
        if let Some(held) = FactId::try_from(id.0).ok().and_then(|id| ledger.fact(id)) {
            let id = held.id();
            if !held.is_forgotten() && row.get_ref(5).map_err(broken)? == ValueRef::Null {
                changed |= ledger.forget_held(id).is_some();
            }
            continue;
        }
        let fact = read(row, id.0, &replaced).map_err(|error| fault::damaged(folder, &error))?;
        clock.raise(fact.id());
        changed |= ledger.insert(fact).map_err(|error| fault::damaged(folder, &error))?;
    }
    Ok((there, changed))
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
    Column(#[from] rusqlite::Error),
    #[error("{0}")]
    Fact(#[from] FactFault),
    #[error("a value is not JSON")]
    Json(#[from] serde_json::Error),
}

pub(super) fn read(row: &Row<'_>, id: Uuid, replaced: &[Uuid]) -> Result<Fact, RowFault> {
    let id = FactId::try_from(id)?;
    let uuid = |column: usize| row.get::<_, Bytes>(column).map(|bytes| bytes.0);
    let (act, by, subject) = (uuid(1)?, uuid(2)?, uuid(3)?);
    let over = replaced.iter().map(|&id| FactId::try_from(id)).collect::<Result<_, _>>()?;
    let field: String = row.get(4)?;
    let (act, by, subject) = (ActId::from_uuid(act), AuthorId::from_uuid(by), SubjectId::from_uuid(subject));
    let Some(text) = row.get_ref(5)?.as_str_or_null().map_err(rusqlite::Error::from)? else {
        return Ok(Fact::forgotten(id, act, by, subject, &field, over)?);
    };
    let value: Value = serde_json::from_str(text)?;
    let extra: Map<String, Value> = match row.get_ref(6)?.as_str_or_null().map_err(rusqlite::Error::from)? {
        Some(text) => serde_json::from_str(text)?,
        None => Map::new(),
    };
    Ok(Fact::kept(id, act, by, subject, field, value, over, extra)?)
}
