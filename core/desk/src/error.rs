//! What can go wrong with a command, in sentences, and the exit code it gives.

use std::io;
use std::path::PathBuf;

use survey::SurveyError;

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

    /// The survey cannot be read or written.
    #[error(transparent)]
    Survey(#[from] SurveyError),

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

fn counted(problems: usize) -> String {
    if problems == 1 { "1 problem".into() } else { format!("{problems} problems") }
}

/// Exit code of a command that failed: disk, permission, fault.
pub const FAILED: u8 = 1;
/// Exit code of a command used wrongly: unknown option, missing argument.
pub const WRONG_USE: u8 = 2;
/// Exit code of a command that refused what it was given.
pub const REFUSED: u8 = 3;

impl DeskError {
    /// The exit code: [`REFUSED`] where the user gave something that cannot be taken, else [`FAILED`].
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Survey(
                SurveyError::Inaccessible { .. }
                | SurveyError::DiskFull { .. }
                | SurveyError::Busy { .. }
                | SurveyError::Database { .. }
                | SurveyError::Inner(_),
            )
            | Self::Read { .. }
            | Self::Write { .. }
            | Self::Output(_)
            | Self::NoHome
            | Self::Fault => FAILED,
            // Whatever else a survey says is about what it was given.
            Self::Survey(_)
            | Self::Sheet { .. }
            | Self::SheetTooLong { .. }
            | Self::LabelNotText { .. }
            | Self::LabelTooLong { .. }
            | Self::Exists { .. } => REFUSED,
        }
    }

    /// Its name in JSON.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Sheet { .. } | Self::SheetTooLong { .. } => "sheet",
            Self::LabelNotText { .. } | Self::LabelTooLong { .. } => "label",
            Self::Exists { .. } | Self::Survey(SurveyError::AlreadyThere { .. }) => "exists",
            Self::Survey(SurveyError::NotASurvey { .. }) => "not_a_survey",
            Self::Survey(_) => "survey",
            Self::Read { .. } | Self::Write { .. } | Self::Output(_) | Self::NoHome => "file",
            Self::Fault => "fault",
        }
    }

    /// Whether it only means that the reader of our output has gone, as `head` does.
    pub fn is_broken_pipe(&self) -> bool {
        matches!(self, Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe)
    }
}
