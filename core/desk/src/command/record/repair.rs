//! `legwork surveys repair`: a damaged survey built anew, from what can be read or from a file of it.

use std::path::Path;

use serde::Serialize;
use survey::SurveyError;
use survey::fact::{AuthorId, Fact, SurveyId};
use survey::file::{self, Limits};
use survey::home::Repaired;
use survey::store::Store;
use survey::words::{Arg, Phrase};

use super::parent;
use crate::author;
use crate::command::Context;
use crate::error::DeskError;
use crate::progress::Shown;
use crate::stop::Stop;

/// The name of the survey that a file is unpacked into, in a folder of its own.
const UNPACKED: &str = "unpacked.legwork";

#[derive(Serialize)]
struct RepairedJson {
    survey: String,
    was_damaged: bool,
    facts: usize,
    damaged: Option<String>,
    missing_photos: usize,
}

/// Repairs it, and says what was found.
pub fn run(context: &Context, folder: &Path, from: Option<&Path>) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    // What is no survey leaves no author behind.
    if let Err(error @ SurveyError::NotASurvey { .. }) = survey::store::peek(folder) {
        return Err(error.into());
    }
    let me = author::this_computer()?;
    let mut repaired = match (Repaired::open(folder, me), from) {
        (Err(SurveyError::Damaged { .. }), Some(path)) => with_file(context, &stop, folder, path, me)?,
        (other, _) => other?,
    };
    if let Some(path) = from {
        // Brings the photos too.
        let mut shown = Shown::new(&stop, context.word("desk-doing-take"));
        file::take(path, &mut repaired.store, Limits::default(), &mut shown)?;
    }
    let missing = repaired.store.missing_photos()?.len();
    let as_json = RepairedJson {
        survey: folder.display().to_string(),
        was_damaged: repaired.rebuilt.is_some(),
        facts: repaired.store.ledger().len(),
        damaged: repaired.rebuilt.as_ref().map(|rebuilt| rebuilt.damaged.display().to_string()),
        missing_photos: missing,
    };
    context.answer(&as_json, |page| {
        let told = match (&as_json.damaged, from) {
            (Some(damaged), None) => Phrase::new("home-repaired").text("damaged", damaged),
            (Some(damaged), Some(_)) => Phrase::new("desk-repaired-from").text("damaged", damaged),
            (None, _) => Phrase::new("desk-repair-whole"),
        };
        page.paragraph(0, &context.say(&told.with("facts", Arg::Count(as_json.facts as u64))));
        if missing > 0 {
            let lost = Phrase::new("photo-missing").with("count", Arg::Count(missing as u64));
            page.paragraph(0, &context.say(&lost));
        }
    })
}

fn with_file(
    context: &Context,
    stop: &Stop,
    folder: &Path,
    path: &Path,
    me: AuthorId,
) -> Result<Repaired, DeskError> {
    let (survey, facts) = unpacked(context, stop, folder, path, me)?;
    Ok(Repaired::open_with_file(folder, me, survey, facts)?)
}

/// The facts of a file, by way of a survey beside the damaged one that is gone afterwards.
fn unpacked(
    context: &Context,
    stop: &Stop,
    folder: &Path,
    path: &Path,
    me: AuthorId,
) -> Result<(SurveyId, Vec<Fact>), DeskError> {
    let cannot = |source| DeskError::Write { path: folder.to_owned(), source };
    let beside = tempfile::Builder::new().prefix(".legwork-").tempdir_in(parent(folder)).map_err(cannot)?;
    let mut shown = Shown::new(stop, context.word("desk-doing-look"));
    let (store, _): (Store, _) =
        file::take_as_new(path, &beside.path().join(UNPACKED), me, Limits::default(), &mut shown)?;
    Ok((store.survey_id(), store.ledger().facts().cloned().collect()))
}
