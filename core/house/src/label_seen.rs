//! Label texts that were read on this device before.

use std::collections::BTreeMap;

use facts::Result;
use facts::fact::SubjectId;
use facts::home::Home;
use facts::store::Standing;

use crate::rating::PartRating;
use crate::record::field;

/// What is printed on one part, as somebody typed it.
struct LabelTyped {
    text: String,
    /// The rating that somebody set right by hand on that part, if anyone did.
    rating: Option<PartRating>,
    /// When the text was written, milliseconds since 1970.
    ms: u64,
}

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

/// The label texts in all surveys of the list, whoever typed them: one entry for each text, whatever its spaces and
/// capitals, those that stand on most parts first, then the newest. A survey in trouble is passed over.
///
/// # Errors
/// As [`Home::list`].
pub fn labels_seen(home: &Home) -> Result<Vec<LabelSeen>> {
    let surveys = home.standing(&[field::LABEL, field::RATING])?;
    Ok(gathered(surveys.into_iter().flat_map(typed)))
}

/// The label texts that stand in one survey, oldest first.
fn typed(standing: Vec<Standing>) -> Vec<LabelTyped> {
    let mut texts = Vec::new();
    let mut ratings: BTreeMap<SubjectId, PartRating> = BTreeMap::new();
    for Standing { subject, field, value, ms } in standing {
        if field == field::RATING {
            // A rating of another release counts as none.
            if let Ok(rating) = serde_json::from_value(value) {
                ratings.insert(subject, rating);
            }
        } else if let Some(text) = value.as_str() {
            texts.push((subject, text.to_owned(), ms));
        }
    }
    let typed = |(subject, text, ms)| LabelTyped { text, rating: ratings.get(&subject).cloned(), ms };
    texts.into_iter().map(typed).collect()
}

fn gathered(typed: impl IntoIterator<Item = LabelTyped>) -> Vec<LabelSeen> {
    let mut by_text: BTreeMap<String, LabelSeen> = BTreeMap::new();
    for label in typed {
        let words: Vec<String> = label.text.split_whitespace().map(str::to_lowercase).collect();
        if words.is_empty() {
            continue;
        }
        let seen = by_text.entry(words.join(" ")).or_insert_with(|| LabelSeen {
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
