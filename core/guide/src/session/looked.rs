//! A file that was looked into and not taken in.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::file::{self, Limits, Look};
use facts::store::Store;

use super::Session;
use super::long_work::LongWork;
use super::sent_work::{After, WorkKind};
use crate::error::Result;
use crate::place::Move;

/// A file that was looked into and not taken in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Looked {
    /// The file.
    pub(crate) file: PathBuf,
    /// What it would bring.
    pub(crate) look: Look,
    /// What the survey was when it was held against it.
    pub(crate) revision: u64,
}

impl Looked {
    /// Looks into a file; what it would bring as a survey of its own.
    pub(crate) fn into(file: &Path, work: &LongWork) -> std::result::Result<Self, FactsError> {
        let look = file::look(file, None, Limits::default(), &mut work.watch_file())?;
        Ok(Self { file: file.to_owned(), look, revision: 0 })
    }

    /// Looks into a file; what it would bring to a survey as it was at a count of writes.
    fn against(
        store: &mut Store,
        revision: u64,
        file: &Path,
        work: &LongWork,
    ) -> std::result::Result<Self, FactsError> {
        let look = file::look(file, Some(store), Limits::default(), &mut work.watch_file())?;
        Ok(Self { file: file.to_owned(), look, revision })
    }
}

/// Sends the long work that looks what a file would bring to the open survey. What other programs wrote meanwhile is read
/// first.
pub(crate) fn look(session: &mut Session, file: PathBuf) -> Result<()> {
    let open = session.open_survey()?;
    open.refresh()?;
    let (folder, author, revision) = (open.store.folder().to_owned(), open.store.author(), open.revision);
    session.send(WorkKind::Look, move |work| {
        let mut store = Store::open(&folder, author)?;
        let looked = Looked::against(&mut store, revision, &file, work)?;
        Ok(After::new(move |session| {
            let open = session.open_survey()?;
            open.refresh()?;
            open.looked = Some(looked.clone());
            Ok(Move::Stay)
        }))
    });
    Ok(())
}
