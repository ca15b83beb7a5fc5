//! What was picked, written or typed on a screen and is not yet an answer. It outlives the app's death.

use std::collections::{BTreeMap, BTreeSet};

use phrase::Phrase;
use serde::{Deserialize, Serialize};

use crate::done::Done;
use crate::number::{self, Quantity};
use crate::place::{Choice, Key};

/// What one block was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Value {
    /// Options by key.
    Picked(Vec<String>),
    /// A text.
    Written(String),
    /// A number as typed, and the key of its unit.
    Measured(String, String),
}

/// What the blocks of one screen were given, by the string of their keys: so it is remembered.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub(crate) struct Pending(BTreeMap<String, Value>);

impl Pending {
    /// Keeps what a deed gives; returns whether it gave anything.
    pub(crate) fn keep(&mut self, done: &Done) -> bool {
        let (key, given) = match done {
            Done::Pick(key, picked) => (key, Value::Picked(picked.clone())),
            Done::Write(key, words) => (key, Value::Written(words.clone())),
            Done::Measure(key, typed, unit) => (key, Value::Measured(typed.clone(), unit.clone())),
            Done::Press(_) | Done::Touch(..) | Done::Photo(..) | Done::File(..) | Done::Back => return false,
        };
        self.0.insert(key.to_string(), given);
        true
    }

    /// Keeps what is picked in a choice.
    pub(crate) fn pick(&mut self, key: &Key, picked: impl IntoIterator<Item = impl Choice>) {
        let picked = picked.into_iter().map(|choice| choice.key()).collect();
        self.0.insert(key.to_string(), Value::Picked(picked));
    }

    /// Keeps a text.
    pub(crate) fn write(&mut self, key: &Key, words: impl Into<String>) {
        self.0.insert(key.to_string(), Value::Written(words.into()));
    }

    /// Forgets what was given under a key.
    pub(crate) fn forget(&mut self, key: &Key) {
        self.0.remove(&key.to_string());
    }

    /// Forgets what was looked for: that is no answer, and elsewhere it would hide what is not looked for.
    pub(crate) fn end_search(&mut self) {
        self.0.remove(&Key::Find.to_string());
    }

    /// The strings of the keys under which something was given.
    pub(crate) fn keys(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }

    /// Whether these options and no others are picked there; `picked` is in order.
    pub(crate) fn has_picked(&self, key: &str, picked: impl Iterator<Item = String>) -> bool {
        let Some(Value::Picked(given)) = self.0.get(key) else { return false };
        let given: BTreeSet<&String> = given.iter().collect();
        given.into_iter().cloned().eq(picked)
    }

    /// Whether this text stands there, whatever spaces are around it.
    pub(crate) fn has_written(&self, key: &str, text: &str) -> bool {
        matches!(self.0.get(key), Some(Value::Written(given)) if given.trim() == text.trim())
    }

    /// Whether this number stands there in this unit.
    pub(crate) fn has_typed(&self, key: &str, text: &str, unit: &str) -> bool {
        let Some(Value::Measured(given, of)) = self.0.get(key) else { return false };
        given.trim() == text.trim() && (of == unit || text.trim().is_empty())
    }

    /// Whether nothing was given.
    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The keys of the options picked in a choice; `None` while nobody touched it.
    pub(crate) fn picked_keys(&self, key: &Key) -> Option<&[String]> {
        match self.0.get(&key.to_string()) {
            Some(Value::Picked(picked)) => Some(picked),
            _ => None,
        }
    }

    /// What is picked in a choice out of a list; `None` while nobody touched it. What the list does not have is left
    /// out.
    pub(crate) fn picked<C: Choice>(&self, key: &Key) -> Option<Vec<C>> {
        Some(self.picked_keys(key)?.iter().filter_map(|key| C::of(key)).collect())
    }

    /// The one answer picked in a choice.
    pub(crate) fn one<C: Choice>(&self, key: &Key) -> Option<C> {
        C::of(self.picked_keys(key)?.first()?)
    }

    /// The text written; `None` while nobody touched it. Spaces around it are cut.
    pub(crate) fn written(&self, key: &Key) -> Option<&str> {
        match self.0.get(&key.to_string()) {
            Some(Value::Written(text)) => Some(text.trim()),
            _ => None,
        }
    }

    /// A number as typed, and its unit; `None` while nobody touched it.
    pub(crate) fn typed(&self, key: &Key) -> Option<(&str, &str)> {
        match self.0.get(&key.to_string()) {
            Some(Value::Measured(typed, unit)) => Some((typed, unit)),
            _ => None,
        }
    }

    /// The number typed, in the quantity's own unit; `None` if nothing stands there.
    ///
    /// # Errors
    /// What is wrong with what was typed, and what to do.
    pub(crate) fn number(&self, key: &Key, quantity: Quantity) -> Result<Option<f64>, Phrase> {
        let Some((typed, unit)) = self.typed(key) else { return Ok(None) };
        if typed.trim().is_empty() { Ok(None) } else { number::read(typed, unit, quantity).map(Some) }
    }
}
