//! The one error of this crate, with what it says of files, pictures and undo.
//!
//! What it displays is for logs; what people read is said elsewhere, by kind. None is left open with `non_exhaustive`: a
//! new kind that nobody has words for must not compile. No message carries the text of a note, a name or an address: messages end up in logs and bug reports.

mod file;
mod picture;
mod system;
mod undo;

use std::path::PathBuf;

use crate::fact::{FactFault, FactId};

pub use file::FileFault;
pub use picture::{OtherKind, PictureFault};
pub use system::SystemFault;
pub use undo::UndoFault;

/// Everything that can go wrong with the facts of a survey, where they are kept, and the files in which they travel.
#[derive(Debug, thiserror::Error)]
pub enum FactsError {
    /// Something that this program takes for impossible.
    #[error("a fault of this release: {0}")]
    Inner(&'static str),

    /// More parts than a house has.
    #[error("this survey has {found} parts; at most {most} are taken. Split it into several surveys")]
    TooManyParts {
        /// How many there are.
        found: usize,
        /// How many are taken.
        most: usize,
    },

    /// A fact whose own members do not fit together.
    #[error("no record can say this: {0}")]
    Fact(#[from] FactFault),

    /// Two different facts claim one id.
    #[error(
        "two different records carry the id {id}; one of the two copies was altered, so nothing was taken in"
    )]
    FactDiffers {
        /// The id that both carry.
        id: FactId,
    },

    /// A fact replaces one that is not there.
    #[error(
        "record {id} replaces record {missing}, which is not known here; ask the sender for a complete file"
    )]
    ReplacesUnknown {
        /// The fact that was to be taken in.
        id: FactId,
        /// The fact that it names and nobody has.
        missing: FactId,
    },

    /// A fact replaces one about something else.
    #[error("record {id} replaces record {other}, which is about something else; nothing was taken in")]
    ReplacesElsewhere {
        /// The fact that was to be taken in.
        id: FactId,
        /// The fact of another subject or field that it names.
        other: FactId,
    },

    /// A fact dated more than a year ahead of this device.
    #[error(
        "record {id} is dated more than a year ahead of this device; set the clock of the device that wrote it, \
         or of this one"
    )]
    FromTheFuture {
        /// The fact that was to be taken in.
        id: FactId,
    },

    /// The path does not hold a survey.
    #[error("{} is not a survey: {why}", folder.display())]
    NotASurvey {
        /// The path that was given.
        folder: PathBuf,
        /// What is wrong with it.
        why: NotASurvey,
    },

    /// A new survey was to be made where something already stands.
    #[error("{} already exists; choose another name for the new survey", folder.display())]
    AlreadyThere {
        /// The path that was given.
        folder: PathBuf,
    },

    /// The survey was written by a later release.
    #[error(
        "{} was written by a newer release (layout {found}; this one knows up to {known}); update this one to \
         open it. Nothing was changed",
        folder.display()
    )]
    Newer {
        /// The survey's folder.
        folder: PathBuf,
        /// The layout that the survey has.
        found: u32,
        /// The newest layout that this release knows.
        known: u32,
    },

    /// The database of the survey is damaged.
    #[error(
        "the database of {} is damaged ({report}); keep the folder as it is and restore a copy or a file of this survey",
        folder.display()
    )]
    Damaged {
        /// The survey's folder.
        folder: PathBuf,
        /// What the check found, without any text of the survey.
        report: String,
    },

    /// The system does not let us in.
    #[error(
        "{} cannot be used ({reason}); check that the folder is there and that you may read and write in it",
        folder.display()
    )]
    Inaccessible {
        /// The survey's folder, or the one it was to be made in.
        folder: PathBuf,
        /// What of it a person can do something about.
        why: SystemFault,
        /// The system's own words, for logs.
        reason: String,
    },

    /// No space is left.
    #[error("the disk that holds {} is full; nothing was written. Free some space and try again", folder.display())]
    DiskFull {
        /// The survey's folder.
        folder: PathBuf,
    },

    /// Another process holds the survey.
    #[error("{} is in use by another program; nothing was changed. Try again when it is done", folder.display())]
    Busy {
        /// The survey's folder.
        folder: PathBuf,
    },

    /// A name that not every system takes for a folder.
    #[error(
        "this name cannot be a folder's on every system: it must be 1 to 200 bytes long, must not start with a dot or \
         end with a dot or a space, and must not hold any of / \\ < > : \" | ? *"
    )]
    FolderName,

    /// A name that is too long for a folder.
    #[error("a name of {found} bytes cannot be a folder's: at most {most}")]
    FolderNameTooLong {
        /// How long it is, in bytes.
        found: usize,
        /// How long it may be.
        most: usize,
    },

    /// A file was given to repair a survey, and holds another one.
    #[error("the file holds another survey than the damaged one; nothing was changed")]
    OtherSurveyInFile,

    /// Half-typed input longer than is kept.
    #[error("the text is {bytes} bytes long; at most {limit} are kept, so shorten it")]
    DraftTooLong {
        /// Its length.
        bytes: usize,
        /// The longest allowed.
        limit: usize,
    },

    /// A picture that is not taken in.
    #[error("this picture was not taken in: {0}")]
    Picture(#[from] PictureFault),

    /// More photos than a survey can hand on.
    #[error("this survey has {most} photos, which is as many as fit; nothing was taken in")]
    TooManyPhotos {
        /// How many are taken.
        most: usize,
    },

    /// No photo of that id is here, or it was forgotten.
    #[error("there is no such photo in this survey, or it was forgotten")]
    NoSuchPhoto,

    /// A photo whose file is missing or is not what its name says.
    #[error(
        "the file of this photo is missing or damaged; take in a file of this survey that has it, to bring it back"
    )]
    PhotoLost,

    /// An action that cannot be undone.
    #[error("this cannot be undone: {0}")]
    Undo(#[from] UndoFault),

    /// A disagreement that is none, or not any more.
    #[error("there is nothing to settle here; it may have been settled meanwhile")]
    NothingToSettle,

    /// Anything else that the database reports.
    #[error("the database of {} could not be used: {source}", folder.display())]
    Database {
        /// The survey's folder.
        folder: PathBuf,
        /// The database's own report.
        source: rusqlite::Error,
    },

    /// A file that was to be read is no survey file, or does not hold together.
    #[error("{} cannot be taken in: {fault}. Nothing was changed", file.display())]
    File {
        /// The file.
        file: PathBuf,
        /// What is wrong with it.
        fault: FileFault,
    },

    /// A file holds another survey than the one it was to be taken into.
    #[error("{} holds another survey; take it in as a survey of its own. Nothing was changed", file.display())]
    OtherSurvey {
        /// The file.
        file: PathBuf,
    },

    /// A file would remove or move more than half of a survey, and nobody has agreed to that.
    #[error(
        "{} would remove or move most of this survey ({gone} of {things} things, {parts_changed} of {parts} parts); \
         nothing was taken in before that is agreed to",
        file.display()
    )]
    Upheaval {
        /// The file.
        file: PathBuf,
        /// How many things the survey shows.
        things: usize,
        /// How many of them would go.
        gone: usize,
        /// How many parts the survey shows.
        parts: usize,
        /// How many of them would go or move.
        parts_changed: usize,
    },

    /// A survey cannot be packed into a file that could be read again.
    #[error("this survey does not fit into a file: {what} at most {most}. No file was written")]
    DoesNotFit {
        /// What there is too much of, and how it is counted.
        what: &'static str,
        /// How much is taken.
        most: u64,
    },

    /// More facts than a file of a survey can hold.
    #[error("this survey has {found} records; at most {most} are taken")]
    TooManyFacts {
        /// How many there are.
        found: usize,
        /// How many are taken.
        most: usize,
    },

    /// A file was to be written where something already stands.
    #[error("{} already exists; choose another name, or say that it is to be replaced", file.display())]
    FileThere {
        /// The path that was given.
        file: PathBuf,
    },

    /// A file was to be written under a name that says something else of what is in it.
    #[error("{} does not end in .{ending}, as what is to be written there does", file.display())]
    OtherEnding {
        /// The path that was given.
        file: PathBuf,
        /// How it should end, without the point.
        ending: &'static str,
    },

    /// A file was to be written where one of another kind stands.
    #[error("{} is there and is something else than what is to be written", file.display())]
    OtherKindThere {
        /// The path that was given.
        file: PathBuf,
        /// How what is to be written ends, without the point.
        ending: &'static str,
    },

    /// The user stopped a long piece of work.
    #[error("stopped as you wished; everything is as it was before")]
    Stopped,

    /// What was taken in last cannot be put back.
    #[error("nothing was put back: {0}")]
    CannotPutBack(CannotPutBack),
}

/// Why what was taken in last cannot be put back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CannotPutBack {
    /// No file was taken in, or it brought nothing, it was put back already, or it is too long ago.
    #[error("no file was taken in during the last 30 days that brought anything")]
    NothingTaken,
}

/// Why a path is not a survey.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotASurvey {
    /// Nothing is there.
    #[error("there is no such folder")]
    Missing,
    /// A file stands there.
    #[error("it is a file, and a survey is a folder whose name ends in .legwork")]
    AFile,
    /// The name of a new survey lacks its ending.
    #[error("the name of a survey's folder ends in .legwork")]
    Name,
    /// The folder holds no database.
    #[error("the folder holds no file survey.db")]
    NoDatabase,
    /// `survey.db` is not a database.
    #[error("its survey.db is not an SQLite database, or its beginning is damaged")]
    NotSqlite,
    /// `survey.db` is a database of something else.
    #[error("its survey.db belongs to another program")]
    OtherProgram,
}

/// What this crate's functions return.
pub type Result<T, E = FactsError> = std::result::Result<T, E>;
