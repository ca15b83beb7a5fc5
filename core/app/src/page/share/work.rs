//! The long work of this folder, each piece in one function: packing, looking into a file, taking it in.
//!
//! Each is watched by a [`Watch`], so that it can be asked for progress and stopped.

use std::path::{Path, PathBuf};

use survey::SurveyError;
use survey::fact::{AuthorId, FactId};
use survey::file::{self, Limits, Look, PackOptions, Packed, Progress, Taken};
use survey::home::Repaired;
use survey::record::Survey;
use survey::store::Store;
use survey::words::{Figures, Language};

use crate::error::Result;
use crate::guide::OpenSurvey;

/// A file that was looked into and not taken in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Looked {
    /// The file.
    pub(crate) file: PathBuf,
    /// What it would bring.
    pub(crate) look: Look,
    /// What the survey was when it was held against it.
    pub(crate) revision: u64,
}

/// Packs a survey.
pub(super) fn pack(
    store: &mut Store,
    options: &PackOptions,
    to: &Path,
) -> std::result::Result<Packed, SurveyError> {
    // Units and words are the same whatever this device has, so that the same facts give the same bytes.
    let words = Language::english(Figures::default());
    let report = |survey: &Survey, _: Option<FactId>| survey::file::report_page(survey, &words, &|| true);
    survey::file::pack(store, options, &report, to, &mut on)
}

/// Mends a survey with a file of it.
pub(in crate::page) fn open_with_file(folder: &Path, author: AuthorId, file: &Path) -> Result<Repaired> {
    Ok(Repaired::open_with_file(folder, author, file, Limits::default(), &mut on)?)
}

/// Looks into a file; what it would bring to a survey, or as a survey of its own.
pub(in crate::page) fn look(file: &Path, open: Option<&mut OpenSurvey>) -> Result<Looked> {
    let revision = open.as_ref().map_or(0, |open| open.revision);
    let store = open.map(|open| &mut open.store);
    let look = file::look(file, store, Limits::default(), &mut on)?;
    Ok(Looked { file: file.to_owned(), look, revision })
}

/// Takes a file in.
pub(in crate::page) fn take(file: &Path, store: &mut Store) -> Result<Taken> {
    Ok(file::take(file, store, Limits::default(), &mut on)?)
}

/// Takes a file in as a survey of its own.
pub(in crate::page) fn take_as_new(file: &Path, folder: &Path, author: AuthorId) -> Result<(Store, Taken)> {
    Ok(file::take_as_new(file, folder, author, Limits::default(), &mut on)?)
}

/// Goes on to the end.
fn on(_: Progress) -> bool {
    true
}
