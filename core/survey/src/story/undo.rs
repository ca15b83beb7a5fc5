//! Undo: facts that say again what stood before an act. Offered while everything that the act said is still live.
//!
//! What the act created is removed, so it can be brought back; where the act ended a disagreement, the disagreement
//! stands again. An undo is an act like any other and can be undone itself.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use crate::error::Result;
use crate::fact::{
    ActId, AuthorId, Edit, FORGET, Fact, FactClock, FactId, Ledger, REMOVED, Removal, SubjectId,
};
use crate::record::field;
use crate::store::Store;

/// Why an act cannot be undone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum UndoFault {
    /// The act said nothing, or is not known here.
    #[error("that action changed nothing here")]
    Nothing,
    /// Something that the act said was replaced.
    #[error("what it said was changed again since; undo that first, or write the older value anew")]
    ReplacedSince,
    /// Something that the act created has been added to.
    #[error("what it added was added to or removed since; undo that first, or remove it")]
    ChangedSince,
    /// The act made something forgotten.
    #[error("forgetting is for ever")]
    Forgets,
    /// Something that the act said was forgotten.
    #[error("what it said was forgotten, and what stood before may not come back")]
    Forgotten,
}

/// Whether an act can be undone now.
///
/// # Errors
/// Why not.
pub fn can_undo(ledger: &Ledger, act: ActId) -> Result<(), UndoFault> {
    let facts = ledger.of_act(act);
    if facts.is_empty() {
        return Err(UndoFault::Nothing);
    }
    if facts.iter().any(|fact| fact.field() == FORGET) {
        return Err(UndoFault::Forgets);
    }
    if facts.iter().any(|fact| fact.is_forgotten()) {
        return Err(UndoFault::Forgotten);
    }
    let is_live =
        |fact: &Fact| ledger.live(fact.subject(), fact.field()).iter().any(|live| live.id() == fact.id());
    if !facts.iter().all(|fact| is_live(fact)) {
        return Err(UndoFault::ReplacedSince);
    }
    if created(&facts).into_iter().all(|subject| stands_as_created(ledger, subject, act)) {
        Ok(())
    } else {
        Err(UndoFault::ChangedSince)
    }
}

/// The things that an act created: those whose kind it was the first to say.
fn created(facts: &[&Fact]) -> BTreeSet<SubjectId> {
    let first = facts.iter().filter(|fact| fact.field() == field::IS && fact.over().is_empty());
    first.filter(|fact| !fact.value().is_null()).map(|fact| fact.subject()).collect()
}

fn stands_as_created(ledger: &Ledger, subject: SubjectId, act: ActId) -> bool {
    ledger.removal(subject) == Removal::Present
        && ledger.fields(subject).flat_map(|name| ledger.live(subject, name)).all(|live| live.act() == act)
}

impl Store {
    /// Undoes an act; returns the act that does so.
    ///
    /// # Errors
    /// [`SurveyError::Undo`](crate::SurveyError::Undo) if it cannot be undone, or what a write reports.
    pub fn undo(&mut self, act: ActId) -> Result<ActId> {
        let undoing = ActId::random();
        self.write_planned(|ledger, by, clock| plan(ledger, act, undoing, by, clock))?;
        Ok(undoing)
    }
}

/// The facts that undo `act`.
pub(super) fn plan(
    ledger: &Ledger,
    act: ActId,
    undoing: ActId,
    by: AuthorId,
    clock: &mut FactClock,
) -> Result<Vec<Fact>> {
    can_undo(ledger, act)?;
    let facts = ledger.of_act(act);
    let created = created(&facts);
    let removals: Vec<Edit> = created.iter().map(|&subject| ledger.remove(subject)).collect();
    let mut fields: BTreeMap<(SubjectId, &str), Vec<&Fact>> = BTreeMap::new();
    for fact in facts.into_iter().filter(|fact| !created.contains(&fact.subject())) {
        fields.entry((fact.subject(), fact.field())).or_default().push(fact);
    }
    let mut undone = ledger.plan(undoing, by, clock, &removals)?;
    for ((subject, name), mine) in fields {
        let over: Vec<FactId> = mine.iter().map(|fact| fact.id()).collect();
        for value in values_before(ledger, subject, name, &over) {
            over.iter().for_each(|&id| clock.raise(id));
            undone.push(Fact::new(clock.next_id(), undoing, by, subject, name, &value, over.clone())?);
        }
    }
    Ok(undone)
}

/// What has to be said so that a field stands as if these facts of it had never been written.
fn values_before(ledger: &Ledger, subject: SubjectId, name: &str, mine: &[FactId]) -> Vec<Value> {
    let history = ledger.history(subject, name);
    let others: Vec<&Fact> = history.into_iter().filter(|fact| !mine.contains(&fact.id())).collect();
    let replaced: BTreeSet<FactId> = others.iter().flat_map(|fact| fact.over().iter().copied()).collect();
    let stood: Vec<&Fact> =
        others.into_iter().filter(|fact| !replaced.contains(&fact.id()) && !fact.is_forgotten()).collect();
    let live: BTreeSet<FactId> = ledger.live(subject, name).iter().map(|fact| fact.id()).collect();
    // What others said meanwhile stands anyway. What only these facts replaced has to be said again.
    let mut again: Vec<Value> = Vec::new();
    for fact in stood.iter().filter(|fact| !live.contains(&fact.id())) {
        let value = match name {
            // What was seen then is not what stands now.
            REMOVED if !fact.value().is_null() => ledger.remove(subject).value,
            _ => fact.value().clone(),
        };
        if !again.contains(&value) {
            again.push(value);
        }
    }
    if again.is_empty() {
        // To agree with what stands, or to empty the field.
        again.push(stood.last().map_or(Value::Null, |fact| fact.value().clone()));
    }
    again
}
