//! Damage found at start: repaired from the facts that can still be read, or with those of a file.

use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use crate::error::{FactsError, NotASurvey, Result};
use crate::fact::{AuthorId, Fact, SurveyId};
use crate::file::{self, Limits, Watch};
use crate::store::{
    FOLDER_EXTENSION, PHOTOS, Rebuilt, Salvage, Store, UNFINISHED, disk, fault, rebuild, salvage,
};

/// The name of the survey that a file is unpacked into, in a folder of its own.
const UNPACKED: &str = "unpacked";

/// How the opening of a survey went.
#[derive(Debug)]
pub struct Repaired {
    /// The survey, open.
    pub store: Store,
    /// What was repaired; `None` if it was whole.
    pub rebuilt: Option<Rebuilt>,
    /// How many photos came back from a file that were missing or cut short.
    pub photos_back: usize,
}

impl Repaired {
    /// Opens a survey. If its database is damaged but all facts can still be read, it is built anew from them.
    ///
    /// # Errors
    /// As [`Store::open`]; `Damaged` if facts are lost, so that a file is needed ([`Repaired::open_with_file`]).
    /// Nothing is changed then.
    pub fn open(folder: &Path, author: AuthorId) -> Result<Self> {
        match Store::open(folder, author) {
            Err(FactsError::Damaged { folder: named, report }) => {
                let found = salvage(folder)?;
                match found.survey.filter(|_| found.is_complete) {
                    Some(survey) => open_rebuilt(folder, author, survey, found.facts),
                    None => Err(FactsError::Damaged { folder: named, report }),
                }
            }
            other => Ok(Self { store: other?, rebuilt: None, photos_back: 0 }),
        }
    }

    /// As [`Repaired::open`], with a file of the survey at hand: whatever is lost here and is in it comes back, facts and
    /// photos. Also where the beginning of the database is destroyed, or all of it is gone. At any moment the survey is
    /// what it was or repaired.
    ///
    /// # Errors
    /// `OtherSurvey` or `OtherSurveyInFile`; `FactDiffers` if the file was altered; as [`file::take_as_new`] and
    /// [`rebuild`]. Nothing is changed then.
    pub fn open_with_file(
        folder: &Path,
        author: AuthorId,
        file: &Path,
        limits: Limits,
        watch: &mut dyn Watch,
    ) -> Result<Self> {
        match Self::open(folder, author) {
            Ok(mut repaired) => {
                let missing = repaired.store.missing_photos()?.len();
                file::take(file, &mut repaired.store, limits, watch)?;
                repaired.photos_back = missing.saturating_sub(repaired.store.missing_photos()?.len());
                Ok(repaired)
            }
            Err(error) if is_lost(folder, &error) => {
                let beside = Beside::make(folder)?;
                let unpacked = beside.0.join(format!("{UNPACKED}.{FOLDER_EXTENSION}"));
                let (store, _) = file::take_as_new(file, &unpacked, author, limits, watch)?;
                let facts = all_facts(folder, store.survey_id(), store.ledger().facts().cloned().collect())?;
                // First the photos, which do no harm while no fact names them.
                let photos_back = move_photos(&store.photos(), &folder.join(PHOTOS))
                    .map_err(|error| fault::of_system(folder, &error))?;
                let repaired = open_rebuilt(folder, author, store.survey_id(), facts)?;
                Ok(Self { photos_back, ..repaired })
            }
            Err(error) => Err(error),
        }
    }

    /// Builds a damaged survey anew from the facts of a copy of it and those that can still be read.
    ///
    /// # Errors
    /// `OtherSurveyInFile`; `FactDiffers` if the copy was altered; as [`rebuild`]. Nothing is changed then.
    pub fn open_with_facts(
        folder: &Path,
        author: AuthorId,
        survey: SurveyId,
        copy: Vec<Fact>,
    ) -> Result<Self> {
        open_rebuilt(folder, author, survey, all_facts(folder, survey, copy)?)
    }
}

/// Whether a file can bring back what is at `folder`: a survey by its name, whose database is damaged or gone.
fn is_lost(folder: &Path, error: &FactsError) -> bool {
    let is_named = folder.extension() == Some(OsStr::new(FOLDER_EXTENSION));
    match error {
        FactsError::Damaged { .. } => true,
        FactsError::NotASurvey { why: NotASurvey::NotSqlite, .. } => is_named,
        FactsError::NotASurvey { why: NotASurvey::NoDatabase, .. } => {
            is_named && folder.join(PHOTOS).is_dir()
        }
        _ => false,
    }
}

/// The facts of a copy and those that can still be read.
fn all_facts(folder: &Path, survey: SurveyId, copy: Vec<Fact>) -> Result<Vec<Fact>> {
    let found = match salvage(folder) {
        Err(error) if is_lost(folder, &error) => Salvage::default(),
        found => found?,
    };
    if found.survey.is_some_and(|id| id != survey) {
        return Err(FactsError::OtherSurveyInFile);
    }
    Ok(copy.into_iter().chain(found.facts).collect())
}

fn open_rebuilt(folder: &Path, author: AuthorId, survey: SurveyId, facts: Vec<Fact>) -> Result<Repaired> {
    let rebuilt = rebuild(folder, survey, facts)?;
    Ok(Repaired { store: Store::open(folder, author)?, rebuilt: Some(rebuilt), photos_back: 0 })
}

/// Every photo of a file was compared with its name when it was taken in; one of the same name is the same, or damaged.
/// Returns how many were missing or cut short.
fn move_photos(from: &Path, to: &Path) -> std::io::Result<usize> {
    disk::make_folders(to)?;
    let mut back = 0;
    for photo in fs::read_dir(from)? {
        let photo = photo?;
        let place = to.join(photo.file_name());
        let length = photo.metadata()?.len();
        back += usize::from(fs::metadata(&place).map_or(true, |found| found.len() != length));
        fs::rename(photo.path(), place)?;
    }
    disk::sync_folder(to)?;
    Ok(back)
}

/// A folder beside a survey, gone with all in it when this is dropped; one that a process left that died is swept with
/// everything unfinished.
struct Beside(PathBuf);

impl Beside {
    fn make(survey_folder: &Path) -> Result<Self> {
        let parent = match survey_folder.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        let folder = parent.join(format!(".{}.{UNFINISHED}", SurveyId::random()));
        disk::make_folder(&folder).map_err(|error| fault::of_system(parent, &error))?;
        Ok(Self(folder))
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        // What cannot be removed now is swept later.
        let _ = fs::remove_dir_all(&self.0);
    }
}
