//! What keeps the page from being served.

/// What keeps the page from being served.
#[derive(Debug, thiserror::Error)]
pub enum PageError {
    /// No port of this computer could be taken.
    #[error("no port of this computer can be listened on: {0}")]
    Port(std::io::Error),
    /// The folder for what is uploaded could not be made.
    #[error("no temporary folder can be made: {0}")]
    Folder(std::io::Error),
    /// The system gave no random numbers, without which there is no secret.
    #[error("the system gives no random numbers: {0}")]
    Random(getrandom::Error),
    /// The server could not be begun or ended.
    #[error("the page's server: {0}")]
    Server(std::io::Error),
    /// What was being done could not be kept.
    #[error("{0}")]
    Guide(#[from] guide::GuideError),
}
