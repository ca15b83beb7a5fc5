//! `legwork undo`: taking an action back.

use std::path::Path;

use facts::fact::ActId;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::names::one_by_beginning;
use super::said::tell_facts;
use super::teller::{RecordTeller, SaidJson, short};
use super::{open_to_write, typed};
use crate::command::context::Context;
use crate::error::DeskError;

#[derive(Serialize)]
struct UndoneJson {
    undone: ActId,
    act: ActId,
    said: Vec<SaidJson>,
}

/// Undoes an action, or this computer's newest one that stands.
pub fn run(context: &Context, folder: &Path, act: Option<&str>) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let undone = match act {
        Some(word) => one_by_beginning(facts::act::acts(store.ledger()).iter().map(|act| act.id), word)?,
        None => store.steps().undo.ok_or(DeskError::NothingDone)?,
    };
    let act = store.undo(undone)?;
    let teller = RecordTeller::new(context, &store)?;
    let facts = store.ledger().of_act(act);
    let story: Vec<_> = facts.iter().filter_map(|fact| teller.story_of(fact)).collect();
    let as_json = UndoneJson { undone, act, said: story.iter().map(|said| teller.said(said)).collect() };
    let was = store.ledger().of_act(undone);
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-undone")
            .text("act", short(undone))
            .with("count", Arg::Count(facts.len() as u64));
        page.paragraph(0, &context.say(&done));
        tell_facts(context, &teller, &was, page);
        let again = Phrase::new("desk-undone-again").text("survey", typed(folder)).text("act", short(act));
        page.paragraph(0, &context.say(&again));
    })
}
