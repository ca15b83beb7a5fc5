//! Label texts that were read on this device before, in any survey: one touch takes one over.

use facts::fact::SubjectId;
use house::label_seen::LabelSeen;
use house::printed::kind_printed;
use house::record::{Part, PartKind, field};
use phrase::Phrase;

use crate::place::{Key, Question};
use crate::question::{Answer, Told};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// The most that are offered at once.
const OFFERED: usize = 8;

fn words(text: &str) -> String {
    text.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

/// What may stand on a part: texts of its kind, that hold what is typed so far.
fn offers(snapshot: &SurveySnapshot<'_>, part: &Part) -> Vec<LabelSeen> {
    let typed = words(snapshot.pending().written(&Key::Text).unwrap_or_default());
    let has = part.label.as_deref().map(words);
    // Typed in this survey since it was opened.
    let here = snapshot.survey.parts.values().filter(|other| other.id != part.id).filter_map(|other| {
        let text = other.label.clone()?;
        let known = snapshot.seen.labels().iter().any(|seen| words(&seen.text) == words(&text));
        (!known).then_some(LabelSeen { text, rating: None, parts: 1, ms: 0 })
    });
    let mut offered: Vec<LabelSeen> = Vec::new();
    for seen in here.chain(snapshot.seen.labels().iter().cloned()) {
        let text = words(&seen.text);
        let fits = text.contains(&typed) && has.as_deref() != Some(text.as_str()) && fits(part, &seen.text);
        if fits && !offered.iter().any(|other| words(&other.text) == text) {
            offered.push(seen);
        }
        if offered.len() == OFFERED {
            break;
        }
    }
    offered
}

/// Whether a print may be that of a part of this kind: it says so, or says of no kind.
fn fits(part: &Part, text: &str) -> bool {
    let printed = label::read(text).kind.and_then(kind_printed);
    part.kind == PartKind::Unknown || printed.is_none_or(|kind| kind == part.kind)
}

/// Offers them on the screen that asks for a part's print.
pub(crate) fn offer_labels(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    question: &Question,
) {
    let Question::Label(id) = question else { return };
    let Some(part) = snapshot.survey.parts.get(id) else { return };
    let rows = offers(snapshot, part)
        .iter()
        .enumerate()
        .map(|(place, seen)| {
            builder.row(Some(Key::SeenNth(place)), &Phrase::new("text").text("text", &seen.text), None, None)
        })
        .collect();
    builder.rows(&Phrase::new("free-seen"), rows);
}

/// The answer that such a touch gives: the text, and the rating where it was set right by hand before.
pub(crate) fn take_label(
    snapshot: &SurveySnapshot<'_>,
    question: &Question,
    key: &Key,
) -> Option<Told<Answer>> {
    let Question::Label(id) = question else { return None };
    let part = snapshot.survey.parts.get(id)?;
    let Key::SeenNth(place) = key else { return None };
    let seen = offers(snapshot, part).into_iter().nth(*place)?;
    Some(Ok(answer(*id, part, &seen)))
}

fn answer(id: SubjectId, part: &Part, seen: &LabelSeen) -> Answer {
    let mut answer = Answer::new().says(id, field::part::LABEL, &seen.text);
    let printed = label::read(&seen.text).kind.and_then(kind_printed);
    if let Some(kind) = printed.filter(|_| part.kind == PartKind::Unknown) {
        answer = answer.says(id, field::part::KIND, &kind);
    }
    match &seen.rating {
        Some(rating) => answer.says(id, field::part::RATING, rating),
        None => answer,
    }
}
