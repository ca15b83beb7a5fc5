//! Settling a disagreement by a choice: one fact over all sides, which ends it in every copy.

use crate::error::{FactsError, Result};
use crate::fact::{ActId, Edit, FactId, SubjectId};
use crate::store::Store;

impl Store {
    /// Settles the disagreement on a field by choosing what one side says. To settle it by saying something else,
    /// write that as an ordinary edit.
    ///
    /// # Errors
    /// [`FactsError::NothingToSettle`] if there is no disagreement or `chosen` is not one of its sides; what a write
    /// reports.
    pub fn settle(&mut self, subject: SubjectId, field: &str, chosen: FactId) -> Result<ActId> {
        let found = self.ledger().disagreement(subject, field).ok_or(FactsError::NothingToSettle)?;
        let side = found.sides.iter().find(|side| side.id() == chosen).ok_or(FactsError::NothingToSettle)?;
        let value = side.value().clone();
        self.write(&[Edit::new(subject, field, value)])
    }
}
