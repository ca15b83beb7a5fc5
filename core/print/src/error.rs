//! Why nothing was read.

use facts::error::{PictureFault, SystemFault};
use phrase::Phrase;

/// Why nothing was read from a picture. What it displays is for logs; what people read is said by kind.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PrintError {
    /// The picture, or the part of it, is not taken.
    #[error("the picture is not taken: {0}")]
    Picture(#[from] PictureFault),
    /// A file of the model is not there.
    #[error("the model's file {file} is not there")]
    ModelMissing {
        /// Its name.
        file: &'static str,
    },
    /// A file of the model cannot be read.
    #[error("the model's file {file} cannot be read ({fault})")]
    ModelUnreadable {
        /// Its name.
        file: &'static str,
        /// What the system reports.
        fault: SystemFault,
    },
    /// A file of the model is not the one that this release reads with.
    #[error("the model's file {file} is not the one of this release")]
    ModelChanged {
        /// Its name.
        file: &'static str,
    },
    /// What the model holds does not run, which its sums should rule out.
    #[error("the model does not run")]
    ModelFails,
    /// There is no text in the picture that the model finds.
    #[error("no text was found")]
    NoText,
    /// Who asked for it told it to stop.
    #[error("stopped")]
    Stopped,
}

impl PrintError {
    /// The phrase that says it; for a picture that is not taken, and for what was stopped, there are others' words.
    pub fn phrase(&self) -> Option<Phrase> {
        Some(match self {
            Self::Picture(_) | Self::Stopped => return None,
            Self::ModelMissing { file } => {
                Phrase::new("print-model-missing").text("file", (*file).to_owned())
            }
            Self::ModelUnreadable { file, .. } => {
                Phrase::new("print-model-unreadable").text("file", (*file).to_owned())
            }
            Self::ModelChanged { file } => {
                Phrase::new("print-model-changed").text("file", (*file).to_owned())
            }
            Self::ModelFails => Phrase::new("print-model-fails"),
            Self::NoText => Phrase::new("print-no-text"),
        })
    }
}
