//! Presses that ask for a file.

/// What file a press asks for. A shell that sees such a press asks its user for the file and sends
/// [`Deed::File`](crate::Deed::File) with the press's key instead of [`Deed::Press`](crate::Deed::Press).
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileAsked {
    /// A file that somebody sent.
    ToRead,
    /// The place for a file that is to be written. A shell that hands it on itself names a place of its own.
    ToWrite {
        /// A name for it.
        name: String,
    },
}

/// How keys begin that ask for a file to read.
const READ: &str = "file-in";
/// How keys begin that ask for a place to write to; the proposed name follows.
const WRITE: &str = "file-out:";

impl FileAsked {
    /// What the press with this key asks for; `None` for any other press.
    pub fn of(key: &str) -> Option<Self> {
        match key.strip_prefix(WRITE) {
            Some(name) => Some(Self::ToWrite { name: name.into() }),
            None => (key == READ).then_some(Self::ToRead),
        }
    }

    /// The key of a press that asks for it.
    pub(crate) fn key(&self) -> String {
        match self {
            Self::ToRead => READ.into(),
            Self::ToWrite { name } => format!("{WRITE}{name}"),
        }
    }
}
