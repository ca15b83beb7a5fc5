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
    /// Looks at one survey. What is wrong with it stands in the entry.
    pub fn at(folder: PathBuf) -> Self {
        let found = peek(&folder).map_or_else(Found::Trouble, Found::Survey);
        Self { folder, found }
    }

    /// Puts a list in its order: those written last first, those in trouble at the end.
    pub fn sort(list: &mut [Self]) {
        let newest = |entry: &Self| match &entry.found {
            Found::Survey(look) => look.summary.newest,
            Found::Trouble(_) => None,
        };
        list.sort_by(|one, two| newest(two).cmp(&newest(one)).then_with(|| one.folder.cmp(&two.folder)));
    }

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
        self.folders().map(list)
    }

    /// The folders of all surveys, in no order, for a list that is made one by one ([`Entry::at`], [`Entry::sort`]).
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn folders(&self) -> Result<Vec<PathBuf>> {
        folders(&self.folder)
    }

    /// The surveys that were set aside.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn set_aside_list(&self) -> Result<Vec<Entry>> {
        self.folders_set_aside().map(list)
    }

    /// As [`Home::folders`], of those set aside.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn folders_set_aside(&self) -> Result<Vec<PathBuf>> {
        folders(&self.folder.join(SET_ASIDE))
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

fn list(folders: Vec<PathBuf>) -> Vec<Entry> {
    let mut found: Vec<Entry> = folders.into_iter().map(Entry::at).collect();
    Entry::sort(&mut found);
    found
}
