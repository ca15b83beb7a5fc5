//! The list of surveys.

use std::ffi::OsStr;
use std::fs;
use std::io;
use std::num::NonZero;
use std::panic::resume_unwind;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

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

/// For fewer surveys a thread costs more than it saves.
const SURVEYS_A_THREAD: usize = 8;

impl Entry {
    /// Looks at one survey. What is wrong with it stands in the entry.
    pub fn at(folder: PathBuf) -> Self {
        let found = peek(&folder).map_or_else(Found::Trouble, Found::Survey);
        Self { folder, found }
    }

    /// Looks at surveys, on the cores that there are; gives them in no order. `goes_on` is told before each how many were begun,
    /// and ends it by saying no; the list is short then.
    pub fn at_each(folders: &[PathBuf], goes_on: impl Fn(usize) -> bool + Sync) -> Vec<Self> {
        let next = AtomicUsize::new(0);
        let look = || {
            let mut found = Vec::new();
            loop {
                let begun = next.fetch_add(1, Ordering::Relaxed);
                match folders.get(begun) {
                    Some(folder) if goes_on(begun) => found.push(Self::at(folder.clone())),
                    Some(_) | None => return found,
                }
            }
        };
        let cores = thread::available_parallelism().map_or(1, NonZero::get);
        thread::scope(|scope| {
            // Where no thread is to be had, the others do its share.
            let others: Vec<_> = (1..cores.min(folders.len() / SURVEYS_A_THREAD))
                .filter_map(|_| thread::Builder::new().spawn_scoped(scope, look).ok())
                .collect();
            let mut found = look();
            for other in others {
                found.extend(other.join().unwrap_or_else(|panic| resume_unwind(panic)));
            }
            found
        })
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
        self.folders().map(|folders| list(&folders))
    }

    /// The folders of all surveys, in no order, for a list that tells how far it is ([`Entry::at_each`], [`Entry::sort`]).
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
        self.folders_set_aside().map(|folders| list(&folders))
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

fn list(folders: &[PathBuf]) -> Vec<Entry> {
    let mut found = Entry::at_each(folders, |_| true);
    Entry::sort(&mut found);
    found
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;
    use std::sync::Mutex;

    use super::*;

    #[test]
    fn each_is_looked_at_once_until_somebody_says_no() {
        let home = tempfile::TempDir::new().unwrap();
        // Nothing is there: of each it is said that it is missing.
        let folders: Vec<PathBuf> =
            (0..100).map(|number| home.path().join(format!("{number}.legwork"))).collect();
        let begun = Mutex::new(BTreeSet::new());
        let all = Entry::at_each(&folders, |number| begun.lock().unwrap().insert(number));
        let found: BTreeSet<&PathBuf> = all.iter().map(|entry| &entry.folder).collect();
        assert_eq!((all.len(), found), (100, folders.iter().collect()));
        assert_eq!(begun.into_inner().unwrap(), (0..100).collect());
        assert!(all.iter().all(|entry| matches!(entry.found, Found::Trouble(_))));
        let some = Entry::at_each(&folders, |number| number < 40);
        let found: BTreeSet<&PathBuf> = some.iter().map(|entry| &entry.folder).collect();
        assert_eq!((some.len(), found), (40, folders.iter().take(40).collect()));
        assert!(Entry::at_each(&[], |_| true).is_empty());
    }
}
