//! `legwork pack`: a survey in one file.

use std::path::Path;

use advice::worklist::Options;
use facts::fact::Ledger;
use facts::file::{self, PackOptions};
use facts::written_kind::WrittenKind;
use guide::kept::Beside;
use house::record::Survey;
use phrase::{Arg, Phrase};
use serde::Serialize;
use telling::report::report_page_with;
use telling::words::LengthUnit;

use super::look::left_out_name;
use super::open_to_read;
use crate::arguments::Without;
use crate::command::context::Context;
use crate::error::DeskError;
use crate::keep;
use crate::progress::Shown;
use crate::speak;
use crate::stop::Stop;

#[derive(Serialize)]
struct PackedJson {
    file: String,
    facts: usize,
    photos: usize,
    bytes: u64,
    left_out: Vec<&'static str>,
    still_told: Vec<&'static str>,
    lost_photos: Vec<String>,
}

/// How it is packed.
#[derive(Clone, Copy)]
pub struct How {
    /// Whether no report goes into the file.
    pub no_report: bool,
    /// Whether a file that is there is replaced.
    pub replace: bool,
}

/// Packs it.
pub fn run(
    context: &Context,
    folder: &Path,
    path: &Path,
    without: &[Without],
    How { no_report, replace }: How,
) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let mut store = open_to_read(folder)?;
    let options = PackOptions { left_out: without.iter().map(|what| (*what).into()).collect(), replace };
    // Before the report is worked out, which takes a while.
    WrittenKind::Packed.refuse_unfit(path)?;
    keep::refuse_if_there(path, replace)?;
    // Units and words are the same whatever was asked for, so that the same facts give the same bytes.
    let words = speak::english(LengthUnit::Metres);
    let report = |survey: &Survey, ledger: &Ledger| {
        if no_report {
            return Ok(String::new());
        }
        let list = |survey: &Survey| {
            let mut shown = Shown::new(&stop, &context.language, "desk-doing-worklist");
            let beside = Beside::of(Some(folder), survey, Options::default());
            beside.all(&mut |share| shown.goes_on_at(share))
        };
        report_page_with(survey, ledger, &words, &|| !stop.is_asked(), &list).map_err(DeskError::from)
    };
    let mut shown = Shown::new(&stop, &context.language, "desk-doing-pack");
    let still_told = file::still_told(store.ledger(), store.survey_id(), &options.left_out);
    let packed = house::document::pack(&mut store, &options, &report, path, &mut shown)?;
    drop(shown);
    let as_json = PackedJson {
        file: path.display().to_string(),
        facts: packed.facts,
        photos: packed.photos,
        bytes: packed.bytes,
        left_out: options.left_out.iter().map(|what| left_out_name(*what)).collect(),
        still_told: still_told.into_iter().map(file::StillTold::word).collect(),
        lost_photos: packed.lost_photos.iter().map(ToString::to_string).collect(),
    };
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-packed")
            .text("file", &as_json.file)
            .with("facts", Arg::Count(as_json.facts as u64))
            .with("photos", Arg::Count(as_json.photos as u64))
            .text("size", size(as_json.bytes));
        page.paragraph(0, &context.say(&done));
        for what in &as_json.left_out {
            page.paragraph(0, &context.word(&format!("desk-look-without-{what}")));
        }
        if !as_json.still_told.is_empty() {
            page.paragraph(0, &context.word("desk-still-told"));
            for told in &as_json.still_told {
                page.item(2, &context.word(&format!("desk-still-{told}")));
            }
        }
        if !as_json.lost_photos.is_empty() {
            let lost = Arg::Count(as_json.lost_photos.len() as u64);
            page.paragraph(0, &context.say(&Phrase::new("photo-missing").with("count", lost)));
        }
    })
}

/// A length of a file for people: `3.4 MB`, in powers of ten.
fn size(bytes: u64) -> String {
    match bytes {
        0..1_000 => format!("{bytes} B"),
        1_000..1_000_000 => format!("{:.1} kB", bytes as f64 / 1e3),
        1_000_000..1_000_000_000 => format!("{:.1} MB", bytes as f64 / 1e6),
        _ => format!("{:.2} GB", bytes as f64 / 1e9),
    }
}
