//! Why a file is refused.

use crate::fact::FactFault;

/// Why a file cannot be taken in.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FileFault {
    /// It does not end as a zip does.
    #[error("it is not a survey file, or its end is missing")]
    NotAZip,
    /// It is a zip that no writer of survey files makes.
    #[error("its zip container is not as survey files have it ({0})")]
    Zip(&'static str),
    /// It is a zip of something else.
    #[error("it is a zip file, but holds no survey")]
    NoSurvey,
    /// A later release wrote it in a format of its own.
    #[error(
        "it was written by a newer release (format {found}; this one reads up to {known}). Update this one to read it"
    )]
    Newer {
        /// The format that the file has.
        found: u64,
        /// The newest format that this release reads.
        known: u32,
    },
    /// An entry that does not belong there.
    #[error("it holds something that no survey file holds")]
    StrangeEntry,
    /// An entry twice.
    #[error("it holds {what} twice")]
    Twice {
        /// Which one.
        what: String,
    },
    /// An entry that must be there is not.
    #[error("{what} is missing in it")]
    Missing {
        /// Which one.
        what: String,
    },
    /// Something is larger than any survey's.
    #[error("{what} is larger than a survey's can be (at most {most} are read)")]
    TooLarge {
        /// What, and how it is counted.
        what: &'static str,
        /// The most that is read.
        most: u64,
    },
    /// All entries together are larger than the user allows.
    #[error("it unfolds to more than {most} bytes; raise that bound if you trust the sender")]
    TotalTooLarge {
        /// The bound.
        most: u64,
    },
    /// Content that does not fit its checksum, its length or its compression.
    #[error("{what} is damaged")]
    Damaged {
        /// Which entry.
        what: String,
    },
    /// Content that does not have the SHA-256 that the manifest or its name states.
    #[error("{what} is not what the file's list says; it was damaged or altered")]
    Altered {
        /// Which entry.
        what: String,
    },
    /// One of the bag's own small files is not as it must be.
    #[error("{what} is not written as it must be ({why})")]
    TagFile {
        /// Which entry.
        what: String,
        /// What is wrong with it.
        why: &'static str,
    },
    /// The first line of the facts.
    #[error("the first line of its records is wrong ({0})")]
    Header(&'static str),
    /// A line of the facts, counted from 1 with the header as line 1.
    #[error("line {number} of its records is wrong: {fault}")]
    Line {
        /// Which line.
        number: usize,
        /// What is wrong with it.
        fault: FactFault,
    },
    /// A line of the facts that does not fit those before it.
    #[error("line {number} of its records is wrong ({why})")]
    Order {
        /// Which line.
        number: usize,
        /// What is wrong with it.
        why: &'static str,
    },
    /// A photo that no fact of the file names.
    #[error("it holds a photo that none of its records names")]
    StrangePhoto,
    /// A photo that does not begin as JPEG or PNG do.
    #[error("a photo in it is no JPEG or PNG picture")]
    NoPicture,
    /// The file changed while it was read.
    #[error("another program changed it while it was read")]
    Changed,
}
