//! What goes wrong: what a person can act on, which a screen says, and what is a fault of ours.
//!
//! What is displayed is for logs. What people read are phrases; a screen that stands shows them as a notice.

use std::path::{Path, PathBuf};

use advice::AdviceError;
use facts::error::{FactsError, SystemFault};
use facts::fact::FactFault;
use phrase::Phrase;
use telling::words::error::{InWords, ours, system};

/// Why something could not be done. Nothing was changed then, and what was typed is still there.
#[derive(Debug, thiserror::Error)]
pub enum GuideError {
    /// Something that a person can act on. [`Guide::act`](crate::Guide::act) never returns it: the screen says it.
    #[error(transparent)]
    Trouble(#[from] Trouble),
    /// A fault of this release, or of the shell.
    #[error("a fault of this release: {0}")]
    Inner(&'static str),
}

/// What a person can act on.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// With a survey or a file of one. Never [`FactsError::Inner`] or [`FactsError::Stopped`].
    #[error(transparent)]
    Facts(FactsError),
    /// With what is worked out from a survey. Never [`AdviceError::Inner`] or [`AdviceError::Stopped`].
    #[error(transparent)]
    Advice(AdviceError),
    /// The user stopped it.
    #[error("stopped")]
    Stopped,
    /// With a file that the shell gave.
    #[error("{}: {fault}", file.display())]
    File {
        /// The file.
        file: PathBuf,
        /// What the system reports.
        fault: SystemFault,
    },
    /// With what holds for this device.
    #[error("what holds for this device: {fault}")]
    Device {
        /// What the system reports.
        fault: SystemFault,
    },
}

impl GuideError {
    /// What the system reports of a file that the shell gave.
    pub(crate) fn of_file(file: &Path, error: &std::io::Error) -> Self {
        Trouble::File { file: file.to_owned(), fault: error.into() }.into()
    }
}

impl InWords for GuideError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Trouble(trouble) => trouble.phrase(),
            Self::Inner(_) => ours(),
        }
    }
}

impl InWords for Trouble {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Facts(error) => error.phrase(),
            Self::Advice(error) => error.phrase(),
            Self::Stopped => Phrase::new("error-stopped"),
            Self::File { file, fault } => system(*fault, file),
            Self::Device { fault: SystemFault::Full } => Phrase::new("device-full"),
            Self::Device { fault: _ } => Phrase::new("device-not-kept"),
        }
    }
}

impl From<AdviceError> for GuideError {
    fn from(error: AdviceError) -> Self {
        match error {
            AdviceError::Inner(fault) => Self::Inner(fault),
            AdviceError::Stopped => Trouble::Stopped.into(),
            other => Trouble::Advice(other).into(),
        }
    }
}

impl From<FactsError> for GuideError {
    fn from(error: FactsError) -> Self {
        match error {
            FactsError::Inner(fault) => Self::Inner(fault),
            FactsError::Stopped => Trouble::Stopped.into(),
            other => Trouble::Facts(other).into(),
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
