//! `legwork remove`, `removed` and `bring-back`: hidden, never deleted.

use std::path::Path;

use facts::fact::{ActId, SubjectId};
use facts::store::Store;
use house::document::Document;
use house::naming::Hanging;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::names::Names;
use super::teller::{RecordTeller, ThingJson, short};
use super::typed;
use super::{open_to_read, open_to_write};
use crate::command::context::Context;
use crate::error::{DeskError, Unconfirmed, WrongThing};

#[derive(Serialize)]
struct RemovedJson {
    thing: ThingJson,
    author: AuthorJson,
    written_ms: u64,
    told: String,
}

#[derive(Serialize)]
struct ChangedJson {
    act: ActId,
    things: Vec<ThingJson>,
}

/// Lists what was removed.
pub fn list(context: &Context, folder: &Path) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let teller = RecordTeller::new(context, &store)?;
    let ledger = store.ledger();
    let one = |thing: &facts::act::RemovedThing<'_>| RemovedJson {
        thing: teller.thing(thing.subject),
        author: teller.author(thing.by),
        written_ms: thing.fact.id().ms(),
        told: context.say(&teller.removal(thing.subject, thing.fact)),
    };
    let removed = facts::act::removed(ledger);
    let as_json: Vec<RemovedJson> = removed.iter().map(one).collect();
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-removed"));
        let count = Phrase::new("desk-removed-count")
            .with("count", Arg::Count(removed.len() as u64))
            .text("survey", typed(folder));
        page.paragraph(0, &context.say(&count));
        let rows =
            removed.iter().zip(&as_json).map(|(thing, told)| (short(thing.subject), told.told.clone()));
        page.rows(2, &rows.collect::<Vec<_>>());
    })
}

/// Removes things.
pub fn remove(context: &Context, folder: &Path, words: &[String], yes: bool) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let subjects = find(&store, words, false)?;
    if !yes {
        refuse_if_it_carries(context, &store, &subjects)?;
    }
    let act = store.remove(&subjects)?;
    tell(context, (folder, &store), act, &subjects, "desk-removed-done")
}

/// What hangs on a thing is told before anything is removed.
fn refuse_if_it_carries(context: &Context, store: &Store, subjects: &[SubjectId]) -> Result<(), DeskError> {
    let survey = store.survey()?;
    let teller = RecordTeller::new(context, store)?;
    let carries = subjects.iter().map(|&subject| (subject, Hanging::on(&survey, subject)));
    let told: Vec<Arg> = carries
        .filter(|(_, hanging)| !hanging.is_nothing())
        .map(|(subject, hanging)| {
            let told = Phrase::new("desk-remove-carries").phrase("thing", teller.thing_phrase(subject));
            Arg::Phrase(Box::new(told.with("things", Arg::Several(hanging.things()))))
        })
        .collect();
    if told.is_empty() {
        return Ok(());
    }
    Err(DeskError::NotConfirmed(Unconfirmed::Remove { hanging: told }))
}

/// Brings removed things back.
pub fn bring_back(context: &Context, folder: &Path, words: &[String]) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let subjects = find(&store, words, true)?;
    let act = store.bring_back(&subjects)?;
    tell(context, (folder, &store), act, &subjects, "desk-brought-back")
}

/// The things that are meant, all of which must be removed, or must not be.
fn find(store: &Store, words: &[String], want_removed: bool) -> Result<Vec<SubjectId>, DeskError> {
    // A tag may have been given to another part since: then each command means the one that it can do something with.
    let names = if want_removed { Names::removed(store)? } else { Names::shown(store)? };
    let whole = Names::whole(store)?;
    let one = |word: &String| {
        let wrong = |what| DeskError::WrongThing { word: word.clone(), what };
        match names.find(word) {
            Ok(subject) if subject == names.survey().id => Err(wrong(WrongThing::WholeSurvey)),
            Err(DeskError::NoSuchThing { .. }) if whole.find(word).is_ok() => {
                Err(wrong(if want_removed { WrongThing::NotRemoved } else { WrongThing::RemovedAlready }))
            }
            found => found,
        }
    };
    words.iter().map(one).collect()
}

fn tell(
    context: &Context,
    (folder, store): (&Path, &Store),
    act: ActId,
    subjects: &[SubjectId],
    message: &str,
) -> Result<(), DeskError> {
    let teller = RecordTeller::new(context, store)?;
    let things = subjects.iter().map(|&subject| teller.thing(subject)).collect();
    context.answer(&ChangedJson { act, things }, |page| {
        let names = subjects.iter().map(|&subject| Arg::Phrase(Box::new(teller.thing_phrase(subject))));
        let done = Phrase::new(message).with("things", Arg::Several(names.collect())).text("act", short(act));
        let done = done.text("survey", typed(folder));
        page.paragraph(0, &context.say(&done));
    })
}
