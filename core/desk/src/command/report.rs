//! `legwork report`: one HTML file with everything.

use std::path::Path;

use advice::worklist::{self, WorkList, worklist};
use house::record::Survey;
use phrase::Phrase;
use serde::Serialize;

use super::Context;
use crate::error::DeskError;
use crate::keep::{keep, refuse_if_there};

#[derive(Serialize)]
struct ReportJson {
    report: String,
}

/// Writes the report.
pub fn run(context: &Context, survey: &Survey, out: &Path, replace: bool) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let list = worklist(survey, &worklist::Options::default())?;
    write(context, survey, &list, out, replace)?;
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
    survey: &Survey,
    list: &WorkList,
    out: &Path,
    replace: bool,
) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let html = telling::report::html(survey, list, &context.language);
    keep(out, html.as_bytes(), replace)
}
