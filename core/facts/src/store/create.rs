//! Making a new survey.
//!
//! The folder is built under a temporary name beside its place, brought to the disk, then renamed: a survey that
//! has its name is whole, whenever the power goes.

use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use super::disk::{self, sync_folder};
use super::{DATABASE, FOLDER_EXTENSION, PHOTOS, fault, layout, meta, pragma};
use crate::error::{FactsError, NotASurvey, Result};
use crate::fact::SurveyId;
use crate::unfinished::Unfinished;

/// The key of the survey's id in the table `meta`.
pub(super) const SURVEY_KEY: &str = "survey";

/// Makes a survey at `folder`; `fill` writes into the folder before it has its name.
pub(super) fn create(folder: &Path, survey: SurveyId, fill: impl FnOnce(&Path) -> Result<()>) -> Result<()> {
    if folder.extension().and_then(OsStr::to_str) != Some(FOLDER_EXTENSION) {
        return Err(FactsError::NotASurvey { folder: folder.to_owned(), why: NotASurvey::Name });
    }
    match fs::symlink_metadata(folder) {
        Ok(_) => return Err(FactsError::AlreadyThere { folder: folder.to_owned() }),
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(fault::of_system(folder, &error)),
    }
    let parent = match folder.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    // Not named by the survey's id: a copy of one survey may be in the making twice.
    let unfinished =
        Unfinished::make(parent, disk::make_folder).map_err(|error| fault::of_system(parent, &error))?;
    build(unfinished.folder(), survey)
        .and_then(|()| fill(unfinished.folder()))
        .and_then(|()| put_in_place(unfinished.folder(), folder, parent))
}

fn build(folder: &Path, survey: SurveyId) -> Result<()> {
    disk::make_folder(&folder.join(PHOTOS)).map_err(|error| fault::of_system(folder, &error))?;
    build_database(folder, &folder.join(DATABASE), survey)?;
    sync_folder(folder).map_err(|error| fault::of_system(folder, &error))
}

/// Makes the database of a survey at `path`, which lies in its folder.
pub(super) fn build_database(folder: &Path, path: &Path, survey: SurveyId) -> Result<()> {
    // SQLite gives its log and the index of it the mode that the database has, and would make that for all to read.
    disk::new_file(path).map_err(|error| fault::of_system(folder, &error))?;
    fill_database(path, survey).map_err(|error| fault::of_sqlite(folder, error))
}

fn fill_database(path: &Path, survey: SurveyId) -> rusqlite::Result<()> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let mut connection = Connection::open_with_flags(path, flags)?;
    pragma::set(&connection)?;
    pragma::set_journal(&connection)?;
    layout::bring_up(&mut connection, |connection| meta::set(connection, SURVEY_KEY, &survey.to_string()))?;
    // Closing moves the log into the file and syncs it.
    connection.close().map_err(|(_, error)| error)
}

fn put_in_place(unfinished: &Path, folder: &Path, parent: &Path) -> Result<()> {
    fs::rename(unfinished, folder).map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists | io::ErrorKind::DirectoryNotEmpty | io::ErrorKind::NotADirectory => {
            FactsError::AlreadyThere { folder: folder.to_owned() }
        }
        _ => fault::of_system(folder, &error),
    })?;
    sync_folder(parent).map_err(|error| fault::of_system(parent, &error))
}
