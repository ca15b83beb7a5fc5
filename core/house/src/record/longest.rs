//! How long texts may be that people write: what is longer is refused with the limit, and never cut.

use facts::fact::{Edit, FactFault, MAX_VALUE_BYTES};
use serde_json::Value;

use super::field;

/// The longest tag, in letters: it has to fit on a piece of tape.
pub const LONGEST_TAG: usize = 40;

/// How long a text is and how long it may be, in the same measure; `None` where it fits.
pub fn too_long(name: &str, text: &str) -> Option<(usize, usize)> {
    let found = match name {
        field::TAG => (text.chars().count(), LONGEST_TAG),
        field::LABEL => (text.len(), label::LONGEST_TEXT),
        // As JSON, which is how it is kept.
        _ => (serde_json::to_string(text).map_or(usize::MAX, |json| json.len()), MAX_VALUE_BYTES),
    };
    (found.0 > found.1).then_some(found)
}

/// Refuses edits of which a text is too long, before any of them is written.
///
/// # Errors
/// [`FactFault::TooLong`] with the field, how long its text is, and the limit.
pub fn fits(edits: &[Edit]) -> Result<(), FactFault> {
    let found = edits.iter().find_map(|edit| {
        let Value::String(text) = &edit.value else { return None };
        let (bytes, limit) = too_long(&edit.field, text)?;
        Some(FactFault::TooLong { field: edit.field.clone(), bytes, limit })
    });
    found.map_or(Ok(()), Err)
}

#[cfg(test)]
mod tests {
    use super::*;
    use facts::fact::SubjectId;

    #[test]
    fn each_text_has_its_limit_and_is_refused_beyond_it() {
        let here = SubjectId::random();
        for (name, most) in [("tag", 40), ("label", 1024), ("text", 8190), ("name", 8190), ("where", 8190)] {
            assert_eq!(fits(&[Edit::new(here, name, "x".repeat(most))]), Ok(()), "{name}");
            let fault = fits(&[Edit::new(here, name, "x".repeat(most + 1))]).unwrap_err();
            let FactFault::TooLong { field, bytes, limit } = fault else { panic!("{name}: {fault:?}") };
            assert_eq!((field.as_str(), bytes - limit), (name, 1), "{name}");
        }
    }
}
