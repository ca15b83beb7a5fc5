//! One action: what it said, and taking it back.

use facts::act::{UndoFault, can_undo};
use facts::fact::{ActId, Fact, SubjectId};
use house::record::field;
use phrase::Phrase;

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move, Place, SharePlace};
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{ScreenBuilder, StoryTeller, paging};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, act: ActId) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("share-act"));
    let teller = StoryTeller::of(snapshot);
    let facts = snapshot.ledger.of_act(act);
    match facts.first() {
        Some(first) => builder.words(WordsRole::Lead, &teller.by(first)),
        None => builder.words(WordsRole::Lead, &Phrase::new("share-act-gone")),
    }
    let rows: Vec<RowEntry> = facts
        .iter()
        .skip(paging::first(snapshot.pending()))
        .take(paging::ROWS)
        .map(|fact| builder.row(Some(Key::Thing(fact.subject())), &teller.fact(fact), None, None))
        .collect();
    builder.rows(&Phrase::new("share-act-rows"), rows);
    paging::presses(&mut builder, facts.len());
    match can_undo(snapshot.ledger, act) {
        Ok(()) if begins_survey(snapshot, act) => {
            builder.words(WordsRole::Plain, &Phrase::new("share-no-undo-begun"));
        }
        Ok(()) => {
            if facts.iter().any(|fact| fact.by() != snapshot.me) {
                builder.words(WordsRole::Plain, &Phrase::new("share-undo-of-others"));
            }
            builder.press(&Key::Undo, &Phrase::new("share-undo"), PressWeight::Other);
        }
        Err(UndoFault::Nothing) => {}
        Err(fault) => builder.words(WordsRole::Plain, &why_not(fault)),
    }
    builder.press(&Key::Acts, &Phrase::new("share-acts"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Whether a survey began with this action. That is not taken back: a survey is deleted as a whole.
fn begins_survey(snapshot: &SurveySnapshot<'_>, act: ActId) -> bool {
    let is_it = |fact: &&Fact| fact.field() == field::IS && fact.subject() == snapshot.survey.id;
    snapshot.ledger.of_act(act).iter().any(is_it)
}

/// Why an action cannot be taken back, and what to do instead.
fn why_not(fault: UndoFault) -> Phrase {
    Phrase::new(match fault {
        UndoFault::ReplacedSince => "share-no-undo-replaced",
        UndoFault::ChangedSince => "share-no-undo-changed",
        UndoFault::Forgets => "share-no-undo-forgets",
        UndoFault::Forgotten => "share-no-undo-forgotten",
        UndoFault::Nothing => "share-no-undo",
    })
}

pub(crate) fn take(session: &mut Session, act: ActId, done: &Done) -> Result<Move> {
    let Done::Press(key) = done else { return Ok(Move::Stay) };
    match key {
        Key::Undo => {
            if session.with_snapshot(|snapshot| begins_survey(snapshot, act))? {
                return Ok(Move::Stay);
            }
            let open = session.open_survey()?;
            open.introduce()?;
            let undoing = open.store.undo(act)?;
            open.last_act = Some(undoing);
            open.read()?;
            session.tell_done(Phrase::new("share-undone"));
            Ok(Move::Swap(Place::Share(SharePlace::Act(undoing))))
        }
        Key::Acts => Ok(Move::Swap(Place::Share(SharePlace::Acts))),
        _ => Ok(thing_of(done).map_or(Move::Stay, |thing| Move::Go(Place::Share(SharePlace::Thing(thing))))),
    }
}

/// The thing whose row was pressed.
pub(super) fn thing_of(done: &Done) -> Option<SubjectId> {
    match done.pressed()? {
        Key::Thing(thing) => Some(*thing),
        _ => None,
    }
}
