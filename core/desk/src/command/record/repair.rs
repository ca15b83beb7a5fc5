//! `legwork surveys repair`: a damaged survey built anew, from what can be read or from a file of it.

use std::path::Path;

use facts::error::FactsError;
use facts::error::NotASurvey;
use facts::fact::{AuthorId, FactId, Ledger, SubjectId};
use facts::file::Limits;
use facts::home::{Home, Repaired};
use facts::store::{Lost, Salvage, peek, salvage};
use house::story;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::home_folder;
use super::teller::{RecordTeller, short};
use crate::author;
use crate::command::context::Context;
use crate::error::DeskError;
use crate::output;
use crate::printed::Page;
use crate::progress::Shown;
use crate::stop::Stop;

/// How many lost records are named.
const MOST_NAMED: usize = 20;

#[derive(Serialize)]
struct RepairedJson {
    survey: String,
    was_damaged: bool,
    facts: usize,
    /// Records of which one bit had changed.
    put_right: usize,
    lost: Vec<LostJson>,
    /// Fields that say again what was said on top of a lost record.
    said_again: usize,
    photos_back: usize,
    damaged: Option<String>,
    /// How many photos are missing or damaged.
    missing_photos: usize,
    /// Their ids.
    lacking: Vec<SubjectId>,
}

/// A record that is lost, as far as it can be read.
#[derive(Serialize)]
struct LostJson {
    record: Option<FactId>,
    thing: SubjectId,
    field: String,
}

/// Repairs it, and says what was found.
pub fn run(
    context: &Context,
    folder: &Path,
    from: Option<&Path>,
    without_lost: bool,
) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    refuse_if_no_survey(folder, from.is_some())?;
    // What others left that died; that it cannot be removed hinders nothing.
    let _ = Home::at(&home_folder(folder)).and_then(|home| home.sweep());
    let me = author::this_computer()?;
    let repaired = match from {
        None if without_lost => Repaired::open_without_lost(folder, me)?,
        None => match Repaired::open(folder, me) {
            Err(error @ FactsError::Damaged { .. }) => {
                tell_what_is_lost(context, folder)?;
                return Err(error.into());
            }
            other => other?,
        },
        Some(path) => {
            let mut shown = Shown::new(&stop, &context.language, "desk-doing-take");
            Repaired::open_with_file(folder, me, path, Limits::default(), &mut shown)?
        }
    };
    let lacking = repaired.store.lacking_photos()?;
    let as_json = RepairedJson {
        survey: folder.display().to_string(),
        was_damaged: repaired.rebuilt.is_some(),
        facts: repaired.store.ledger().len(),
        put_right: repaired.put_right,
        lost: repaired.lost.iter().map(LostJson::of).collect(),
        said_again: repaired.said_again,
        photos_back: repaired.photos_back,
        damaged: repaired
            .rebuilt
            .as_ref()
            .and_then(|rebuilt| rebuilt.damaged.as_ref())
            .map(|damaged| damaged.display().to_string()),
        missing_photos: lacking.len(),
        lacking,
    };
    let teller = RecordTeller::new(context, &repaired.store).ok();
    let is_forgotten = repaired.rebuilt.as_ref().is_some_and(|rebuilt| rebuilt.damaged_is_forgotten);
    context.answer(&as_json, |page| {
        let told = match (&as_json.damaged, from) {
            (Some(damaged), None) => Phrase::new("home-repaired").text("damaged", damaged),
            (Some(damaged), Some(_)) => Phrase::new("desk-repaired-from").text("damaged", damaged),
            (None, _) if is_forgotten => Phrase::new("home-repaired-and-forgotten"),
            (None, _) if as_json.was_damaged => Phrase::new("desk-repaired-from-nothing"),
            (None, Some(_)) => Phrase::new("desk-repair-whole-with-file"),
            (None, None) if as_json.photos_back + as_json.missing_photos > 0 => {
                Phrase::new("desk-repair-records-whole")
            }
            (None, None) => Phrase::new("desk-repair-whole"),
        };
        let count = |count: usize| Arg::Count(count as u64);
        page.paragraph(0, &context.say(&told.with("facts", count(as_json.facts))));
        let mut told_count = |message: &'static str, found: usize| {
            if found > 0 {
                page.paragraph(0, &context.say(&Phrase::new(message).with("count", count(found))));
            }
        };
        told_count("desk-repair-put-right", as_json.put_right);
        told_count("desk-repair-said-again", as_json.said_again);
        told_count("desk-repair-photos-back", as_json.photos_back);
        told_count("desk-repair-photos-lacking", as_json.missing_photos);
        for photo in &as_json.lacking {
            page.item(2, &photo.to_string());
        }
        tell_lost(context, page, "desk-repair-lost", &repaired.lost, teller.as_ref());
    })
}

impl LostJson {
    fn of(lost: &Lost) -> Self {
        Self { record: lost.id, thing: lost.subject, field: lost.field.clone() }
    }
}

/// Names what is lost before the way out is told. Programs read it from the answer to `--without-lost`.
fn tell_what_is_lost(context: &Context, folder: &Path) -> Result<(), DeskError> {
    let Salvage { lost, facts, survey, .. } = salvage(folder)?;
    if context.json || lost.is_empty() {
        return Ok(());
    }
    // What can be read still has its name.
    let mut ledger = Ledger::new();
    for fact in facts {
        let _ = ledger.insert(fact);
    }
    let me = AuthorId::random();
    let teller = survey.and_then(|survey| RecordTeller::of(context, &ledger, survey, me).ok());
    let mut page = Page::for_output();
    tell_lost(context, &mut page, "desk-repair-unreadable", &lost, teller.as_ref());
    page.paragraph(0, &context.word("desk-repair-needs"));
    output::say_page(page)
}

fn tell_lost(
    context: &Context,
    page: &mut Page,
    message: &'static str,
    lost: &[Lost],
    teller: Option<&RecordTeller<'_>>,
) {
    if lost.is_empty() {
        return;
    }
    let all = Phrase::new(message).with("count", Arg::Count(lost.len() as u64));
    page.paragraph(0, &context.say(&all));
    for one in lost.iter().take(MOST_NAMED) {
        let line = Phrase::new("desk-repair-lost-one")
            .phrase("field", story::field_name(&one.field))
            .phrase("thing", thing(teller, one.subject))
            .text("record", one.id.map(|id| id.to_string()).unwrap_or_default());
        page.item(2, &context.say(&line));
    }
}

fn thing(teller: Option<&RecordTeller<'_>>, subject: SubjectId) -> Phrase {
    let name = teller.map(|teller| teller.thing_phrase(subject));
    name.filter(|name| name.id != "told-thing-new")
        .unwrap_or_else(|| Phrase::new("desk-thing-lost").text("id", short(subject)))
}

/// What is no survey leaves no author behind. With a file at hand, one whose database is destroyed is a survey still.
fn refuse_if_no_survey(folder: &Path, has_file: bool) -> Result<(), DeskError> {
    match peek(folder) {
        Err(FactsError::NotASurvey { why: NotASurvey::NotSqlite | NotASurvey::NoDatabase, .. })
            if has_file =>
        {
            Ok(())
        }
        Err(error @ FactsError::NotASurvey { .. }) => Err(error.into()),
        Ok(_) | Err(_) => Ok(()),
    }
}
