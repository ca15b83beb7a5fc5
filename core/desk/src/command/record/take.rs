//! `legwork take`: taking a file in.

use std::ffi::OsStr;
use std::path::Path;

use facts::error::FactsError;
use facts::error::NotASurvey;
use facts::file::{self, Consent};
use facts::home::Home;
use facts::store::FOLDER_EXTENSION;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::look::{self, LookJson, Told};
use super::{open_to_write, parent};
use crate::author;
use crate::command::context::Context;
use crate::error::DeskError;
use crate::output;
use crate::printed::Page;
use crate::progress::Shown;
use crate::stop::Stop;

#[derive(Serialize)]
struct TakenJson {
    survey: String,
    new_survey: bool,
    look: LookJson,
    facts: usize,
    photos: usize,
    /// How many things the file asks to forget, which wait for an answer.
    waiting: usize,
}

/// Shows what a file brings, then takes it in.
pub fn run(
    context: &Context,
    path: &Path,
    folder: &Path,
    consent: Consent,
    most_gib: u64,
) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let is_new = folder.symlink_metadata().is_err();
    if is_new && folder.extension() != Some(OsStr::new(FOLDER_EXTENSION)) {
        // Said before the file is looked through, and not after.
        return Err(FactsError::NotASurvey { folder: folder.to_owned(), why: NotASurvey::Name }.into());
    }
    let mut store = if is_new { None } else { Some(open_to_write(folder)?) };
    let look = look::into(context, &stop, path, store.as_mut(), most_gib)?;
    if store.is_some() && !look.same_survey {
        return Err(FactsError::OtherSurvey { file: path.to_owned() }.into());
    }
    let told = Told::new(context, path, &look)?;
    // Whether or not somebody reads it, the file is taken in.
    let shown = if context.json {
        Ok(())
    } else {
        let mut page = Page::for_output();
        told.page(context, &mut page);
        page.gap();
        output::say_page(page)
    };
    let limits = look::limits(most_gib);
    let mut watch = Shown::new(&stop, &context.language, "desk-doing-take");
    let taken = if let Some(store) = &mut store {
        file::take(path, store, consent, limits, &mut watch)?
    } else {
        // What others left that died; that it cannot be removed hinders nothing.
        let _ = Home::at(&parent(folder)).and_then(|home| home.sweep());
        file::take_as_new(path, folder, author::this_computer()?, consent, limits, &mut watch)?.1
    };
    drop(watch);
    let can_be_put_back =
        !taken.facts.is_empty() && store.as_mut().is_some_and(|store| store.can_put_back().is_ok());
    shown?;
    let as_json = TakenJson {
        survey: folder.display().to_string(),
        new_survey: is_new,
        look: told.json,
        facts: taken.facts.len(),
        photos: taken.photos.len(),
        waiting: taken.waiting,
    };
    context.answer(&as_json, |page| {
        let done = Phrase::new(if is_new { "desk-taken-new" } else { "desk-taken" })
            .text("survey", &as_json.survey)
            .with("facts", Arg::Count(as_json.facts as u64))
            .with("photos", Arg::Count(as_json.photos as u64));
        page.paragraph(0, &context.say(&done));
        if as_json.waiting > 0 {
            let waiting = Phrase::new("desk-taken-waiting").with("count", Arg::Count(as_json.waiting as u64));
            page.paragraph(0, &context.say(&waiting));
            page.paragraph(4, &format!("legwork wishes {}", folder.display()));
        }
        // Not where it brought nothing.
        if can_be_put_back {
            page.paragraph(0, &context.word("desk-taken-back"));
            page.paragraph(4, &format!("legwork put-back {}", folder.display()));
        }
        if !as_json.look.has_no_disagreements() {
            page.paragraph(0, &context.word("desk-taken-disagreements"));
            page.paragraph(4, &format!("legwork disagreements {}", folder.display()));
        }
    })
}
