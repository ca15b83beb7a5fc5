//! A change that was really made, as edits of the record.

use super::{ChangeKind, Differs, Is, Outcome, Survey, field};
use facts::error::Result;
use facts::fact::{Edit, Ledger, Removal, SubjectId};
use indexmap::IndexMap;

impl ChangeKind {
    /// The edits that say that this change was made, and how it ended: what differs between the house before and after,
    /// and a piece of work of its own. Written as one act, they can be undone as one.
    ///
    /// # Errors
    /// `Fact` if a record cannot be written as a fact.
    pub fn done(
        self,
        before: &Survey,
        after: &Survey,
        ledger: &Ledger,
        outcome: Outcome,
    ) -> Result<Vec<Edit>> {
        let mut edits = edits_between(before, after, ledger)?;
        edits.extend(self.ended(outcome));
        Ok(edits)
    }

    /// The edits that say how this change ended where the house is as it was: it could not be done, or was put back.
    pub fn ended(self, outcome: Outcome) -> Vec<Edit> {
        let work = SubjectId::random();
        vec![
            Is::Work.begin(work),
            field::work::CHANGE.set(work, &self),
            field::work::OUTCOME.set(work, &outcome),
        ]
    }
}

/// What has to be said so that the runs, rooms and parts of `before` stand as in `after`.
///
/// # Errors
/// `Fact` if a record cannot be written as a fact.
pub fn edits_between(before: &Survey, after: &Survey, ledger: &Ledger) -> Result<Vec<Edit>> {
    let mut edits = Vec::new();
    between(&before.runs, &after.runs, Is::Run, ledger, &mut edits);
    between(&before.rooms, &after.rooms, Is::Room, ledger, &mut edits);
    between(&before.parts, &after.parts, Is::Part, ledger, &mut edits);
    match edits.iter().find_map(|edit| edit.fault.clone()) {
        Some(fault) => Err(fault.into()),
        None => Ok(edits),
    }
}

fn between<T: Differs + PartialEq>(
    before: &IndexMap<SubjectId, T>,
    after: &IndexMap<SubjectId, T>,
    is: Is,
    ledger: &Ledger,
    edits: &mut Vec<Edit>,
) {
    for (id, there) in after {
        let was = before.get(id);
        if was.is_none() {
            // What was taken out once and comes again is the same thing.
            if ledger.removal(*id) != Removal::Present {
                edits.push(Edit::bring_back(*id));
            }
            edits.push(is.begin(*id));
        }
        if was != Some(there) {
            edits.extend(there.edits_from(was));
        }
    }
    edits.extend(before.keys().filter(|id| !after.contains_key(*id)).map(|id| ledger.remove(*id)));
}
