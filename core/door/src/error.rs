//! What goes wrong at the door.

use guide::GuideError;
use telling::words::Language;
use telling::words::error::InWords;

/// Why a call did nothing. What a person can act on while a screen stands is a notice on that screen, and no error.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum DoorError {
    /// What a person can act on, said in the language of the guide: show it.
    #[error("{said}")]
    Trouble {
        /// What is wrong and what to do, ready to show.
        said: String,
    },
    /// A fault of this release or of the shell: for logs. Nothing that was answered is lost.
    #[error("a fault of this release: {fault}")]
    Broken {
        /// What it is, for logs.
        fault: String,
    },
}

impl DoorError {
    /// An error of the guide, in its language.
    pub(crate) fn of(error: &GuideError, words: &Language) -> Self {
        match error {
            GuideError::Trouble(trouble) => Self::Trouble { said: words.say(&trouble.phrase()) },
            GuideError::Inner(fault) => Self::Broken { fault: (*fault).into() },
        }
    }
}

/// A result of the door.
pub type Result<T> = std::result::Result<T, DoorError>;
