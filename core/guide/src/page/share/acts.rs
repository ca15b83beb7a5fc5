//! Who did what, the newest first: a row for each action.

use std::collections::BTreeSet;

use facts::fact::{ActId, Fact, Ledger};
use house::record::field;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("share-acts"));
    let teller = StoryTeller::of(snapshot);
    let acts = newest_first(snapshot.ledger);
    let lead = if acts.is_empty() { "share-acts-none" } else { "share-acts-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = acts
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .filter_map(|act| row(&builder, &teller, *act))
        .collect();
    builder.rows(&Phrase::new("share-acts-rows"), rows);
    paging::presses(&mut builder, acts.len());
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// All actions by their newest fact. Whether each can be taken back is asked only where one is shown.
fn newest_first(ledger: &Ledger) -> Vec<ActId> {
    let mut seen = BTreeSet::new();
    ledger.facts().rev().map(Fact::act).filter(|act| seen.insert(*act)).collect()
}

fn row(builder: &ScreenBuilder<'_>, teller: &StoryTeller<'_>, act: ActId) -> Option<RowEntry> {
    let facts = teller.ledger().of_act(act);
    // What was added says more than what was said of it.
    let first = facts.iter().find(|fact| fact.field() == field::IS).or(facts.first())?;
    let more = facts.len() - 1;
    let remark = (more > 0).then(|| Phrase::new("share-and-more").with("count", Arg::Count(more as u64)));
    let key = Some(Key::Act(act));
    Some(builder.row(key, &teller.by(first), Some(&teller.fact(first)), remark.as_ref()))
}

pub(crate) fn take(done: &Done) -> Move {
    act_of(done).map_or(Move::Stay, |act| Move::Go(Place::Share(SharePlace::Act(act))))
}

/// The action whose row was pressed.
pub(super) fn act_of(done: &Done) -> Option<ActId> {
    match done.pressed()? {
        Key::Act(act) => Some(*act),
        _ => None,
    }
}
