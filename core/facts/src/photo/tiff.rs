//! The structure in which a camera writes what it tells beside the pixels (TIFF 6.0, section 2; Exif 2.32, CIPA DC-008,
//! 4.6): directories of tags, each with its type, its count, and its value or where that stands.
//!
//! It is read as far as it holds: what is not there, or is written badly, is `None`.

/// The type ASCII: bytes, the last of them zero.
pub(super) const ASCII: u16 = 2;
/// The type SHORT, two bytes.
pub(super) const SHORT: u16 = 3;
/// The type LONG, four bytes.
pub(super) const LONG: u16 = 4;

/// A structure, its first directory found.
pub(super) struct Tiff<'a> {
    bytes: &'a [u8],
    big: bool,
    first: usize,
}

/// One entry of a directory.
pub(super) struct Entry {
    kind: u16,
    count: u32,
    /// Where its four bytes of value, or of its place, stand.
    at: usize,
}

impl<'a> Tiff<'a> {
    /// Reads the head.
    pub(super) fn of(bytes: &'a [u8]) -> Option<Self> {
        let big = match bytes.get(..2)? {
            b"MM" => true,
            b"II" => false,
            _ => return None,
        };
        let mut tiff = Self { bytes, big, first: 0 };
        if tiff.short(2)? != 42 {
            return None;
        }
        tiff.first = usize::try_from(tiff.long(4)?).ok()?;
        Some(tiff)
    }

    /// An entry of the first directory.
    pub(super) fn entry(&self, tag: u16) -> Option<Entry> {
        self.entry_of(self.first, tag)
    }

    /// An entry of the directory to which an entry of the first one leads.
    pub(super) fn entry_behind(&self, leads: u16, tag: u16) -> Option<Entry> {
        let directory = self.entry(leads).filter(|entry| entry.kind == LONG && entry.count == 1)?;
        self.entry_of(usize::try_from(self.long(directory.at)?).ok()?, tag)
    }

    fn entry_of(&self, directory: usize, tag: u16) -> Option<Entry> {
        for number in 0..usize::from(self.short(directory)?) {
            let at = directory.checked_add(2 + 12 * number)?;
            if self.short(at)? == tag {
                let (kind, count) = (self.short(at + 2)?, self.long(at + 4)?);
                return Some(Entry { kind, count, at: at + 8 });
            }
        }
        None
    }

    /// The value of an entry that holds one SHORT.
    pub(super) fn one_short(&self, entry: &Entry) -> Option<u16> {
        if entry.kind == SHORT && entry.count == 1 { self.short(entry.at) } else { None }
    }

    /// The bytes of an entry that holds ASCII, longer than fits into the entry itself.
    pub(super) fn ascii(&self, entry: &Entry) -> Option<&'a [u8]> {
        let length = usize::try_from(entry.count).ok().filter(|&length| entry.kind == ASCII && length > 4)?;
        let start = usize::try_from(self.long(entry.at)?).ok()?;
        self.bytes.get(start..start.checked_add(length)?)
    }

    fn short(&self, at: usize) -> Option<u16> {
        let bytes: [u8; 2] = self.bytes.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if self.big { u16::from_be_bytes(bytes) } else { u16::from_le_bytes(bytes) })
    }

    fn long(&self, at: usize) -> Option<u32> {
        let bytes: [u8; 4] = self.bytes.get(at..at.checked_add(4)?)?.try_into().ok()?;
        Some(if self.big { u32::from_be_bytes(bytes) } else { u32::from_le_bytes(bytes) })
    }
}
