//! Facts as rows of the database.

use std::collections::HashSet;
use std::path::Path;
use std::sync::Arc;

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Row, params};
use serde_json::{Map, Value};
use uuid::Uuid;

use super::fault;
use super::sum::{self, Columns, ColumnsSeen};
use crate::error::{FactsError, Result};
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

/// Writes facts in the order given, each after those it replaces; returns what the sums of their rows add up to.
pub(super) fn write<'a>(
    connection: &Connection,
    facts: impl Iterator<Item = &'a Fact>,
) -> rusqlite::Result<i64> {
    let mut insert = connection.prepare_cached(
        "INSERT INTO fact (id, act, author, subject, field, value, extra, sum) \
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
    )?;
    let mut insert_over =
        connection.prepare_cached("INSERT INTO fact_over (fact, replaced) VALUES (?1, ?2)")?;
    let mut total = 0_i64;
    for fact in facts {
        let columns = columns_of(fact)?;
        let [id, act, author, subject] = columns.ids.map(Bytes);
        let sum = columns.sum();
        total = total.wrapping_add(sum);
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
    Ok(total)
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
    let mut over = Over::read(connection)?;
    let mut sums = Vec::new();
    {
        let mut select = connection
            .prepare("SELECT id, act, author, subject, field, value, extra FROM fact ORDER BY id")?;
        let mut rows = select.query(())?;
        while let Some(row) = rows.next()? {
            let id: Bytes = row.get(0)?;
            sums.push((columns(row, over.of(id.0))?.sum(), id));
        }
    }
    let mut update = connection.prepare("UPDATE fact SET sum = ?1 WHERE id = ?2")?;
    for (sum, id) in sums {
        update.execute(params![sum, id])?;
    }
    Ok(())
}

/// A row as it stands, whatever stands in it; `over` in its order.
pub(super) fn columns<'a>(row: &'a Row<'_>, over: &'a [Uuid]) -> rusqlite::Result<ColumnsSeen<'a>> {
    let uuid = |column: usize| row.get::<_, Bytes>(column).map(|bytes| bytes.0);
    let bytes =
        |column: usize| -> rusqlite::Result<Option<&[u8]>> { Ok(row.get_ref(column)?.as_bytes_or_null()?) };
    Ok(ColumnsSeen {
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
    connection.prepare_cached("SELECT count(*) FROM meta")?.query_row((), |_| Ok(()))?;
    connection.prepare_cached("PRAGMA data_version")?.query_row((), |row| row.get(0))
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
    let (mut there, mut changed) = (0, false);
    let mut names = Names::default();
    read_rows(connection, folder, |found| {
        there += 1;
        if let Some(held) = FactId::try_from(found.id()).ok().and_then(|id| ledger.fact(id)) {
            let id = held.id();
            if !held.is_forgotten() && found.is_forgotten()? {
                changed |= ledger.forget_held(id).is_some();
            }
            return Ok(());
        }
        let fact = found.fact(&mut names)?;
        clock.raise(fact.id());
        changed |= ledger.insert(fact).map_err(|error| fault::damaged(folder, &error))?;
        Ok(())
    })?;
    if there == ledger.len() {
        return Ok(changed);
    }
    (*ledger, _) = read_all(connection, folder, clock)?;
    Ok(true)
}

/// Reads all facts, raises the clock, and returns what the sums of their rows add up to, too.
pub(super) fn read_all(
    connection: &Connection,
    folder: &Path,
    clock: &mut FactClock,
) -> Result<(Ledger, i64)> {
    let (mut facts, mut total) = (Vec::new(), 0_i64);
    let mut names = Names::default();
    read_rows(connection, folder, |found| {
        let fact = found.fact(&mut names)?;
        total = total.wrapping_add(found.sum()?.unwrap_or(0));
        clock.raise(fact.id());
        facts.push((fact.id(), fact));
        Ok(())
    })?;
    let ledger = Ledger::of_ascending(facts).map_err(|error| fault::damaged(folder, &error))?;
    Ok((ledger, total))
}

/// Gives every row of a fact to `take`, by id.
fn read_rows(
    connection: &Connection,
    folder: &Path,
    mut take: impl FnMut(&RowFound<'_>) -> Result<()>,
) -> Result<()> {
    let broken = |error| fault::of_sqlite(folder, error);
    let mut over = Over::read(connection).map_err(broken)?;
    let mut select = connection
        .prepare("SELECT id, act, author, subject, field, value, extra, sum FROM fact ORDER BY id")
        .map_err(broken)?;
    let mut rows = select.query(()).map_err(broken)?;
    while let Some(row) = rows.next().map_err(broken)? {
        let Bytes(id) = row.get(0).map_err(broken)?;
        take(&RowFound { folder, row, id, over: over.of(id) })?;
    }
    Ok(())
}

/// A row of a fact, of which only the id is read yet.
struct RowFound<'a> {
    folder: &'a Path,
    row: &'a Row<'a>,
    id: Uuid,
    over: &'a [Uuid],
}

impl RowFound<'_> {
    const fn id(&self) -> Uuid {
        self.id
    }

    fn broken(&self, error: rusqlite::Error) -> FactsError {
        fault::of_sqlite(self.folder, error)
    }

    fn is_forgotten(&self) -> Result<bool> {
        self.row.get_ref(5).map(|value| value == ValueRef::Null).map_err(|error| self.broken(error))
    }

    /// The sum that the row carries.
    fn sum(&self) -> Result<Option<i64>> {
        self.row.get(7).map_err(|error| self.broken(error))
    }

    /// The fact, if the row is as it was written.
    fn fact(&self, names: &mut Names) -> Result<Fact> {
        let columns = columns(self.row, self.over).map_err(|error| self.broken(error))?;
        if self.sum()? != Some(columns.sum()) {
            return Err(fault::damaged(
                self.folder,
                &format_args!("record {} has changed since it was written", self.id),
            ));
        }
        of_columns(&columns, names).map_err(|error| fault::damaged(self.folder, &error))
    }
}

/// Which facts replace which, as the table has it.
struct Over {
    /// The facts that replace another, as numbers, in their order.
    facts: Vec<u128>,
    /// What each of them replaces.
    replaced: Vec<Uuid>,
    /// The first of those that come after the fact that was asked for last.
    next: usize,
}

impl Over {
    fn read(connection: &Connection) -> rusqlite::Result<Self> {
        let mut select =
            connection.prepare("SELECT fact, replaced FROM fact_over ORDER BY fact, replaced")?;
        let mut rows = select.query(())?;
        let mut over = Self { facts: Vec::new(), replaced: Vec::new(), next: 0 };
        while let Some(row) = rows.next()? {
            over.facts.push(row.get::<_, Bytes>(0)?.0.as_u128());
            over.replaced.push(row.get::<_, Bytes>(1)?.0);
        }
        Ok(over)
    }

    /// What a fact replaces, in its order. Facts are asked for by id: then it lies where the last one ended.
    fn of(&mut self, fact: Uuid) -> &[Uuid] {
        let fact = fact.as_u128();
        if self.next.checked_sub(1).and_then(|last| self.facts.get(last)).is_some_and(|&last| last >= fact) {
            self.next = self.facts.partition_point(|&known| known < fact);
        }
        let left = self.facts.get(self.next..).unwrap_or_default();
        let begin = self.next + left.iter().take_while(|&&known| known < fact).count();
        let left = self.facts.get(begin..).unwrap_or_default();
        self.next = begin + left.iter().take_while(|&&known| known == fact).count();
        self.replaced.get(begin..self.next).unwrap_or_default()
    }
}

/// The names of fields that were read, each kept once.
#[derive(Default)]
pub(super) struct Names(HashSet<Arc<str>>);

impl Names {
    fn of(&mut self, name: &str) -> Arc<str> {
        if let Some(known) = self.0.get(name) {
            return Arc::clone(known);
        }
        let name: Arc<str> = name.into();
        self.0.insert(Arc::clone(&name));
        name
    }
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
pub(super) fn of_columns(columns: &ColumnsSeen<'_>, names: &mut Names) -> Result<Fact, RowFault> {
    let [id, act, by, subject] = columns.ids;
    let id = FactId::try_from(id)?;
    let over = columns.over.iter().map(|&over| FactId::try_from(over)).collect::<Result<_, _>>()?;
    let field = names.of(std::str::from_utf8(columns.field).map_err(|_| RowFault::Text)?);
    let (act, by, subject) = (ActId::from_uuid(act), AuthorId::from_uuid(by), SubjectId::from_uuid(subject));
    let Some(value) = columns.value else {
        return Ok(Fact::forgotten(id, act, by, subject, field, over)?);
    };
    let value: Value = serde_json::from_slice(value)?;
    let extra = columns.extra.map_or_else(|| Ok(Map::new()), serde_json::from_slice)?;
    Ok(Fact::kept(id, act, by, subject, field, value, over, extra)?)
}
