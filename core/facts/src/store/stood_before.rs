//! Putting back what a file brought once something was written since: facts that say what stood before it came.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::error::Result;
use crate::fact::{
    ActId, AuthorId, Edit, FORGET, Fact, FactClock, FactId, Ledger, REMOVED, Removal, SubjectId, removal_of,
};

/// The facts that say what stood before `brought` came, wherever what it brought still stands. What only the file spoke
/// of, and what would be hidden without the file, is hidden.
pub(super) fn as_before(
    ledger: &Ledger,
    brought: &[FactId],
    act: ActId,
    by: AuthorId,
    clock: &mut FactClock,
) -> Result<Vec<Fact>> {
    let brought: BTreeSet<FactId> = brought.iter().copied().collect();
    let about: BTreeSet<(SubjectId, &str)> = brought
        .iter()
        .filter_map(|&id| ledger.fact(id))
        .filter(|fact| fact.field() != FORGET)
        .map(|fact| (fact.subject(), fact.field()))
        .collect();
    let subjects: BTreeSet<SubjectId> = about.iter().map(|(subject, _)| *subject).collect();
    let created: BTreeSet<SubjectId> =
        subjects.iter().copied().filter(|&subject| is_new(ledger, subject, &brought)).collect();
    let hidden: BTreeSet<SubjectId> =
        subjects.iter().copied().filter(|&subject| is_hidden_without(ledger, subject, &brought)).collect();
    let removals: Vec<Edit> = created.iter().map(|&subject| ledger.remove(subject)).collect();
    let mut said = ledger.plan(act, by, clock, &removals)?;
    for (subject, name) in about.into_iter().filter(|(subject, _)| !created.contains(subject)) {
        // A removal lists what it saw, so it is said last.
        if name == REMOVED && hidden.contains(&subject) {
            continue;
        }
        let live = ledger.live(subject, name);
        let over: Vec<FactId> = live.iter().map(|fact| fact.id()).filter(|id| brought.contains(id)).collect();
        if over.is_empty() {
            continue;
        }
        let stood = live_without(ledger, subject, name, &brought);
        // What stands anyway beside what the file brought need not be said again.
        let mut values: Vec<&Value> = Vec::new();
        for fact in &stood {
            if !fact.is_forgotten() && !live.contains(fact) && !values.contains(&fact.value()) {
                values.push(fact.value());
            }
        }
        if values.is_empty() {
            values.push(stood.last().map_or(&Value::Null, |fact| fact.value()));
        }
        for value in values {
            said.push(fact_over(act, by, clock, (subject, name, value), &over)?);
        }
    }
    for subject in hidden.difference(&created).copied() {
        let again: Vec<FactId> = said.iter().filter(|fact| fact.subject() == subject).map(Fact::id).collect();
        if again.is_empty() && matches!(ledger.removal(subject), Removal::Removed { .. }) {
            continue;
        }
        let removal = ledger.remove_with(subject, again.iter().copied()).value;
        let over: Vec<FactId> = ledger.live(subject, REMOVED).iter().map(|fact| fact.id()).collect();
        for &id in &again {
            clock.raise(id);
        }
        said.push(fact_over(act, by, clock, (subject, REMOVED, &removal), &over)?);
    }
    Ok(said)
}

/// A fact over others, newer than they are.
fn fact_over(
    act: ActId,
    by: AuthorId,
    clock: &mut FactClock,
    (subject, name, value): (SubjectId, &str, &Value),
    over: &[FactId],
) -> Result<Fact> {
    for &id in over {
        clock.raise(id);
    }
    Ok(Fact::new(clock.next_id(), act, by, subject, name, value, over.to_vec())?)
}

/// Whether nothing but `brought` was ever said of a thing.
fn is_new(ledger: &Ledger, subject: SubjectId, brought: &BTreeSet<FactId>) -> bool {
    let mut said = ledger.fields(subject).flat_map(|name| ledger.history(subject, name));
    said.all(|fact| brought.contains(&fact.id()))
}

/// What would stand in a field without `brought`, by id.
fn live_without<'a>(
    ledger: &'a Ledger,
    subject: SubjectId,
    name: &str,
    brought: &BTreeSet<FactId>,
) -> Vec<&'a Fact> {
    let others: Vec<&Fact> =
        ledger.history(subject, name).into_iter().filter(|fact| !brought.contains(&fact.id())).collect();
    let replaced: BTreeSet<FactId> = others.iter().flat_map(|fact| fact.over().iter().copied()).collect();
    others.into_iter().filter(|fact| !replaced.contains(&fact.id())).collect()
}

/// Whether a thing would be hidden without `brought`.
fn is_hidden_without(ledger: &Ledger, subject: SubjectId, brought: &BTreeSet<FactId>) -> bool {
    let live = |name: &str| live_without(ledger, subject, name, brought);
    let said = ledger.fields(subject).filter(|&name| name != REMOVED).flat_map(live).collect();
    matches!(removal_of(live(REMOVED), said), Removal::Removed { .. })
}
