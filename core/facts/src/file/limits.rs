//! The most that is read from a file. A writer keeps to the same bounds, so that what is written can be read.

use crate::fact::reserved::MOST_FACTS;

const MIB: u64 = 1024 * 1024;

/// Entries of the zip, all kinds together.
pub(super) const ENTRIES: usize = 5_000;
/// Bytes of an entry's name. The longest name has 87.
pub(super) const NAME_BYTES: usize = 256;
/// `facts.jsonl`.
pub(super) const FACTS_BYTES: u64 = 32 * MIB;
/// A photo.
pub(super) const PHOTO_BYTES: u64 = 32 * MIB;
/// `manifest-sha256.txt`.
pub(super) const MANIFEST_BYTES: u64 = MIB;
/// Each of `bagit.txt`, `bag-info.txt`, `tagmanifest-sha256.txt`.
pub(super) const TAG_FILE_BYTES: u64 = 64 * 1024;
/// `report.html`.
pub const REPORT_BYTES: u64 = 16 * MIB;
/// One line of `facts.jsonl`, without its line feed.
pub(super) const LINE_BYTES: usize = 64 * 1024;
/// Facts of a survey.
pub(super) const FACTS: usize = MOST_FACTS;
/// JSON values in the values and unknown members of all facts, the inner ones counted each.
pub(super) const VALUES: usize = 600_000;
/// Lists and objects among them: each costs far more memory than its text has bytes.
pub(super) const CONTAINERS: usize = 120_000;

/// The one bound that the user may raise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// The most bytes that a file may unfold to, all entries together.
    pub total_bytes: u64,
}

impl Default for Limits {
    /// 8 GiB: two thousand photos as phones take them.
    fn default() -> Self {
        Self { total_bytes: 8 * 1024 * MIB }
    }
}
