//! Putting a change back, as edits of the record.

use facts::error::Result;
use facts::fact::{Edit, Fact, Ledger};

use super::done::edits_between;
use super::found::without;
use super::{Outcome, OutcomeKind, Survey, Work, field};

impl Work {
    /// The edits that say that this piece of work was put back, with `others_fine` as in [`Outcome`]: the house becomes
    /// what it would be without it, whatever else was written meanwhile. `None` where something that the work wrote was
    /// replaced since: what stood before it is then no longer what to go back to, and only the outcome can be written.
    ///
    /// # Errors
    /// `Fact` if a record cannot be written as a fact.
    pub fn put_back(
        &self,
        survey: &Survey,
        ledger: &Ledger,
        others_fine: Option<bool>,
    ) -> Result<Option<Vec<Edit>>> {
        let Some(before) = self.house_without(survey, ledger)? else { return Ok(None) };
        let mut edits = edits_between(survey, &before, ledger)?;
        edits.push(self.ended_as(Outcome { end: OutcomeKind::PutBack, others_fine }));
        Ok(Some(edits))
    }

    /// The edit that says anew how this piece of work ended.
    pub fn ended_as(&self, outcome: Outcome) -> Edit {
        field::work::OUTCOME.set(self.id, &outcome)
    }

    fn house_without(&self, survey: &Survey, ledger: &Ledger) -> Result<Option<Survey>> {
        let Some(made) = ledger.history(self.id, field::CHANGE).first().map(|fact| fact.act()) else {
            return Ok(None);
        };
        let of_this = |fact: &Fact| fact.act() == made || fact.subject() == self.id;
        let without = without(ledger, survey.id, of_this)?;
        Ok((!without.took_later).then_some(without.survey))
    }
}
