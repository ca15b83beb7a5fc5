//! Standard output and standard error.

use std::io::{self, Write};

use crate::error::DeskError;

/// Writes an answer.
///
/// # Errors
/// [`DeskError::Output`], also where the reader has gone.
pub fn say(text: &str) -> Result<(), DeskError> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes()).and_then(|()| out.flush()).map_err(DeskError::Output)
}

/// Writes a complaint. Where nobody can read it there is nothing more to do.
pub fn complain(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}
