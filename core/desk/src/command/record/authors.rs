//! `legwork authors`: who wrote in a survey, and what one is called oneself.

use std::collections::BTreeMap;
use std::path::Path;

use facts::fact::{ActId, AuthorId, Fact};
use house::record::field;
use house::story;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::{open_to_read, open_to_write};
use crate::command::context::Context;
use crate::error::DeskError;

/// The longest name, in letters: what fits into a line.
const MOST_LETTERS: usize = 60;

#[derive(Serialize)]
struct ShareJson {
    author: AuthorJson,
    records: usize,
    written_ms: u64,
}

/// Lists everybody who wrote here, the last one first.
pub fn list(context: &Context, folder: &Path) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let ledger = store.ledger();
    let mut shares: BTreeMap<AuthorId, (usize, u64)> = BTreeMap::new();
    for fact in ledger.facts() {
        let share = shares.entry(fact.by()).or_default();
        *share = (share.0 + 1, fact.id().ms());
    }
    let mut shares: Vec<(AuthorId, (usize, u64))> = shares.into_iter().collect();
    shares.sort_by_key(|(author, (_, ms))| (std::cmp::Reverse(*ms), *author));
    let as_json: Vec<ShareJson> = shares
        .iter()
        .map(|&(author, (records, written_ms))| ShareJson {
            author: AuthorJson::of(ledger, author, store.author()),
            records,
            written_ms,
        })
        .collect();
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-authors"));
        let row = |&(author, (records, ms)): &(AuthorId, (usize, u64))| {
            let name = match facts::act::author_name(ledger, author) {
                _ if author != store.author() => {
                    let other = story::author(ledger, author, store.author());
                    Phrase::new("desk-author").phrase("author", other)
                }
                Some(name) => Phrase::new("desk-author-you").text("name", name),
                None => Phrase::new("desk-author-you-unnamed"),
            };
            let wrote = Phrase::new("desk-author-records")
                .with("count", Arg::Count(records as u64))
                .text("when", telling::words::date_and_time(ms));
            (context.say(&name), context.say(&wrote))
        };
        for (name, wrote) in shares.iter().map(row) {
            page.title(&name);
            page.paragraph(2, &wrote);
        }
        page.gap();
        page.paragraph(0, &context.word("desk-authors-claim"));
    })
}

#[derive(Serialize)]
struct NamedJson {
    act: Option<ActId>,
    author: AuthorJson,
}

/// Says what this computer's author is called.
pub fn name(context: &Context, folder: &Path, name: &str) -> Result<(), DeskError> {
    let name = name.trim();
    if name.chars().count() > MOST_LETTERS || name.chars().any(char::is_control) {
        return Err(DeskError::NoName { found: name.chars().count(), most: MOST_LETTERS });
    }
    let mut store = open_to_write(folder)?;
    let me = store.author();
    let was_unnamed = facts::act::author_name(store.ledger(), me).is_none();
    // To take back what was never said needs no record; nor does the same name again.
    let act = if name.is_empty() && was_unnamed {
        None
    } else {
        let edit = if name.is_empty() {
            field::author::NAME.clear(me.subject())
        } else {
            facts::act::name_author(me, name)
        };
        let act = store.write(&[edit])?;
        store.ledger().facts().any(|fact: &Fact| fact.act() == act).then_some(act)
    };
    let as_json = NamedJson { act, author: AuthorJson::of(store.ledger(), me, me) };
    context.answer(&as_json, |page| {
        let told = match facts::act::author_name(store.ledger(), me) {
            Some(name) => Phrase::new("desk-author-named").text("name", name),
            None => Phrase::new("desk-author-unnamed"),
        };
        page.paragraph(0, &context.say(&told));
    })
}
