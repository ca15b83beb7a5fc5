//! Damage found at start: repaired from the facts that can still be read, or with those of a file.

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use super::SET_ASIDE;
use crate::error::{FactsError, NotASurvey, Result};
use crate::fact::{Edit, FORGET, Fact, FactId, Ledger, PhotoImage, SubjectId, SurveyId, Writer, hold_back};
use crate::file::{self, Consent, Limits, Watch};
use crate::photo::sound_photo;
use crate::store::{FOLDER_EXTENSION, Lost, PHOTOS, Rebuilt, Salvage, Store, disk, fault, rebuild, salvage};
use crate::unfinished::Unfinished;
use crate::whole_file::{self, Existing, Readers};

/// The name of the survey that a file is unpacked into, in a folder of its own.
const UNPACKED: &str = "unpacked";

/// How the opening of a survey went.
#[derive(Debug)]
pub struct Repaired {
    /// The survey, open.
    pub store: Store,
    /// What was repaired; `None` if it was whole.
    pub rebuilt: Option<Rebuilt>,
    /// How many records had one bit changed, which was put right.
    pub put_right: usize,
    /// The records that are lost: of each field what was said before is shown.
    pub lost: Vec<Lost>,
    /// How many fields say again, in the name of whoever repaired, what was said on top of a record that is lost.
    pub said_again: usize,
    /// How many photos came back that were missing or damaged.
    pub photos_back: usize,
}

impl Repaired {
    /// Opens a survey. If its database is damaged, it is built anew: from the facts that can still be read, those in which one
    /// bit has changed put right; those that are lost are taken from another copy of the survey that lies on this device.
    /// Photos that are missing or damaged come back from there too.
    ///
    /// # Errors
    /// As [`Store::open`]; `Damaged` if facts are lost and no copy has them: a file may ([`Repaired::open_with_file`]), or the
    /// rest is kept ([`Repaired::open_without_lost`]). Nothing is changed then.
    pub fn open(folder: &Path, author: impl Into<Writer>) -> Result<Self> {
        let author = author.into();
        let mut repaired = match Store::open(folder, author) {
            Err(FactsError::Damaged { folder: named, report }) => {
                let found = salvage(folder)?;
                let (Some(survey), Some(facts)) = (found.survey, from_here(folder, &found)?) else {
                    return Err(FactsError::Damaged { folder: named, report });
                };
                open_rebuilt(folder, author, survey, facts, &found)?
            }
            other => Self::whole(other?),
        };
        repaired.photos_back += photos_from_here(&repaired.store)?;
        Ok(repaired)
    }

    /// As [`Repaired::open`]; what is lost is given up. What was said on top of a lost record is said again.
    ///
    /// # Errors
    /// As [`Store::open`]; `Damaged` if not even the survey's id can be read. Nothing is changed then.
    pub fn open_without_lost(folder: &Path, author: impl Into<Writer>) -> Result<Self> {
        let author = author.into();
        match Self::open(folder, author) {
            Err(FactsError::Damaged { folder: named, report }) => {
                let found = salvage(folder)?;
                let Some(survey) = found.survey else {
                    return Err(FactsError::Damaged { folder: named, report });
                };
                let mut repaired = open_rebuilt(folder, author, survey, found.facts.clone(), &found)?;
                repaired.said_again = say_again(&mut repaired.store, &found.stranded)?;
                repaired.photos_back += photos_from_here(&repaired.store)?;
                Ok(repaired)
            }
            other => other,
        }
    }

    fn whole(store: Store) -> Self {
        Self { store, rebuilt: None, put_right: 0, lost: Vec::new(), said_again: 0, photos_back: 0 }
    }

    /// As [`Repaired::open`], with a file of the survey at hand: whatever is lost here and is in it comes back, facts and
    /// photos. Also where the beginning of the database is destroyed, or all of it is gone. At any moment the survey is
    /// what it was or repaired. What the file tells to forget is not forgotten here.
    ///
    /// # Errors
    /// `OtherSurvey` or `OtherSurveyInFile`; `FactDiffers` if the file was altered; as [`file::take_as_new`] and
    /// [`rebuild`]. Nothing is changed then.
    pub fn open_with_file(
        folder: &Path,
        author: impl Into<Writer>,
        file: &Path,
        limits: Limits,
        watch: &mut dyn Watch,
    ) -> Result<Self> {
        let author = author.into();
        match Self::open(folder, author) {
            Ok(mut repaired) => {
                let lacking = repaired.store.lacking_photos()?.len();
                file::take(file, &mut repaired.store, Consent::NONE, limits, watch)?;
                repaired.photos_back += lacking.saturating_sub(repaired.store.lacking_photos()?.len());
                Ok(repaired)
            }
            Err(error) if is_lost(folder, &error) => {
                let parent = folder.parent().filter(|parent| !parent.as_os_str().is_empty());
                let parent = parent.unwrap_or_else(|| Path::new("."));
                let beside = Unfinished::make(parent, disk::make_folder)
                    .map_err(|error| fault::of_system(parent, &error))?;
                let unpacked = beside.folder().join(format!("{UNPACKED}.{FOLDER_EXTENSION}"));
                let (store, _) = file::take_as_new(file, &unpacked, author, Consent::NONE, limits, watch)?;
                let (facts, found) =
                    all_facts(folder, store.survey_id(), store.ledger().facts().cloned().collect())?;
                // First the photos, which do no harm while no fact names them.
                let photos_back = move_photos(&store.photos(), &folder.join(PHOTOS))
                    .map_err(|error| fault::of_system(folder, &error))?;
                let mut repaired = open_rebuilt(folder, author, store.survey_id(), facts, &found)?;
                repaired.said_again = say_again(&mut repaired.store, &found.stranded)?;
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
        author: impl Into<Writer>,
        survey: SurveyId,
        copy: Vec<Fact>,
    ) -> Result<Self> {
        let (facts, found) = all_facts(folder, survey, copy)?;
        open_rebuilt(folder, author.into(), survey, facts, &found)
    }
}

/// All facts of a damaged survey: those that can be read, and where some are lost, with those of the other copies of it on
/// this device. Nothing if some are lost all the same.
fn from_here(folder: &Path, found: &Salvage) -> Result<Option<Vec<Fact>>> {
    if found.is_complete {
        return Ok(Some(found.facts.clone()));
    }
    let mut ledger = Ledger::new();
    ledger.insert_all(found.facts.iter().cloned(), |_| Ok(()))?;
    let mut copies: Vec<Fact> = Vec::new();
    for copy in copies_here(folder) {
        match salvage(&copy) {
            Ok(other) if other.survey == found.survey && other.is_complete => copies.extend(other.facts),
            Ok(_) | Err(_) => {}
        }
    }
    let mut wanted: BTreeSet<FactId> = found.lost.iter().filter_map(|lost| lost.id).collect();
    wanted.extend(found.stranded.iter().flat_map(|fact| fact.over().iter().copied()));
    let asked_for: Vec<Fact> = copies.iter().filter(|fact| wanted.contains(&fact.id())).cloned().collect();
    // First no more than what is lost here; where that is not enough, whatever the copies have.
    for more in [asked_for, copies] {
        let admitted = hold_back(&ledger, more, &BTreeSet::new()).admitted;
        let mut tried = ledger.clone();
        let all = admitted.into_iter().chain(found.stranded.iter().cloned());
        if tried.insert_all(all, |_| Ok(())).is_ok() && found.is_made_whole_by(&tried) {
            return Ok(Some(tried.facts().cloned().collect()));
        }
    }
    Ok(None)
}

/// The other surveys on this device, set aside or not.
fn copies_here(folder: &Path) -> Vec<PathBuf> {
    let folder = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned());
    let Some(parent) = folder.parent() else { return Vec::new() };
    let beside = if parent.ends_with(SET_ASIDE) { parent.parent().map(Path::to_owned) } else { None };
    let mut found = Vec::new();
    for home in [parent.to_owned(), parent.join(SET_ASIDE)].into_iter().chain(beside) {
        for entry in fs::read_dir(home).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.extension() == Some(OsStr::new(FOLDER_EXTENSION)) && path != folder {
                found.push(path);
            }
        }
    }
    found
}

/// Brings photos back that are missing or damaged, from other surveys on this device that hold them. One that nothing
/// brings back and that is damaged is set aside, so that nobody takes it for a photo.
fn photos_from_here(store: &Store) -> Result<usize> {
    let broken = |error: std::io::Error| fault::of_system(store.folder(), &error);
    let mut back = 0;
    let lacking: BTreeSet<String> = store
        .lacking_photos()?
        .into_iter()
        .filter_map(|photo| store.photo_image(photo).ok())
        .map(|image| image.file_name())
        .collect();
    if lacking.is_empty() {
        return Ok(0);
    }
    let copies = copies_here(store.folder());
    for name in lacking {
        let place = store.photos().join(&name);
        let sound = copies.iter().find_map(|copy| sound_photo(&copy.join(PHOTOS).join(&name), &name));
        match sound {
            Some(bytes) => {
                whole_file::write(&place, &bytes, Existing::IsReplaced, Readers::Owner).map_err(broken)?;
                back += 1;
            }
            None if place.is_file() => {
                fs::rename(&place, store.photos().join(PhotoImage::damaged_name(&name))).map_err(broken)?;
            }
            None => {}
        }
    }
    disk::sync_folder(&store.photos()).map_err(broken)?;
    Ok(back)
}

/// What was said on top of a record that is lost, where it is what was shown: said again by whoever repairs.
fn say_again(store: &mut Store, stranded: &[Fact]) -> Result<usize> {
    let replaced: BTreeSet<FactId> = stranded.iter().flat_map(|fact| fact.over().iter().copied()).collect();
    let missing = |fact: &&Fact| {
        !store.ledger().contains(fact.id())
            && !replaced.contains(&fact.id())
            && !fact.is_forgotten()
            && fact.field() != FORGET
    };
    let edits: Vec<Edit> = stranded
        .iter()
        .filter(missing)
        .map(|fact| Edit::new(fact.subject(), fact.field(), fact.value().clone()))
        .collect();
    let fields: BTreeSet<(SubjectId, String)> =
        edits.iter().map(|edit| (edit.subject, edit.field.clone())).collect();
    if !edits.is_empty() {
        store.write(&edits)?;
    }
    Ok(fields.len())
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

/// The facts of a copy and those that can still be read; and what was found here. What the copy tells to forget is not
/// forgotten here.
fn all_facts(folder: &Path, survey: SurveyId, copy: Vec<Fact>) -> Result<(Vec<Fact>, Salvage)> {
    let found = match salvage(folder) {
        Err(error) if is_lost(folder, &error) => Salvage::default(),
        found => found?,
    };
    if found.survey.is_some_and(|id| id != survey) {
        return Err(FactsError::OtherSurveyInFile);
    }
    let mut here = Ledger::new();
    here.insert_all(found.facts.iter().cloned(), |_| Ok(()))?;
    here.insert_all(hold_back(&here, copy, &BTreeSet::new()).admitted, |_| Ok(()))?;
    let mut left: Vec<&Fact> = found.stranded.iter().collect();
    left.sort_by_key(|fact| fact.id());
    for fact in left {
        // One whose forerunner is in neither has no place.
        let _ = here.insert(fact.clone());
    }
    Ok((here.facts().cloned().collect(), found))
}

fn open_rebuilt(
    folder: &Path,
    author: Writer,
    survey: SurveyId,
    facts: Vec<Fact>,
    found: &Salvage,
) -> Result<Repaired> {
    let mut rebuilt = rebuild(folder, survey, facts, found)?;
    let store = Store::open(folder, author)?;
    // What was to be forgotten may have gone with it.
    let has_gone = rebuilt.damaged.take_if(|damaged| !damaged.exists());
    rebuilt.damaged_is_forgotten = has_gone.is_some();
    let is_there = |lost: &&Lost| lost.id.is_none_or(|id| !store.ledger().contains(id));
    let lost = found.lost.iter().filter(is_there).cloned().collect();
    Ok(Repaired { rebuilt: Some(rebuilt), put_right: found.put_right, lost, ..Repaired::whole(store) })
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
