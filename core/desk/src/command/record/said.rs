//! `legwork said`: who said what, and when.

use std::path::Path;

use facts::act::Act;
use facts::fact::{ActId, Fact};
use phrase::{Arg, Phrase};
use serde::Serialize;
use telling::words::error::InWords;

use super::author_json::AuthorJson;
use super::names::Names;
use super::open_to_read;
use super::teller::{RecordTeller, SaidJson, short};
use super::typed;
use crate::command::context::Context;
use crate::error::DeskError;
use crate::printed::Page;

/// How many things said of one action are told in words.
const MOST_TOLD: usize = 8;

#[derive(Serialize)]
struct ActJson {
    act: ActId,
    written_ms: u64,
    author: AuthorJson,
    can_undo: bool,
    why_not: Option<String>,
    said: Vec<SaidJson>,
}

/// All actions, or the story of one thing.
pub fn run(
    context: &Context,
    folder: &Path,
    thing: Option<&str>,
    field: Option<&str>,
) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let teller = RecordTeller::new(context, &store)?;
    let ledger = store.ledger();
    let Some(word) = thing else {
        let acts = facts::act::acts(ledger);
        let as_json: Vec<ActJson> = acts.iter().map(|act| as_json(context, &teller, act)).collect();
        return context.answer(&as_json, |page| tell_acts(context, &teller, folder, &acts, page));
    };
    let tells = |subject| field.is_none_or(|field| ledger.fields(subject).any(|name| name == field));
    let subject = Names::whole(&store)?.find_with(word, tells)?;
    let story = match field {
        Some(name) => facts::act::of_field(ledger, subject, name),
        None => facts::act::of_subject(ledger, subject),
    };
    if story.is_empty() {
        let known = ledger.fields(subject).map(str::to_owned).collect();
        return Err(DeskError::NoSuchField { field: field.unwrap_or("anything").to_owned(), known });
    }
    let as_json: Vec<SaidJson> = story.iter().map(|said| teller.said(said)).collect();
    context.answer(&as_json, |page| {
        page.heading(&context.say(&teller.thing_phrase(subject)));
        for said in &story {
            page.item(0, &context.say(&teller.said_phrase(said)));
        }
    })
}

fn as_json(context: &Context, teller: &RecordTeller<'_>, act: &Act<'_>) -> ActJson {
    ActJson {
        act: act.id,
        written_ms: act.ms,
        author: teller.author(act.by),
        can_undo: act.undo.is_ok(),
        why_not: act.undo.err().map(|fault| context.say(&fault.phrase())),
        said: act
            .facts
            .iter()
            .filter_map(|fact| teller.story_of(fact))
            .map(|said| teller.said(&said))
            .collect(),
    }
}

/// What an act said, line by line; of many the first few.
pub(super) fn tell_facts(context: &Context, teller: &RecordTeller<'_>, facts: &[&Fact], page: &mut Page) {
    for fact in facts.iter().take(MOST_TOLD) {
        if let Some(said) = teller.story_of(fact) {
            let line = Phrase::new("desk-said-line")
                .phrase("thing", teller.thing_phrase(fact.subject()))
                .phrase("said", teller.said_phrase(&said));
            page.item(2, &context.say(&line));
        }
    }
    let more = facts.len().saturating_sub(MOST_TOLD);
    if more > 0 {
        let more = Phrase::new("desk-said-more").with("count", Arg::Count(more as u64));
        page.paragraph(2, &context.say(&more));
    }
}

fn tell_acts(context: &Context, teller: &RecordTeller<'_>, folder: &Path, acts: &[Act<'_>], page: &mut Page) {
    page.heading(&context.word("desk-said"));
    for act in acts {
        let head = Phrase::new("desk-said-act")
            .text("act", short(act.id))
            .phrase("author", teller.author_phrase(act.by))
            .text("when", telling::words::date_and_time(act.ms));
        page.title(&context.say(&head));
        tell_facts(context, teller, &act.facts, page);
        if let Err(fault) = act.undo {
            page.paragraph(2, &context.say(&fault.phrase()));
        }
    }
    page.gap();
    page.paragraph(0, &context.say(&Phrase::new("desk-said-undo").text("survey", typed(folder))));
}
