//! `legwork search`: a word in all surveys of a folder: in names, places, tags, labels and notes.

use std::path::Path;

use facts::fact::AuthorId;
use facts::home::Home;
use facts::store::Store;
use house::record::{Survey, field, fold};
use house::story;
use phrase::{Arg, Phrase};
use serde::Serialize;
use telling::words::error::InWords;

use super::teller::{RecordTeller, ThingJson};
use crate::command::context::Context;
use crate::error::DeskError;
use crate::progress::Shown;
use crate::stop::Stop;

#[derive(Serialize)]
struct FoundJson {
    found: Vec<HitJson>,
    not_read: Vec<NotReadJson>,
}

#[derive(Serialize)]
struct HitJson {
    survey: String,
    name: Option<String>,
    set_aside: bool,
    thing: ThingJson,
    field: String,
    text: String,
}

#[derive(Serialize)]
struct NotReadJson {
    survey: String,
    trouble: String,
}

/// Looks for it; case does not matter.
pub fn run(context: &Context, folder: &Path, word: &str) -> Result<(), DeskError> {
    // A home folder that is not there would be made.
    std::fs::read_dir(folder).map_err(|source| DeskError::Read { path: folder.to_owned(), source })?;
    let home = Home::at(folder)?;
    let wanted = word.trim().to_lowercase();
    if wanted.is_empty() {
        return Err(DeskError::EmptyWord);
    }
    let (mut found, mut not_read) = (Vec::new(), Vec::new());
    let (list, aside) = (home.list()?, home.set_aside_list()?);
    let stop = Stop::listen()?;
    let mut shown = Shown::new(&stop, &context.language, "desk-doing-search");
    let (mut done, of) = (0, (list.len() + aside.len()) as u64);
    for (entries, set_aside) in [(list, false), (aside, true)] {
        for entry in entries {
            shown.show(done, of);
            if stop.is_asked() {
                return Err(DeskError::Stopped);
            }
            done += 1;
            let survey = entry.folder.strip_prefix(".").unwrap_or(&entry.folder).display().to_string();
            match in_survey(context, &entry.folder, &wanted) {
                Ok(hits) => found.extend(hits.into_iter().map(|(name, thing, field, text)| HitJson {
                    survey: survey.clone(),
                    name,
                    set_aside,
                    thing,
                    field: field.to_owned(),
                    text,
                })),
                Err(error) => not_read.push(NotReadJson { survey, trouble: context.say(&error.phrase()) }),
            }
        }
    }
    drop(shown);
    let as_json = FoundJson { found, not_read };
    context.answer(&as_json, |page| {
        let count = Arg::Count(as_json.found.len() as u64);
        page.paragraph(0, &context.say(&Phrase::new("desk-search").text("word", word).with("count", count)));
        let mut of = None;
        for hit in &as_json.found {
            if of.replace(&hit.survey) != Some(&hit.survey) {
                page.title(&hit.survey);
            }
            let told = Phrase::new("desk-search-hit")
                .text("thing", &hit.thing.told)
                .phrase("field", story::field_name(&hit.field))
                .text("text", &hit.text);
            page.item(2, &context.say(&told));
        }
        for one in &as_json.not_read {
            page.title(&one.survey);
            page.paragraph(2, &one.trouble);
        }
    })
}

type Hit = (Option<String>, ThingJson, &'static str, String);

fn in_survey(context: &Context, folder: &Path, wanted: &str) -> Result<Vec<Hit>, DeskError> {
    let store = Store::open_to_read(folder, AuthorId::random())?;
    let survey = fold(store.ledger(), store.survey_id())?;
    let teller = RecordTeller::new(context, &store)?;
    let hits = texts(&survey).filter(|(_, _, text)| text.to_lowercase().contains(wanted));
    Ok(hits
        .map(|(subject, name, text)| (survey.name.clone(), teller.thing(subject), name, text.to_owned()))
        .collect())
}

/// Every text that people know a survey by.
fn texts(survey: &Survey) -> impl Iterator<Item = (facts::fact::SubjectId, &'static str, &str)> {
    let own = [(field::NAME, &survey.name), (field::PLACE, &survey.place)];
    let own = own.into_iter().filter_map(|(name, text)| Some((survey.id, name, text.as_deref()?)));
    let parts = survey.parts.values().flat_map(|part| {
        let of = [(field::TAG, &part.tag), (field::WHERE, &part.place), (field::LABEL, &part.label)];
        of.into_iter().filter_map(|(name, text)| Some((part.id, name, text.as_deref()?)))
    });
    let runs = survey.runs.values().filter_map(|run| Some((run.id, field::TAG, run.tag.as_deref()?)));
    let rooms = survey.rooms.values().map(|room| (room.id, field::NAME, room.name.as_str()));
    let notes =
        survey.notes.values().map(|note| (note.about.unwrap_or(survey.id), field::TEXT, note.text.as_str()));
    own.chain(parts).chain(runs).chain(rooms).chain(notes)
}
