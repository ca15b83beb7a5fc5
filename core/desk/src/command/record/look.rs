//! `legwork look`: what a file would bring, without taking it in.

use std::path::Path;

use facts::fact::{AuthorId, SubjectId, SurveyId, Wish};
use facts::file::{self, LeftOut, Limits, Look};
use facts::store::Store;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::author_json::AuthorJson;
use super::open_to_read;
use super::teller::{self, RecordTeller, ThingJson};
use crate::author;
use crate::command::context::Context;
use crate::error::DeskError;
use crate::printed::Page;
use crate::progress::Shown;
use crate::stop::Stop;

/// How many fields of one kind are told in words.
const MOST_TOLD: usize = 20;

/// What a file would bring.
#[derive(Serialize)]
pub struct LookJson {
    file: String,
    survey_id: SurveyId,
    name: Option<String>,
    format: u32,
    core: String,
    left_out: Vec<&'static str>,
    same_survey: bool,
    facts: usize,
    new_facts: usize,
    new_words: usize,
    photos: usize,
    new_photos: usize,
    new_disagreements: Vec<FieldJson>,
    settled: Vec<FieldJson>,
    forgotten: Vec<FieldJson>,
    upheaval: UpheavalJson,
    authors: Vec<ShareJson>,
}

#[derive(Serialize)]
struct FieldJson {
    /// Null where no survey is at hand that knows it.
    thing: Option<ThingJson>,
    field: String,
    /// By whose word it is to be forgotten: null where that is not asked, or not told.
    asked_by: Option<AuthorId>,
}

/// How much of what the survey shows the file would remove or move.
#[derive(Serialize)]
struct UpheavalJson {
    things: usize,
    gone: usize,
    parts: usize,
    parts_changed: usize,
    asks_first: bool,
}

#[derive(Serialize)]
struct ShareJson {
    author: AuthorJson,
    new_facts: usize,
}

/// Tells it.
pub fn run(context: &Context, path: &Path, folder: Option<&Path>, most: u64) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let mut store = folder.map(open_to_read).transpose()?;
    let look = into(context, &stop, path, store.as_mut(), most)?;
    let told = Told::new(context, path, &look)?;
    context.answer(&told.json, |page| {
        told.page(context, page);
        page.gap();
        page.paragraph(0, &context.word("desk-look-nothing-changed"));
    })
}

/// Looks into a file.
pub fn into(
    context: &Context,
    stop: &Stop,
    path: &Path,
    store: Option<&mut Store>,
    most_gib: u64,
) -> Result<Look, DeskError> {
    let mut shown = Shown::new(stop, &context.language, "desk-doing-look");
    Ok(file::look(path, store, limits(most_gib), &mut shown)?)
}

/// The bound on what a file may unfold to.
pub const fn limits(most_gib: u64) -> Limits {
    Limits { total_bytes: most_gib * 1024 * 1024 * 1024 }
}

/// The name of what is left out, in JSON.
pub const fn left_out_name(what: LeftOut) -> &'static str {
    what.word()
}

/// What a look showed, ready to be told.
pub struct Told {
    /// As JSON.
    pub json: LookJson,
    authors: Vec<String>,
    fields: [(&'static str, Vec<String>); 3],
}

impl Told {
    /// Puts it into words, with the names that things have here and in the file.
    pub fn new(context: &Context, path: &Path, look: &Look) -> Result<Self, DeskError> {
        let me = look.author_of(author::known().unwrap_or_else(|| AuthorId::random().into()));
        let names = look.names.as_deref();
        let teller = names.map(|names| RecordTeller::of(context, names, look.survey, me)).transpose()?;
        let one_as_json = |subject: SubjectId, field: &str, asked_by| FieldJson {
            thing: teller.as_ref().map(|teller| teller.thing(subject)),
            field: field.to_owned(),
            asked_by,
        };
        let as_json = |fields: &[(SubjectId, String)]| -> Vec<FieldJson> {
            fields.iter().map(|(subject, field)| one_as_json(*subject, field, None)).collect()
        };
        let told = |fields: &[(SubjectId, String)]| -> Vec<String> {
            fields
                .iter()
                .map(|(subject, field)| context.say(&teller::field_of(teller.as_ref(), *subject, field)))
                .collect()
        };
        let wished = |wish: &Wish| context.say(&teller::wish(teller.as_ref(), wish));
        let shares = look.authors.iter().map(|share| {
            let author = match &share.name {
                _ if share.author == me => Phrase::new("author-you"),
                Some(name) => Phrase::new("author-named").text("name", name),
                None => Phrase::new("author-unnamed").text("id", teller::short(share.author)),
            };
            let line = Phrase::new("desk-look-author")
                .phrase("author", author)
                .with("count", Arg::Count(share.new_facts as u64));
            context.say(&line)
        });
        let share = |share: &file::AuthorShare| ShareJson {
            author: AuthorJson::named(share.author, share.name.clone(), me),
            new_facts: share.new_facts,
        };
        Ok(Self {
            json: LookJson {
                file: path.display().to_string(),
                survey_id: look.survey,
                name: look.name.clone(),
                format: look.format,
                core: look.core.clone(),
                left_out: look.left_out.iter().map(|what| left_out_name(*what)).collect(),
                same_survey: look.same_survey,
                facts: look.facts,
                new_facts: look.new_facts,
                new_words: look.new_words,
                photos: look.photos,
                new_photos: look.new_photos,
                new_disagreements: as_json(&look.new_disagreements),
                settled: as_json(&look.settled),
                forgotten: look
                    .forgotten
                    .iter()
                    .map(|wish| one_as_json(wish.subject, &wish.field, wish.by))
                    .collect(),
                upheaval: UpheavalJson {
                    things: look.upheaval.things,
                    gone: look.upheaval.gone,
                    parts: look.upheaval.parts,
                    parts_changed: look.upheaval.parts_changed,
                    asks_first: look.upheaval.asks_first(),
                },
                authors: look.authors.iter().map(share).collect(),
            },
            authors: shares.collect(),
            fields: [
                ("desk-look-disagreements", told(&look.new_disagreements)),
                ("desk-look-settled", told(&look.settled)),
                ("desk-look-forgotten", look.forgotten.iter().map(wished).collect()),
            ],
        })
    }

    /// Tells it in words.
    pub fn page(&self, context: &Context, page: &mut Page) {
        let json = &self.json;
        let count = |count: usize| Arg::Count(count as u64);
        page.heading(&context.word("desk-look"));
        let name = match &json.name {
            Some(name) => Phrase::new("value-text").text("text", name),
            None => Phrase::new("home-untitled"),
        };
        let of = Phrase::new("desk-look-of")
            .phrase("name", name)
            .with("facts", count(json.facts))
            .with("photos", count(json.photos));
        page.paragraph(0, &context.say(&of));
        for what in &json.left_out {
            page.paragraph(0, &context.word(&format!("desk-look-without-{what}")));
        }
        let brings = Phrase::new(if json.same_survey { "desk-look-brings" } else { "desk-look-brings-all" })
            .with("facts", count(json.new_facts))
            .with("photos", count(json.new_photos))
            .with("disagreements", count(json.new_disagreements.len()))
            .with("forgotten", count(json.forgotten.len()));
        page.paragraph(0, &context.say(&brings));
        for author in &self.authors {
            page.item(2, author);
        }
        if json.upheaval.asks_first {
            let much = Phrase::new("desk-look-upheaval")
                .with("gone", count(json.upheaval.gone))
                .with("things", count(json.upheaval.things))
                .with("changed", count(json.upheaval.parts_changed))
                .with("parts", count(json.upheaval.parts));
            page.paragraph(0, &context.say(&much));
        }
        for (title, fields) in self.fields.iter().filter(|(_, fields)| !fields.is_empty()) {
            page.title(&context.word(title));
            for field in fields.iter().take(MOST_TOLD) {
                page.item(2, field);
            }
            let more = fields.len().saturating_sub(MOST_TOLD);
            if more > 0 {
                page.paragraph(2, &context.say(&Phrase::new("desk-said-more").with("count", count(more))));
            }
        }
    }
}

impl LookJson {
    /// Whether people would agree on everything new.
    pub fn has_no_disagreements(&self) -> bool {
        self.new_disagreements.is_empty()
    }
}
