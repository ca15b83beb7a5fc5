//! The story of a field, a thing, and a whole survey.

use std::collections::BTreeMap;

use super::undo;
use crate::error::UndoFault;
use crate::fact::{ActId, AuthorId, Fact, Ledger, SubjectId};

/// One thing said: a fact, and what replaced it.
#[derive(Debug, Clone, PartialEq)]
pub struct Said<'a> {
    /// Who said what, when, over what.
    pub fact: &'a Fact,
    /// The facts that replaced it, by id; none while it is live.
    pub replaced_by: Vec<&'a Fact>,
}

impl Said<'_> {
    /// Whether nothing replaced it.
    pub const fn is_live(&self) -> bool {
        self.replaced_by.is_empty()
    }
}

/// One action of somebody.
#[derive(Debug, Clone, PartialEq)]
pub struct Act<'a> {
    /// Its id.
    pub id: ActId,
    /// Who did it.
    pub by: AuthorId,
    /// When, in milliseconds since 1970 by their clock.
    pub ms: u64,
    /// What it said, by id.
    pub facts: Vec<&'a Fact>,
    /// Whether it can be undone now, or why not.
    pub undo: Result<(), UndoFault>,
}

/// All that was ever said about a field, oldest first.
pub fn of_field<'a>(ledger: &'a Ledger, subject: SubjectId, field: &str) -> Vec<Said<'a>> {
    let history = ledger.history(subject, field);
    let replaced_by = |fact: &Fact| -> Vec<&'a Fact> {
        history.iter().copied().filter(|later| later.over().binary_search(&fact.id()).is_ok()).collect()
    };
    history.iter().map(|&fact| Said { fact, replaced_by: replaced_by(fact) }).collect()
}

/// All that was ever said about a thing, oldest first.
pub fn of_subject(ledger: &Ledger, subject: SubjectId) -> Vec<Said<'_>> {
    let mut all: Vec<_> = ledger.fields(subject).flat_map(|field| of_field(ledger, subject, field)).collect();
    all.sort_by_key(|said| said.fact.id());
    all
}

/// All actions, newest first.
pub fn acts(ledger: &Ledger) -> Vec<Act<'_>> {
    let mut by_act: BTreeMap<ActId, Vec<&Fact>> = BTreeMap::new();
    for fact in ledger.facts() {
        by_act.entry(fact.act()).or_default().push(fact);
    }
    let mut acts: Vec<Act<'_>> = by_act
        .into_iter()
        .filter_map(|(id, facts)| {
            let newest = facts.last()?;
            let (by, ms) = (newest.by(), newest.id().ms());
            Some(Act { id, by, ms, facts, undo: undo::can_undo(ledger, id) })
        })
        .collect();
    acts.sort_by_key(|act| std::cmp::Reverse(act.facts.last().map(|fact| fact.id())));
    acts
}
