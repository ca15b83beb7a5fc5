//! The one error of this crate: what a person can act on, in sentences.

use advice::AdviceError;
use facts::error::FactsError;
use facts::fact::FactFault;

/// Why something could not be done. Nothing was changed then, and what was typed is still there.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum GuideError {
    /// The disk is full.
    #[error("{message}")]
    StorageFull {
        /// What to do about it.
        message: String,
    },
    /// Another program holds the survey.
    #[error("{message}")]
    Busy {
        /// What to do about it.
        message: String,
    },
    /// A survey or file that a newer release wrote.
    #[error("{message}")]
    NewerRelease {
        /// What to do about it.
        message: String,
    },
    /// A survey or file that does not hold together.
    #[error("{message}")]
    Damaged {
        /// What to do about it.
        message: String,
    },
    /// What was given is not taken: a picture, a name, a file of another program.
    #[error("{message}")]
    Refused {
        /// Why, and what to do.
        message: String,
    },
    /// The user stopped it.
    #[error("stopped; nothing was changed")]
    Stopped,
    /// Anything else: a folder that cannot be read or written, a fault of this release.
    #[error("{message}")]
    Failed {
        /// What happened.
        message: String,
    },
}

impl From<FactsError> for GuideError {
    fn from(error: FactsError) -> Self {
        let message = error.to_string();
        match error {
            FactsError::DiskFull { .. } => Self::StorageFull { message },
            FactsError::Busy { .. } => Self::Busy { message },
            FactsError::Newer { .. } => Self::NewerRelease { message },
            FactsError::Damaged { .. } => Self::Damaged { message },
            FactsError::Picture(_)
            | FactsError::NotASurvey { .. }
            | FactsError::AlreadyThere { .. }
            | FactsError::Fact(_)
            | FactsError::DraftTooLong { .. }
            | FactsError::TooManyPhotos { .. }
            | FactsError::TooManyParts { .. }
            | FactsError::Undo(_)
            | FactsError::File { .. }
            | FactsError::OtherSurvey { .. }
            | FactsError::OtherSurveyInFile
            | FactsError::FileThere { .. }
            | FactsError::DoesNotFit { .. }
            | FactsError::FactDiffers { .. }
            | FactsError::FromTheFuture { .. }
            | FactsError::FolderName
            | FactsError::CannotPutBack(_)
            | FactsError::NothingToSettle => Self::Refused { message },
            FactsError::Stopped => Self::Stopped,
            _ => Self::Failed { message },
        }
    }
}

impl From<AdviceError> for GuideError {
    fn from(error: AdviceError) -> Self {
        match error {
            AdviceError::Stopped => Self::Stopped,
            other => Self::Failed { message: other.to_string() },
        }
    }
}

impl From<FactFault> for GuideError {
    fn from(fault: FactFault) -> Self {
        FactsError::from(fault).into()
    }
}

/// A result of this crate.
pub type Result<T> = std::result::Result<T, GuideError>;
