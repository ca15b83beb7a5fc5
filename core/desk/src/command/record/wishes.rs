//! `legwork wishes`: what files asked to be forgotten here, and the answer to it.

use std::path::Path;

use facts::fact::Wish;
use facts::home::Home;
use facts::store::Store;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::teller::{self, RecordTeller, ThingJson};
use super::{home_folder, open_to_read, open_to_write};
use crate::command::context::Context;
use crate::error::DeskError;

/// What somebody wants forgotten.
#[derive(Serialize)]
struct WishJson {
    thing: ThingJson,
    field: String,
    asked_by: Option<AuthorJson>,
    told: String,
}

#[derive(Serialize)]
struct WishesJson {
    wishes: Vec<WishJson>,
    /// Whether it was answered by this call, and how.
    answer: Option<&'static str>,
    forgotten_records: usize,
    copies: usize,
}

/// Lists them, or answers them.
pub fn run(context: &Context, folder: &Path, yes: bool, no: bool) -> Result<(), DeskError> {
    let mut store = if yes || no { open_to_write(folder)? } else { open_to_read(folder)? };
    // Named while what they are about is still known.
    let wishes = told(context, &store)?;
    let (mut forgotten, mut copies) = (0, Ok(0));
    if yes && !wishes.is_empty() {
        forgotten = store.agree_to_wishes()?.facts;
        copies = Home::at(&home_folder(folder)).and_then(|home| home.forget_elsewhere(&store));
    } else if no {
        store.refuse_wishes()?;
    }
    let answer = match (yes, no) {
        (true, _) => Some("yes"),
        (_, true) => Some("no"),
        _ => None,
    };
    let copies_told = copies.as_ref().copied().unwrap_or(0);
    let as_json = WishesJson { wishes, answer, forgotten_records: forgotten, copies: copies_told };
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-wishes"));
        let count = Phrase::new("desk-wishes-count").with("count", Arg::Count(as_json.wishes.len() as u64));
        page.paragraph(0, &context.say(&count));
        for wish in &as_json.wishes {
            page.item(2, &wish.told);
        }
        if as_json.wishes.is_empty() {
            return;
        }
        page.gap();
        if yes {
            let done = Phrase::new("desk-wishes-forgotten").with("count", Arg::Count(forgotten as u64));
            page.paragraph(0, &context.say(&done));
        } else if no {
            page.paragraph(0, &context.word("desk-wishes-refused"));
        } else {
            page.paragraph(0, &context.word("desk-wishes-how"));
            page.paragraph(4, &format!("legwork wishes {} --yes", folder.display()));
            page.paragraph(4, &format!("legwork wishes {} --no", folder.display()));
        }
    })?;
    copies.map(drop).map_err(DeskError::from)
}

fn told(context: &Context, store: &Store) -> Result<Vec<WishJson>, DeskError> {
    let teller = RecordTeller::new(context, store)?;
    let one = |wish: Wish| WishJson {
        thing: teller.thing(wish.subject),
        asked_by: wish.by.map(|author| teller.author(author)),
        told: context.say(&teller::wish(Some(&teller), &wish)),
        field: wish.field,
    };
    Ok(store.wishes()?.into_iter().map(one).collect())
}
