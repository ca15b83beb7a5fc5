//! `legwork disagreements`: what people say differently.

use std::path::Path;

use facts::act::ChangedAfterRemoval;
use facts::fact::{Disagreement, Fact, FactId, Ledger};
use phrase::{Arg, Phrase};
use serde::Serialize;
use serde_json::Value;

use super::author_json::AuthorJson;
use super::names::Names;
use super::open_to_read;
use super::teller::{RecordTeller, ThingJson};
use crate::command::context::Context;
use crate::error::DeskError;

#[derive(Serialize)]
struct DisagreementsJson {
    disagreements: Vec<DisagreementJson>,
    changed_after_removal: Vec<ChangedJson>,
}

#[derive(Serialize)]
struct DisagreementJson {
    thing: ThingJson,
    field: String,
    told: String,
    sides: Vec<SideJson>,
    origin: Vec<Value>,
}

#[derive(Serialize)]
struct SideJson {
    side: usize,
    record: FactId,
    author: AuthorJson,
    written_ms: u64,
    value: Value,
    told: String,
}

#[derive(Serialize)]
struct ChangedJson {
    thing: ThingJson,
    told: String,
    removed_by: Vec<AuthorJson>,
    changed_by: Vec<AuthorJson>,
}

/// Lists them.
pub fn run(context: &Context, folder: &Path) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let teller = RecordTeller::new(context, &store)?;
    let names = Names::whole(&store)?;
    let found = in_order(store.ledger());
    let changed = facts::act::changed_after_removal(store.ledger());
    let as_json = DisagreementsJson {
        disagreements: found.iter().map(|one| as_json(context, &teller, one)).collect(),
        changed_after_removal: changed.iter().map(|one| changed_as_json(context, &teller, one)).collect(),
    };
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-disagreements"));
        let count = Phrase::new("desk-disagreements-count").with("count", Arg::Count(found.len() as u64));
        page.paragraph(0, &context.say(&count));
        for (one, told) in found.iter().zip(&as_json.disagreements) {
            page.title(&told.told);
            let side = |side: &SideJson| (side.side.to_string(), side.told.clone());
            page.rows(2, &told.sides.iter().map(side).collect::<Vec<_>>());
            page.paragraph(
                2,
                &format!("legwork settle {} {} {} 1", folder.display(), names.word(one.subject), one.field),
            );
        }
        if !changed.is_empty() {
            page.heading(&context.word("desk-changed-after-removal"));
            for told in &as_json.changed_after_removal {
                page.item(0, &told.told);
            }
        }
    })
}

/// The disagreements of a survey, the newest word first.
fn in_order(ledger: &Ledger) -> Vec<Disagreement<'_>> {
    let mut found = ledger.disagreements();
    found.sort_by_key(|one| std::cmp::Reverse(one.sides.last().map(|side| side.id())));
    found
}

fn as_json(context: &Context, teller: &RecordTeller<'_>, found: &Disagreement<'_>) -> DisagreementJson {
    let side = |(place, fact): (usize, &&Fact)| {
        let told = Phrase::new("desk-side")
            .phrase("author", teller.author_phrase(fact.by()))
            .text("value", teller.value(found.field, fact.value()))
            .text("when", telling::words::date_and_time(fact.id().ms()));
        SideJson {
            side: place + 1,
            record: fact.id(),
            author: teller.author(fact.by()),
            written_ms: fact.id().ms(),
            value: fact.value().clone(),
            told: context.say(&told),
        }
    };
    DisagreementJson {
        thing: teller.thing(found.subject),
        field: found.field.to_owned(),
        told: context.say(&teller.disagreement(found)),
        sides: found.sides.iter().enumerate().map(side).collect(),
        origin: found.origin.iter().map(|fact| fact.value().clone()).collect(),
    }
}

fn changed_as_json(
    context: &Context,
    teller: &RecordTeller<'_>,
    found: &ChangedAfterRemoval<'_>,
) -> ChangedJson {
    let phrases = |facts: &[&Fact]| {
        let mut authors: Vec<_> = facts.iter().map(|fact| fact.by()).collect();
        authors.sort_unstable();
        authors.dedup();
        let named = authors.iter().map(|&author| Arg::Phrase(Box::new(teller.author_phrase(author))));
        (Arg::Several(named.collect()), authors.iter().map(|&author| teller.author(author)).collect())
    };
    let (remover, removed_by) = phrases(&found.removed);
    let (changer, changed_by) = phrases(&found.changed);
    let told = Phrase::new("changed-after-removal")
        .phrase("thing", teller.thing_phrase(found.subject))
        .with("remover", remover)
        .with("changer", changer);
    ChangedJson { thing: teller.thing(found.subject), told: context.say(&told), removed_by, changed_by }
}
