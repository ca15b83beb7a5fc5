//! `legwork note`: notes on anything.

use std::path::Path;

use facts::fact::{Fact, SubjectId};
use facts::store::Store;
use house::document::Document;
use house::record::{Note, field};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::names::Names;
use super::teller::{RecordTeller, ThingJson, short};
use super::{open_to_read, open_to_write};
use crate::command::context::Context;
use crate::error::DeskError;

#[derive(Serialize)]
struct NoteJson {
    note: SubjectId,
    about: Option<ThingJson>,
    text: String,
    author: Option<AuthorJson>,
    written_ms: Option<u64>,
}

impl NoteJson {
    fn of(store: &Store, teller: &RecordTeller<'_>, note: &Note) -> Self {
        let said = store.ledger().shown(note.id, field::TEXT);
        Self {
            note: note.id,
            about: note.about.map(|about| teller.thing(about)),
            text: note.text.clone(),
            author: said.map(|fact| teller.author(fact.by())),
            written_ms: said.map(|fact| fact.id().ms()),
        }
    }
}

/// Adds a note.
pub fn add(context: &Context, folder: &Path, text: &str, on: Option<&str>) -> Result<(), DeskError> {
    if text.trim().is_empty() {
        return Err(DeskError::EmptyNote);
    }
    let mut store = open_to_write(folder)?;
    let about = match on {
        Some(word) => Some(Names::shown(&store)?.find(word)?).filter(|&id| id != store.survey_id().subject()),
        None => None,
    };
    let id = store.add_note(about, text)?;
    let names = Names::shown(&store)?;
    let teller = RecordTeller::new(context, &store)?;
    let note = names.survey().notes.get(&id).ok_or(DeskError::Fault)?;
    context.answer(&NoteJson::of(&store, &teller, note), |page| {
        let thing = teller.thing_phrase(about.unwrap_or_else(|| store.survey_id().subject()));
        let done = Phrase::new("desk-note-added").phrase("thing", thing).text("note", short(id));
        page.paragraph(0, &context.say(&done));
    })
}

/// Lists the notes.
pub fn list(context: &Context, folder: &Path, on: Option<&str>) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let names = Names::shown(&store)?;
    let whole = store.survey_id().subject();
    let on = on.map(|word| names.find(word)).transpose()?;
    let wanted = |note: &&Note| on.is_none_or(|on| note.about.unwrap_or(whole) == on);
    let mut notes: Vec<&Note> = names.survey().notes.values().filter(wanted).collect();
    notes.sort_by_key(|note| store.ledger().shown(note.id, field::TEXT).map(Fact::id));
    let teller = RecordTeller::new(context, &store)?;
    let as_json: Vec<NoteJson> = notes.iter().map(|note| NoteJson::of(&store, &teller, note)).collect();
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-notes"));
        let count = Phrase::new("desk-notes-count").with("count", Arg::Count(notes.len() as u64));
        page.paragraph(0, &context.say(&count));
        for (note, json) in notes.iter().zip(&as_json) {
            let author =
                store.ledger().shown(note.id, field::TEXT).map(|fact| teller.author_phrase(fact.by()));
            let head = Phrase::new("desk-note")
                .text("note", short(note.id))
                .phrase("thing", teller.thing_phrase(note.about.unwrap_or(whole)))
                .phrase("author", author.unwrap_or_else(|| Phrase::new("value-empty")))
                .text("when", json.written_ms.map(telling::words::date_and_time).unwrap_or_default());
            page.title(&context.say(&head));
            for line in note.text.lines() {
                page.paragraph(2, line);
            }
        }
    })
}
