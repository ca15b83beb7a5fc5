//! Forgetting what must be able to vanish: an address, a name, a note, a photo.
//!
//! What was said is dropped here and in every copy that takes a file from here, for ever, also against older files.
//! Its frame stays: who said something about what, when, over what. Nothing of the value stays, no hash either. On
//! this device it is also dropped from drafts, small pictures, the database's log and free pages, and copies made
//! for safety. Files that were already sent are out of reach: screens say so first (`forget-warning`).
//!
//! What somebody else wrote meanwhile, and nobody here has seen, is not touched: it is shown, and can be forgotten
//! when it has come.

use crate::error::{FactsError, Result};
use crate::fact::PhotoImage;
use crate::fact::{Edit, Fact, SubjectId, reserved};
use crate::store::Store;

/// What forgetting did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Forgotten {
    /// How many facts were forgotten.
    pub facts: usize,
    /// Whether the bytes are gone from this disk too. If not, because another program has the survey open, the next
    /// opening clears them.
    pub is_cleared: bool,
}

impl Store {
    /// Forgets everything that was ever said about a field, such as the place of the survey.
    ///
    /// # Errors
    /// What a write reports; nothing is forgotten then.
    pub fn forget_field(&mut self, subject: SubjectId, name: &str) -> Result<Forgotten> {
        let edits = self.ledger().forget_field(subject, name);
        self.forget(&edits)
    }

    /// Forgets everything that was ever said about a thing, its kind included: it is then a frame without content.
    ///
    /// # Errors
    /// As [`Store::forget_field`].
    pub fn forget_thing(&mut self, subject: SubjectId) -> Result<Forgotten> {
        let ledger = self.ledger();
        let facts: Vec<&Fact> =
            ledger.fields(subject).flat_map(|name| ledger.history(subject, name)).collect();
        let edits = ledger.forget_facts(facts);
        self.forget(&edits)
    }

    /// Forgets a photo: its picture is deleted, also where the same picture was taken in as another photo.
    ///
    /// # Errors
    /// [`FactsError::NoSuchPhoto`], or as [`Store::forget_field`].
    pub fn forget_photo(&mut self, photo: SubjectId) -> Result<Forgotten> {
        let ledger = self.ledger();
        let images: Vec<PhotoImage> =
            ledger.history(photo, reserved::IMAGE).into_iter().filter_map(PhotoImage::of_fact).collect();
        if images.is_empty() {
            return Err(FactsError::NoSuchPhoto);
        }
        let shows = |fact: &&Fact| {
            PhotoImage::of_fact(fact)
                .is_some_and(|image| images.iter().any(|gone| gone.sha256 == image.sha256))
        };
        let edits = ledger.forget_facts(ledger.facts().filter(shows));
        self.forget(&edits)
    }

    /// Forgets what files asked for ([`Store::wishes`]): the yes of its own that it waited for.
    ///
    /// # Errors
    /// As [`Store::forget_field`].
    pub fn agree_to_wishes(&mut self) -> Result<Forgotten> {
        let before = self.forgotten();
        self.agree()?;
        Ok(Forgotten { facts: self.forgotten() - before, is_cleared: !self.scrub_is_due()? })
    }

    fn forget(&mut self, edits: &[Edit]) -> Result<Forgotten> {
        let before = self.forgotten();
        self.write(edits)?;
        Ok(Forgotten { facts: self.forgotten() - before, is_cleared: !self.scrub_is_due()? })
    }

    fn forgotten(&self) -> usize {
        self.ledger().facts().filter(|fact| fact.is_forgotten()).count()
    }
}
