//! Who did what, the newest first: a row for each action.

use std::collections::BTreeSet;

use facts::fact::{ActId, Fact, Ledger};
use house::record::field;
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::Scene;
use crate::view::{Sketch, Teller, paging};

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("share-acts"));
    let teller = Teller::of(scene);
    let acts = newest_first(scene.ledger);
    let lead = if acts.is_empty() { "share-acts-none" } else { "share-acts-lead" };
    sketch.words(WordsRole::Lead, &Phrase::new(lead));
    let rows: Vec<RowEntry> = acts
        .iter()
        .skip(paging::first(scene.pending()))
        .take(paging::ROWS)
        .filter_map(|act| row(&sketch, &teller, *act))
        .collect();
    sketch.rows(&Phrase::new("share-acts-rows"), rows);
    paging::presses(&mut sketch, acts.len());
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// All actions by their newest fact. Whether each can be taken back is asked only where one is shown.
fn newest_first(ledger: &Ledger) -> Vec<ActId> {
    let mut seen = BTreeSet::new();
    ledger.facts().rev().map(Fact::act).filter(|act| seen.insert(*act)).collect()
}

fn row(sketch: &Sketch<'_>, teller: &Teller<'_>, act: ActId) -> Option<RowEntry> {
    let facts = teller.ledger().of_act(act);
    // What was added says more than what was said of it.
    let first = facts.iter().find(|fact| fact.field() == field::IS).or(facts.first())?;
    let more = facts.len() - 1;
    let remark = (more > 0).then(|| Phrase::new("share-and-more").with("count", Arg::Count(more as u64)));
    let key = Some(Key::Act(act));
    Some(sketch.row(key, &teller.by(first), Some(&teller.fact(first)), remark.as_ref()))
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
