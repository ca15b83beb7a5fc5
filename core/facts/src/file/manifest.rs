//! The bag's own small files (RFC 8493, section 2). Each is written in one way, and read as strictly
//! as it is written, except that `bag-info.txt` may say more.

use std::collections::BTreeMap;
use std::fmt::Write;

use super::name::EntryName;
use crate::error::FileFault;
use crate::fact::SurveyId;
use crate::hex::{hex, unhex};

/// SHA-256 of entries.
pub(super) type Hashes = BTreeMap<EntryName, [u8; 32]>;

/// The whole of `bagit.txt` (RFC 8493, 2.1.1).
pub(super) const BAGIT: &str = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

/// The entries that `tagmanifest-sha256.txt` lists.
pub(super) const LISTED_TAGS: [EntryName; 3] = [EntryName::BagInfo, EntryName::BagIt, EntryName::Manifest];

/// A manifest: one line an entry, sorted by name (RFC 8493, 2.1.3), as `sha256sum` writes and reads it.
pub(super) fn write_manifest(hashes: &Hashes) -> String {
    let lines: BTreeMap<String, String> =
        hashes.iter().map(|(name, hash)| (name.in_bag(), hex(hash))).collect();
    lines.iter().fold(String::new(), |mut text, (name, hash)| {
        // Writing to a String cannot fail.
        let _ = writeln!(text, "{hash}  {name}");
        text
    })
}

/// Reads a manifest; every entry may be listed once.
pub(super) fn read_manifest(what: EntryName, text: &[u8]) -> Result<Hashes, FileFault> {
    let wrong = |why| FileFault::TagFile { what: what.in_bag(), why };
    let mut hashes = Hashes::new();
    for line in lines(what, text)? {
        let (hash, name) = line.split_once("  ").ok_or_else(|| wrong("a line is not a hash and a name"))?;
        let hash = unhex(hash).ok_or_else(|| wrong("a hash is not 64 digits of lower-case hexadecimal"))?;
        let name = EntryName::of_bag(name).ok_or_else(|| wrong("it lists a name that no survey file has"))?;
        if hashes.insert(name, hash).is_some() {
            return Err(wrong("it lists a name twice"));
        }
    }
    Ok(hashes)
}

/// `bag-info.txt` (RFC 8493, 2.2.2). It has no bagging date: the same facts give the same bytes.
pub(super) fn write_info(core: &str, survey: SurveyId, payload: Payload) -> String {
    format!(
        "Bag-Software-Agent: legwork {core}\nExternal-Identifier: {survey}\nPayload-Oxum: {}.{}\n",
        payload.bytes, payload.entries
    )
}

/// What the bag carries, all together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Payload {
    pub(super) bytes: u64,
    pub(super) entries: usize,
}

/// Checks `bag-info.txt`: lines of other labels are passed over.
pub(super) fn check_info(text: &[u8], survey: SurveyId, payload: Payload) -> Result<(), FileFault> {
    let what = EntryName::BagInfo;
    let wrong = |why| FileFault::TagFile { what: what.in_bag(), why };
    let (mut surveys, mut sums) = (Vec::new(), Vec::new());
    for line in lines(what, text)? {
        let (label, value) =
            line.split_once(": ").ok_or_else(|| wrong("a line is not a label and a value"))?;
        match label {
            "External-Identifier" => surveys.push(value),
            "Payload-Oxum" => sums.push(value),
            _ => {}
        }
    }
    if surveys != [survey.to_string()] {
        return Err(wrong("it does not name the survey once"));
    }
    if sums != [format!("{}.{}", payload.bytes, payload.entries)] {
        return Err(wrong("its sum is not that of the content"));
    }
    Ok(())
}

/// The lines of a small file: UTF-8 without a mark at its beginning, each line ended by a line feed alone.
fn lines(what: EntryName, text: &[u8]) -> Result<std::str::Split<'_, char>, FileFault> {
    let wrong = |why| FileFault::TagFile { what: what.in_bag(), why };
    let text = std::str::from_utf8(text).map_err(|_| wrong("it is not UTF-8"))?;
    if text.starts_with('\u{feff}') || text.contains('\r') {
        return Err(wrong("it has a byte order mark or carriage returns"));
    }
    text.strip_suffix('\n')
        .map(|text| text.split('\n'))
        .ok_or_else(|| wrong("it does not end with a line feed"))
}
