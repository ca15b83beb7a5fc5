//! A photo of a part, or of one that is still to be said.

use facts::fact::{PhotoImage, SubjectId};
use serde::{Deserialize, Serialize};

/// What a photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoRole {
    /// The part before anything was changed.
    Before,
    /// The part after the work.
    After,
    /// The print on the part.
    Label,
    /// Where the part sits.
    Place,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// Its identity.
    pub id: SubjectId,
    /// Its file.
    pub image: PhotoImage,
    /// The part or run that it shows; `None` until somebody says.
    pub of: Option<SubjectId>,
    /// What of it it shows.
    pub role: Option<PhotoRole>,
}
