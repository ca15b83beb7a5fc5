//! Taking back what this device did last.

use std::collections::BTreeMap;

use facts::fact::{ActId, Fact, REMOVED, SubjectId};
use house::record::field;
use house::story;
use phrase::{Arg, Phrase};
use serde_json::Value;

use crate::error::Result;
use crate::place::{Key, Move};
use crate::screen::PressWeight;
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, StoryTeller};

/// The newest act of this device if it can be taken back, and what it was. Making the survey itself stays.
fn last(snapshot: &SurveySnapshot<'_>) -> Option<(ActId, Phrase)> {
    let act = snapshot.ledger.facts().rev().find(|fact| fact.by() == snapshot.me)?.act();
    let facts = snapshot.ledger.of_act(act);
    if facts.iter().any(|fact| fact.subject() == snapshot.survey.id && fact.field() == field::IS) {
        return None;
    }
    facts::act::can_undo(snapshot.ledger, act).ok()?;
    Some((act, what(snapshot, &facts)))
}

/// What an act did, by the most telling of the things that it touched.
fn what(snapshot: &SurveySnapshot<'_>, facts: &[&Fact]) -> Phrase {
    let mut things: BTreeMap<SubjectId, Vec<&Fact>> = BTreeMap::new();
    for fact in facts {
        things.entry(fact.subject()).or_default().push(fact);
    }
    let says = |facts: &[&Fact], name: &str| facts.iter().any(|fact| fact.field() == name);
    // What was made or removed tells more than what was written, and a part more than its cable.
    let rank = |subject: SubjectId, facts: &[&Fact]| {
        let is = snapshot.ledger.shown(subject, field::IS).and_then(|fact| fact.value().as_str());
        (!says(facts, field::IS), !says(facts, REMOVED), is != Some("part"), is == Some("run"))
    };
    let Some((subject, said)) = things.iter().min_by_key(|(subject, facts)| rank(**subject, facts)) else {
        return Phrase::new("value-empty");
    };
    let removal = said.iter().find(|fact| fact.field() == REMOVED);
    let id = match removal.map(|fact| fact.value()) {
        Some(Value::Null) => "free-did-bring-back",
        Some(_) => "free-did-remove",
        None if says(said, field::IS) => "free-did-add",
        None => "free-did-write",
    };
    let first = said.first().map_or("", |fact| fact.field());
    let more = u64::try_from(things.len().saturating_sub(1)).unwrap_or(u64::MAX);
    Phrase::new(id)
        .phrase("thing", StoryTeller::of(snapshot).thing(*subject))
        .phrase("field", story::field_name(first))
        .with("more", Arg::Count(more))
}

/// Offers to take the last act back, in words.
pub(super) fn offer(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    if let Some((_, what)) = last(snapshot) {
        builder.press(&Key::Undo, &Phrase::new("free-undo").phrase("what", what), PressWeight::Other);
    }
}

/// Takes it back. That is an act like any other, so it can be taken back too.
pub(crate) fn take(session: &mut Session) -> Result<Move> {
    if let Some((act, what)) = session.with_snapshot(last)? {
        let open = session.open_survey()?;
        open.last_act = Some(open.store.undo(act)?);
        open.read()?;
        session.tell_done(Phrase::new("free-undone").phrase("what", what));
    }
    Ok(Move::Stay)
}
