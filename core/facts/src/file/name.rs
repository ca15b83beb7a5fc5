//! The names of a file's entries. A name that comes in is compared with these, and never used as a path.

use super::limits;
use super::photo::PhotoName;

/// One entry of the zip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum EntryName {
    BagIt,
    BagInfo,
    Manifest,
    TagManifest,
    Facts,
    Report,
    Photo(PhotoName),
}

/// The folder that the bag is: every entry lies in it.
const BAG: &str = "survey/";
/// Where photos lie in the bag.
const PHOTOS: &str = "data/photos/";

impl EntryName {
    /// The entry with this name in the zip.
    pub(super) fn of_zip(name: &[u8]) -> Option<Self> {
        Self::of_bag(std::str::from_utf8(name).ok()?.strip_prefix(BAG)?)
    }

    /// The entry with this name in the bag, as manifests have it.
    pub(super) fn of_bag(name: &str) -> Option<Self> {
        Some(match name {
            "bagit.txt" => Self::BagIt,
            "bag-info.txt" => Self::BagInfo,
            "manifest-sha256.txt" => Self::Manifest,
            "tagmanifest-sha256.txt" => Self::TagManifest,
            "data/facts.jsonl" => Self::Facts,
            "data/report.html" => Self::Report,
            _ => Self::Photo(name.strip_prefix(PHOTOS)?.parse().ok()?),
        })
    }

    /// Its name in the bag.
    pub(super) fn in_bag(self) -> String {
        match self {
            Self::BagIt => "bagit.txt".into(),
            Self::BagInfo => "bag-info.txt".into(),
            Self::Manifest => "manifest-sha256.txt".into(),
            Self::TagManifest => "tagmanifest-sha256.txt".into(),
            Self::Facts => "data/facts.jsonl".into(),
            Self::Report => "data/report.html".into(),
            Self::Photo(photo) => format!("{PHOTOS}{photo}"),
        }
    }

    /// Its name in the zip.
    pub(super) fn in_zip(self) -> String {
        format!("{BAG}{}", self.in_bag())
    }

    /// Whether it is what the bag carries, and not about the bag.
    pub(super) fn is_payload(self) -> bool {
        matches!(self, Self::Facts | Self::Report | Self::Photo(_))
    }

    /// The most bytes that are read of it, and what it is called then.
    pub(super) fn most_bytes(self) -> (&'static str, u64) {
        match self {
            Self::BagIt | Self::BagInfo | Self::TagManifest => {
                ("a small file of it, in bytes,", limits::TAG_FILE_BYTES)
            }
            Self::Manifest => ("its list of content, in bytes,", limits::MANIFEST_BYTES),
            Self::Facts => ("its records, in bytes,", limits::FACTS_BYTES),
            Self::Report => ("its report, in bytes,", limits::REPORT_BYTES),
            Self::Photo(_) => ("a photo in it, in bytes,", limits::PHOTO_BYTES),
        }
    }
}
