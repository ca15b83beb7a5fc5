//! Why a file of a survey is refused.

use facts::error::FileFault;
use phrase::Phrase;

use super::count;

/// The message's `$file` is the file's name.
pub(super) fn phrase_of(fault: &FileFault, file: &str) -> Phrase {
    let about = |id: &str| Phrase::new(id).text("file", file);
    match fault {
        FileFault::NotAZip => about("error-file-not-a-zip"),
        FileFault::Zip(_) => about("error-file-other"),
        FileFault::NoSurvey => about("error-file-no-survey"),
        FileFault::Newer { found: _, known: _ } => about("error-file-newer"),
        FileFault::StrangeEntry | FileFault::Twice { what: _ } => about("error-file-strange"),
        FileFault::Missing { what: _ } => about("error-file-incomplete"),
        FileFault::TooLarge { what: _, most: _ } => about("error-file-too-large"),
        FileFault::TotalTooLarge { most: _ } => about("error-file-too-large-in-all"),
        FileFault::Damaged { what: _ }
        | FileFault::Altered { what: _ }
        | FileFault::TagFile { what: _, why: _ } => about("error-file-damaged"),
        FileFault::Header(_) => about("error-file-records").with("line", count(1)),
        FileFault::Line { number, fault: _ } | FileFault::Order { number, why: _ } => {
            about("error-file-records").with("line", count(*number))
        }
        FileFault::StrangePhoto => about("error-file-strange-photo"),
        FileFault::NoPicture => about("error-file-no-picture"),
        FileFault::Changed => about("error-file-changed"),
    }
}
