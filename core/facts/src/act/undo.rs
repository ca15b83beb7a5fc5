//! Undo: facts that say again what stood before an act. Offered while everything that the act said still stands: it is
//! live, or whatever came on top of it was undone.
//!
//! What the act created is removed, so it can be brought back; where the act ended a disagreement, the disagreement
//! stands again. An undo is an act like any other and can be undone itself.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::steps::Replay;
use crate::error::{Result, UndoFault};
use crate::fact::{
    ActId, AuthorId, Edit, FORGET, Fact, FactClock, FactId, Ledger, REMOVED, Removal, SubjectId, Taken,
    reserved,
};
use crate::store::Store;

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
    let created = created(ledger, act, &facts);
    if !created.iter().all(|&subject| stands_as_created(ledger, subject, act)) {
        return Err(UndoFault::ChangedSince);
    }
    let touched = facts.iter().filter(|fact| !created.contains(&fact.subject()));
    if touched.into_iter().all(|fact| Replay::of(on_top(ledger, fact).into_iter()).standing.is_empty()) {
        Ok(())
    } else {
        Err(UndoFault::ReplacedSince)
    }
}

/// The facts that replaced this one, and those that replaced them, up to the live ones.
fn on_top<'a>(ledger: &'a Ledger, fact: &Fact) -> Vec<&'a Fact> {
    let mut below = BTreeSet::from([fact.id()]);
    // By id, and a fact is older than those that replace it.
    let history = ledger.history(fact.subject(), fact.field()).into_iter();
    history
        .filter(|later| {
            let is_on_top = later.over().iter().any(|id| below.contains(id));
            if is_on_top {
                below.insert(later.id());
            }
            is_on_top
        })
        .collect()
}

/// The things that an act created: it said of what kind they are, and nothing had been said about them before.
fn created(ledger: &Ledger, act: ActId, facts: &[&Fact]) -> BTreeSet<SubjectId> {
    let is_new = |is: &Fact| {
        let mut said = ledger.fields(is.subject()).flat_map(|name| ledger.history(is.subject(), name));
        said.all(|fact| fact.act() == act || fact.id() > is.id())
    };
    facts
        .iter()
        .filter(|fact| fact.field() == reserved::IS && !fact.value().is_null() && is_new(fact))
        .map(|fact| fact.subject())
        .collect()
}

/// Whether all that was said of a thing since it was created was undone.
fn stands_as_created(ledger: &Ledger, subject: SubjectId, act: ActId) -> bool {
    let said = ledger.fields(subject).flat_map(|name| ledger.history(subject, name));
    let since = said.filter(|fact| fact.act() != act);
    ledger.removal(subject) == Removal::Present && Replay::of(since).standing.is_empty()
}

impl Store {
    /// Undoes an act; returns the act that does so.
    ///
    /// # Errors
    /// [`FactsError::Undo`](crate::error::FactsError::Undo) if it cannot be undone, or what a write reports.
    pub fn undo(&mut self, act: ActId) -> Result<ActId> {
        can_undo(self.ledger(), act)?;
        let (mut act, by) = (act, self.author());
        // Of one that was undone and done again, the act that did it again is undone.
        let mut undoing = ActId::undoing(act, by);
        while !self.ledger().of_act(ActId::undoing(undoing, by)).is_empty() {
            act = ActId::undoing(undoing, by);
            undoing = ActId::undoing(act, by);
        }
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
    // Nothing replaces these facts but what is taken off with them, so what remains is whole.
    let mut before = ledger.clone();
    let gone = facts.iter().flat_map(|fact| on_top(ledger, fact).into_iter().chain([*fact])).map(Fact::id);
    before.take_back(Taken { new: gone.collect(), forgotten: Vec::new() });

    let created = created(ledger, act, &facts);
    let removals: Vec<Edit> = created.iter().map(|&subject| ledger.remove(subject)).collect();
    let mut undone = ledger.plan(undoing, by, clock, &removals)?;
    let mut touched: BTreeMap<SubjectId, BTreeMap<&str, Vec<FactId>>> = BTreeMap::new();
    for fact in facts.into_iter().filter(|fact| !created.contains(&fact.subject())) {
        // What stands for the fact now, where it was replaced and that was undone.
        let on_top: BTreeSet<FactId> = on_top(ledger, fact).iter().map(|fact| fact.id()).collect();
        let live = ledger.live(fact.subject(), fact.field()).into_iter().map(Fact::id);
        let mine = live.filter(|&id| id == fact.id() || on_top.contains(&id));
        touched.entry(fact.subject()).or_default().entry(fact.field()).or_default().extend(mine);
    }
    for (subject, mut fields) in touched {
        let was_hidden = matches!(before.removal(subject), Removal::Removed { .. })
            || (fields.contains_key(REMOVED) && was_hidden_then(ledger, subject, act));
        let said = undone.len();
        let removed_by_act = if was_hidden { fields.remove(REMOVED) } else { None };
        for (name, mine) in fields {
            for value in values_before(ledger, &before, subject, name) {
                for &id in &mine {
                    clock.raise(id);
                }
                undone.push(Fact::new(clock.next_id(), undoing, by, subject, name, &value, mine.clone())?);
            }
        }
        if was_hidden {
            // Hidden again, with what is said again here.
            let removal = ledger.remove_with(subject, undone.iter().skip(said).map(Fact::id));
            match removed_by_act {
                // The act removed what was hidden already, or brought it back: that is answered even where the same
                // removal stands, or there would be nothing to undo again.
                Some(mut mine) => {
                    mine.extend(ledger.live(subject, REMOVED).iter().map(|fact| fact.id()));
                    for &id in &mine {
                        clock.raise(id);
                    }
                    let id = clock.next_id();
                    undone.push(Fact::new(id, undoing, by, subject, REMOVED, &removal.value, mine)?);
                }
                None => undone.extend(ledger.plan(undoing, by, clock, &[removal])?),
            }
        }
    }
    Ok(undone)
}

/// Whether a thing was hidden just before an act, and what stands on it is the same now: perhaps under other ids,
/// because it was undone and done again meanwhile, which the removal could not have seen.
fn was_hidden_then(ledger: &Ledger, subject: SubjectId, act: ActId) -> bool {
    let Some(first) = ledger.of_act(act).iter().map(|fact| fact.id()).min() else { return false };
    let said = || ledger.fields(subject).flat_map(|name| ledger.history(subject, name));
    let mut then = Ledger::new();
    let mut before: Vec<&Fact> = said().filter(|fact| fact.id() < first).collect();
    before.sort_by_key(|fact| fact.id());
    // What a fact replaces is older and of the same field, so none is missing.
    if before.into_iter().any(|fact| then.insert(fact.clone()).is_err()) {
        return false;
    }
    let content = || said().filter(|fact| fact.field() != REMOVED && fact.act() != act);
    matches!(then.removal(subject), Removal::Removed { .. })
        && Replay::of(content().filter(|fact| fact.id() < first)).first_ones()
            == Replay::of(content()).first_ones()
}

/// What has to be said so that a field stands as it did in `before`.
fn values_before(ledger: &Ledger, before: &Ledger, subject: SubjectId, name: &str) -> Vec<Value> {
    let stood: Vec<&Fact> =
        before.live(subject, name).into_iter().filter(|fact| !fact.is_forgotten()).collect();
    let live: BTreeSet<FactId> = ledger.live(subject, name).iter().map(|fact| fact.id()).collect();
    // What others said meanwhile stands anyway. What only the act replaced has to be said again.
    let mut again: Vec<Value> = Vec::new();
    for fact in stood.iter().filter(|fact| !live.contains(&fact.id())) {
        if !again.contains(fact.value()) {
            again.push(fact.value().clone());
        }
    }
    if again.is_empty() {
        // To agree with what stands, or to empty the field.
        again.push(stood.last().map_or(Value::Null, |fact| fact.value().clone()));
    }
    again
}
