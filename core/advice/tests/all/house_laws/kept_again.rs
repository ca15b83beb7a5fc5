//! What is kept of a house and read again is what was worked out, figure for figure.

use advice::kept::Kept;

use super::Seen;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let kept = Kept {
        forecast: seen.list.as_found.clone(),
        list: Some(seen.list.clone()),
        stakes: Some(vec![None]),
    };
    let bytes = kept.to_bytes();
    let again = bytes.as_deref().and_then(|bytes| Kept::of_bytes(&seen.survey, bytes));
    if again.as_ref() == Some(&kept) { Vec::new() } else { vec!["kept and read again it is another".into()] }
}
