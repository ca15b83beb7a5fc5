//! Facts taken in together from a file, and putting them back.
//!
//! A take writes, in its own transaction, which facts it brought and how many there were then. Facts are never changed
//! and never deleted, so while their number is the same nothing was written since, and those facts can go again. Later,
//! facts are written that say what stood before. That is all that a copy of the database made before would give, without
//! a second place where forgotten things live on.

use std::cell::{Cell, RefCell};

use rusqlite::{Connection, Transaction, TransactionBehavior};
use serde::{Deserialize, Serialize};

use super::row::{self, Bytes};
use super::{Store, Summary, fault, meta, photos_named, stood_before, sum, thumbnail, waiting};
use crate::error::{CannotPutBack, FactsError, Result};
use crate::fact::PhotoImage;
use crate::fact::reserved::{MOST_FACTS, MOST_PARTS};
use crate::fact::{ActId, FORGET, Fact, FactId, HeldBack, Ledger, Taken, hold_back, wishes};

/// The key in the table `meta`.
const TAKEN_KEY: &str = "taken";

/// How long what a file brought can be put back, in milliseconds: 30 days.
pub const RETURNABLE_MS: u64 = 30 * 24 * 3600 * 1000;

/// The triggers that keep facts from being deleted, lifted for as long as facts are put back.
const GUARDS: [&str; 2] = ["fact_is_kept", "fact_over_is_kept"];

/// A take: what it brought.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Receipt {
    /// When, by this device's clock. An older release did not say.
    #[serde(default)]
    ms: u64,
    /// The facts, by id.
    facts: Vec<FactId>,
    /// How many facts the survey had with them.
    count: usize,
    /// Whether it made something forgotten, or a repair since has changed which facts there are.
    forgot: bool,
    /// What it asked to be forgotten.
    #[serde(default)]
    asked: Vec<FactId>,
}

/// What was put back.
#[derive(Debug, Clone, PartialEq)]
pub struct Returned {
    /// The facts that are gone again, or what they said, by id.
    pub facts: Vec<Fact>,
    /// Whether they are gone as if they had never come. If not, new facts say what stood before: whoever takes a file from
    /// here reads those too.
    pub without_trace: bool,
}

/// What can be put back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Returnable {
    /// How many facts the file brought.
    pub facts: usize,
    /// See [`Returned::without_trace`].
    pub without_trace: bool,
}

/// What a take wrote.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct TakenIn {
    /// The facts that are new here, by id.
    pub(crate) facts: Vec<FactId>,
    /// What would be lost here and waits for a yes.
    pub(crate) waiting: usize,
}

impl Store {
    /// Takes in the facts of a file, in any order, all or none, so that they can be put back. What would make something
    /// forgotten waits, unless `may_forget`. `place` puts the photos where they belong; it runs while nobody else can
    /// write to this survey, before the facts are written.
    ///
    /// # Errors
    /// As [`Store::write_facts`], and `TooManyParts` or `TooManyFacts` if the survey would become larger than any.
    pub(crate) fn take_in(
        &mut self,
        facts: Vec<Fact>,
        may_forget: bool,
        place: impl FnOnce() -> Result<()>,
    ) -> Result<TakenIn> {
        if facts.is_empty() {
            return self.alone(|_| place()).map(|()| TakenIn::default());
        }
        let folder = self.folder.clone();
        let broken = |error| fault::of_sqlite(&folder, error);
        let now_ms = self.clock.now_ms();
        let (waiting, lost) = (RefCell::new(Vec::new()), Cell::new(0));
        let facts = self.append_chosen(
            |transaction, ledger, _| {
                let refused = waiting::refused(transaction).map_err(broken)?;
                let HeldBack { admitted, waiting: held_back } = hold_back(ledger, facts, &refused);
                if may_forget {
                    return Ok(admitted.into_iter().chain(held_back).collect());
                }
                waiting.replace(held_back);
                Ok(admitted)
            },
            |clock, fact| clock.check(fact.id()),
            |transaction, ledger, taken| {
                ledger.check_parts()?;
                place()?;
                let waiting = waiting.borrow();
                lost.set(wishes(|id| ledger.fact(id), waiting.iter()).len());
                let asked = waiting::write(transaction, &waiting).map_err(broken)?;
                waiting::check_count(transaction)?;
                if taken.new.is_empty() {
                    return Ok(());
                }
                let told = taken.new.iter().filter_map(|&id| ledger.fact(id)).any(is_about_forgetting);
                let receipt = Receipt {
                    ms: now_ms,
                    facts: taken.new.clone(),
                    count: ledger.len(),
                    forgot: !taken.forgotten.is_empty() || told && may_forget,
                    asked,
                };
                let mut receipts = receipts(transaction, now_ms).map_err(broken)?;
                receipts.push(receipt);
                write_receipts(transaction, &receipts).map_err(broken)
            },
        )?;
        Ok(TakenIn { facts, waiting: lost.get() })
    }

    /// What the last take brought that was not put back yet, for [`RETURNABLE_MS`].
    ///
    /// # Errors
    /// `CannotPutBack`, or `Damaged` or `Database` if it cannot be read.
    pub fn can_put_back(&mut self) -> Result<Returnable> {
        self.refresh()?;
        let receipts = receipts(&self.connection, self.clock.now_ms());
        let receipts = receipts.map_err(|error| fault::of_sqlite(&self.folder, error))?;
        let last = receipts.last().ok_or(FactsError::CannotPutBack(CannotPutBack::NothingTaken))?;
        Ok(Returnable { facts: last.facts.len(), without_trace: last.is_last_word(&self.ledger) })
    }

    /// Gives up putting back what the last take brought ([`Store::can_put_back`]). What the ones before it brought is a
    /// question of its own.
    ///
    /// # Errors
    /// What a write reports.
    pub fn keep_what_was_taken(&mut self) -> Result<()> {
        let now_ms = self.clock.now_ms();
        let broken = |error| fault::of_sqlite(&self.folder, error);
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate);
        let transaction = transaction.map_err(broken)?;
        let mut receipts = receipts(&transaction, now_ms).map_err(broken)?;
        receipts.pop();
        write_receipts(&transaction, &receipts).and_then(|()| transaction.commit()).map_err(broken)
    }

    /// Puts back what the last take brought, small pictures included. The photos themselves are not touched.
    ///
    /// While nothing was written since and nothing was forgotten, its facts go as if they had never come. Later, facts are
    /// written that say what stood before: of each field that still says what the file brought.
    ///
    /// # Errors
    /// `CannotPutBack` if there is nothing to put back; `Busy`, `DiskFull` or `Database` if it cannot be written. Nothing
    /// is changed then.
    pub(crate) fn put_back(&mut self) -> Result<Returned> {
        let now_ms = self.clock.now_ms();
        let Self { folder, connection, ledger, clock, data_version, survey, summary, .. } = self;
        let broken = |error| fault::of_sqlite(folder, error);
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(broken)?;
        if row::catch_up(&transaction, folder, ledger, clock, data_version)? {
            *summary = Summary::of(ledger, *survey);
        }
        let mut receipts = receipts(&transaction, now_ms).map_err(broken)?;
        let Some(receipt) = receipts.pop() else {
            return Err(FactsError::CannotPutBack(CannotPutBack::NothingTaken));
        };
        if !receipt.is_last_word(ledger) {
            drop(transaction);
            return self.say_what_stood_before(&receipt);
        }
        let facts: Vec<Fact> = receipt.facts.iter().filter_map(|&id| ledger.fact(id).cloned()).collect();
        let batch = Taken { new: receipt.facts, forgotten: Vec::new() };
        let mut without = ledger.clone();
        without.take_back(batch.clone());
        let counted = Summary::of(&without, *survey);
        let total = sum::total(without.facts())?;
        delete(&transaction, &batch.new)
            .and_then(|()| delete_thumbnails(&transaction, &facts, &without))
            .and_then(|()| waiting::delete(&transaction, &receipt.asked))
            .and_then(|()| write_receipts(&transaction, &receipts))
            .and_then(|()| counted.write(&transaction, total))
            .and_then(|()| transaction.commit())
            .map_err(broken)?;
        *ledger = without;
        *summary = counted;
        Ok(Returned { facts, without_trace: true })
    }

    /// Puts a take back by facts, unless somebody has done so or kept it meanwhile.
    pub(super) fn say_what_stood_before(&mut self, receipt: &Receipt) -> Result<Returned> {
        let (folder, author, now_ms) = (self.folder.clone(), self.author, self.clock.now_ms());
        let broken = |error| fault::of_sqlite(&folder, error);
        self.append_chosen(
            |transaction, ledger, clock| {
                if !receipts(transaction, now_ms).map_err(broken)?.contains(receipt) {
                    return Err(FactsError::CannotPutBack(CannotPutBack::NothingTaken));
                }
                stood_before::as_before(ledger, &receipt.facts, ActId::random(), author, clock)
            },
            |_, _| Ok(()),
            |transaction, _, _| {
                waiting::delete(transaction, &receipt.asked).map_err(broken)?;
                let mut left = receipts(transaction, now_ms).map_err(broken)?;
                left.retain(|other| other != receipt);
                write_receipts(transaction, &left).map_err(broken)
            },
        )?;
        let facts = receipt.facts.iter().filter_map(|&id| self.ledger.fact(id).cloned()).collect();
        Ok(Returned { facts, without_trace: false })
    }
}

impl Receipt {
    /// Whether nothing was written since, and nothing forgotten: facts are never changed and never deleted, so their number
    /// tells.
    fn is_last_word(&self, ledger: &Ledger) -> bool {
        !self.forgot && self.count == ledger.len() && self.facts.iter().all(|&id| ledger.contains(id))
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

#[cfg(test)]
pub(super) fn last_receipt(store: &Store) -> Option<Receipt> {
    receipts(&store.connection, 0).ok()?.pop()
}

fn is_about_forgetting(fact: &Fact) -> bool {
    fact.is_forgotten() || fact.field() == FORGET
}

fn write_receipts(transaction: &Transaction<'_>, receipts: &[Receipt]) -> rusqlite::Result<()> {
    if receipts.is_empty() {
        return meta::delete(transaction, TAKEN_KEY);
    }
    let text = serde_json::to_string(receipts)
        .map_err(|error| rusqlite::Error::ToSqlConversionFailure(error.into()))?;
    meta::set(transaction, TAKEN_KEY, &text)
}

/// The takes that can still be put back, the last one last.
fn receipts(connection: &Connection, now_ms: u64) -> rusqlite::Result<Vec<Receipt>> {
    let Some(text) = meta::get(connection, TAKEN_KEY)? else { return Ok(Vec::new()) };
    let is_young = |receipt: &Receipt| receipt.ms == 0 || now_ms.saturating_sub(receipt.ms) <= RETURNABLE_MS;
    Ok(receipts_in(&text).into_iter().filter(is_young).collect())
}

fn receipts_in(text: &str) -> Vec<Receipt> {
    // An older release kept the last one alone.
    serde_json::from_str(text)
        .or_else(|_| serde_json::from_str(text).map(|receipt: Receipt| vec![receipt]))
        .unwrap_or_default()
}

/// Carries what can be put back over into a database that is built anew. Unless its facts are just those that there were,
/// their number tells nothing any more: then facts say what stood before, as where something was forgotten.
pub(super) fn carry_over(
    from: &Connection,
    to: &Transaction<'_>,
    has_just_those: bool,
) -> rusqlite::Result<()> {
    let mut receipts = receipts_in(&meta::get_put_right(from, TAKEN_KEY).unwrap_or_default());
    for receipt in &mut receipts {
        receipt.forgot |= !has_just_those;
    }
    write_receipts(to, &receipts)
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
    Ok(())
}
