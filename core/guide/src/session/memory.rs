//! What the guide remembers about a survey on this device: where one was, what is half answered, what was put off.
//!
//! It is kept beside the survey's drafts: it outlives the app, is never exported, and no other device needs it.

use std::collections::BTreeSet;

use facts::store::{Draft, Store};
use serde::{Deserialize, Serialize};

use super::pending::Pending;
use crate::error::Result;
use crate::place::{Place, Question};

/// The name under which it lies among the drafts.
const FIELD: &str = "guide";

/// The most screens that one can go back through.
const MOST_BACK: usize = 60;

/// Of so many screens it is kept what was given on them when they were left half answered.
const MOST_LEFT: usize = 30;

/// What the guide remembers.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Memory {
    /// The way to the screen that is shown: the last is the screen itself.
    pub(crate) way: Vec<Place>,
    /// What the screen was given and is not an answer yet.
    pub(crate) pending: Pending,
    /// Questions put off.
    pub(crate) later: BTreeSet<Question>,
    /// What was given on screens that were left before it was an answer, the oldest first.
    left: Vec<(Place, Pending)>,
    /// Whether something was written since one came to this screen: what it was given is an answer then.
    #[serde(skip)]
    pub(crate) has_answered: bool,
}

impl Memory {
    /// What was remembered. What cannot be read any more is forgotten: nothing but the place is lost with it.
    pub(crate) fn of(store: &Store) -> Result<Self> {
        let subject = store.survey_id().subject();
        let drafts = store.drafts()?;
        let kept = drafts.into_iter().find(|draft| draft.subject == subject && draft.field == FIELD);
        Ok(kept.and_then(|draft| serde_json::from_str(&draft.text).ok()).unwrap_or_default())
    }

    /// Keeps it on the disk.
    pub(crate) fn keep(&self, store: &mut Store, now_ms: u64) -> Result<()> {
        let text = serde_json::to_string(self).unwrap_or_default();
        let draft =
            Draft { subject: store.survey_id().subject(), field: FIELD.into(), text, saved_ms: now_ms };
        store.save_draft(&draft)?;
        Ok(())
    }

    /// Goes on to a screen.
    pub(crate) fn go(&mut self, place: Place) {
        self.leave();
        if self.way.last() != Some(&place) {
            self.way.push(place);
        }
        if self.way.len() > MOST_BACK {
            self.way.remove(0);
        }
        self.arrive();
    }

    /// Goes on to a screen in place of the one that is shown.
    pub(crate) fn swap(&mut self, place: Place) {
        self.leave();
        self.way.pop();
        self.go(place);
    }

    /// Goes back one screen; returns whether there was one.
    pub(crate) fn back(&mut self) -> bool {
        self.leave();
        let is_one = self.way.pop().is_some() && !self.way.is_empty();
        self.arrive();
        is_one
    }

    /// Keeps what is half answered with the screen that is left.
    fn leave(&mut self) {
        let given = std::mem::take(&mut self.pending);
        let Some(place) = self.way.last() else { return };
        self.left.retain(|(left, _)| left != place);
        if !given.is_empty() && !std::mem::take(&mut self.has_answered) {
            self.left.push((place.clone(), given));
        }
        if self.left.len() > MOST_LEFT {
            self.left.remove(0);
        }
    }

    /// Takes up what was half answered on the screen that is shown now.
    fn arrive(&mut self) {
        self.has_answered = false;
        let Some(place) = self.way.last() else { return };
        if let Some(at) = self.left.iter().position(|(left, _)| left == place) {
            self.pending = self.left.remove(at).1;
        }
    }
}
