//! What can be wrong with the tokens and the signs.

use std::path::PathBuf;

/// What can be wrong with the tokens and the signs.
#[derive(Debug, thiserror::Error)]
pub enum LookError {
    /// The file cannot be read or written.
    #[error("{}: {error}", path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system says.
        error: std::io::Error,
    },
    /// The tokens are not as they should be.
    #[error("look/tokens.toml: {0}")]
    Tokens(#[from] toml::de::Error),
    /// The signs are not as they should be.
    #[error("look/signs.toml: {0}")]
    Signs(toml::de::Error),
}
