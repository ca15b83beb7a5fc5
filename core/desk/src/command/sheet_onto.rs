//! `legwork sheet --change`: what a sheet says otherwise than a survey that is there, told as a list, and made with a yes.

use std::collections::BTreeSet;
use std::path::Path;

use facts::fact::{ActId, Edit, FactClock, Ledger, SubjectId};
use facts::store::{Store, peek};
use house::record::{Feed, Survey, field, fold};
use house::story;
use phrase::{Arg, Phrase};
use serde::Serialize;
use serde_json::Value;

use super::context::Context;
use super::record::{RecordTeller, ThingJson};
use super::sheet::read_onto;
use crate::author;
use crate::error::DeskError;
use crate::sheet::{Called, Known, edits_onto};

#[derive(Serialize)]
struct ChangesJson {
    survey: String,
    changes: Vec<ChangeJson>,
    loose_then: Vec<String>,
    two_on_a_port: Vec<String>,
    act: Option<ActId>,
}

#[derive(Serialize)]
struct ChangeJson {
    thing: ThingJson,
    is_new: bool,
    field: String,
    before: Value,
    after: Value,
    told: String,
}

/// Lists the changes; with `yes` makes them, as one act.
pub fn run(context: &Context, file: &Path, folder: &Path, yes: bool) -> Result<(), DeskError> {
    let mut store = if yes {
        peek(folder)?;
        Store::open(folder, author::this_computer()?)?
    } else {
        Store::open_to_read(folder, facts::fact::AuthorId::random())?
    };
    let survey = fold(store.ledger(), store.survey_id())?;
    let called = Called::by_tags(&survey).map_err(|tag| DeskError::TagTwice { tag })?;
    let sheet = read_onto(file, &Known::of(&survey, &called))?;
    let edits = edits_onto(&sheet, &survey, store.ledger(), &called);
    let before = store.ledger().clone();
    let then = with(&before, &edits)?;
    let house = fold(&then, store.survey_id())?;
    let act = if yes && !edits.is_empty() { Some(store.write(&edits)?) } else { None };
    let stood = RecordTeller::of(context, &before, store.survey_id(), store.author())?;
    let stands = RecordTeller::of(context, &then, store.survey_id(), store.author())?;
    let one = |edit: &Edit| {
        let was = before.shown(edit.subject, &edit.field).map(|fact| fact.value().clone());
        let was = was.unwrap_or_default();
        let is_new = before.shown(edit.subject, field::IS).is_none() && edit.subject != survey.id;
        let id = if was.is_null() { "desk-change-said" } else { "desk-change-otherwise" };
        let told = Phrase::new(id)
            .phrase("what", story::field_name(&edit.field))
            .text("before", stood.value(&edit.field, &was))
            .text("after", stands.value(&edit.field, &edit.value));
        ChangeJson {
            thing: stands.thing(edit.subject),
            is_new,
            field: edit.field.clone(),
            before: was,
            after: edit.value.clone(),
            told: context.say(&told),
        }
    };
    let listed = by_thing(&edits);
    let told = listed.iter().copied().map(one).collect();
    let as_json = ChangesJson {
        survey: folder.display().to_string(),
        changes: told,
        loose_then: loose_then(&survey, &house),
        two_on_a_port: two_on_a_port(&survey, &house),
        act,
    };
    context.answer(&as_json, |page| {
        let count = Arg::Count(as_json.changes.len() as u64);
        let head = match (as_json.changes.is_empty(), yes) {
            (true, _) => "desk-changes-none",
            (false, true) => "desk-changes-made",
            (false, false) => "desk-changes",
        };
        page.paragraph(0, &context.say(&Phrase::new(head).with("count", count)));
        let mut of: Option<SubjectId> = None;
        for (edit, change) in listed.iter().zip(&as_json.changes) {
            if of.replace(edit.subject) != Some(edit.subject) {
                let thing = stands.thing_phrase(edit.subject);
                let id = if change.is_new { "desk-change-new" } else { "desk-change-of" };
                page.title(&context.say(&Phrase::new(id).phrase("thing", thing)));
            }
            page.item(2, &change.told);
        }
        for (id, tags) in
            [("desk-changes-loose", &as_json.loose_then), ("desk-changes-two", &as_json.two_on_a_port)]
        {
            if !tags.is_empty() {
                page.gap();
                let tags = tags.iter().map(|tag| Arg::Text(tag.clone())).collect();
                page.paragraph(0, &context.say(&Phrase::new(id).with("tags", Arg::Several(tags))));
            }
        }
        if !yes && !as_json.changes.is_empty() {
            page.gap();
            page.paragraph(0, &context.word("desk-changes-yes"));
        }
    })
}

/// What is said of each thing together, the things in the order of the sheet.
fn by_thing(edits: &[Edit]) -> Vec<&Edit> {
    let place = |subject: SubjectId| edits.iter().position(|edit| edit.subject == subject);
    let mut listed: Vec<&Edit> = edits.iter().filter(|edit| edit.field != field::IS).collect();
    listed.sort_by_key(|edit| place(edit.subject));
    listed
}

/// The ledger as it would be with these edits.
fn with(ledger: &Ledger, edits: &[Edit]) -> Result<Ledger, DeskError> {
    let mut then = ledger.clone();
    let mut clock = FactClock::system();
    if let Some(newest) = ledger.facts().next_back() {
        clock.raise(newest.id());
    }
    let author = facts::fact::AuthorId::random();
    let facts = then.plan(ActId::random(), author, &mut clock, edits).map_err(facts::FactsError::from)?;
    for fact in facts {
        then.insert(fact)?;
    }
    Ok(then)
}

fn tag(survey: &Survey, part: SubjectId) -> String {
    let tag = survey.parts.get(&part).and_then(|part| part.tag.clone());
    tag.unwrap_or_else(|| part.to_string())
}

/// Parts that would no longer be traced.
fn loose_then(before: &Survey, then: &Survey) -> Vec<String> {
    let loose = then.wiring.loose().keys().filter(|part| !before.wiring.loose().contains_key(*part));
    let was_there = |part: &&SubjectId| before.parts.contains_key(*part);
    let mut tags: Vec<_> = loose.filter(was_there).map(|part| tag(then, *part)).collect();
    tags.sort();
    tags
}

/// Parts that would share a port and did not before.
fn two_on_a_port(before: &Survey, then: &Survey) -> Vec<String> {
    let shared = |survey: &Survey| {
        let feed = |part: &house::record::Part| match &part.feed {
            Some(Feed::From(feed)) => Some((feed.part, feed.port)),
            _ => None,
        };
        let mut shared = BTreeSet::new();
        for one in survey.parts.values() {
            let same = |other: &&house::record::Part| {
                other.id != one.id && feed(one).is_some() && feed(other) == feed(one)
            };
            if survey.parts.values().any(|other| same(&other)) {
                shared.insert(one.id);
            }
        }
        shared
    };
    let mut tags: Vec<_> = shared(then).difference(&shared(before)).map(|part| tag(then, *part)).collect();
    tags.sort();
    tags
}
