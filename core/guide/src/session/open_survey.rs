//! A survey that is open: its store, its records as they stand, and what the guide remembers of it.

use std::path::PathBuf;

use facts::error::{CannotPutBack, FactsError};
use facts::fact::{ActId, Edit, Ledger, Wish, canonical};
use facts::home::Home;
use facts::store::{Returnable, Store};
use house::record::{Survey, fits, fold};

use super::labels_seen::LabelsSeen;
use super::looked::Looked;
use super::memory::{Keep, Memory};
use super::prints::Prints;
use super::results::{Results, Standing};
use super::stakes::Weighing;
use crate::error::Result;

/// A survey that is open.
pub(crate) struct OpenSurvey {
    pub(crate) store: Store,
    pub(crate) survey: Survey,
    pub(crate) memory: Memory,
    /// Counts what was written since it was opened: what was worked out before is then out of date.
    pub(crate) revision: u64,
    /// The newest act of this device, which can be taken back.
    pub(crate) last_act: Option<ActId>,
    /// What its author is called on this device; empty if nothing was said.
    display_name: String,
    /// A file that was looked into and not taken in.
    pub(crate) looked: Option<Looked>,
    /// The place for a file that was given, where one is already. Not remembered: a phone moves its folders.
    pub(crate) file_there: Option<PathBuf>,
    /// What the last file brought, if it can be put back.
    pub(crate) returnable: std::result::Result<Returnable, CannotPutBack>,
    /// What files asked to be forgotten here, and nobody has answered.
    pub(crate) wishes: Vec<Wish>,
    /// Label texts that were typed on this device.
    pub(crate) seen: LabelsSeen,
    /// What follows from the survey, as far as it is worked out.
    pub(crate) results: Results,
    /// What the answers to open questions may change, as far as that is being worked out.
    pub(crate) weighing: Option<Weighing>,
    /// What is printed in its photos, as far as that was read.
    pub(crate) prints: Prints,
}

impl OpenSurvey {
    /// A survey whose store is open. All that its screens are drawn from is read here, since drawing reads no disk.
    pub(super) fn of(mut store: Store, home: &Home, display_name: &str) -> facts::Result<Self> {
        let survey = fold(store.ledger(), store.survey_id())?;
        let mut memory = Memory::of(&store)?;
        memory.keep(&mut store, Keep::Synced)?;
        let returnable = returnable(&mut store)?;
        let wishes = store.wishes()?;
        let display_name = display_name.to_owned();
        Ok(Self {
            store,
            survey,
            memory,
            revision: 0,
            last_act: None,
            display_name,
            looked: None,
            file_there: None,
            returnable,
            wishes,
            seen: LabelsSeen::on(home),
            results: Results::default(),
            weighing: None,
            prints: Prints::default(),
        })
    }

    /// How what follows from the survey stands.
    pub(crate) fn standing(&self) -> Standing<'_> {
        self.results.standing(&self.survey, self.revision)
    }

    /// Writes what was decided as one act; when this returns it is on the disk. What is shown as it stands is not said
    /// again, not even where others disagree: that is settled on a screen of its own.
    pub(crate) fn write(&mut self, edits: &[Edit]) -> Result<()> {
        let says_new = |(place, edit): &(usize, &Edit)| {
            let of = |other: &Edit| (other.subject, &other.field) == (edit.subject, &edit.field);
            // Of several edits to one field the last counts.
            let last = edits.iter().skip(*place).rfind(|other| of(other)).unwrap_or(edit);
            !is_shown(self.store.ledger(), last)
        };
        let new: Vec<Edit> =
            edits.iter().enumerate().filter(says_new).map(|(_, edit)| edit.clone()).collect();
        fits(&new)?;
        if !new.is_empty() {
            self.introduce()?;
            self.last_act = Some(self.store.write(&new)?);
            self.memory.has_answered = true;
            self.read()?;
        }
        Ok(())
    }

    /// Says what whoever writes here is called, as an act of its own: taking back what follows does not take it back.
    pub(crate) fn introduce(&mut self) -> Result<()> {
        let me = self.store.author();
        if !self.display_name.is_empty()
            && facts::act::author_name(self.store.ledger(), me) != Some(&self.display_name)
        {
            self.store.write(&[facts::act::name_author(me, &self.display_name)])?;
        }
        Ok(())
    }

    /// Reads the records anew after something was written.
    pub(crate) fn read(&mut self) -> Result<()> {
        self.survey = fold(self.store.ledger(), self.store.survey_id())?;
        self.returnable = returnable(&mut self.store)?;
        self.wishes = self.store.wishes()?;
        self.revision += 1;
        Ok(())
    }

    /// Drops what was worked out and looked up before something was forgotten: it may stand in there.
    pub(crate) fn drop_what_followed(&mut self, home: &Home) {
        self.results = Results::default();
        self.weighing = None;
        self.prints = Prints::default();
        self.seen = LabelsSeen::on(home);
    }

    /// Reads the records anew if others wrote meanwhile: another program, or long work.
    pub(crate) fn refresh(&mut self) -> Result<()> {
        if self.store.refresh()? { self.read() } else { Ok(()) }
    }
}

/// Whether a value is what is shown of its field already.
fn is_shown(ledger: &Ledger, edit: &Edit) -> bool {
    if edit.fault.is_some() {
        return false;
    }
    match ledger.shown(edit.subject, &edit.field) {
        None => edit.value.is_null(),
        Some(fact) => canonical(&edit.value).ok() == canonical(fact.value()).ok(),
    }
}

/// Whether what the last file brought can be put back, and what that is.
fn returnable(store: &mut Store) -> facts::Result<std::result::Result<Returnable, CannotPutBack>> {
    match store.can_put_back() {
        Ok(brought) => Ok(Ok(brought)),
        Err(FactsError::CannotPutBack(why)) => Ok(Err(why)),
        Err(error) => Err(error),
    }
}
