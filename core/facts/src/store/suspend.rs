//! Closing a survey for as long as nobody looks at it, and opening it again.
//!
//! A phone freezes an app that is out of sight at any moment, and some end one that holds a lock on a file then. So
//! nothing of a suspended survey is open. Nothing is lost by being ended while suspended: what was acknowledged is on
//! the disk, half-typed input too if it was saved as a draft.

use std::path::{Path, PathBuf};

use super::{Store, fault};
use crate::error::Result;
use crate::fact::{AuthorId, FactClock};

/// A survey that was open and will be again.
#[derive(Debug)]
pub struct Suspended {
    folder: PathBuf,
    author: AuthorId,
    clock: FactClock,
}

impl Store {
    /// Closes the survey: its log is moved into its database, and no file of it stays open.
    ///
    /// # Errors
    /// What the database reports. Whatever was acknowledged is on the disk all the same.
    pub fn close(self) -> Result<()> {
        self.suspend().map(drop)
    }

    /// Closes the survey and remembers how to open it again.
    ///
    /// # Errors
    /// As [`Store::close`]; then it is to be opened by its folder.
    pub fn suspend(self) -> Result<Suspended> {
        let Self { folder, connection, author, clock, .. } = self;
        connection.close().map_err(|(_, error)| fault::of_sqlite(&folder, error))?;
        Ok(Suspended { folder, author, clock })
    }
}

impl Suspended {
    /// Where it lies.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Opens it again, with what other programs wrote meanwhile. To be given up where it fails: the survey may have been
    /// renamed or set aside meanwhile, and is opened by its folder then.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn resume(self) -> Result<Store> {
        Store::open_with(&self.folder, self.author, self.clock)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::{Edit, SubjectId};
    use crate::store::{Draft, PHOTOS};

    #[test]
    fn a_suspended_survey_holds_nothing_open_and_comes_back_whole() {
        let home = tempfile::TempDir::new().unwrap();
        let folder = home.path().join("house.legwork");
        let mut store = Store::create(&folder, AuthorId::random()).unwrap();
        let author = store.author();
        let part = SubjectId::random();
        store.write(&[Edit::new(part, "tag", "S1")]).unwrap();
        let draft = Draft { subject: part, field: "label".into(), text: "5-10".into(), saved_ms: 7 };
        store.save_draft(&draft).unwrap();
        let suspended = store.suspend().unwrap();
        let mut names: Vec<_> =
            std::fs::read_dir(&folder).unwrap().map(|at| at.unwrap().file_name()).collect();
        names.sort();
        assert_eq!(names, [PHOTOS, "survey.db"], "no log, no index of it");
        #[cfg(target_os = "linux")]
        {
            let open = std::fs::read_dir("/proc/self/fd").unwrap();
            let held = open.filter_map(|at| std::fs::read_link(at.unwrap().path()).ok());
            assert_eq!(held.filter(|path| path.starts_with(&folder)).count(), 0);
        }
        // Meanwhile somebody else writes.
        let mut other = Store::open(&folder, AuthorId::random()).unwrap();
        other.write(&[Edit::new(part, "where", "the loft")]).unwrap();
        other.close().unwrap();
        let mut store = suspended.resume().unwrap();
        assert_eq!((store.author(), store.ledger().len()), (author, 2));
        assert_eq!(store.drafts().unwrap(), [draft]);
        store.write(&[Edit::new(part, "tag", "S2")]).unwrap();
        let suspended = store.suspend().unwrap();
        std::fs::rename(&folder, home.path().join("moved.legwork")).unwrap();
        assert!(matches!(suspended.resume(), Err(crate::error::FactsError::NotASurvey { .. })));
    }
}
