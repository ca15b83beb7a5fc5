//! The list of surveys.

use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::{Home, SET_ASIDE};
use crate::error::{FactsError, Result};
use crate::store::{FOLDER_EXTENSION, Peek, fault, peek};

/// One survey in the list.
#[derive(Debug)]
pub struct Entry {
    /// Its folder.
    pub folder: PathBuf,
    /// What a look at it shows.
    pub found: Found,
}

/// What a look at a survey shows.
#[derive(Debug)]
pub enum Found {
    /// A survey.
    Survey(Peek),
    /// It is damaged, newer than this release, or cannot be read: the error says which.
    Trouble(FactsError),
}

impl Entry {
    /// The folder's name without its ending.
    pub fn folder_name(&self) -> String {
        self.folder.file_stem().unwrap_or_default().to_string_lossy().into_owned()
    }
}

impl Home {
    /// All surveys, those written last first; those in trouble at the end. None is opened.
    ///
    /// # Errors
    /// `Inaccessible` if the home folder cannot be read. A survey that cannot is in the list.
    pub fn list(&self) -> Result<Vec<Entry>> {
        list(&self.folder)
    }

    /// The surveys that were set aside.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn set_aside_list(&self) -> Result<Vec<Entry>> {
        list(&self.folder.join(SET_ASIDE))
    }
}

/// The folders in `folder` that are surveys by their names.
fn folders(folder: &Path) -> Result<Vec<PathBuf>> {
    let system = |error: io::Error| fault::of_system(folder, &error);
    let entries = match fs::read_dir(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        other => other.map_err(system)?,
    };
    let mut found = Vec::new();
    for entry in entries {
        let path = entry.map_err(system)?.path();
        if path.extension() == Some(OsStr::new(FOLDER_EXTENSION)) {
            found.push(path);
        }
    }
    Ok(found)
}

fn list(folder: &Path) -> Result<Vec<Entry>> {
    let look = |folder: PathBuf| {
        let found = peek(&folder).map_or_else(Found::Trouble, Found::Survey);
        Entry { folder, found }
    };
    let mut found: Vec<Entry> = folders(folder)?.into_iter().map(look).collect();
    let newest = |entry: &Entry| match &entry.found {
        Found::Survey(look) => look.summary.newest,
        Found::Trouble(_) => None,
    };
    found.sort_by(|one, two| newest(two).cmp(&newest(one)).then_with(|| one.folder.cmp(&two.folder)));
    Ok(found)
}
