//! The one error of this crate: what a person can act on, in sentences.

use survey::SurveyError;

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

impl From<SurveyError> for GuideError {
    fn from(error: SurveyError) -> Self {
        let message = error.to_string();
        match error {
            SurveyError::DiskFull { .. } => Self::StorageFull { message },
            SurveyError::Busy { .. } => Self::Busy { message },
            SurveyError::Newer { .. } => Self::NewerRelease { message },
            SurveyError::Damaged { .. } => Self::Damaged { message },
            SurveyError::Picture(_)
            | SurveyError::NotASurvey { .. }
            | SurveyError::AlreadyThere { .. }
            | SurveyError::Fact(_)
            | SurveyError::DraftTooLong { .. }
            | SurveyError::TooManyPhotos { .. }
            | SurveyError::TooManyParts { .. }
            | SurveyError::Undo(_)
            | SurveyError::File { .. }
            | SurveyError::OtherSurvey { .. }
            | SurveyError::OtherSurveyInFile
            | SurveyError::FileThere { .. }
            | SurveyError::DoesNotFit { .. }
            | SurveyError::FactDiffers { .. }
            | SurveyError::FromTheFuture { .. }
            | SurveyError::FolderName
            | SurveyError::CannotPutBack(_)
            | SurveyError::NothingToSettle => Self::Refused { message },
            SurveyError::Stopped => Self::Stopped,
            _ => Self::Failed { message },
        }
    }
}

impl From<survey::error::FactFault> for GuideError {
    fn from(fault: survey::error::FactFault) -> Self {
        SurveyError::from(fault).into()
    }
}

/// A result of this crate.
pub type Result<T> = std::result::Result<T, GuideError>;
