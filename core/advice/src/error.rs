//! What can go wrong when something is worked out.

/// Why something could not be worked out.
#[derive(Debug, thiserror::Error)]
pub enum AdviceError {
    /// The physics refuses a part or the way parts are joined.
    #[error("this wiring cannot be worked out: {0}")]
    Coax(#[from] coax::CoaxError),

    /// The physics of the link refuses its input.
    #[error("the rates of this wiring cannot be worked out: {0}")]
    Link(#[from] coax::LinkError),

    /// Something that this program takes for impossible.
    #[error("a fault of this release: {0}")]
    Inner(&'static str),

    /// The user stopped a long piece of work.
    #[error("stopped as you wished; everything is as it was before")]
    Stopped,
}
