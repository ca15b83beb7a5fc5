//! How large a survey may be.

use super::reserved::{IS, MOST_PARTS, PART};
use super::{Fact, Ledger, Removal, SubjectId};
use crate::error::{FactsError, Result};

impl Ledger {
    /// Refuses more parts than a survey holds: subjects that are shown as a part and not removed.
    ///
    /// # Errors
    /// [`FactsError::TooManyParts`] above [`MOST_PARTS`].
    pub fn check_parts(&self) -> Result<()> {
        let is_part = |&subject: &SubjectId| {
            self.shown(subject, IS).and_then(|fact: &Fact| fact.value().as_str()) == Some(PART)
                && !matches!(self.removal(subject), Removal::Removed { .. })
        };
        let found = self.subjects().filter(is_part).count();
        if found > MOST_PARTS { Err(FactsError::TooManyParts { found, most: MOST_PARTS }) } else { Ok(()) }
    }
}
