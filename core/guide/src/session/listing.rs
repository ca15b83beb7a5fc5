//! The surveys of this device as they were last looked at: a list is drawn from this, never from the disk.

use std::path::{Path, PathBuf};

use facts::home::{Entry, Home};

use super::Session;
use super::long_work::LongWork;
use super::sent_work::{After, WorkKind};
use crate::error::Result;
use crate::place::{Move, Outside};

/// The surveys of this device.
#[derive(Debug, Default)]
pub(crate) struct Listing {
    /// Those in the list, in its order.
    pub(crate) surveys: Vec<Entry>,
    /// Those set aside.
    pub(crate) set_aside: Vec<Entry>,
    /// Whether all were looked at: somebody may have stopped it.
    pub(crate) is_whole: bool,
}

impl Listing {
    fn of(home: &Home, work: &LongWork) -> Result<Self> {
        let (surveys, set_aside) = (home.folders()?, home.folders_set_aside()?);
        let of = (surveys.len() + set_aside.len()).max(1) as f64;
        let look = |folders: &[PathBuf], before: usize| {
            let entries = Entry::at_each(folders, |begun| work.goes_on((before + begun) as f64 / of));
            let all = entries.len() == folders.len();
            (entries, all)
        };
        let ((mut surveys, all), (mut set_aside, all_aside)) =
            (look(&surveys, 0), look(&set_aside, surveys.len()));
        Entry::sort(&mut surveys);
        Entry::sort(&mut set_aside);
        Ok(Self { surveys, set_aside, is_whole: all && all_aside })
    }
}

impl Session {
    /// Sends the long work that looks at every survey, where the screen tells of them.
    pub(crate) fn list_if_wanted(&mut self) {
        let tells = matches!(
            self.outside,
            Outside::Surveys | Outside::Order | Outside::SetAside | Outside::Survey(_) | Outside::Sent
        );
        if tells && self.open.is_none() && self.sent_work.is_none() {
            self.list();
        }
    }

    /// Sends the long work that looks at every survey. One that was stopped gives what it found.
    pub(crate) fn list(&mut self) {
        self.list_and(|_| Ok(Move::Stay));
    }

    /// The same; `then` is done once they are listed.
    pub(crate) fn list_and(&mut self, then: impl FnOnce(&mut Self) -> Result<Move> + Send + 'static) {
        let home = self.home().clone();
        self.send(WorkKind::List, move |work| {
            let listing = Listing::of(&home, work)?;
            Ok(After::new(move |session| {
                session.listing = listing;
                then(session)
            }))
        });
    }

    /// The survey in a folder as it was last looked at.
    pub(crate) fn listed(&self, folder: &Path) -> Option<&Entry> {
        let known = self.listing.surveys.iter().chain(&self.listing.set_aside);
        known.into_iter().find(|entry| entry.folder == folder)
    }
}
