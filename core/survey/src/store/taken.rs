//! Facts taken in together from a file, and putting them back.
//!
//! A take writes, in its own transaction, which facts it brought and how many there were then. Facts are never changed
//! and never deleted, so while their number is the same nothing was written since, and those facts can go again. That
//! is all that a copy of the database made before would give, without a second place where forgotten things live on.

use rusqlite::{Connection, OptionalExtension, Transaction, TransactionBehavior, params};
use serde::{Deserialize, Serialize};

use super::row::{self, Bytes};
use super::{Store, fault};
use crate::error::{CannotPutBack, Result, SurveyError};
use crate::fact::{Fact, FactId, Ledger};
use crate::record;

/// The key in the table `meta`.
const TAKEN_KEY: &str = "taken";

/// The triggers that keep facts from being deleted, lifted for as long as facts are put back.
const GUARDS: [&str; 2] = ["fact_is_kept", "fact_over_is_kept"];

/// The last take: what it brought.
#[derive(Serialize, Deserialize)]
struct Receipt {
    /// The facts, by id.
    facts: Vec<FactId>,
    /// How many facts the survey had with them.
    count: usize,
    /// Whether it made something forgotten.
    forgot: bool,
}

/// What was put back.
#[derive(Debug, Clone, PartialEq)]
pub struct Returned {
    /// The facts that are gone again, by id.
    pub facts: Vec<Fact>,
}

impl Store {
    /// Takes in the facts of a file, in any order, all or none, so that they can be put back. Returns the ids that
    /// are new here.
    ///
    /// # Errors
    /// As [`Store::write_facts`], and `TooManyParts` or `TooManyFacts` if the survey would become larger than any.
    pub(crate) fn take_in(&mut self, facts: Vec<Fact>) -> Result<Vec<FactId>> {
        let (survey, folder) = (self.survey, self.folder.clone());
        let forgot = facts.iter().any(is_about_forgetting);
        if facts.is_empty() {
            return Ok(Vec::new());
        }
        self.append(
            facts,
            |clock, fact| clock.check(fact.id()),
            |transaction, ledger, new| {
                check_size(ledger)?;
                record::fold(ledger, survey)?;
                let receipt = Receipt { facts: new.to_vec(), count: ledger.len(), forgot };
                write_receipt(transaction, &receipt).map_err(|error| fault::of_sqlite(&folder, error))
            },
        )
    }

    /// What the last take brought, if it can be put back.
    ///
    /// # Errors
    /// `CannotPutBack`, or `Damaged` or `Database` if it cannot be read.
    pub fn can_put_back(&mut self) -> Result<usize> {
        self.refresh()?;
        read_receipt(self, &self.connection).map(|receipt| receipt.facts.len())
    }

    /// Puts back what the last take brought. Photos are not touched.
    ///
    /// # Errors
    /// `CannotPutBack` if there is nothing to put back or something was written since; `Busy`, `DiskFull` or
    /// `Database` if it cannot be written. Nothing is changed then.
    pub(crate) fn put_back(&mut self) -> Result<Returned> {
        let folder = self.folder.clone();
        let broken = |error| fault::of_sqlite(&folder, error);
        let Self { connection, ledger, clock, data_version, .. } = self;
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        row::catch_up(&transaction, &folder, ledger, clock, data_version)?;
        let receipt = receipt_in(&transaction, ledger).map_err(broken)??;
        delete(&transaction, &receipt.facts).map_err(broken)?;
        transaction.commit().map_err(broken)?;
        let facts = receipt.facts.iter().filter_map(|&id| ledger.fact(id).cloned()).collect();
        ledger.take_back(&receipt.facts);
        Ok(Returned { facts })
    }
}

/// A survey stays as small as a file can be.
pub(super) fn check_size(ledger: &Ledger) -> Result<()> {
    let (found, most) = (ledger.len(), crate::file::MOST_FACTS);
    if found > most { Err(SurveyError::TooManyFacts { found, most }) } else { Ok(()) }
}

fn is_about_forgetting(fact: &Fact) -> bool {
    fact.is_forgotten() || fact.field() == "forget"
}

fn write_receipt(transaction: &Transaction<'_>, receipt: &Receipt) -> rusqlite::Result<()> {
    let text = serde_json::to_string(receipt).map_err(|error| rusqlite::Error::ToSqlConversionFailure(error.into()))?;
    transaction
        .execute("INSERT OR REPLACE INTO meta (key, value) VALUES (?1, ?2)", params![TAKEN_KEY, text])
        .map(drop)
}

fn read_receipt(store: &Store, connection: &Connection) -> Result<Receipt> {
    receipt_in(connection, &store.ledger).map_err(|error| fault::of_sqlite(&store.folder, error))?
}

/// The receipt, if what it lists is still all that came last.
fn receipt_in(connection: &Connection, ledger: &Ledger) -> rusqlite::Result<Result<Receipt>> {
    let text: Option<String> = connection
        .query_row("SELECT value FROM meta WHERE key = ?1", [TAKEN_KEY], |row| row.get(0))
        .optional()?;
    let cannot = |why| Ok(Err(SurveyError::CannotPutBack(why)));
    let Some(receipt) = text.and_then(|text| serde_json::from_str::<Receipt>(&text).ok()) else {
        return cannot(CannotPutBack::NothingTaken);
    };
    if receipt.forgot {
        return cannot(CannotPutBack::Forgotten);
    }
    if receipt.count != ledger.len() || !receipt.facts.iter().all(|&id| ledger.contains(id)) {
        return cannot(CannotPutBack::WrittenSince);
    }
    Ok(Ok(receipt))
}

fn delete(transaction: &Transaction<'_>, facts: &[FactId]) -> rusqlite::Result<()> {
    let mut guards: Vec<String> = Vec::new();
    for guard in GUARDS {
        let made_by = "SELECT sql FROM sqlite_schema WHERE type = 'trigger' AND name = ?1";
        guards.push(transaction.query_row(made_by, [guard], |row| row.get(0))?);
        transaction.execute_batch(&format!("DROP TRIGGER {guard}"))?;
    }
    let mut over = transaction.prepare("DELETE FROM fact_over WHERE fact = ?1")?;
    let mut fact = transaction.prepare("DELETE FROM fact WHERE id = ?1")?;
    // The newest first: a fact goes after those that replace it.
    for id in facts.iter().rev() {
        over.execute([Bytes(id.uuid())])?;
        fact.execute([Bytes(id.uuid())])?;
    }
    for guard in guards {
        transaction.execute_batch(&guard)?;
    }
    transaction.execute("DELETE FROM meta WHERE key = ?1", [TAKEN_KEY]).map(drop)
}
