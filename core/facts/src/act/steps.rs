//! Undo and redo as two buttons: the last of somebody's own actions, step by step back and forward again.
//!
//! Which action undid which is read from the actions' ids ([`ActId::undoing`]), so the steps outlive the program and
//! are the same in every copy.

use std::collections::{BTreeMap, BTreeSet};

use crate::error::Result;
use crate::fact::{ActId, AuthorId, Fact, FactId, Ledger};
use crate::store::Store;

/// What the two buttons would do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Steps {
    /// The action that *undo* would undo: the newest that stands. Whether it can be, [`super::can_undo`] tells.
    pub undo: Option<ActId>,
    /// The undo that *redo* would undo: the newest, if nothing else was done since.
    pub redo: Option<ActId>,
}

/// What the two buttons would do for somebody. Undone actions are passed over, so undoing twice goes two steps back.
pub fn steps(ledger: &Ledger, me: AuthorId) -> Steps {
    let replay = Replay::of(ledger.facts().filter(|fact| fact.by() == me));
    Steps { undo: replay.standing.last().copied(), redo: replay.taken_back.last().copied() }
}

/// Actions played through in order, undoing and redoing.
#[derive(Debug, Default)]
pub(super) struct Replay {
    /// The actions that stand, oldest first; of one that was undone and done again, the act that did it again.
    pub standing: Vec<ActId>,
    /// The undos of those that were taken back since the last action that was none, oldest first.
    pub taken_back: Vec<ActId>,
    /// What an act that did one again did again, whatever was undone and done again in between.
    first: BTreeMap<ActId, ActId>,
}

impl Replay {
    /// Plays the acts of facts through, in the order of the facts' ids.
    pub fn of<'a>(facts: impl Iterator<Item = &'a Fact>) -> Self {
        let mut by_newest: BTreeMap<ActId, (FactId, AuthorId)> = BTreeMap::new();
        for fact in facts {
            let newest = by_newest.entry(fact.act()).or_insert((fact.id(), fact.by()));
            *newest = (fact.id().max(newest.0), fact.by());
        }
        let mut acts: Vec<(FactId, ActId)> = by_newest.iter().map(|(&act, &(id, _))| (id, act)).collect();
        acts.sort_unstable();
        let authors: BTreeSet<AuthorId> = by_newest.values().map(|&(_, by)| by).collect();
        let mut turned_by: BTreeMap<ActId, ActId> = BTreeMap::new();
        let mut replay = Self::default();
        for (_, act) in acts {
            let take = |from: &mut Vec<ActId>, wanted| {
                from.iter().rposition(|&act| act == wanted).map(|place| from.remove(place)).is_some()
            };
            match turned_by.get(&act) {
                Some(&turned) if take(&mut replay.standing, turned) => replay.taken_back.push(act),
                Some(&turned) if take(&mut replay.taken_back, turned) => {
                    if let Some(&again) = turned_by.get(&turned) {
                        replay.first.insert(act, replay.first.get(&again).copied().unwrap_or(again));
                    }
                    replay.standing.push(act);
                }
                _ => {
                    replay.standing.push(act);
                    replay.taken_back.clear();
                }
            }
            turned_by.extend(authors.iter().map(|&by| (ActId::undoing(act, by), act)));
        }
        replay
    }

    /// The actions that stand, of those that were done again the first.
    pub fn first_ones(&self) -> BTreeSet<ActId> {
        self.standing.iter().map(|act| self.first.get(act).copied().unwrap_or(*act)).collect()
    }
}

impl Store {
    /// What *undo* and *redo* would do for this store's author.
    pub fn steps(&self) -> Steps {
        steps(self.ledger(), self.author())
    }

    /// Undoes the newest action of this store's author that stands; returns the act that does so, or nothing if there
    /// is none.
    ///
    /// # Errors
    /// As [`Store::undo`].
    pub fn undo_last(&mut self) -> Result<Option<ActId>> {
        self.steps().undo.map(|act| self.undo(act)).transpose()
    }

    /// Does again what was undone last, if nothing else was done since; returns the act that does so.
    ///
    /// # Errors
    /// As [`Store::undo`].
    pub fn redo_last(&mut self) -> Result<Option<ActId>> {
        self.steps().redo.map(|act| self.undo(act)).transpose()
    }
}
