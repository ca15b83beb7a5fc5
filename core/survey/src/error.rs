//! What can go wrong with a survey: with its facts, or with what is worked out from them.

pub use facts::error::{
    CannotPutBack, FactsError, FileFault, NotASurvey, OtherKind, PictureFault, SystemFault, UndoFault,
};
pub use facts::fact::FactFault;

/// Everything that can go wrong with a survey.
#[derive(Debug, thiserror::Error)]
pub enum SurveyError {
    /// The physics refuses a part or the way parts are joined.
    #[error("this wiring cannot be worked out: {0}")]
    Coax(#[from] coax::CoaxError),

    /// The physics of the link refuses its input.
    #[error("the rates of this wiring cannot be worked out: {0}")]
    Link(#[from] coax::LinkError),

    /// Something that this program takes for impossible.
    #[error(
        "this release has a fault ({0}); the survey is untouched. Please report it with the command you used"
    )]
    Inner(&'static str),

    /// The user stopped a long piece of work.
    #[error("stopped as you wished; everything is as it was before")]
    Stopped,

    /// Its facts, where they are kept, or a file of them. Never [`FactsError::Stopped`] or [`FactsError::Inner`].
    #[error(transparent)]
    Facts(FactsError),
}

impl From<FactsError> for SurveyError {
    /// What can befall both is one kind here, so that it is asked for once.
    fn from(error: FactsError) -> Self {
        match error {
            FactsError::Stopped => Self::Stopped,
            FactsError::Inner(fault) => Self::Inner(fault),
            other => Self::Facts(other),
        }
    }
}

impl From<FactFault> for SurveyError {
    fn from(fault: FactFault) -> Self {
        FactsError::from(fault).into()
    }
}

/// What this crate's functions return.
pub type Result<T, E = SurveyError> = std::result::Result<T, E>;
