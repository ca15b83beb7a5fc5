//! What was picked, written or typed on a screen and is not yet an answer. It outlives the app's death.

use std::collections::BTreeMap;

use phrase::Phrase;
use serde::{Deserialize, Serialize};

use crate::deed::Deed;
use crate::number;
use crate::number::Quantity;

/// What one block was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Given {
    /// Options by key.
    Picked(Vec<String>),
    /// A text.
    Written(String),
    /// A number as typed, and the key of its unit.
    Measured(String, String),
}

/// What the blocks of one screen were given, by key.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub(crate) struct Pending(BTreeMap<String, Given>);

impl Pending {
    /// Keeps what a deed gives; returns whether it gave anything.
    pub(crate) fn keep(&mut self, deed: &Deed) -> bool {
        let (key, given) = match deed {
            Deed::Pick { key, picked } => (key, Given::Picked(picked.clone())),
            Deed::Write { key, words } | Deed::Print { key, words } => (key, Given::Written(words.clone())),
            Deed::Measure { key, typed, unit } => (key, Given::Measured(typed.clone(), unit.clone())),
            Deed::Press { .. } | Deed::Photo { .. } | Deed::File { .. } | Deed::Back => return false,
        };
        self.0.insert(key.clone(), given);
        true
    }

    /// Whether nothing was given.
    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The options picked in a choice; `None` while nobody touched it.
    pub(crate) fn picked(&self, key: &str) -> Option<&[String]> {
        match self.0.get(key) {
            Some(Given::Picked(picked)) => Some(picked),
            _ => None,
        }
    }

    /// The one option picked in a choice.
    pub(crate) fn one(&self, key: &str) -> Option<&str> {
        self.picked(key)?.first().map(String::as_str)
    }

    /// The text written; `None` while nobody touched it. Spaces around it are cut.
    pub(crate) fn written(&self, key: &str) -> Option<&str> {
        match self.0.get(key) {
            Some(Given::Written(text)) => Some(text.trim()),
            _ => None,
        }
    }

    /// A number as typed, and its unit; `None` while nobody touched it.
    pub(crate) fn typed(&self, key: &str) -> Option<(&str, &str)> {
        match self.0.get(key) {
            Some(Given::Measured(typed, unit)) => Some((typed, unit)),
            _ => None,
        }
    }

    /// The number typed, in the quantity's own unit; `None` if nothing stands there.
    ///
    /// # Errors
    /// What is wrong with what was typed, and what to do.
    pub(crate) fn number(&self, key: &str, quantity: Quantity) -> Result<Option<f64>, Phrase> {
        let Some((typed, unit)) = self.typed(key) else { return Ok(None) };
        if typed.trim().is_empty() { Ok(None) } else { number::read(typed, unit, quantity).map(Some) }
    }
}
