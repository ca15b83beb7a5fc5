//! Renaming, setting aside, bringing back, deleting surveys; sweeping what dead processes left.
//!
//! A survey that a program has open is not moved: it would go on writing photos under the old name.

use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::{Home, SET_ASIDE};
use crate::error::{FactsError, NotASurvey, Result};
use crate::fact::{ActId, Fact, PhotoImage, Writer};
use crate::file::Watch;
use crate::store::{DATABASE, FOLDER_EXTENSION, PHOTOS, SMALL, Store, disk, fault, is_open, taking};
use crate::unfinished::{self, Unfinished};

/// The ending of a folder that holds what was not a survey's own when it was deleted.
const KEPT: &str = "kept";

/// The longest name of a folder, in bytes, with room for the ending and a number.
const MAX_NAME_BYTES: usize = 200;

impl Home {
    /// The folder of a survey of that name here.
    ///
    /// # Errors
    /// `FolderName` if no folder can have the name on every system, `FolderNameTooLong`.
    pub fn place(&self, name: &str) -> Result<PathBuf> {
        let forbidden = |letter: char| letter.is_control() || "/\\<>:\"|?*".contains(letter);
        // Whoever names the folder means the survey.
        let name = name.strip_suffix(&format!(".{FOLDER_EXTENSION}")).unwrap_or(name);
        if name.len() > MAX_NAME_BYTES {
            return Err(FactsError::FolderNameTooLong { found: name.len(), most: MAX_NAME_BYTES });
        }
        let is_fit = !name.is_empty()
            && !name.starts_with('.')
            && !name.ends_with(['.', ' '])
            && !name.contains(forbidden);
        if is_fit {
            Ok(self.folder().join(format!("{name}.{FOLDER_EXTENSION}")))
        } else {
            Err(FactsError::FolderName)
        }
    }

    /// Refuses a survey that a program has open: it can be neither moved nor deleted now.
    ///
    /// # Errors
    /// `NotASurvey`, or `Busy`.
    pub fn check_at_rest(&self, folder: &Path) -> Result<()> {
        check_is_at_rest(folder)
    }

    /// Gives a survey's folder another name; returns where it is now. The survey's own name is a fact in it.
    ///
    /// # Errors
    /// `FolderName`, `NotASurvey`, `AlreadyThere`, `Busy` while a program has it open, or what the system reports.
    pub fn rename(&self, folder: &Path, name: &str) -> Result<PathBuf> {
        let to = self.place(name)?;
        move_survey(folder, &to)?;
        Ok(to)
    }

    /// Sets a survey aside: it is no longer in the list and can be brought back. Returns where it is now.
    ///
    /// # Errors
    /// `NotASurvey`, `Busy` while a program has it open, or what the system reports.
    pub fn set_aside(&self, folder: &Path) -> Result<PathBuf> {
        let aside = self.folder().join(SET_ASIDE);
        disk::make_folders(&aside)
            .and_then(|()| disk::sync_folder(self.folder()))
            .map_err(|error| fault::of_system(&aside, &error))?;
        move_to_free_name(folder, &aside)
    }

    /// Brings a survey back that was set aside; returns where it is now.
    ///
    /// # Errors
    /// `NotASurvey`, `Busy` while a program has it open, or what the system reports.
    pub fn bring_back(&self, folder: &Path) -> Result<PathBuf> {
        move_to_free_name(folder, self.folder())
    }

    /// Deletes a survey, photos and all. This cannot be undone; [`Home::set_aside`] can. What somebody else put into its folder
    /// is not deleted with it: it is moved into a folder beside, which is returned.
    ///
    /// # Errors
    /// `NotASurvey`, `Busy` while a program has it open, or what the system reports.
    pub fn delete(&self, folder: &Path) -> Result<Option<PathBuf>> {
        check_is_at_rest(folder)?;
        let kept = move_out_what_is_not_ours(folder).map_err(|error| fault::of_system(folder, &error))?;
        // First out of the list, at once and whole; what a cut-off deletion leaves is swept.
        let going = Unfinished::free_name(self.folder());
        rename(folder, &going)?;
        fs::remove_dir_all(&going).map_err(|error| fault::of_system(folder, &error))?;
        Ok(kept)
    }

    /// Removes what processes left that died while they made, copied, deleted or repaired a survey, wrote a file, or took one
    /// in: whatever nobody holds. Returns how many there were. Every opening of a home does so too.
    ///
    /// # Errors
    /// `Inaccessible` if the home folder cannot be read.
    pub fn sweep(&self) -> Result<usize> {
        let mut swept = unfinished::sweep(self.folder());
        for survey in self.folders()? {
            // What cannot be swept from a survey now is swept when it is opened.
            swept += taking::sweep(&survey).unwrap_or(0);
        }
        Ok(swept)
    }

    /// Tells every other copy of a survey on this device, also those set aside, what was forgotten in it. Returns
    /// how many copies were told.
    ///
    /// # Errors
    /// What opening and writing a copy reports.
    pub fn forget_elsewhere(&self, store: &Store) -> Result<usize> {
        let here = fs::canonicalize(store.folder()).ok();
        let told: Vec<&Fact> =
            store.ledger().facts().filter(|fact| fact.field() == crate::fact::FORGET).collect();
        // A copy that was being made when its process died is told nothing: it goes.
        unfinished::sweep(self.folder());
        let mut copies = 0;
        for entry in self.list()?.into_iter().chain(self.set_aside_list()?) {
            let super::Found::Survey(look) = entry.found else { continue };
            if look.survey != store.survey_id() || fs::canonicalize(&entry.folder).ok() == here {
                continue;
            }
            let mut copy = Store::open(&entry.folder, store.author())?;
            // Where a yes dropped what a file just came without, no word tells of it.
            let frames = store.ledger().facts().filter(|fact| {
                fact.is_forgotten() && copy.ledger().fact(fact.id()).is_some_and(|held| !held.is_forgotten())
            });
            let told = told.iter().copied().chain(frames).cloned().collect();
            copy.write_facts(told)?;
            copies += 1;
        }
        Ok(copies)
    }

    /// Makes a copy of a survey under another name: with an id of its own and facts of its own, so that it and the
    /// first never merge. What stands is copied, also where people disagree; stories, removed things and drafts are
    /// not. Photos are.
    ///
    /// # Errors
    /// As [`Store::create`], or what reading the first reports. Nothing is left then.
    pub fn copy(&self, from: &Store, name: &str, author: impl Into<Writer>) -> Result<Store> {
        self.copy_watched(from, name, author, &mut |_| true)
    }

    /// As [`Home::copy`], watched: its photos take as long as there are.
    ///
    /// # Errors
    /// As [`Home::copy`], and `Stopped`.
    pub fn copy_watched(
        &self,
        from: &Store,
        name: &str,
        author: impl Into<Writer>,
        watch: &mut dyn Watch,
    ) -> Result<Store> {
        let to = self.place(name)?;
        super::copy::copy(from, &to, name, author.into(), ActId::random(), watch)
    }
}

/// Moves what is not a survey's own out of its folder, into one beside it, each to the place that it had; nothing if all is.
fn move_out_what_is_not_ours(folder: &Path) -> io::Result<Option<PathBuf>> {
    let mut strange = Vec::new();
    for (inner, is_ours) in
        [("", is_ours as fn(&str) -> bool), (PHOTOS, is_photo), (SMALL, PhotoImage::is_file_name)]
    {
        let found = match fs::read_dir(folder.join(inner)) {
            // A survey need not have had photos. What is there and cannot be read may hold anything.
            Err(error) if !inner.is_empty() && error.kind() == io::ErrorKind::NotFound => continue,
            found => found?,
        };
        for entry in found {
            let name = entry?.file_name();
            if !name.to_str().is_some_and(|name| is_ours(name) || unfinished::is_part(name)) {
                strange.push(Path::new(inner).join(name));
            }
        }
    }
    if strange.is_empty() {
        return Ok(None);
    }
    let kept = free_place(folder.parent().unwrap_or_else(|| Path::new("")), folder, KEPT);
    disk::make_folder(&kept)?;
    for place in strange {
        let to = kept.join(&place);
        if let Some(parent) = to.parent() {
            disk::make_folders(parent)?;
        }
        fs::rename(folder.join(&place), to)?;
    }
    disk::sync_folder(&kept)?;
    Ok(Some(kept))
}

/// Whether a name is that of something that a survey's folder holds.
fn is_ours(name: &str) -> bool {
    // Copies of the database too: they hold the survey.
    name.starts_with(DATABASE) || [PHOTOS, SMALL].contains(&name) || name.starts_with(unfinished::TAKING)
}

fn is_photo(name: &str) -> bool {
    PhotoImage::is_file_name(PhotoImage::sound_name(name))
}

fn check_is_survey(folder: &Path) -> Result<()> {
    let why = match fs::symlink_metadata(folder) {
        Ok(found) if !found.is_dir() => NotASurvey::AFile,
        Ok(_) if folder.extension() != Some(OsStr::new(FOLDER_EXTENSION)) => NotASurvey::Name,
        Ok(_) => return Ok(()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => NotASurvey::Missing,
        Err(error) => return Err(fault::of_system(folder, &error)),
    };
    Err(FactsError::NotASurvey { folder: folder.to_owned(), why })
}

fn check_is_at_rest(folder: &Path) -> Result<()> {
    check_is_survey(folder)?;
    if is_open(folder) { Err(FactsError::Busy { folder: folder.to_owned() }) } else { Ok(()) }
}

fn move_survey(from: &Path, to: &Path) -> Result<()> {
    check_is_at_rest(from)?;
    if fs::symlink_metadata(to).is_ok() {
        return Err(FactsError::AlreadyThere { folder: to.to_owned() });
    }
    rename(from, to)
}

fn move_to_free_name(from: &Path, into: &Path) -> Result<PathBuf> {
    let to = free_place(into, from, FOLDER_EXTENSION);
    move_survey(from, &to)?;
    Ok(to)
}

/// A place in `into` that nothing has, named as `like` is, with a number if need be.
fn free_place(into: &Path, like: &Path, ending: &str) -> PathBuf {
    let name = like.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let mut place = into.join(format!("{name}.{ending}"));
    let mut number = 2_u32;
    while fs::symlink_metadata(&place).is_ok() {
        place = into.join(format!("{name} {number}.{ending}"));
        number += 1;
    }
    place
}

fn rename(from: &Path, to: &Path) -> Result<()> {
    let parents = [from, to].into_iter().filter_map(Path::parent);
    fs::rename(from, to)
        .and_then(|()| {
            parents.filter(|parent| !parent.as_os_str().is_empty()).try_for_each(disk::sync_folder)
        })
        .map_err(|error| fault::of_system(from, &error))
}
