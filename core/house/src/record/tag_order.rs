//! Tags and names in the order a person expects.

/// What tags are ordered by: those there are before none, letters before numbers, S2 before S10.
pub type TagOrder = (bool, String, u64, String);

/// The order of a tag; what has none comes last. Capitals and small letters are alike until all else is.
pub fn tag_order(tag: Option<&str>) -> TagOrder {
    let Some(tag) = tag else { return (true, String::new(), 0, String::new()) };
    let letters = tag.trim_end_matches(|sign: char| sign.is_ascii_digit());
    let number = tag.strip_prefix(letters).and_then(|digits| digits.parse().ok()).unwrap_or(0);
    (false, letters.to_lowercase(), number, tag.to_owned())
}
