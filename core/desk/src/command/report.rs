//! `legwork report`: one HTML file with everything; `legwork tags`: one with tags to cut out.

use std::collections::BTreeSet;
use std::path::Path;

use advice::worklist::{Stake, WorkList};
use facts::fact::{AuthorId, Ledger};
use facts::file::{self, LeftOut};
use facts::photo::Crop;
use facts::store::Store;
use facts::written_kind::WrittenKind;
use house::record::{Survey, fold};
use phrase::Phrase;
use serde::Serialize;
use telling::report::{Extent, PICTURE_SIDE, Provenance};

use super::context::Context;
use super::worked::{all, work_list};
use crate::arguments::Without;
use crate::error::DeskError;
use crate::keep::{keep, refuse_if_there};
use crate::read_only;

#[derive(Serialize)]
struct ReportJson {
    report: String,
    left_out: Vec<&'static str>,
    one_page: bool,
}

#[derive(Serialize)]
struct TagsJson {
    tags: String,
}

/// Writes the report, without what it is to say nothing of.
pub fn run(
    context: &Context,
    folder: &Path,
    (out, replace): (&Path, bool),
    without: &[Without],
    extent: Extent,
) -> Result<(), DeskError> {
    // Reading needs no author, so none is made.
    let store = Store::open_to_read(folder, AuthorId::random())?;
    WrittenKind::Report.refuse_unfit(out)?;
    refuse_if_there(out, replace)?;
    read_only::tell(context, folder);
    let left_out: BTreeSet<LeftOut> = without.iter().map(|what| (*what).into()).collect();
    let ledger = file::without(store.ledger(), store.survey_id(), &left_out)?;
    let survey = fold(&ledger, store.survey_id())?;
    if extent == Extent::OnePage {
        let list = work_list(context, folder, &survey)?;
        let provenance = Provenance::of(&survey, &ledger)?;
        let html = telling::report::one_page(&survey, &list, provenance, &context.language);
        keep(out, html.as_bytes(), replace)?;
    } else {
        let (list, stakes) = all(context, folder, &survey)?;
        let with_pictures = !left_out.contains(&LeftOut::Photos);
        write(context, &store, (&survey, &ledger), (&list, &stakes), with_pictures, (out, replace))?;
    }
    let report = out.display().to_string();
    let made = Phrase::new("desk-report-made").text("report", &report);
    let left_out = left_out.iter().map(|what| what.word()).collect();
    context.answer(&ReportJson { report, left_out, one_page: extent == Extent::OnePage }, |page| {
        page.paragraph(0, &context.say(&made));
    })
}

/// Writes the report of a house whose work list is known.
///
/// # Errors
/// [`DeskError::Exists`] or [`DeskError::Write`]; nothing is changed then.
pub fn write(
    context: &Context,
    store: &Store,
    (survey, ledger): (&Survey, &Ledger),
    worked: (&WorkList, &[Option<Stake>]),
    with_pictures: bool,
    (out, replace): (&Path, bool),
) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let provenance = Provenance::of(survey, ledger)?;
    let provenance = if with_pictures {
        provenance.with_pictures(survey, |photo| store.photo_crop(photo, Crop::whole(PICTURE_SIDE)).ok())
    } else {
        provenance
    };
    let html = telling::report::html_weighed(survey, worked, provenance, &context.language);
    keep(out, html.as_bytes(), replace)
}

/// Writes the tags of a survey, to be printed and cut out.
pub fn tags(context: &Context, folder: &Path, out: &Path, replace: bool) -> Result<(), DeskError> {
    let store = Store::open_to_read(folder, AuthorId::random())?;
    WrittenKind::Report.refuse_unfit(out)?;
    refuse_if_there(out, replace)?;
    read_only::tell(context, folder);
    let survey = fold(store.ledger(), store.survey_id())?;
    let provenance = Provenance::of(&survey, store.ledger())?;
    let page = telling::report::tags_page(&survey, provenance, &context.language);
    keep(out, page.ok_or(DeskError::NoTags)?.as_bytes(), replace)?;
    let tags = out.display().to_string();
    let made = Phrase::new("desk-tags-made").text("tags", &tags);
    context.answer(&TagsJson { tags }, |page| page.paragraph(0, &context.say(&made)))
}
