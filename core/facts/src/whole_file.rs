//! Files that have their name only once they are whole and on the disk: written beside it as `NAME.<chance>.part`, synced,
//! renamed, the folder synced. Every file that any room writes under a name of its own is written here, all at once
//! ([`write()`]) or piece by piece ([`WholeFile`]); what changes in place (the database) is not.

use std::ffi::{OsStr, OsString};
use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::unfinished;

/// What becomes of a file that has the name already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Existing {
    /// It stays, and the new one is refused.
    Stays,
    /// It is replaced once the new one is whole. Only a file is: a folder of that name stays.
    IsReplaced,
}

/// Who may read a file (POSIX; elsewhere the system decides).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Readers {
    /// Its owner alone: what lies in a home.
    Owner,
    /// Whoever may read any new file of its owner: what somebody asked for, to keep or to send.
    Usual,
}

/// A file being written. Dropped before [`WholeFile::finish`], it is removed.
#[derive(Debug)]
pub struct WholeFile {
    part: PathBuf,
    place: PathBuf,
    existing: Existing,
    finished: bool,
    /// Holds the lock that tells others that the file is being written.
    file: File,
}

impl WholeFile {
    /// Starts a file that is to stand at `place`. Removes what killed processes left beside it.
    ///
    /// # Errors
    /// [`AlreadyExists`](io::ErrorKind::AlreadyExists) if something has the name that stays, [`InvalidInput`] if `place`
    /// names no file, else what the system says.
    ///
    /// [`InvalidInput`]: io::ErrorKind::InvalidInput
    pub fn create(place: &Path, existing: Existing, readers: Readers) -> io::Result<Self> {
        refuse(place, existing)?;
        let Some(name) = place.file_name() else {
            return Err(io::Error::new(io::ErrorKind::InvalidInput, "it names no file"));
        };
        remove_abandoned(place, name);
        let (part, file) = unfinished::begin_part(place, |part| new_file(part, readers))?;
        Ok(Self { part, place: place.to_owned(), existing, finished: false, file })
    }

    /// To write to.
    pub const fn file(&self) -> &File {
        &self.file
    }

    /// Brings the file to the disk and gives it its name.
    ///
    /// # Errors
    /// As [`WholeFile::create`]. Nothing is left of it then, and what has the name is as it was.
    pub fn finish(mut self) -> io::Result<()> {
        self.file.sync_all()?;
        refuse(&self.place, self.existing)?;
        fs::rename(&self.part, &self.place)?;
        self.finished = true;
        sync_folder(folder_of(&self.place))
    }
}

impl Drop for WholeFile {
    fn drop(&mut self) {
        if !self.finished {
            // What cannot be removed now goes with a later one of the same name.
            let _ = fs::remove_file(&self.part);
        }
    }
}

/// Writes a file whole.
///
/// # Errors
/// As [`WholeFile::create`]. Nothing is changed then.
pub fn write(place: &Path, bytes: &[u8], existing: Existing, readers: Readers) -> io::Result<()> {
    let whole = WholeFile::create(place, existing, readers)?;
    whole.file().write_all(bytes)?;
    whole.finish()
}

/// Brings the names in a folder to the disk. Only Unix lets a folder be opened for that.
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

fn new_file(path: &Path, readers: Readers) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.read(true).write(true).create_new(true);
    #[cfg(unix)]
    if readers == Readers::Owner {
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    }
    #[cfg(not(unix))]
    let _ = readers;
    options.open(path)
}

fn refuse(place: &Path, existing: Existing) -> io::Result<()> {
    match fs::symlink_metadata(place) {
        Ok(found) if existing == Existing::Stays || !found.is_file() => {
            Err(io::ErrorKind::AlreadyExists.into())
        }
        Ok(_) => Ok(()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        Err(error) => Err(error),
    }
}

fn folder_of(place: &Path) -> &Path {
    place.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."))
}

/// Removes part files of the same name that nobody writes any more.
fn remove_abandoned(place: &Path, name: &OsStr) {
    let mut start: OsString = name.to_owned();
    start.push(".");
    for entry in fs::read_dir(folder_of(place)).into_iter().flatten().flatten() {
        let found = entry.file_name();
        let is_of_name = found.as_encoded_bytes().starts_with(start.as_encoded_bytes());
        if is_of_name
            && found.to_str().is_some_and(unfinished::is_part)
            && let Some(hold) = unfinished::left_by_all(&entry.path())
        {
            let _ = fs::remove_file(entry.path());
            drop(hold);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<_> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_file_is_whole_or_not_there() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("report.html");
        let begun = WholeFile::create(&place, Existing::Stays, Readers::Usual).unwrap();
        begun.file().write_all(b"half").unwrap();
        assert!(!place.exists());
        drop(begun);
        assert!(names(folder.path()).is_empty());
        write(&place, b"whole", Existing::Stays, Readers::Usual).unwrap();
        assert_eq!(fs::read(&place).unwrap(), b"whole");
        assert_eq!(names(folder.path()), ["report.html"]);
    }

    #[test]
    fn what_has_the_name_stays_unless_it_is_to_be_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("report.html");
        fs::write(&place, "mine").unwrap();
        let refused = write(&place, b"new", Existing::Stays, Readers::Usual).unwrap_err();
        assert_eq!(refused.kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read(&place).unwrap(), b"mine");
        write(&place, b"new", Existing::IsReplaced, Readers::Usual).unwrap();
        assert_eq!(fs::read(&place).unwrap(), b"new");
        fs::create_dir(folder.path().join("folder")).unwrap();
        let folder = folder.path().join("folder");
        assert!(write(&folder, b"new", Existing::IsReplaced, Readers::Usual).is_err());
    }

    #[test]
    fn what_a_killed_process_left_goes_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("out");
        let left = "out.01930000000070008000000000000001.part";
        for name in [left, "out.notes.part", "mine.part"] {
            fs::write(folder.path().join(name), "half").unwrap();
        }
        let other = WholeFile::create(&place, Existing::Stays, Readers::Usual).unwrap();
        write(&place, b"whole", Existing::Stays, Readers::Usual).unwrap();
        // The one that is still being written stays.
        assert_eq!(names(folder.path()).len(), 4);
        drop(other);
        assert_eq!(names(folder.path()), ["mine.part", "out", "out.notes.part"]);
    }

    #[cfg(unix)]
    #[test]
    fn what_lies_in_a_home_is_its_owners_alone() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("device.json");
        write(&place, b"{}", Existing::IsReplaced, Readers::Owner).unwrap();
        assert_eq!(fs::metadata(&place).unwrap().permissions().mode() & 0o777, 0o600);
    }
}
