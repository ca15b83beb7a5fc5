//! `legwork surveys repair`: a damaged survey built anew, from what can be read or from a file of it.

use std::path::Path;

use facts::error::FactsError;
use facts::error::NotASurvey;
use facts::file::Limits;
use facts::home::{Home, Repaired};
use facts::store::peek;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::{STALE, home_folder};
use crate::author;
use crate::command::Context;
use crate::error::DeskError;
use crate::progress::Shown;
use crate::stop::Stop;

#[derive(Serialize)]
struct RepairedJson {
    survey: String,
    was_damaged: bool,
    facts: usize,
    photos_back: usize,
    damaged: Option<String>,
    missing_photos: usize,
}

/// Repairs it, and says what was found.
pub fn run(context: &Context, folder: &Path, from: Option<&Path>) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    refuse_if_no_survey(folder, from.is_some())?;
    // What others left that died; that it cannot be removed hinders nothing.
    let _ = Home::at(&home_folder(folder)).and_then(|home| home.sweep(STALE));
    let me = author::this_computer()?;
    let repaired = match from {
        None => Repaired::open(folder, me)?,
        Some(path) => {
            let mut shown = Shown::new(&stop, context.word("desk-doing-take"));
            Repaired::open_with_file(folder, me, path, Limits::default(), &mut shown)?
        }
    };
    let missing = repaired.store.missing_photos()?.len();
    let as_json = RepairedJson {
        survey: folder.display().to_string(),
        was_damaged: repaired.rebuilt.is_some(),
        facts: repaired.store.ledger().len(),
        photos_back: repaired.photos_back,
        damaged: repaired
            .rebuilt
            .as_ref()
            .and_then(|rebuilt| rebuilt.damaged.as_ref())
            .map(|damaged| damaged.display().to_string()),
        missing_photos: missing,
    };
    context.answer(&as_json, |page| {
        let told = match (&as_json.damaged, from) {
            (Some(damaged), None) => Phrase::new("home-repaired").text("damaged", damaged),
            (Some(damaged), Some(_)) => Phrase::new("desk-repaired-from").text("damaged", damaged),
            (None, _) if as_json.was_damaged => Phrase::new("desk-repaired-from-nothing"),
            (None, Some(_)) => Phrase::new("desk-repair-whole-with-file"),
            (None, None) => Phrase::new("desk-repair-whole"),
        };
        let count = |count: usize| Arg::Count(count as u64);
        page.paragraph(0, &context.say(&told.with("facts", count(as_json.facts))));
        for (message, photos) in
            [("desk-repair-photos-back", as_json.photos_back), ("photo-missing", as_json.missing_photos)]
        {
            if photos > 0 {
                page.paragraph(0, &context.say(&Phrase::new(message).with("count", count(photos))));
            }
        }
    })
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
