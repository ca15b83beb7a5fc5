//! What can go wrong with a command, in sentences, and the exit code it gives.

use std::io;
use std::path::PathBuf;

use advice::AdviceError;
use facts::error::FactsError;
use facts::photo::PictureFault;
use guide::GuideError;

use crate::sheet::Problems;

/// Everything that ends a command early.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// A sheet with mistakes.
    #[error("{} was refused ({count}); nothing was written", file.display(), count = counted(problems.count()))]
    Sheet {
        /// The sheet.
        file: PathBuf,
        /// What is wrong with it.
        problems: Problems,
    },

    /// A sheet too long to be one.
    #[error("{} is {bytes} bytes long; a sheet has at most {most}. Nothing was written", file.display())]
    SheetTooLong {
        /// The sheet.
        file: PathBuf,
        /// Its length.
        bytes: u64,
        /// The longest taken.
        most: u64,
    },

    /// A label that is not text.
    #[error(
        "line {line} of the labels is not text in UTF-8; save the list as UTF-8 and try again from that line"
    )]
    LabelNotText {
        /// The line, from 1.
        line: usize,
    },

    /// A label too long to be one.
    #[error("line {line} of the labels is longer than {most} bytes; write one label on each line")]
    LabelTooLong {
        /// The line, from 1.
        line: usize,
        /// The longest taken.
        most: usize,
    },

    /// Something stands where a new file or folder was to be made.
    #[error("{} already exists and was left as it is; {advice}", path.display())]
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
    #[error(
        "{} is a survey packed into one file; make a survey of it first: legwork take {} NAME.legwork",
        path.display(), path.display()
    )]
    PackedFile {
        /// The file.
        path: PathBuf,
    },

    /// The guide could not go on.
    #[error(transparent)]
    Guide(#[from] GuideError),

    /// A file cannot be read.
    #[error("{} cannot be read ({source}); check the name and that you may read it", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },

    /// A file cannot be written.
    #[error("{} cannot be written ({source}); check that its folder is there and that you may write in it", path.display())]
    Write {
        /// The file.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },

    /// Nobody is there to read the answer, or the place it goes to is full.
    #[error("the answer cannot be written ({0})")]
    Output(#[source] io::Error),

    /// There is no folder to keep this computer's author id in.
    #[error("no folder to keep this computer's author id in: set HOME, XDG_CONFIG_HOME or LEGWORK_HOME")]
    NoHome,

    /// A word that means nothing in this survey.
    #[error(
        "nothing here has the tag, name or id \"{word}\"{}. Nothing was changed",
        near.as_ref().map(|near| format!("; did you mean \"{near}\"?")).unwrap_or_default()
    )]
    NoSuchThing {
        /// The word.
        word: String,
        /// A word that is there and looks like it.
        near: Option<String>,
    },

    /// A word that means several things.
    #[error("\"{word}\" may mean {count} things here; use more of an id instead: {ids}. Nothing was changed")]
    Ambiguous {
        /// The word.
        word: String,
        /// How many things.
        count: usize,
        /// Some of their ids.
        ids: String,
    },

    /// A field that nobody ever said anything about.
    #[error(
        "nobody ever said anything about \"{field}\" of this; what was said: {known}. Nothing was changed"
    )]
    NoSuchField {
        /// The field.
        field: String,
        /// The fields that there are.
        known: String,
    },

    /// A thing of another kind than is wanted.
    #[error("\"{word}\" is {what}. Nothing was changed")]
    WrongThing {
        /// The word.
        word: String,
        /// What is wrong with it.
        what: WrongThing,
    },

    /// A picture that is not taken in.
    #[error("{} was not taken in: {fault}. Nothing was written", file.display())]
    Picture {
        /// The picture.
        file: PathBuf,
        /// Why not.
        fault: PictureFault,
    },

    /// The taking in of several pictures ended between two of them.
    #[error("{done} of {of} pictures were taken in, then it ended: {why}")]
    PicturesPartly {
        /// How many were taken in.
        done: usize,
        /// How many were given.
        of: usize,
        /// What ended it.
        why: Box<DeskError>,
    },

    /// The user stopped the work.
    #[error("stopped as you wished")]
    Stopped,

    /// Something that cannot be taken back, without the word that it is wanted.
    #[error("{0}. Nothing was changed; say --yes to do it")]
    NotConfirmed(Unconfirmed),

    /// A note without words.
    #[error("an empty note says nothing; write what it is to say. To list the notes, leave TEXT out")]
    EmptyNote,

    /// A name that is no name.
    #[error("a name is at most {most} letters on one line; nothing was changed")]
    NoName {
        /// How many are taken.
        most: usize,
    },

    /// A survey that is set aside is to be set aside.
    #[error("{} is set aside already; legwork surveys back brings it back", path.display())]
    AsideAlready {
        /// The survey.
        path: PathBuf,
    },

    /// There is no action to undo.
    #[error("you have done nothing here that could be undone; legwork said lists all actions")]
    NothingDone,

    /// A file or folder cannot be where the survey stands already, or is not where it should be.
    #[error("{} does not lie in a folder named {}; surveys that were set aside do", path.display(), facts::home::SET_ASIDE)]
    NotAside {
        /// The survey.
        path: PathBuf,
    },

    /// The system does not let us listen to Ctrl-C.
    #[error("this system does not let the program listen to Ctrl-C ({0})")]
    Signals(#[source] io::Error),

    /// A fault of the program.
    #[error(
        "this is a fault of the program, not of yours; please report it with what you did. Nothing was written"
    )]
    Fault,
}

/// What to do about something that stands in the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Advice {
    /// For the folder of the demo.
    #[error("choose another folder with --out")]
    OtherOut,
    /// For a report.
    #[error("choose another name, or say --replace")]
    Replace,
}

/// What is wrong with a thing that was named.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum WrongThing {
    /// For photos.
    #[error("neither a part nor a cable run, and photos show parts and cable runs")]
    NotForPhotos,
    /// Where a photo is wanted.
    #[error("no photo; legwork photo list shows their ids")]
    NotAPhoto,
    /// The survey itself cannot be removed, nor forgotten as a whole.
    #[error("the survey as a whole; name one field of it, such as place, or see legwork surveys --help")]
    WholeSurvey,
    /// Nothing to bring back.
    #[error("not removed")]
    NotRemoved,
    /// Nothing to remove.
    #[error("removed already")]
    RemovedAlready,
    /// Nothing left to forget.
    #[error("forgotten already")]
    ForgottenAlready,
    /// A side of a disagreement that is none.
    #[error("no side of this disagreement; legwork disagreements numbers them")]
    NoSide,
}

/// What was not confirmed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Unconfirmed {
    /// Forgetting.
    #[error("records that would be forgotten for ever: {records}")]
    Forget {
        /// How many facts.
        records: usize,
    },
    /// Deleting a survey.
    #[error("the survey would be deleted for ever, photos and all; legwork surveys aside only sets it aside")]
    Delete,
}

fn counted(problems: usize) -> String {
    if problems == 1 { "1 problem".into() } else { format!("{problems} problems") }
}

/// Exit code of a command that failed: disk, permission, fault.
pub const FAILED: u8 = 1;
/// Exit code of a command used wrongly: unknown option, missing argument.
pub const WRONG_USE: u8 = 2;
/// Exit code of a command that refused what it was given.
pub const REFUSED: u8 = 3;
/// Exit code of a command that was stopped by Ctrl-C: 128 and the number of the signal, as shells have it.
pub const STOPPED: u8 = 130;

impl DeskError {
    /// The exit code: [`REFUSED`] where the user gave something that cannot be taken, else [`FAILED`].
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Stopped | Self::Advice(AdviceError::Stopped) | Self::Facts(FactsError::Stopped) => STOPPED,
            Self::PicturesPartly { why, .. } => why.exit_code(),
            Self::Advice(AdviceError::Inner(_))
            | Self::Facts(
                FactsError::Inaccessible { .. }
                | FactsError::DiskFull { .. }
                | FactsError::Busy { .. }
                | FactsError::Database { .. }
                | FactsError::Inner(_)
                | FactsError::PhotoLost,
            )
            | Self::Guide(
                GuideError::StorageFull { .. } | GuideError::Busy { .. } | GuideError::Failed { .. },
            )
            | Self::Read { .. }
            | Self::Write { .. }
            | Self::Output(_)
            | Self::NoHome
            | Self::Signals(_)
            | Self::Fault => FAILED,
            // Whatever else a survey says is about what it was given.
            Self::Advice(_)
            | Self::Facts(_)
            | Self::Guide(_)
            | Self::PackedFile { .. }
            | Self::Sheet { .. }
            | Self::SheetTooLong { .. }
            | Self::LabelNotText { .. }
            | Self::LabelTooLong { .. }
            | Self::NoSuchThing { .. }
            | Self::Ambiguous { .. }
            | Self::NoSuchField { .. }
            | Self::WrongThing { .. }
            | Self::Picture { .. }
            | Self::NotConfirmed(_)
            | Self::NothingDone
            | Self::NotAside { .. }
            | Self::AsideAlready { .. }
            | Self::EmptyNote
            | Self::NoName { .. }
            | Self::Exists { .. } => REFUSED,
        }
    }

    /// Its name in JSON.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Sheet { .. } | Self::SheetTooLong { .. } => "sheet",
            Self::LabelNotText { .. } | Self::LabelTooLong { .. } => "label",
            Self::Exists { .. }
            | Self::AsideAlready { .. }
            | Self::Facts(FactsError::AlreadyThere { .. } | FactsError::FileThere { .. }) => "exists",
            Self::Facts(FactsError::NotASurvey { .. }) | Self::PackedFile { .. } => "not_a_survey",
            Self::Facts(FactsError::Busy { .. }) => "busy",
            Self::Facts(FactsError::Damaged { .. }) => "damaged",
            Self::Facts(
                FactsError::File { .. } | FactsError::OtherSurvey { .. } | FactsError::OtherSurveyInFile,
            ) => "survey_file",
            Self::Facts(FactsError::Picture(_) | FactsError::PhotoLost) | Self::Picture { .. } => "picture",
            Self::Advice(AdviceError::Stopped) | Self::Facts(FactsError::Stopped) | Self::Stopped => {
                "stopped"
            }
            Self::Advice(_) | Self::Facts(_) => "survey",
            Self::PicturesPartly { why, .. } => why.name(),
            Self::NoSuchThing { .. }
            | Self::Ambiguous { .. }
            | Self::NoSuchField { .. }
            | Self::WrongThing { .. }
            | Self::NothingDone
            | Self::NotAside { .. }
            | Self::EmptyNote
            | Self::NoName { .. } => "thing",
            Self::NotConfirmed(_) => "not_confirmed",
            Self::Read { .. } | Self::Write { .. } | Self::Output(_) | Self::NoHome | Self::Signals(_) => {
                "file"
            }
            Self::Guide(_) => "guide",
            Self::Fault => "fault",
        }
    }

    /// Whether it only means that the reader of our output has gone, as `head` does.
    pub fn is_broken_pipe(&self) -> bool {
        matches!(self, Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe)
    }
}
