//! What can go wrong with a command, and the exit code it gives. What it displays is for logs.

mod told;
mod words;

use std::io;
use std::path::PathBuf;

use advice::AdviceError;
use facts::error::FactsError;
use facts::photo::PictureFault;
use guide::{GuideError, Trouble};
use page::PageError;
use phrase::Phrase;
use print::PrintError;

use crate::sheet::{Problems, ValueFault};

pub use words::system;

/// Everything that ends a command early.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// A sheet with mistakes.
    #[error("{}: {} problems", file.display(), problems.count())]
    Sheet {
        /// The sheet.
        file: PathBuf,
        /// What is wrong with it.
        problems: Problems,
    },

    /// A sheet too long to be one.
    #[error("{} is {bytes} bytes long, most {most}", file.display())]
    SheetTooLong {
        /// The sheet.
        file: PathBuf,
        /// Its length.
        bytes: u64,
        /// The longest taken.
        most: u64,
    },

    /// A label that is not text.
    #[error("label {line} is not UTF-8")]
    LabelNotText {
        /// The line, from 1.
        line: usize,
    },

    /// A label that is longer than any that is read.
    #[error("a label of {found} bytes, and at most {most} are read")]
    LabelLong {
        /// How long it is, in bytes.
        found: usize,
        /// How long it may be.
        most: usize,
    },

    /// A label too long to be one.
    #[error("label {line} is longer than {most} bytes")]
    LabelTooLong {
        /// The line, from 1.
        line: usize,
        /// The longest taken.
        most: usize,
    },

    /// More photos of a label than are read together.
    #[error("{found} photos of a label, and at most {most} are read")]
    PhotosMany {
        /// How many were given.
        found: usize,
        /// How many may be.
        most: usize,
    },

    /// Not as many crops as photos.
    #[error("{crops} crops of {photos} photos")]
    CropsOfPhotos {
        /// How many crops were given.
        crops: usize,
        /// How many photos.
        photos: usize,
    },

    /// A crop that is none.
    #[error("no crop: {given}")]
    CropNotRead {
        /// What was given.
        given: String,
    },

    /// A crop in which nothing of the picture lies.
    #[error("{}: the crop lies outside", file.display())]
    CropOutside {
        /// The picture.
        file: PathBuf,
        /// Its pixels across and down, as it is shown.
        size: (u32, u32),
    },

    /// A photo in which no text was found.
    #[error("{}: no text", file.display())]
    NoText {
        /// The photo.
        file: PathBuf,
    },

    /// The model that reads print is not there, is another, or does not run.
    #[error("{}: {fault}", folder.display())]
    PrintModel {
        /// Where it was looked for.
        folder: PathBuf,
        /// What is wrong with it.
        fault: PrintError,
    },

    /// Something stands where a new file or folder was to be made.
    #[error("{} exists", path.display())]
    Exists {
        /// What stands there.
        path: PathBuf,
        /// What to do.
        advice: Advice,
    },

    /// Something cannot be worked out.
    #[error(transparent)]
    Advice(#[from] AdviceError),

    /// A survey, or a file of one, cannot be read or written.
    #[error(transparent)]
    Facts(#[from] FactsError),

    /// A file that somebody packed, where a survey is asked for.
    #[error("{} is a packed file", path.display())]
    PackedFile {
        /// The file.
        path: PathBuf,
    },

    /// The guide could not go on.
    #[error(transparent)]
    Guide(GuideError),

    /// The page in the browser cannot be served.
    #[error(transparent)]
    Page(PageError),

    /// A file cannot be read.
    #[error("{} cannot be read: {source}", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },

    /// A file cannot be written.
    #[error("{} cannot be written: {source}", path.display())]
    Write {
        /// The file.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },

    /// Nobody is there to read the answer, or the place it goes to is full.
    #[error("the answer cannot be written: {0}")]
    Output(#[source] io::Error),

    /// There is no folder to keep this computer's author id in.
    #[error("no folder for the author id")]
    NoHome,

    /// A word that means nothing in this survey.
    #[error("no such thing: {word}")]
    NoSuchThing {
        /// The word.
        word: String,
        /// A word that is there and looks like it.
        near: Option<String>,
    },

    /// A word that means several things.
    #[error("{word} may mean {count} things")]
    Ambiguous {
        /// The word.
        word: String,
        /// How many things.
        count: usize,
        /// Some of their ids, with their names where they have any.
        found: Vec<Phrase>,
    },

    /// A field that nobody ever said anything about.
    #[error("no such field: {field}, of {known:?}")]
    NoSuchField {
        /// The field.
        field: String,
        /// The fields that there are.
        known: Vec<String>,
    },

    /// A thing of another kind than is wanted.
    #[error("{word} is a wrong thing: {what:?}")]
    WrongThing {
        /// The word.
        word: String,
        /// What is wrong with it.
        what: WrongThing,
    },

    /// A picture that is not taken in.
    #[error("{}: {fault}", file.display())]
    Picture {
        /// The picture.
        file: PathBuf,
        /// Why not.
        fault: PictureFault,
    },

    /// A folder without pictures, or a pattern that matches none.
    #[error("{}: no pictures", path.display())]
    NoPictures {
        /// What was given.
        path: PathBuf,
    },

    /// Lines of a list that cannot be done.
    #[error("{}: {} lines", list.display(), faults.len())]
    InList {
        /// The list.
        list: PathBuf,
        /// Each such line, from 1, and what is wrong with it; never empty.
        faults: Vec<(u64, ListFault)>,
    },

    /// A list without a line.
    #[error("{}: nothing in it", list.display())]
    EmptyList {
        /// The list.
        list: PathBuf,
    },

    /// A value that cannot be set.
    #[error("{field} of {word}: {why:?}")]
    NotSet {
        /// The thing, as it was typed.
        word: String,
        /// The field, or several.
        field: String,
        /// Why not.
        why: Box<ValueFault>,
    },

    /// Two parts with one tag, where parts are told apart by their tags.
    #[error("the tag {tag} twice")]
    TagTwice {
        /// The tag.
        tag: String,
    },

    /// A survey without tags.
    #[error("no tags")]
    NoTags,

    /// A search for nothing.
    #[error("an empty word")]
    EmptyWord,

    /// The taking in of several pictures ended between two of them.
    #[error("{done} of {of} pictures: {why}")]
    PicturesPartly {
        /// How many were taken in.
        done: usize,
        /// How many were given.
        of: usize,
        /// What ended it.
        why: Box<DeskError>,
    },

    /// The user stopped the work.
    #[error("stopped")]
    Stopped,

    /// Something that cannot be taken back, without the word that it is wanted.
    #[error("not confirmed: {0:?}")]
    NotConfirmed(Unconfirmed),

    /// A note without words.
    #[error("an empty note")]
    EmptyNote,

    /// A name that is no name.
    #[error("no name of at most {most} letters: {found}")]
    NoName {
        /// How many letters it has.
        found: usize,
        /// How many are taken.
        most: usize,
    },

    /// A survey that is set aside is to be set aside.
    #[error("{} is set aside already", path.display())]
    AsideAlready {
        /// The survey.
        path: PathBuf,
    },

    /// There is no action to undo.
    #[error("nothing to undo")]
    NothingDone,

    /// A file or folder cannot be where the survey stands already, or is not where it should be.
    #[error("{} is not set aside", path.display())]
    NotAside {
        /// The survey.
        path: PathBuf,
    },

    /// The system does not let us listen to Ctrl-C.
    #[error("no signals: {0}")]
    Signals(#[source] io::Error),

    /// A fault of the program.
    #[error("a fault of the program")]
    Fault,
}

/// What is wrong with a line of a list.
#[derive(Debug, thiserror::Error)]
pub enum ListFault {
    /// It names no photo.
    #[error("no photo: {word}")]
    NoPhoto {
        /// The word.
        word: String,
    },
    /// It has too few words or too many.
    #[error("{found} words")]
    Words {
        /// How many.
        found: usize,
    },
    /// A role that is none.
    #[error("no role: {word}")]
    Role {
        /// The word.
        word: String,
    },
    /// A photo that stands there already.
    #[error("{word} again, after line {first}")]
    Twice {
        /// The word.
        word: String,
        /// Where it stood first.
        first: u64,
    },
    /// Something that is not text in UTF-8.
    #[error("not UTF-8")]
    NotText,
    /// A word that means nothing here, or something else.
    #[error(transparent)]
    Thing(DeskError),
}

/// What to do about something that stands in the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Advice {
    /// For the folder of the demo.
    OtherOut,
    /// For a report.
    Replace,
}

/// What is wrong with a thing that was named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrongThing {
    /// For photos.
    NotForPhotos,
    /// For photos: a room with no outlet, or with several.
    RoomForPhotos,
    /// Where a photo is wanted.
    NotAPhoto,
    /// Where a part is wanted.
    NotAPart,
    /// The survey itself cannot be removed, nor forgotten as a whole.
    WholeSurvey,
    /// Nothing to bring back.
    NotRemoved,
    /// Nothing to remove.
    RemovedAlready,
    /// Nothing left to forget.
    ForgottenAlready,
    /// A side of a disagreement that is none.
    NoSide,
}

/// What was not confirmed.
#[derive(Debug, Clone, PartialEq)]
pub enum Unconfirmed {
    /// Forgetting.
    Forget {
        /// How many facts.
        records: usize,
    },
    /// Removing what something hangs on.
    Remove {
        /// Each thing with what hangs on it.
        hanging: Vec<phrase::Arg>,
    },
    /// Deleting a survey.
    Delete,
    /// Putting back a file after which more was written.
    PutBack,
}

/// Exit code of a command that failed: disk, permission, fault.
pub const FAILED: u8 = 1;
/// Exit code of a command used wrongly: unknown option, missing argument.
pub const WRONG_USE: u8 = 2;
/// Exit code of a command that refused what it was given.
pub const REFUSED: u8 = 3;
/// Exit code of a command that was stopped by Ctrl-C: 128 and the number of the signal, as shells have it.
pub const STOPPED: u8 = 130;

impl From<GuideError> for DeskError {
    /// What is about a survey is one kind, however it came here.
    fn from(error: GuideError) -> Self {
        match error {
            GuideError::Trouble(Trouble::Facts(error)) => Self::Facts(error),
            GuideError::Trouble(Trouble::Advice(error)) => Self::Advice(error),
            other => Self::Guide(other),
        }
    }
}

impl From<PageError> for DeskError {
    /// What is about the guide is one kind, wherever it is drawn.
    fn from(error: PageError) -> Self {
        match error {
            PageError::Guide(error) => error.into(),
            other => Self::Page(other),
        }
    }
}
