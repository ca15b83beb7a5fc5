//! Getting what was forgotten off the disk: out of the database's free pages and log, out of the photos and the small
//! pictures of them, out of the copies that lie in the survey's folder, out of what a killed take left there.
//!
//! Which files are to go stands in the table `meta`, written in the same transaction that drops the values. So a
//! process that dies in between leaves work that the next opening finishes.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::disk::sync_folder;
use super::repair::DAMAGED;
use super::{DATABASE, PHOTOS, Store, fault, meta, photos_named, pragma, taking};
use crate::error::Result;
use crate::fact::{Ledger, PhotoImage};
use crate::unfinished;

/// The key in `meta` under which a list of names of photos stands while the work is not done.
const SCRUB_KEY: &str = "scrub";

/// The key in `meta` that lets the work wait, set by a repair that lost records: the damaged database may yet give them.
const WAITS_KEY: &str = "scrub_waits";

/// The folder of small pictures within that of the survey.
pub(crate) const SMALL: &str = "small";

/// Notes in the database that there is work to do.
pub(super) fn demand(connection: &Connection, photos: &BTreeSet<String>) -> rusqlite::Result<()> {
    let mut all = demanded(connection)?.unwrap_or_default();
    all.extend(photos.iter().cloned());
    let text = all.into_iter().collect::<Vec<_>>().join(" ");
    meta::set(connection, SCRUB_KEY, &text)
}

fn demanded(connection: &Connection) -> rusqlite::Result<Option<BTreeSet<String>>> {
    let text = meta::get(connection, SCRUB_KEY)?;
    Ok(text.map(|text| text.split_whitespace().map(str::to_owned).collect()))
}

/// Carries over into a database that is built anew what is still to be cleared. Where records are lost, it waits for as long
/// as the damaged database lies there and nothing else is forgotten.
pub(super) fn carry_over(from: &Connection, to: &Connection, nothing_is_lost: bool) -> rusqlite::Result<()> {
    let Some(photos) = meta::get_put_right(from, SCRUB_KEY) else { return Ok(()) };
    meta::set(to, SCRUB_KEY, &photos)?;
    if nothing_is_lost { Ok(()) } else { meta::set(to, WAITS_KEY, "") }
}

impl Store {
    /// Whether something was forgotten whose bytes may still lie on this disk, because another program had the
    /// survey open, or because a damaged database lies beside this one that holds lost records too. The next opening tries
    /// again, in the latter case once that is gone; so does [`Store::scrub`].
    ///
    /// # Errors
    /// What reading reports.
    pub fn scrub_is_due(&self) -> Result<bool> {
        demanded(&self.connection)
            .map(|photos| photos.is_some())
            .map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// As [`Store::scrub`], at an opening: where records are lost and a damaged database may yet give them, it waits.
    pub(super) fn scrub_at_opening(&mut self) -> Result<bool> {
        let waits = meta::get(&self.connection, WAITS_KEY);
        let waits = waits.map_err(|error| fault::of_sqlite(&self.folder, error))?.is_some();
        let system = |error: io::Error| fault::of_system(&self.folder, &error);
        if waits && has_damaged_copy(&self.folder).map_err(system)? { Ok(false) } else { self.scrub() }
    }

    /// Gets what was forgotten off the disk; returns whether all of it is done.
    ///
    /// # Errors
    /// What the system or the database reports, other than that another program has the survey open.
    pub fn scrub(&mut self) -> Result<bool> {
        let folder = self.folder.clone();
        let broken = |error| fault::of_sqlite(&folder, error);
        let Some(photos) = demanded(&self.connection).map_err(broken)? else { return Ok(true) };
        self.delete_photos(&photos)?;
        self.drop_small_photos()?;
        delete_copies(&self.folder).map_err(|error| fault::of_system(&self.folder, &error))?;
        self.sweep()?;
        // A survey that was being copied or made when its process died lies beside this one.
        if let Some(home) = self.folder.parent() {
            unfinished::sweep(home);
        }
        match scrub_database(&self.connection) {
            Ok(done) => Ok(done),
            Err(error) => match broken(error) {
                crate::error::FactsError::Busy { .. } => Ok(false),
                other => Err(other),
            },
        }
    }

    /// Removes what processes left here that died: unfinished files, and photos whose intake was cut off before a fact named
    /// them. What somebody works on stays.
    ///
    /// # Errors
    /// What the system reports, or `Busy`.
    pub(crate) fn sweep(&mut self) -> Result<()> {
        let system = |error: io::Error| fault::of_system(&self.folder, &error);
        taking::sweep(&self.folder).map_err(system)?;
        let photos = self.folder.join(PHOTOS);
        for folder in [&self.folder, &photos, &self.folder.join(SMALL)] {
            unfinished::sweep(folder);
        }
        // Photos of records that were lost in a damaged database may yet be wanted.
        if has_damaged_copy(&self.folder).map_err(system)? || unnamed(&photos, self.ledger()).is_empty() {
            return Ok(());
        }
        // An intake puts its photo in place and names it while nobody else can write: so nobody does now.
        self.alone(|ledger| {
            for photo in unnamed(&photos, ledger) {
                // What cannot be removed goes at the next opening.
                let _ = fs::remove_file(photo);
            }
            Ok(())
        })
    }

    /// Deletes the photos that no fact names any more.
    fn delete_photos(&self, photos: &BTreeSet<String>) -> Result<()> {
        let kept: BTreeSet<String> = self.photos_named();
        let folder = self.folder.join(PHOTOS);
        let system = |error: io::Error| fault::of_system(&self.folder, &error);
        for name in photos.difference(&kept).filter(|name| PhotoImage::is_file_name(name)) {
            // Also one that was set aside as damaged.
            for name in [name.clone(), PhotoImage::damaged_name(name)] {
                match fs::remove_file(folder.join(name)) {
                    Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(system(error)),
                    Ok(()) | Err(_) => {}
                }
            }
        }
        if photos.is_empty() { Ok(()) } else { sync_folder(&folder).map_err(system) }
    }
}

/// Photos that no fact names.
fn unnamed(photos: &Path, ledger: &Ledger) -> Vec<PathBuf> {
    let files = fs::read_dir(photos).into_iter().flatten().flatten();
    let is_photo = |file: &fs::DirEntry| file.file_name().to_str().is_some_and(PhotoImage::is_file_name);
    let there: Vec<PathBuf> = files.filter(is_photo).map(|file| file.path()).collect();
    if there.is_empty() {
        return there;
    }
    let named = photos_named(ledger);
    let is_named = |path: &PathBuf| {
        path.file_name().and_then(|name| name.to_str()).is_some_and(|name| named.contains(name))
    };
    there.into_iter().filter(|path| !is_named(path)).collect()
}

fn has_damaged_copy(folder: &Path) -> io::Result<bool> {
    let mut found = false;
    for entry in fs::read_dir(folder)? {
        found |= entry?.file_name().to_string_lossy().starts_with(DAMAGED);
    }
    Ok(found)
}

/// Deletes what lies beside the database under a name that begins as its own: copies, and damaged databases that were
/// replaced. All of them may hold what was forgotten. Other files in the folder are not ours.
fn delete_copies(folder: &Path) -> io::Result<()> {
    let mut deleted = false;
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name();
        let name = name.to_string_lossy();
        let live = [DATABASE.to_owned(), format!("{DATABASE}-wal"), format!("{DATABASE}-shm")];
        if name.starts_with(DATABASE) && !live.contains(&name.to_string()) {
            fs::remove_file(entry.path())?;
            deleted = true;
        }
    }
    if deleted { sync_folder(folder) } else { Ok(()) }
}

/// Rewrites the database without its free pages and empties the log; returns whether that went through.
fn scrub_database(connection: &Connection) -> rusqlite::Result<bool> {
    if !empty_log(connection)? {
        return Ok(false);
    }
    connection.execute_batch("VACUUM")?;
    if !empty_log(connection)? {
        return Ok(false);
    }
    meta::delete(connection, SCRUB_KEY)?;
    meta::delete(connection, WAITS_KEY)?;
    empty_log(connection)?;
    pragma::begin_log(connection)?;
    Ok(true)
}

fn empty_log(connection: &Connection) -> rusqlite::Result<bool> {
    connection
        .query_row("PRAGMA wal_checkpoint(TRUNCATE)", (), |row| row.get::<_, i64>(0))
        .map(|busy| busy == 0)
}
