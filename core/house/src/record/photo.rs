//! A photo of a part, or of one that is still to be said.

use super::closed_list::closed_list;

use facts::fact::PhotoImage;
use facts::fact::SubjectId;
use facts::photo::TakenAt;

closed_list! {
    /// What a photo shows.
    pub enum PhotoRole ("value-role") {
        /// The part before anything was changed.
        Before = "before",
        /// The part after the work.
        After = "after",
        /// The print on the part.
        Label = "label",
        /// Where the part sits.
        Place = "place",
    }
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
    /// What its file was called where it came from, without its folder.
    pub file_name: Option<String>,
    /// When it was taken, by the camera's clock; `None` where the picture did not tell.
    pub taken: Option<TakenAt>,
    /// What a program read in it, of which somebody took something; it counts by itself for nothing.
    pub print: Option<String>,
}
