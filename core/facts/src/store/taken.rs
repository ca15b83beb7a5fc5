//! Facts taken in together from a file, and putting them back.
//!
//! A take writes, in its own transaction, which facts it brought and how many there were then. Facts are never changed
//! and never deleted, so while their number is the same nothing was written since, and those facts can go again. That
//! is all that a copy of the database made before would give, without a second place where forgotten things live on.

use rusqlite::{Connection, OptionalExtension, Transaction, TransactionBehavior, params};
use serde::{Deserialize, Serialize};

use super::row::{self, Bytes};
use super::{Store, Summary, fault, photos_named, thumbnail};
use crate::error::{CannotPutBack, FactsError, Result};
use crate::fact::PhotoImage;
use crate::fact::reserved::{MOST_FACTS, MOST_PARTS};
use crate::fact::{FORGET, Fact, FactId, Ledger, Taken};

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
    /// Takes in the facts of a file, in any order, all or none, so that they can be put back. `place` puts the photos
    /// where they belong; it runs while nobody else can write to this survey, before the facts are written. Returns
    /// the ids that are new here.
    ///
    /// # Errors
    /// As [`Store::write_facts`], and `TooManyParts` or `TooManyFacts` if the survey would become larger than any.
    pub(crate) fn take_in(
        &mut self,
        facts: Vec<Fact>,
        place: impl FnOnce() -> Result<()>,
    ) -> Result<Vec<FactId>> {
        if facts.is_empty() {
            return self.alone(|_| place()).map(|()| Vec::new());
        }
        let folder = self.folder.clone();
        self.append(
            facts,
            |clock, fact| clock.check(fact.id()),
            |transaction, ledger, taken| {
                ledger.check_parts()?;
                place()?;
                let told = taken.new.iter().filter_map(|&id| ledger.fact(id)).any(is_about_forgetting);
                let receipt = Receipt {
                    facts: taken.new.clone(),
                    count: ledger.len(),
                    forgot: told || !taken.forgotten.is_empty(),
                };
                write_receipt(transaction, &receipt).map_err(|error| fault::of_sqlite(&folder, error))
            },
        )
    }

    /// How many facts the last take brought, if they can be put back.
    ///
    /// # Errors
    /// `CannotPutBack`, or `Damaged` or `Database` if it cannot be read.
    pub fn can_put_back(&mut self) -> Result<usize> {
        self.refresh()?;
        let receipt = receipt_in(&self.connection, &self.ledger);
        let receipt = receipt.map_err(|error| fault::of_sqlite(&self.folder, error))??;
        Ok(receipt.facts.len())
    }

    /// Puts back what the last take brought, small pictures included. The photos themselves are not touched.
    ///
    /// # Errors
    /// `CannotPutBack` if there is nothing to put back or something was written since; `Busy`, `DiskFull` or
    /// `Database` if it cannot be written. Nothing is changed then.
    pub(crate) fn put_back(&mut self) -> Result<Returned> {
        let Self { folder, connection, ledger, clock, data_version, survey, summary, .. } = self;
        let broken = |error| fault::of_sqlite(folder, error);
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        if row::catch_up(&transaction, folder, ledger, clock, data_version)? {
            *summary = Summary::of(ledger, *survey);
        }
        let receipt = receipt_in(&transaction, ledger).map_err(broken)??;
        let facts: Vec<Fact> = receipt.facts.iter().filter_map(|&id| ledger.fact(id).cloned()).collect();
        let batch = Taken { new: receipt.facts, forgotten: Vec::new() };
        let mut without = ledger.clone();
        without.take_back(batch.clone());
        let counted = Summary::of(&without, *survey);
        delete(&transaction, &batch.new)
            .and_then(|()| delete_thumbnails(&transaction, &facts, &without))
            .and_then(|()| counted.write(&transaction))
            .and_then(|()| transaction.commit())
            .map_err(broken)?;
        *ledger = without;
        *summary = counted;
        Ok(Returned { facts })
    }
}

/// Small pictures of photos that no fact names any more.
fn delete_thumbnails(transaction: &Transaction<'_>, gone: &[Fact], left: &Ledger) -> rusqlite::Result<()> {
    let kept = photos_named(left);
    let gone = gone.iter().filter_map(PhotoImage::of_fact).filter(|image| !kept.contains(&image.file_name()));
    for sha256 in gone.filter_map(|image| image.digest()) {
        thumbnail::delete(transaction, &sha256)?;
    }
    Ok(())
}

/// A survey stays as small as a file can be, so that none is written that cannot be read.
pub(super) fn check_size(ledger: &Ledger, before: &Summary, after: &Summary) -> Result<()> {
    let (found, most) = (ledger.len(), MOST_FACTS);
    if found > most {
        return Err(FactsError::TooManyFacts { found, most });
    }
    let (found, most) = (after.progress.parts, MOST_PARTS);
    if found > most as u64 && found > before.progress.parts {
        let found = usize::try_from(found).unwrap_or(usize::MAX);
        return Err(FactsError::TooManyParts { found, most });
    }
    Ok(())
}

fn is_about_forgetting(fact: &Fact) -> bool {
    fact.is_forgotten() || fact.field() == FORGET
}

fn write_receipt(transaction: &Transaction<'_>, receipt: &Receipt) -> rusqlite::Result<()> {
    let text = serde_json::to_string(receipt)
        .map_err(|error| rusqlite::Error::ToSqlConversionFailure(error.into()))?;
    transaction
        .execute("INSERT OR REPLACE INTO meta (key, value) VALUES (?1, ?2)", params![TAKEN_KEY, text])
        .map(drop)
}

/// The receipt, if what it lists is still all that came last.
fn receipt_in(connection: &Connection, ledger: &Ledger) -> rusqlite::Result<Result<Receipt>> {
    let text: Option<String> = connection
        .query_row("SELECT value FROM meta WHERE key = ?1", [TAKEN_KEY], |row| row.get(0))
        .optional()?;
    let cannot = |why| Ok(Err(FactsError::CannotPutBack(why)));
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
