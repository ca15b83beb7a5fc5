//! The way back: what the shell is told while nobody touches anything.

/// What keeps a shell from drawing again.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum DrawAgainError {
    /// Its own code failed.
    #[error("the shell did not draw: {fault}")]
    NotDrawn {
        /// What it said, for logs.
        fault: String,
    },
}

impl From<uniffi::UnexpectedUniFFICallbackError> for DrawAgainError {
    fn from(error: uniffi::UnexpectedUniFFICallbackError) -> Self {
        Self::NotDrawn { fault: error.reason }
    }
}

/// Told when the screen is another one than was drawn last, though nothing was done on it: long work has come on, or is over.
#[uniffi::export(with_foreign)]
pub trait DrawAgain: Send + Sync {
    /// Asks for the screen to be fetched and drawn again. It comes on a thread of the core, which holds no lock: hand it
    /// over to the thread that draws, and return.
    fn draw_again(&self) -> std::result::Result<(), DrawAgainError>;
}
