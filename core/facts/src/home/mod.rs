//! The home folder: where the surveys of this device lie, each a folder `NAME.legwork`.
//!
//! The list is made by a look at each survey, without opening any. Nothing is written down about surveys outside
//! their own folders, so nothing has to be kept in step or forgotten there.

mod copy;
mod damage;
mod list;
mod manage;
mod standing;

use std::path::{Path, PathBuf};

use crate::error::Result;
use crate::store::{disk, fault};
use crate::unfinished;

pub use damage::Repaired;
pub use list::{Entry, Found};

/// The folder within the home folder where surveys lie that were set aside.
pub const SET_ASIDE: &str = "set-aside";

/// A home folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Home {
    folder: PathBuf,
}

impl Home {
    /// The home folder at `folder`, swept of what processes left that died; it is made if it is not there: then nobody else may look into it. One that is
    /// there keeps its mode, since its owner may have other things in it; the surveys in it are closed to others.
    ///
    /// # Errors
    /// `Inaccessible` or `DiskFull`.
    pub fn at(folder: &Path) -> Result<Self> {
        disk::make_folders(folder).map_err(|error| fault::of_system(folder, &error))?;
        // What cannot be swept now is swept at the next opening.
        unfinished::sweep(folder);
        Ok(Self { folder: folder.to_owned() })
    }

    /// Where it is.
    pub fn folder(&self) -> &Path {
        &self.folder
    }
}
