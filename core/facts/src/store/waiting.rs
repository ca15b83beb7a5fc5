//! What files asked to be forgotten here, and nobody has agreed to yet or somebody said no to. It belongs to this copy and is
//! never packed: a file tells only what was agreed to.

use std::collections::BTreeSet;

use rusqlite::{Connection, Transaction, params};

use super::row::Bytes;
use super::{Store, fault, sum};
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

/// Keeps what waits; returns the ids of what was not asked before.
pub(super) fn write(transaction: &Transaction<'_>, waiting: &[Fact]) -> rusqlite::Result<Vec<FactId>> {
    let mut insert = transaction
        .prepare_cached("INSERT OR IGNORE INTO wish (id, line, refused, sum) VALUES (?1, ?2, 0, ?3)")?;
    let mut new = Vec::new();
    for fact in waiting {
        let line = if fact.is_forgotten() {
            None
        } else {
            let line = fact.to_line();
            Some(line.map_err(|fault| rusqlite::Error::ToSqlConversionFailure(Box::new(fault)))?)
        };
        let sum = sum_of(fact.id(), line.as_deref(), false);
        if insert.execute(params![Bytes(fact.id().uuid()), line, sum])? > 0 {
            new.push(fact.id());
        }
    }
    Ok(new)
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

fn read(connection: &Connection) -> rusqlite::Result<Vec<Asked>> {
    if !super::meta::has_sums(connection)? {
        return Ok(Vec::new());
    }
    let mut select = connection.prepare_cached("SELECT id, line, refused, sum FROM wish ORDER BY id")?;
    let mut rows = select.query(())?;
    let mut asked = Vec::new();
    while let Some(row) = rows.next()? {
        let (line, refused): (Option<String>, bool) = (row.get(1)?, row.get(2)?);
        let Ok(id) = FactId::try_from(row.get::<_, Bytes>(0)?.0) else { continue };
        // One that has changed on the disk asks for nothing: the next file asks again.
        if row.get::<_, i64>(3)? != sum_of(id, line.as_deref(), refused) {
            continue;
        }
        let fact = line.map(|line| Fact::from_line(&line)).transpose();
        asked.extend(fact.ok().map(|fact| Asked { id, fact, refused }));
    }
    Ok(asked)
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
        let asked = read(&self.connection).map_err(|error| fault::of_sqlite(&self.folder, error))?;
        let facts = facts_of(&self.ledger, &asked)?;
        if facts.is_empty() {
            return Ok(false);
        }
        let folder = self.folder.clone();
        let open: Vec<FactId> = asked.iter().filter(|one| !one.refused).map(|one| one.id).collect();
        self.append(
            facts,
            |clock, fact| clock.check(fact.id()),
            |transaction, _, _| delete(transaction, &open).map_err(|error| fault::of_sqlite(&folder, error)),
        )?;
        Ok(true)
    }

    /// Says no to what files asked to be forgotten: it stays here, and the same is not asked again. It is forgotten
    /// wherever else somebody agreed.
    ///
    /// # Errors
    /// What a write reports.
    pub fn refuse_wishes(&mut self) -> Result<()> {
        let broken = |error| fault::of_sqlite(&self.folder, error);
        let asked = read(&self.connection).map_err(broken)?;
        let transaction = self.connection.transaction().map_err(broken)?;
        for one in asked.iter().filter(|one| !one.refused) {
            let line = one.fact.as_ref().map(Fact::to_line).transpose()?;
            let sum = sum_of(one.id, line.as_deref(), true);
            transaction
                .execute(
                    "UPDATE wish SET refused = 1, sum = ?2 WHERE id = ?1",
                    params![Bytes(one.id.uuid()), sum],
                )
                .map_err(broken)?;
        }
        transaction.commit().map_err(broken)
    }
}
