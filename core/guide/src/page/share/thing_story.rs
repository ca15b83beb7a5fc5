//! What was said about one thing: a row for each field, as it stands, by whom.

use facts::fact::{FORGET, REMOVED, SubjectId};
use house::record::field;
use house::story;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, subject: SubjectId) -> Screen {
    let teller = StoryTeller::of(snapshot);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &teller.thing(subject));
    let mut fields: Vec<&str> = snapshot.ledger.fields(subject).filter(|name| *name != FORGET).collect();
    // What it is stands first.
    fields.sort_by_key(|name| *name != field::IS);
    let lead = if fields.is_empty() { "share-nothing-said" } else { "share-thing-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = fields
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .filter_map(|name| row(snapshot, &builder, &teller, subject, name))
        .collect();
    builder.rows(&Phrase::new("share-thing-rows"), rows);
    paging::presses(&mut builder, fields.len());
    // A survey as a whole is deleted, not forgotten.
    if subject != snapshot.survey.id && can_forget(snapshot, subject, None) {
        builder.press(&Key::Forget, &Phrase::new("forget-thing"), PressWeight::Quiet);
    }
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Whether anything stands there that could be forgotten.
pub(super) fn can_forget(snapshot: &SurveySnapshot<'_>, subject: SubjectId, name: Option<&str>) -> bool {
    forgettable(snapshot, subject, name) > 0
}

/// How many facts would be forgotten, at least: a picture that was taken in twice goes twice.
pub(super) fn forgettable(snapshot: &SurveySnapshot<'_>, subject: SubjectId, name: Option<&str>) -> usize {
    let fields = snapshot.ledger.fields(subject).filter(|field| name.is_none_or(|name| name == *field));
    let facts = fields.flat_map(|field| snapshot.ledger.history(subject, field));
    facts.filter(|fact| !fact.is_forgotten() && fact.field() != FORGET).count()
}

fn row(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    teller: &StoryTeller<'_>,
    subject: SubjectId,
    name: &str,
) -> Option<RowEntry> {
    let shown = snapshot.ledger.shown(subject, name)?;
    let (head, says) = match name {
        field::IS | REMOVED => (teller.fact(shown), None),
        _ if snapshot.ledger.disagreement(subject, name).is_some() => {
            (story::field_name(name), Some(Phrase::new("share-said-differently")))
        }
        _ if shown.is_forgotten() => (story::field_name(name), Some(Phrase::new("share-is-forgotten"))),
        _ => (story::field_name(name), Some(teller.value(name, shown.value()))),
    };
    let before = snapshot.ledger.history(subject, name).len().saturating_sub(1);
    let remark = Phrase::new("share-by-and-before")
        .phrase("by", teller.by(shown))
        .with("before", Arg::Count(before as u64));
    Some(builder.row(Some(Key::FieldOf(name.to_owned())), &head, says.as_ref(), Some(&remark)))
}

pub(crate) fn take(subject: SubjectId, done: &Done) -> Move {
    let Done::Press(key) = done else { return Move::Stay };
    let place = match key {
        Key::FieldOf(name) => SharePlace::Field(subject, name.clone()),
        Key::Forget => SharePlace::Forget(subject, None),
        _ => return Move::Stay,
    };
    Move::Go(Place::Share(place))
}
