//! What files asked to be forgotten here, and nobody has agreed to yet or somebody said no to. It belongs to this copy and is
//! never packed: a file tells only what was agreed to.

use std::cell::RefCell;
use std::collections::BTreeSet;

use rusqlite::types::Value;
use rusqlite::{Connection, Row, Transaction, TransactionBehavior, params};

use super::row::Bytes;
use super::{Store, fault, repair, sum};
use crate::error::{FactsError, Result};
use crate::fact::reserved::MOST_FACTS;
use crate::fact::{Fact, FactId, Ledger, Wish, wishes};

/// One thing that was asked for.
struct Asked {
    id: FactId,
    /// The fact that tells to forget; nothing for a frame.
    fact: Option<Fact>,
    refused: bool,
}

/// Keeps what waits; returns the ids of what was not asked before. A row that has changed on the disk asks for nothing and
/// keeps its id from nobody.
pub(super) fn write(transaction: &Transaction<'_>, waiting: &[Fact]) -> rusqlite::Result<Vec<FactId>> {
    if !waiting.is_empty() {
        delete_changed(transaction)?;
    }
    let mut new = Vec::new();
    for fact in waiting {
        let asked =
            Asked { id: fact.id(), fact: (!fact.is_forgotten()).then(|| fact.clone()), refused: false };
        if insert(transaction, &asked)? {
            new.push(fact.id());
        }
    }
    Ok(new)
}

/// Writes a row, unless there is one of that id; returns whether there was none.
fn insert(connection: &Connection, asked: &Asked) -> rusqlite::Result<bool> {
    let line = asked.fact.as_ref().map(Fact::to_line).transpose();
    let line = line.map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))?;
    let sum = sum_of(asked.id, line.as_deref(), asked.refused);
    let row = params![Bytes(asked.id.uuid()), line, asked.refused, sum];
    let insert = "INSERT OR IGNORE INTO wish (id, line, refused, sum) VALUES (?1, ?2, ?3, ?4)";
    Ok(connection.prepare_cached(insert)?.execute(row)? > 0)
}

/// Refuses what nobody could ever look through.
pub(super) fn check_count(connection: &Connection) -> Result<()> {
    let found: i64 = connection
        .query_row("SELECT count(*) FROM wish", (), |row| row.get(0))
        .map_err(|_| FactsError::Inner("what waits cannot be counted"))?;
    let found = usize::try_from(found).unwrap_or(usize::MAX);
    if found > MOST_FACTS { Err(FactsError::TooManyFacts { found, most: MOST_FACTS }) } else { Ok(()) }
}

/// What a take asked for goes with it.
pub(super) fn delete(transaction: &Transaction<'_>, ids: &[FactId]) -> rusqlite::Result<()> {
    let mut delete = transaction.prepare_cached("DELETE FROM wish WHERE id = ?1")?;
    ids.iter().try_for_each(|id| delete.execute([Bytes(id.uuid())]).map(drop))
}

fn sum_of(id: FactId, line: Option<&str>, refused: bool) -> i64 {
    let id = id.uuid();
    sum::of_columns([Some(id.as_bytes().as_slice()), line.map(str::as_bytes), Some(&[u8::from(refused)])])
}

/// What was asked for. A row that has changed on the disk asks for nothing: the next file asks again.
fn read(connection: &Connection) -> rusqlite::Result<Vec<Asked>> {
    let mut select = connection.prepare_cached(SELECT)?;
    let rows = select.query_map((), |row| Ok(asked_in(row)))?;
    rows.filter_map(Result::transpose).collect()
}

const SELECT: &str = "SELECT id, line, refused, sum FROM wish ORDER BY id";

/// What a row asks for; nothing if it is not what was written.
fn asked_in(row: &Row<'_>) -> Option<Asked> {
    let id = FactId::try_from(row.get::<_, Bytes>(0).ok()?.0).ok()?;
    let (line, refused): (Option<String>, bool) = (row.get(1).ok()?, row.get(2).ok()?);
    let is_whole = row.get::<_, i64>(3).ok()? == sum_of(id, line.as_deref(), refused);
    let fact = line.filter(|_| is_whole).map(|line| Fact::from_line(&line)).transpose().ok()?;
    is_whole.then_some(Asked { id, fact, refused })
}

fn delete_changed(connection: &Connection) -> rusqlite::Result<()> {
    let mut changed: Vec<Value> = Vec::new();
    let mut select = connection.prepare_cached(SELECT)?;
    let mut rows = select.query(())?;
    while let Some(row) = rows.next()? {
        if asked_in(row).is_none() {
            changed.push(row.get(0)?);
        }
    }
    let mut delete = connection.prepare_cached("DELETE FROM wish WHERE id = ?1")?;
    changed.iter().try_for_each(|id| delete.execute([id]).map(drop))
}

/// Carries what is whole in a damaged database over into one that is built anew.
pub(super) fn carry_over(from: &Connection, to: &Connection) -> rusqlite::Result<()> {
    let mut asked = Vec::new();
    repair::read_both_ways(from, "SELECT id, line, refused, sum FROM wish", "id DIR", |row| {
        let found = asked_in(row);
        let is_whole = found.is_some();
        asked.extend(found);
        is_whole
    });
    asked.iter().try_for_each(|asked| insert(to, asked).map(drop))
}

/// What somebody said no to, by the ids of the facts that told it.
pub(super) fn refused(connection: &Connection) -> rusqlite::Result<BTreeSet<FactId>> {
    Ok(read(connection)?.into_iter().filter(|one| one.refused).map(|one| one.id).collect())
}

/// The facts to take in for what was asked: those that tell to forget, and the frames of those held.
fn facts_of(ledger: &Ledger, asked: &[Asked]) -> Result<Vec<Fact>> {
    let mut facts: Vec<Fact> = Vec::new();
    for one in asked.iter().filter(|one| !one.refused) {
        match (&one.fact, ledger.fact(one.id)) {
            // What it stands over may have been refused: then it has no place.
            (Some(fact), None) => {
                let known =
                    |over: &FactId| ledger.contains(*over) || facts.iter().any(|fact| fact.id() == *over);
                if fact.over().iter().all(known) {
                    facts.push(fact.clone());
                }
            }
            (None, Some(held)) if !held.is_forgotten() => facts.push(Fact::forgotten(
                held.id(),
                held.act(),
                held.by(),
                held.subject(),
                held.field(),
                held.over().to_vec(),
            )?),
            _ => {}
        }
    }
    Ok(facts)
}

impl Store {
    /// What files asked to be forgotten here and would be lost by a yes, by subject and field. It stays open until it is
    /// answered.
    ///
    /// # Errors
    /// What reading reports.
    pub fn wishes(&self) -> Result<Vec<Wish>> {
        let asked = read(&self.connection).map_err(|error| fault::of_sqlite(&self.folder, error))?;
        let open: Vec<Fact> = asked
            .into_iter()
            .filter(|one| !one.refused)
            .filter_map(|one| one.fact.or_else(|| self.ledger.fact(one.id).cloned()))
            .collect();
        Ok(wishes(|id| self.ledger.fact(id), &open))
    }

    /// What somebody said no to, by the ids of the facts that told it.
    pub(crate) fn refused(&self) -> Result<BTreeSet<FactId>> {
        refused(&self.connection).map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// Forgets what files asked for. Returns whether anything was asked.
    pub(crate) fn agree(&mut self) -> Result<bool> {
        let folder = self.folder.clone();
        let broken = |error| fault::of_sqlite(&folder, error);
        let open: RefCell<Vec<FactId>> = RefCell::default();
        self.append_chosen(
            |transaction, ledger, _| {
                // What another program answered meanwhile is not asked any more.
                let asked = read(transaction).map_err(broken)?;
                let facts = facts_of(ledger, &asked)?;
                if !facts.is_empty() {
                    open.replace(asked.iter().filter(|one| !one.refused).map(|one| one.id).collect());
                }
                Ok(facts)
            },
            |clock, fact| clock.check(fact.id()),
            |transaction, _, _| delete(transaction, &open.borrow()).map_err(broken),
        )?;
        Ok(!open.into_inner().is_empty())
    }

    /// Says no to what files asked to be forgotten: it stays here, and the same is not asked again. It is forgotten
    /// wherever else somebody agreed.
    ///
    /// # Errors
    /// What a write reports.
    pub fn refuse_wishes(&mut self) -> Result<()> {
        let broken = |error| fault::of_sqlite(&self.folder, error);
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate);
        let transaction = transaction.map_err(broken)?;
        // What another program answered meanwhile is not asked any more.
        let asked = read(&transaction).map_err(broken)?;
        for one in asked.into_iter().filter(|one| !one.refused) {
            delete(&transaction, &[one.id])
                .and_then(|()| insert(&transaction, &Asked { refused: true, ..one }))
                .map_err(broken)?;
        }
        transaction.commit().map_err(broken)
    }
}
