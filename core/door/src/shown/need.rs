//! What a press needs before it can be done.

use guide::screen::{FileKind, Need};

/// A kind of file, for a system's own file chooser.
#[uniffi::remote(Record)]
pub struct FileKind {
    /// How its name ends, without the point.
    pub extension: String,
    /// Its media type (RFC 6838); what this device has no better name for is `application/octet-stream`.
    pub media_type: String,
}

/// What a press needs before it can be done. A shell that sees one gets it from the user first, and sends
/// `Deed::File` or `Deed::Photo` with the same key instead of
/// `Deed::Press`.
#[uniffi::remote(Enum)]
pub enum Need {
    /// A file that somebody sent. Its content decides what it is, not its name.
    FileToRead {
        /// The kinds of file that it may be.
        kinds: Vec<FileKind>,
    },
    /// The place for a file that is to be written.
    FileToWrite {
        /// A name for it.
        name: String,
        /// What it will be.
        kind: FileKind,
    },
    /// The same of a file that is meant for somebody else: a shell that can hand files to other programs names a place
    /// of its own, and hands the file on once it is written.
    FileToShare {
        /// A name for it.
        name: String,
        /// What it will be.
        kind: FileKind,
    },
    /// A photo, taken now or chosen.
    Photo {
        /// Whether one follows another until somebody says that it is enough.
        burst: bool,
    },
}
