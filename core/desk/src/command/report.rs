//! `legwork report`: one HTML file with everything.

use std::path::Path;

use advice::worklist::{self, WorkList, worklist};
use facts::fact::AuthorId;
use facts::photo::Crop;
use facts::store::Store;
use house::document::Document;
use house::record::Survey;
use phrase::Phrase;
use serde::Serialize;
use telling::report::{PICTURE_SIDE, Provenance};

use super::Context;
use crate::error::DeskError;
use crate::keep::{keep, refuse_if_there};

#[derive(Serialize)]
struct ReportJson {
    report: String,
}

/// Writes the report.
pub fn run(context: &Context, folder: &Path, out: &Path, replace: bool) -> Result<(), DeskError> {
    // Reading needs no author, so none is made.
    let store = Store::open_to_read(folder, AuthorId::random())?;
    let survey = store.survey()?;
    refuse_if_there(out, replace)?;
    let list = worklist(&survey, &worklist::Options::default())?;
    write(context, &store, &survey, &list, out, replace)?;
    let report = out.display().to_string();
    let made = Phrase::new("desk-report-made").text("report", &report);
    context.answer(&ReportJson { report }, |page| page.paragraph(0, &context.say(&made)))
}

/// Writes the report of a house whose work list is known.
///
/// # Errors
/// [`DeskError::Exists`] or [`DeskError::Write`]; nothing is changed then.
pub fn write(
    context: &Context,
    store: &Store,
    survey: &Survey,
    list: &WorkList,
    out: &Path,
    replace: bool,
) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let provenance = Provenance::of(survey, store.ledger())?
        .with_pictures(survey, |photo| store.photo_crop(photo, Crop::whole(PICTURE_SIDE)).ok());
    let html = telling::report::html(survey, list, provenance, &context.language);
    keep(out, html.as_bytes(), replace)
}
