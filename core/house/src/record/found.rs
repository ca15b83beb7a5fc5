//! The house as it was found: what is known of it, without the changes that were made since.

use std::collections::BTreeSet;

use facts::error::Result;
use facts::fact::{FactId, Ledger, SurveyId};

use super::{Survey, field, fold};

impl Survey {
    /// The house before any piece of work, with everything that is known of it by now; `None` where no work is recorded.
    /// What was said later of something that the work made or changed belongs to the house after it, and is left out with it.
    ///
    /// # Errors
    /// `TooManyParts`, which no survey written here has.
    pub fn as_found(&self, ledger: &Ledger) -> Result<Option<Self>> {
        let made: BTreeSet<_> = self
            .works
            .keys()
            .filter_map(|work| ledger.history(*work, field::CHANGE).first().map(|fact| fact.act()))
            .collect();
        if made.is_empty() {
            return Ok(None);
        }
        let mut before = Ledger::new();
        let mut left_out: BTreeSet<FactId> = BTreeSet::new();
        // A fact is later than those that it replaces, and so comes after them.
        for fact in ledger.facts() {
            let of_work = made.contains(&fact.act()) || self.works.contains_key(&fact.subject());
            if of_work || fact.over().iter().any(|over| left_out.contains(over)) {
                left_out.insert(fact.id());
            } else {
                before.insert(fact.clone())?;
            }
        }
        fold(&before, SurveyId::from_uuid(self.id.uuid())).map(Some)
    }
}
