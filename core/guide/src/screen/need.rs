//! What a press needs before it can be done.

/// A kind of file, for a system's own file chooser.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileKind {
    /// How its name ends, without the point.
    pub extension: String,
    /// Its media type (RFC 6838); what this device has no better name for is `application/octet-stream`.
    pub media_type: String,
}

/// What a press needs before it can be done. A shell that sees one gets it from the user first, and sends
/// [`Deed::File`](crate::Deed::File) or [`Deed::Photo`](crate::Deed::Photo) with the same key instead of
/// [`Deed::Press`](crate::Deed::Press).
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Need {
    /// A file that somebody sent. Its content decides what it is, not its name.
    FileToRead {
        /// The kinds of file that it may be.
        kinds: Vec<FileKind>,
    },
    /// The place for a file that is to be written.
    FileToWrite {
        /// A name for it.
        name: String,
        /// What it will be.
        kind: FileKind,
    },
    /// The same of a file that is meant for somebody else: a shell that can hand files to other programs names a place
    /// of its own, and hands the file on once it is written.
    FileToShare {
        /// A name for it.
        name: String,
        /// What it will be.
        kind: FileKind,
    },
    /// A photo, taken now or chosen.
    Photo {
        /// Whether one follows another until somebody says that it is enough.
        burst: bool,
    },
}

/// How a key says what file its press asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileAsked {
    /// A file that somebody sent.
    ToRead,
    /// The place for a file that is to be written.
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

    /// What it needs; what is written here is mostly meant for somebody else.
    pub(crate) fn need(self) -> Need {
        match self {
            Self::ToRead => {
                Need::FileToRead { kinds: vec![FileKind::of_extension(facts::file::FILE_EXTENSION)] }
            }
            Self::ToWrite { name } => {
                let end = name.rsplit_once('.').map_or("", |(_, end)| end);
                Need::FileToShare { kind: FileKind::of_extension(end), name }
            }
        }
    }
}

impl FileKind {
    fn of_extension(extension: &str) -> Self {
        let media_type = match extension {
            facts::file::FILE_EXTENSION => facts::file::MEDIA_TYPE,
            // RFC 2854.
            "html" => "text/html",
            _ => "application/octet-stream",
        };
        Self { extension: extension.into(), media_type: media_type.into() }
    }
}

impl Need {
    /// The same file, for a place that the user names.
    pub(crate) fn for_a_place(self) -> Self {
        match self {
            Self::FileToShare { name, kind } => Self::FileToWrite { name, kind },
            other => other,
        }
    }

    /// Whether it is a file.
    pub const fn is_file(&self) -> bool {
        matches!(self, Self::FileToRead { .. } | Self::FileToWrite { .. } | Self::FileToShare { .. })
    }
}
