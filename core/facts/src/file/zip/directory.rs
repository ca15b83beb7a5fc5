//! Reading the directory of a zip, and everything around the contents.

use std::collections::HashSet;
use std::io::{Read, Seek, SeekFrom};

use super::super::fault::ReadFault;
use super::super::limits;
use super::layout::{self, Common, Fields};
use crate::error::FileFault;

type Result<T, E = ReadFault> = std::result::Result<T, E>;

/// An entry, with local header and directory found to agree.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in super::super) struct Entry {
    /// Its name as it stands there.
    pub(in super::super) name: Vec<u8>,
    /// Whether its content is deflated; otherwise it is stored.
    pub(in super::super) deflated: bool,
    /// CRC-32 of the content.
    pub(in super::super) crc32: u32,
    /// Bytes that it takes in the file.
    pub(in super::super) packed: u64,
    /// Bytes that it unfolds to.
    pub(in super::super) size: u64,
    /// Where its bytes begin.
    pub(in super::super) data_at: u64,
}

/// Where the directory is.
struct End {
    count: usize,
    start: u64,
    bytes: usize,
}

/// An entry as the directory has it.
struct Listed {
    common: Common,
    name: Vec<u8>,
    at: u64,
}

fn zip(why: &'static str) -> ReadFault {
    FileFault::Zip(why).into()
}

/// Reads the directory and every local header, and checks that they fill the file without gap or overlap.
pub(in super::super) fn read_directory(mut file: impl Read + Seek) -> Result<Vec<Entry>> {
    let length = file.seek(SeekFrom::End(0))?;
    let end = read_end(&mut file, length)?;
    let bytes = read_at(&mut file, end.start, end.bytes)?;
    let mut fields = Fields(&bytes);
    let mut listed = Vec::new();
    for _ in 0..end.count {
        listed.push(read_listed(&mut fields).ok_or_else(|| zip("its directory ends too early"))??);
    }
    if !fields.0.is_empty() {
        return Err(zip("its directory holds more than it counts"));
    }
    listed.sort_by_key(|entry| entry.at);
    let mut names = HashSet::new();
    if let Some(twice) = listed.iter().find(|entry| !names.insert(entry.name.as_slice())) {
        let what = String::from_utf8_lossy(&twice.name).escape_debug().to_string();
        return Err(FileFault::Twice { what }.into());
    }
    let mut next = 0;
    let mut entries = Vec::new();
    for entry in &listed {
        if entry.at != next {
            return Err(zip("its entries overlap or leave gaps"));
        }
        entries.push(read_local(&mut file, entry)?);
        let header = (layout::LOCAL_BYTES + entry.name.len()) as u64;
        next = entry.at + header + u64::from(entry.common.packed);
    }
    if next != end.start {
        return Err(zip("its entries overlap or leave gaps"));
    }
    Ok(entries)
}

fn read_at(file: &mut (impl Read + Seek), at: u64, bytes: usize) -> Result<Vec<u8>> {
    file.seek(SeekFrom::Start(at))?;
    let mut buffer = vec![0; bytes];
    match file.read_exact(&mut buffer) {
        Ok(()) => Ok(buffer),
        Err(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => Err(FileFault::NotAZip.into()),
        Err(error) => Err(error.into()),
    }
}

/// The record at the very end: no comment may follow it, and nothing else.
fn read_end(file: &mut (impl Read + Seek), length: u64) -> Result<End> {
    let at = length.checked_sub(layout::END_BYTES as u64).ok_or(FileFault::NotAZip)?;
    let bytes = read_at(file, at, layout::END_BYTES)?;
    let mut fields = Fields(&bytes);
    let mut read = || {
        let found = fields.u32()?;
        let (disk, start_disk) = (fields.u16()?, fields.u16()?);
        let (here, count) = (fields.u16()?, fields.u16()?);
        let (bytes, start, comment) = (fields.u32()?, fields.u32()?, fields.u16()?);
        Some((found == layout::END, disk, start_disk, here, count, bytes, start, comment))
    };
    let Some((true, disk, start_disk, here, count, bytes, start, comment)) = read() else {
        return Err(FileFault::NotAZip.into());
    };
    if (disk, start_disk, comment) != (0, 0, 0) || here != count {
        return Err(zip("its end speaks of several parts or of a comment"));
    }
    let count = usize::from(count);
    if count > limits::ENTRIES {
        return Err(
            FileFault::TooLarge { what: "the number of its entries", most: limits::ENTRIES as u64 }.into()
        );
    }
    let most =
        limits::ENTRIES * (layout::CENTRAL_BYTES + limits::NAME_BYTES + usize::from(layout::EXTRA_64_BYTES));
    let bytes = usize::try_from(bytes).ok().filter(|&bytes| bytes <= most);
    let bytes = bytes.ok_or_else(|| zip("its directory is too large"))?;
    let (start, stops) = if start == layout::SEE_64 {
        (read_end_64(file, at, count, bytes)?, at.saturating_sub(END_64_AND_LOCATOR))
    } else {
        (u64::from(start), at)
    };
    if start.checked_add(bytes as u64) != Some(stops) {
        return Err(zip("its directory is not where its end says"));
    }
    Ok(End { count, start, bytes })
}

const END_64_AND_LOCATOR: u64 = (layout::END_64_BYTES + layout::LOCATOR_64_BYTES) as u64;

/// The records of 64 bits, which stand there only if the directory begins beyond 32 bits. Returns where it does.
fn read_end_64(file: &mut (impl Read + Seek), end: u64, count: usize, directory: usize) -> Result<u64> {
    let wrong = || zip("its end of 64 bits is wrong");
    let at = end.checked_sub(END_64_AND_LOCATOR).ok_or_else(wrong)?;
    let bytes = read_at(file, at, layout::END_64_BYTES + layout::LOCATOR_64_BYTES)?;
    let mut fields = Fields(&bytes);
    let mut read = || {
        let head = (fields.u32()?, fields.u64()?, fields.u16()?, fields.u16()?);
        let disks = (fields.u32()?, fields.u32()?);
        let counts = (fields.u64()?, fields.u64()?, fields.u64()?);
        let start = fields.u64()?;
        let locator = (fields.u32()?, fields.u32()?, fields.u64()?, fields.u32()?);
        Some((head, disks, counts, start, locator))
    };
    let (head, disks, counts, start, locator) = read().ok_or_else(wrong)?;
    let version = layout::VERSION_64;
    let right = head == (layout::END_64, layout::END_64_BYTES as u64 - 12, version, version)
        && disks == (0, 0)
        && counts == (count as u64, count as u64, directory as u64)
        && locator == (layout::LOCATOR_64, 0, at, 1)
        && start >= u64::from(layout::SEE_64);
    if right { Ok(start) } else { Err(wrong()) }
}

/// One record of the directory; `None` if the directory ends within it.
fn read_listed(fields: &mut Fields<'_>) -> Option<Result<Listed>> {
    if fields.u32()? != layout::CENTRAL {
        return Some(Err(zip("its directory is wrong")));
    }
    let made_by = fields.u16()?;
    let common = Common::read(fields)?;
    let (extra, comment, disk, _text) = (fields.u16()?, fields.u16()?, fields.u16()?, fields.u16()?);
    let (attributes, at) = (fields.u32()?, fields.u32()?);
    let name = fields.bytes(usize::from(common.name_bytes))?.to_vec();
    if comment != 0 || disk != 0 || !is_plain_file(made_by, attributes) {
        return Some(Err(zip("an entry is a link, a folder, or lies elsewhere")));
    }
    let at = if at == layout::SEE_64 {
        let extra_64 = (extra == layout::EXTRA_64_BYTES, fields.u16()?, fields.u16()?);
        let at = fields.u64()?;
        if extra_64 != (true, 1, 8) || at < u64::from(layout::SEE_64) {
            return Some(Err(zip("an entry's place of 64 bits is wrong")));
        }
        at
    } else if extra == 0 {
        u64::from(at)
    } else {
        return Some(Err(zip("an entry carries extra fields")));
    };
    Some(check_common(&common).map(|()| Listed { common, name, at }))
}

/// The upper byte of "version made by" is the system (4.4.2); on Unix (3) and macOS (19) the upper half of the
/// attributes is the file's mode, whose top four bits tell a plain file (8, or 0 where none is stated).
fn is_plain_file(made_by: u16, attributes: u32) -> bool {
    const FOLDER: u32 = 0x10;
    let unix = matches!(made_by >> 8, 3 | 19);
    let kind = attributes >> 28;
    attributes & FOLDER == 0 && (!unix || kind == 8 || kind == 0)
}

fn check_common(common: &Common) -> Result<()> {
    // Bit 11: the name is UTF-8. Bits 1 and 2: how hard the deflater tried (4.4.4).
    let (utf_8, effort) = (1 << 11, 0b110);
    let allowed = match common.method {
        layout::STORED => utf_8,
        layout::DEFLATED => utf_8 | effort,
        _ => return Err(zip("an entry is compressed in a way that survey files do not use")),
    };
    if common.flags & 1 != 0 {
        return Err(zip("an entry is encrypted"));
    }
    if common.flags & !allowed != 0 {
        return Err(zip("an entry has a flag that survey files do not use"));
    }
    if common.version > layout::VERSION_64 {
        return Err(zip("an entry needs a newer zip"));
    }
    if common.packed == layout::SEE_64 || common.size == layout::SEE_64 {
        return Err(zip("an entry is larger than survey files have any"));
    }
    if common.method == layout::STORED && common.packed != common.size {
        return Err(zip("a stored entry states two sizes"));
    }
    if usize::from(common.name_bytes) > limits::NAME_BYTES {
        return Err(zip("an entry's name is too long"));
    }
    Ok(())
}

fn read_local(file: &mut (impl Read + Seek), listed: &Listed) -> Result<Entry> {
    let bytes = read_at(file, listed.at, layout::LOCAL_BYTES + listed.name.len())?;
    let mut fields = Fields(&bytes);
    let local = fields.u32() == Some(layout::LOCAL);
    let common = Common::read(&mut fields);
    let no_extra = fields.u16() == Some(0);
    if !local || common != Some(listed.common) || !no_extra || fields.0 != listed.name {
        return Err(zip("an entry says of itself what the directory does not"));
    }
    Ok(Entry {
        name: listed.name.clone(),
        deflated: listed.common.method == layout::DEFLATED,
        crc32: listed.common.crc32,
        packed: u64::from(listed.common.packed),
        size: u64::from(listed.common.size),
        data_at: listed.at + bytes.len() as u64,
    })
}
