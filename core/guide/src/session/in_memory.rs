//! A survey in memory, for tests of pages and questions: nothing of it comes near a disk.

use std::cell::OnceCell;

use facts::fact::{ActId, AuthorId, Edit, FactClock, Ledger, SurveyId};
use facts::store::Returnable;
use house::record::{Is, Survey, fold};
use telling::words::{Figures, Language};

use super::labels_seen::LabelsSeen;
use super::memory::Memory;
use super::pending::Pending;
use super::prints::Prints;
use super::results::Standing;
use super::snapshot::SurveySnapshot;
use crate::done::Done;

/// A survey in memory, and what a screen of it was given.
pub(crate) struct InMemory {
    author: AuthorId,
    clock: FactClock,
    id: SurveyId,
    ledger: Ledger,
    survey: Survey,
    memory: Memory,
    seen: LabelsSeen,
    language: Language,
    prints: Prints,
}

impl InMemory {
    /// A survey of which nothing but its kind is known.
    pub(crate) fn new() -> Self {
        let id = SurveyId::random();
        let ledger = Ledger::new();
        let survey = fold(&ledger, id).unwrap();
        let mut made = Self {
            author: AuthorId::random(),
            clock: FactClock::system(),
            id,
            ledger,
            survey,
            memory: Memory::default(),
            seen: LabelsSeen::none(),
            language: crate::words::english(Figures::default()),
            prints: Prints::default(),
        };
        made.write(&[Is::Survey.begin(id.subject())]);
        made
    }

    /// What a screen is drawn from.
    pub(crate) fn snapshot(&self) -> SurveySnapshot<'_> {
        SurveySnapshot {
            file_there: None,
            survey: &self.survey,
            ledger: &self.ledger,
            me: self.author,
            memory: &self.memory,
            seen: &self.seen,
            prints: &self.prints,
            language: &self.language,
            standing: Standing::NotBegun,
            looked: None,
            returnable: &Ok(Returnable { facts: 0, without_trace: true }),
            wishes: &[],
            revision: 0,
            maps: OnceCell::new(),
        }
    }

    /// Keeps what a deed gives.
    pub(crate) fn give(&mut self, done: &Done) {
        self.memory.pending.keep(done);
    }

    /// Writes edits as one act, and forgets what the screen was given.
    pub(crate) fn write(&mut self, edits: &[Edit]) {
        let facts = self.ledger.plan(ActId::random(), self.author, &mut self.clock, edits).unwrap();
        for fact in facts {
            self.ledger.insert(fact).unwrap();
        }
        self.survey = fold(&self.ledger, self.id).unwrap();
        self.memory.pending = Pending::default();
    }
}
