//! Who writes.
//!
//! An author is a random id and nothing else, made at the first start on a device and kept there by the shell
//! around this crate. A display name is an ordinary fact about the author.

use super::id::{AuthorId, SubjectId};

impl AuthorId {
    /// The author as the subject of facts about them, such as the display name.
    pub const fn subject(self) -> SubjectId {
        SubjectId::from_uuid(self.uuid())
    }
}
