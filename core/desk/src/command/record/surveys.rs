//! `legwork surveys`: the surveys in a folder.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::SurveyId;
use facts::home::{Entry, Found, Home};
use facts::store::{Store, peek};
use house::record::field;
use phrase::{Arg, Phrase};
use serde::Serialize;
use telling::words::error::InWords;

use super::{home_folder, is_aside, open_to_read, open_to_write, parent, pattern, repair};
use crate::arguments::SurveysCommand;
use crate::author;
use crate::command::context::Context;
use crate::error::{DeskError, Unconfirmed};
use crate::printed::Page;

#[derive(Serialize)]
struct SurveysJson {
    surveys: Vec<EntryJson>,
    set_aside: Vec<EntryJson>,
}

#[derive(Serialize)]
struct EntryJson {
    survey: String,
    survey_id: Option<SurveyId>,
    name: Option<String>,
    place: Option<String>,
    written_ms: Option<u64>,
    facts: Option<u64>,
    rooms: Option<u64>,
    parts: Option<u64>,
    runs: Option<u64>,
    photos: Option<u64>,
    notes: Option<u64>,
    readings: Option<u64>,
    trouble: Option<String>,
}

impl EntryJson {
    fn of(context: &Context, entry: &Entry) -> Self {
        let (look, trouble) = match &entry.found {
            Found::Survey(look) => (Some(look), None),
            Found::Trouble(error) => (None, Some(context.say(&error.phrase()))),
        };
        let summary = look.map(|look| &look.summary);
        let progress = summary.map(|summary| summary.progress);
        Self {
            survey: shown(&entry.folder),
            survey_id: look.map(|look| look.survey),
            name: summary.and_then(|summary| summary.name.clone()),
            place: summary.and_then(|summary| summary.place.clone()),
            written_ms: summary.and_then(|summary| summary.newest).map(facts::fact::FactId::ms),
            facts: summary.map(|summary| summary.facts),
            rooms: progress.map(|progress| progress.rooms),
            parts: progress.map(|progress| progress.parts),
            runs: progress.map(|progress| progress.runs),
            photos: progress.map(|progress| progress.photos),
            notes: progress.map(|progress| progress.notes),
            readings: progress.map(|progress| progress.readings),
            trouble,
        }
    }
}

/// Lists the surveys in a folder, and those set aside there. None is opened.
pub fn list(context: &Context, folder: &Path) -> Result<(), DeskError> {
    // A home folder that is not there would be made.
    std::fs::read_dir(folder).map_err(|source| DeskError::Read { path: folder.to_owned(), source })?;
    let home = Home::at(folder)?;
    let told = |list: Vec<Entry>| list.iter().map(|entry| EntryJson::of(context, entry)).collect();
    let [surveys, set_aside] = [home.list()?, home.set_aside_list()?].map(told);
    let as_json = SurveysJson { surveys, set_aside };
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-surveys"));
        let count = Phrase::new("desk-surveys-count").with("count", Arg::Count(as_json.surveys.len() as u64));
        page.paragraph(0, &context.say(&count));
        as_json.surveys.iter().for_each(|entry| tell(context, entry, page));
        if !as_json.set_aside.is_empty() {
            page.heading(&context.word("desk-surveys-aside"));
            as_json.set_aside.iter().for_each(|entry| tell(context, entry, page));
        }
    })
}

fn tell(context: &Context, entry: &EntryJson, page: &mut Page) {
    page.title(&entry.survey);
    if let Some(trouble) = &entry.trouble {
        page.paragraph(2, trouble);
        return;
    }
    let name = entry.name.clone().unwrap_or_else(|| context.word("home-untitled"));
    let mut rows = vec![(context.word("desk-surveys-name"), name)];
    rows.extend(entry.place.clone().map(|place| (context.word("desk-surveys-place"), place)));
    rows.extend(entry.written_ms.map(|ms| {
        let when = Phrase::new("desk-surveys-when").text("when", telling::words::date_and_time(ms));
        (context.word("desk-surveys-written"), context.say(&when))
    }));
    let count = |count: Option<u64>| Arg::Count(count.unwrap_or(0));
    let progress = Phrase::new("home-progress")
        .with("rooms", count(entry.rooms))
        .with("parts", count(entry.parts))
        .with("runs", count(entry.runs))
        .with("photos", count(entry.photos));
    rows.push((context.word("desk-surveys-progress"), context.say(&progress)));
    page.rows(2, &rows);
}

/// A path as a user would type it.
fn shown(path: &Path) -> String {
    path.strip_prefix(".").unwrap_or(path).display().to_string()
}

#[derive(Serialize)]
struct ChangedJson {
    survey: Option<String>,
}

#[derive(Serialize)]
struct DeletedJson {
    survey: Option<String>,
    /// Where what was not the survey's own lies now.
    kept: Option<String>,
}

/// Does something with one survey.
pub fn run(context: &Context, command: SurveysCommand) -> Result<(), DeskError> {
    let (now, message) = match command {
        SurveysCommand::Rename { survey, name } => (Some(rename(&survey, &name)?), "desk-surveys-renamed"),
        SurveysCommand::Copy { survey, name } => (Some(copy(&survey, &name)?), "desk-surveys-copied"),
        SurveysCommand::Pattern { survey, name } => {
            (Some(pattern_of(&survey, &name)?), "desk-survey-pattern")
        }
        SurveysCommand::Aside { survey } => (Some(aside(&survey)?), "desk-surveys-set-aside"),
        SurveysCommand::Back { survey } => (Some(back(&survey)?), "desk-surveys-brought-back"),
        SurveysCommand::Delete { survey, yes } => {
            let kept = delete(&survey, yes)?;
            let message = if kept.is_some() { "desk-surveys-deleted-kept" } else { "desk-surveys-deleted" };
            let kept = kept.as_deref().map(shown);
            let told = Phrase::new(message).text("kept", kept.clone().unwrap_or_default());
            let as_json = DeletedJson { survey: None, kept };
            return context.answer(&as_json, |page| page.paragraph(0, &context.say(&told)));
        }
        SurveysCommand::Repair { survey, from, without_lost } => {
            return repair::run(context, &survey, from.as_deref(), without_lost);
        }
    };
    let survey = now.as_deref().map(shown);
    let told = Phrase::new(message).text("survey", survey.clone().unwrap_or_default());
    context.answer(&ChangedJson { survey }, |page| page.paragraph(0, &context.say(&told)))
}

fn rename(folder: &Path, name: &str) -> Result<PathBuf, DeskError> {
    let name = bare(name);
    let home = Home::at(&parent(folder))?;
    peek(folder)?;
    let to = home.place(name)?;
    let stays = to.file_name() == folder.file_name();
    if !stays && to.symlink_metadata().is_ok() {
        return Err(FactsError::AlreadyThere { folder: to }.into());
    }
    // Before the name is written: a folder is moved only while nothing in it is open.
    home.check_at_rest(folder)?;
    let mut store = open_to_write(folder)?;
    let subject = store.survey_id().subject();
    store.write(&[field::survey::NAME.set(subject, name)])?;
    drop(store);
    if stays { Ok(folder.to_owned()) } else { Ok(home.rename(folder, name)?) }
}

fn copy(folder: &Path, name: &str) -> Result<PathBuf, DeskError> {
    let name = bare(name);
    let from: Store = open_to_read(folder)?;
    let home = Home::at(&home_folder(folder))?;
    // Refused before an author is made.
    home.place(name)?;
    Ok(home.copy(&from, name, author::this_computer()?)?.folder().to_owned())
}

/// A survey's name where its folder's was given.
fn bare(name: &str) -> &str {
    name.strip_suffix(".legwork").filter(|bare| !bare.is_empty()).unwrap_or(name)
}

fn aside(folder: &Path) -> Result<PathBuf, DeskError> {
    refuse_if_no_survey(folder)?;
    if is_aside(folder) {
        return Err(DeskError::AsideAlready { path: folder.to_owned() });
    }
    Ok(Home::at(&parent(folder))?.set_aside(folder)?)
}

fn back(folder: &Path) -> Result<PathBuf, DeskError> {
    refuse_if_no_survey(folder)?;
    if !is_aside(folder) {
        return Err(DeskError::NotAside { path: folder.to_owned() });
    }
    Ok(Home::at(&home_folder(folder))?.bring_back(folder)?)
}

fn delete(folder: &Path, yes: bool) -> Result<Option<PathBuf>, DeskError> {
    refuse_if_no_survey(folder)?;
    if !yes {
        return Err(DeskError::NotConfirmed(Unconfirmed::Delete));
    }
    Ok(Home::at(&parent(folder))?.delete(folder)?)
}

/// A damaged survey can be moved and deleted, any other folder cannot.
fn refuse_if_no_survey(folder: &Path) -> Result<(), DeskError> {
    match peek(folder) {
        Err(error @ (FactsError::NotASurvey { .. } | FactsError::Inaccessible { .. })) => Err(error.into()),
        Ok(_) | Err(_) => Ok(()),
    }
}

/// Makes a survey of the next flat, built like one that is there; where it is.
fn pattern_of(folder: &Path, name: &str) -> Result<PathBuf, DeskError> {
    let store = open_to_read(folder)?;
    let survey = house::record::fold(store.ledger(), store.survey_id())?;
    let name = bare(name);
    // Refused before an author is made.
    let to = Home::at(&home_folder(folder))?.place(name)?;
    let author = author::this_computer()?;
    let id = SurveyId::random();
    let edits = pattern::edits(&store, &survey, id.subject(), name);
    Store::create_with(&to, author, id, |unfinished| {
        Store::open(unfinished, author)?.write(&edits).map(drop)
    })?;
    Ok(to)
}
