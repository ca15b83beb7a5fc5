//! What a list without steps says: that there is nothing to do, nothing more, or that it cannot be told yet.

use house::record::{OutcomeKind, Survey};
use phrase::Phrase;

use crate::verdict::Lacking;

/// What is said of a list without steps: that nothing is worth doing, or what is missing before that can be told, of all
/// rooms or of some.
pub fn nothing_to_do(survey: &Survey) -> Vec<Phrase> {
    let lacking = Lacking::of(survey);
    let is_done = survey.works.values().any(|work| work.outcome.end == OutcomeKind::Done);
    let nothing = if is_done { "answer-nothing-more" } else { "answer-nothing-to-do" };
    let nothing = (!lacking.is_of_all()).then(|| Phrase::new(nothing));
    nothing.into_iter().chain(lacking.phrase(survey)).collect()
}
