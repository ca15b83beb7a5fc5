//! The file in which a survey travels: a plain zip that holds a bag (`BagIt`). `docs/file.md` describes it byte for byte.
//!
//! [`pack`] writes one, [`look`] says what one would bring, [`take`] and [`take_as_new`] take one in, and [`put_back`]
//! undoes the last take while nothing was written since. All of it streams: memory does not grow with the photos.
//!
//! A file comes from anywhere. It is either refused with everything as it was, or is exactly what its manifest says:
//! names are compared and never used as paths, every size is bounded and counted, every byte is covered by a hash.
//!
//! This module does not know what a photo shows. [`pack`] is handed the page for people; the page in a file
//! that was received is never opened.

mod bag;
mod facts;
mod fault;
mod header;
mod limits;
mod look;
mod manifest;
mod name;
mod options;
mod pack;
mod photo;
mod staging;
mod syncer;
mod take;
mod upheaval;
mod watch;
mod zip;

pub use crate::error::FileFault;
pub use limits::{Limits, REPORT_BYTES as MOST_PAGE_BYTES};
pub use look::{AuthorShare, Look, look};
pub use options::{LeftOut, PackOptions, StillTold, still_told, without};
pub use pack::{Packed, Page, pack};
pub use photo::{PhotoKind, PhotoName};
pub use take::{Consent, Taken, put_back, take, take_as_new};
pub use upheaval::Upheaval;
pub use watch::{Progress, Watch};

/// The ending of a survey file's name.
pub const FILE_EXTENSION: &str = "lwk";

/// The media type of a survey file (RFC 6838, 3.2 and RFC 6839, 3.6: vendor tree, structured as zip).
pub const MEDIA_TYPE: &str = "application/vnd.legwork.survey+zip";

/// The format that this release writes, and the newest that it reads.
pub const FORMAT: u32 = 1;

/// Whether a file is one of ours by its content, whatever its name: a zip of our kind whose facts begin with a header.
/// A file of a newer format counts as ours; [`look`] then says that it is newer.
pub fn recognise(path: &std::path::Path) -> bool {
    match bag::Bag::open(path, Limits::default()) {
        Ok(_) => true,
        Err(crate::error::FactsError::File { fault, .. }) => matches!(fault, FileFault::Newer { .. }),
        Err(_) => false,
    }
}
