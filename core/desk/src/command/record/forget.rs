//! `legwork forget`: dropping what was said, for ever.

use std::path::Path;

use facts::fact::PhotoImage;
use facts::fact::{Fact, Ledger, SubjectId};
use facts::forget::Forgotten;
use facts::home::Home;
use house::record::field;
use serde::Serialize;

use facts::store::Store;
use house::story;
use phrase::{Arg, Phrase};

use super::names::Names;
use super::teller::{RecordTeller, ThingJson};
use super::{home_folder, open_to_write};
use crate::command::context::Context;
use crate::error::{DeskError, Unconfirmed, WrongThing};

#[derive(Serialize)]
struct ForgottenJson {
    thing: ThingJson,
    field: Option<String>,
    records: usize,
    is_cleared: bool,
    copies: usize,
}

/// Forgets a field, a thing or a photo; without `yes` only says what that would mean.
pub fn run(
    context: &Context,
    folder: &Path,
    thing: &str,
    name: Option<&str>,
    yes: bool,
) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let subject = Names::whole(&store)?.find(thing)?;
    if name.is_none() && subject == store.survey_id().subject() {
        return Err(DeskError::WrongThing { word: thing.to_owned(), what: WrongThing::WholeSurvey });
    }
    let records = would_go(store.ledger(), subject, name);
    if records == 0 {
        let known = known_fields(store.ledger(), subject);
        return Err(match name {
            Some(name) => DeskError::NoSuchField { field: name.to_owned(), known },
            None => DeskError::WrongThing { word: thing.to_owned(), what: WrongThing::ForgottenAlready },
        });
    }
    if !yes {
        return Err(DeskError::NotConfirmed(Unconfirmed::Forget { records }));
    }
    // Named while its name is still known.
    let (named, told) = {
        let teller = RecordTeller::new(context, &store)?;
        (teller.thing(subject), teller.thing_phrase(subject))
    };
    let done = drop_for_ever(&mut store, subject, name)?;
    let copies = Home::at(&home_folder(folder)).and_then(|home| home.forget_elsewhere(&store));
    let as_json = ForgottenJson {
        thing: named,
        field: name.map(str::to_owned),
        records: done.facts,
        is_cleared: done.is_cleared,
        copies: copies.as_ref().copied().unwrap_or(0),
    };
    context.answer(&as_json, |page| {
        page.paragraph(0, &context.word("forget-warning"));
        page.paragraph(0, &context.word("forget-also"));
        page.gap();
        let what = match name {
            Some(name) => Phrase::new("desk-forgot-field")
                .phrase("field", story::field_name(name))
                .phrase("thing", told),
            None => Phrase::new("desk-forgot-thing").phrase("thing", told),
        };
        page.paragraph(0, &context.say(&what.with("count", Arg::Count(done.facts as u64))));
        page.paragraph(0, &context.word(if done.is_cleared { "forget-done" } else { "forget-later" }));
        if as_json.copies > 0 {
            let copies = Phrase::new("desk-forgot-copies").with("count", Arg::Count(as_json.copies as u64));
            page.paragraph(0, &context.say(&copies));
        }
    })?;
    // It is forgotten here; that a copy could not be told is said after that.
    copies.map(drop).map_err(DeskError::from)
}

fn drop_for_ever(store: &mut Store, subject: SubjectId, name: Option<&str>) -> Result<Forgotten, DeskError> {
    if let Some(name) = name {
        return Ok(store.forget_field(subject, name)?);
    }
    // The same picture may have been taken in twice: it goes wherever it stands.
    let picture = if is_photo(store.ledger(), subject) { store.forget_photo(subject)?.facts } else { 0 };
    let rest = store.forget_thing(subject)?;
    Ok(Forgotten { facts: picture + rest.facts, is_cleared: rest.is_cleared })
}

fn is_photo(ledger: &Ledger, subject: SubjectId) -> bool {
    ledger.history(subject, field::IMAGE).into_iter().any(|fact| PhotoImage::of_fact(fact).is_some())
}

fn known_fields(ledger: &Ledger, subject: SubjectId) -> Vec<String> {
    let known = ledger.fields(subject).filter(|name| would_go(ledger, subject, Some(name)) > 0);
    known.map(str::to_owned).collect()
}

/// How many facts would be forgotten, at least: a picture that was taken in twice goes twice.
fn would_go(ledger: &Ledger, subject: SubjectId, name: Option<&str>) -> usize {
    let fields = ledger.fields(subject).filter(|field| name.is_none_or(|name| name == *field));
    let facts: Vec<&Fact> = fields.flat_map(|field| ledger.history(subject, field)).collect();
    facts.into_iter().filter(|fact| !fact.is_forgotten() && fact.field() != facts::fact::FORGET).count()
}
