//! The house as it was found: what is known of it, without the changes that were made since.

use std::collections::BTreeSet;

use facts::error::Result;
use facts::fact::{Fact, Ledger, SubjectId, SurveyId};

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
        let of_work = |fact: &Fact| made.contains(&fact.act()) || self.works.contains_key(&fact.subject());
        without(ledger, self.id, of_work).map(|without| Some(without.survey))
    }
}

/// A survey without some of its facts.
pub(super) struct Without {
    pub(super) survey: Survey,
    /// Whether something that stood over one of them went with it.
    pub(super) took_later: bool,
}

/// The survey `id` without these facts, and without what stands over them.
pub(super) fn without(ledger: &Ledger, id: SubjectId, goes: impl Fn(&Fact) -> bool) -> Result<Without> {
    let (mut left, mut gone, mut took_later) = (Ledger::new(), BTreeSet::new(), false);
    // A fact is later than those that it replaces, and so comes after them.
    for fact in ledger.facts() {
        let (goes, stands_over) = (goes(fact), fact.over().iter().any(|over| gone.contains(over)));
        if goes || stands_over {
            gone.insert(fact.id());
            took_later |= !goes;
        } else {
            left.insert(fact.clone())?;
        }
    }
    Ok(Without { survey: fold(&left, SurveyId::from_uuid(id.uuid()))?, took_later })
}
