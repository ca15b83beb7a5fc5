//! Removed things: listed, brought back.

use crate::error::Result;
use crate::fact::{ActId, AuthorId, Edit, Fact, Ledger, Removal, SubjectId};
use crate::store::Store;

/// A thing that is hidden because somebody removed it.
#[derive(Debug, Clone, PartialEq)]
pub struct RemovedThing<'a> {
    /// The thing.
    pub subject: SubjectId,
    /// Who removed it last.
    pub by: AuthorId,
    /// The removal.
    pub fact: &'a Fact,
}

/// A thing that stays because somebody changed it whom the remover had not seen.
#[derive(Debug, Clone, PartialEq)]
pub struct ChangedAfterRemoval<'a> {
    /// The thing.
    pub subject: SubjectId,
    /// The removals, by id.
    pub removed: Vec<&'a Fact>,
    /// What no remover had seen, by id.
    pub changed: Vec<&'a Fact>,
}

/// Everything that is hidden now, the latest removal first.
pub fn removed(ledger: &Ledger) -> Vec<RemovedThing<'_>> {
    let mut things: Vec<_> = ledger
        .subjects()
        .filter_map(|subject| match ledger.removal(subject) {
            Removal::Removed { by, fact } => Some(RemovedThing { subject, by, fact }),
            Removal::Present | Removal::ChangedSince { .. } => None,
        })
        .collect();
    things.sort_by_key(|thing| std::cmp::Reverse(thing.fact.id()));
    things
}

/// Everything that was removed by some and changed by others: to be looked at.
pub fn changed_after_removal(ledger: &Ledger) -> Vec<ChangedAfterRemoval<'_>> {
    ledger
        .subjects()
        .filter_map(|subject| match ledger.removal(subject) {
            Removal::ChangedSince { removed, changed } => {
                Some(ChangedAfterRemoval { subject, removed, changed })
            }
            Removal::Present | Removal::Removed { .. } => None,
        })
        .collect()
}

impl Store {
    /// Removes things, all in one act: hidden, never deleted.
    ///
    /// # Errors
    /// `Fact` if more facts stand on one thing than a removal can list, or what a write reports.
    pub fn remove(&mut self, subjects: &[SubjectId]) -> Result<ActId> {
        let edits: Vec<Edit> = subjects.iter().map(|&subject| self.ledger().remove(subject)).collect();
        self.write(&edits)
    }

    /// Brings removed things back, all in one act.
    ///
    /// # Errors
    /// What a write reports.
    pub fn bring_back(&mut self, subjects: &[SubjectId]) -> Result<ActId> {
        let edits: Vec<Edit> = subjects.iter().map(|&subject| Edit::bring_back(subject)).collect();
        self.write(&edits)
    }
}
