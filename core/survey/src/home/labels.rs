//! Label texts that were read on this device before.

use std::collections::BTreeMap;

use super::{Found, Home};
use crate::error::Result;
use crate::rating::PartRating;
use crate::store::LabelTyped;
use crate::store::labels::labels;

/// A label text that stands in some survey of this device.
#[derive(Debug, Clone, PartialEq)]
pub struct LabelSeen {
    /// The text, as it was typed last.
    pub text: String,
    /// What its part is rated for, where somebody set right by hand what the text gave.
    pub rating: Option<PartRating>,
    /// On how many parts it stands.
    pub parts: usize,
    /// When it was typed last, milliseconds since 1970.
    pub ms: u64,
}

impl LabelSeen {
    /// One entry for each text, whatever its spaces and capitals: those that stand on most parts first, then the newest.
    pub fn gathered(typed: impl IntoIterator<Item = LabelTyped>) -> Vec<Self> {
        let mut by_text: BTreeMap<String, Self> = BTreeMap::new();
        for label in typed {
            let words: Vec<String> = label.text.split_whitespace().map(str::to_lowercase).collect();
            if words.is_empty() {
                continue;
            }
            let seen = by_text.entry(words.join(" ")).or_insert_with(|| Self {
                text: label.text.clone(),
                rating: None,
                parts: 0,
                ms: 0,
            });
            seen.parts += 1;
            if label.ms >= seen.ms {
                seen.ms = label.ms;
                seen.text = label.text;
                seen.rating = label.rating.or(seen.rating.take());
            } else if seen.rating.is_none() {
                seen.rating = label.rating;
            }
        }
        let mut all: Vec<_> = by_text.into_values().collect();
        all.sort_by_key(|seen| std::cmp::Reverse((seen.parts, seen.ms)));
        all
    }
}

impl Home {
    /// The label texts in all surveys of the list, whoever typed them. A survey in trouble is passed over.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn labels_seen(&self) -> Result<Vec<LabelSeen>> {
        let surveys = self.list()?.into_iter().filter(|entry| matches!(entry.found, Found::Survey(_)));
        let typed = surveys.flat_map(|entry| labels(&entry.folder).unwrap_or_default());
        Ok(LabelSeen::gathered(typed))
    }
}
