//! Writing a zip whose bytes depend on names and contents only.

use std::io::{self, Seek, SeekFrom, Write};

use sha2::{Digest, Sha256};

use super::layout::{self, Common};

/// What the directory says of an entry.
struct Listed {
    common: Common,
    name: String,
    at: u64,
}

/// A zip being written. Entries are stored, one after the other.
pub(in super::super) struct ZipWriter<W> {
    out: W,
    /// Where the next byte goes, counted from the first byte of the zip.
    at: u64,
    entries: Vec<Listed>,
}

impl<W: Write + Seek> ZipWriter<W> {
    /// Starts a zip at the beginning of `out`.
    pub(in super::super) fn new(out: W) -> Self {
        Self { out, at: 0, entries: Vec::new() }
    }

    /// Starts an entry.
    pub(in super::super) fn begin(&mut self, name: &str) -> io::Result<EntryWriter<'_, W>> {
        let common = Common {
            version: if self.at < u64::from(layout::SEE_64) {
                layout::VERSION_STORED
            } else {
                layout::VERSION_64
            },
            flags: 0,
            method: layout::STORED,
            time: layout::TIME,
            date: layout::DATE,
            crc32: 0,
            packed: 0,
            size: 0,
            name_bytes: u16::try_from(name.len()).map_err(io::Error::other)?,
        };
        let entry = Listed { common, name: name.to_owned(), at: self.at };
        let header = local_header(&entry);
        self.out.write_all(&header)?;
        self.at += header.len() as u64;
        Ok(EntryWriter { zip: self, entry, crc32: crc32fast::Hasher::new(), sha256: Sha256::new(), size: 0 })
    }

    /// Writes an entry whose content is at hand; returns its SHA-256.
    pub(in super::super) fn whole(&mut self, name: &str, content: &[u8]) -> io::Result<[u8; 32]> {
        let mut entry = self.begin(name)?;
        entry.write(content)?;
        entry.finish().map(|(sha256, _)| sha256)
    }

    /// Leaves `bytes` out that read as zeros, as an entry whose checksum is not that of its content.
    #[cfg(test)]
    pub(super) fn hole(&mut self, name: &str, bytes: u32) -> io::Result<()> {
        let mut entry = self.begin(name)?;
        entry.entry.common = Common { packed: bytes, size: bytes, ..entry.entry.common };
        let Self { out, at, entries } = entry.zip;
        *at += u64::from(bytes);
        out.seek(SeekFrom::Start(entry.entry.at))?;
        out.write_all(&local_header(&entry.entry))?;
        out.seek(SeekFrom::Start(*at))?;
        entries.push(entry.entry);
        Ok(())
    }

    /// Writes the directory. Returns what it was written to and the length of the zip, beyond which nothing may stand.
    pub(in super::super) fn close(mut self) -> io::Result<(W, u64)> {
        let start = self.at;
        let mut tail = Vec::new();
        for entry in &self.entries {
            tail.extend(layout::CENTRAL.to_le_bytes());
            // Made by the version it needs, on the system 0: no rights of a file system are stated.
            tail.extend(entry.common.version.to_le_bytes());
            entry.common.write(&mut tail);
            let small = u32::try_from(entry.at).ok().filter(|&at| at < layout::SEE_64);
            let extra_bytes = if small.is_none() { layout::EXTRA_64_BYTES } else { 0 };
            tail.extend(extra_bytes.to_le_bytes());
            // No comment, disk 0, no attributes.
            tail.extend([0; 2 + 2 + 2 + 4]);
            tail.extend(small.unwrap_or(layout::SEE_64).to_le_bytes());
            tail.extend(entry.name.as_bytes());
            if small.is_none() {
                tail.extend(1_u16.to_le_bytes());
                tail.extend(8_u16.to_le_bytes());
                tail.extend(entry.at.to_le_bytes());
            }
        }
        let count = u16::try_from(self.entries.len()).map_err(io::Error::other)?;
        let directory_bytes = u32::try_from(tail.len()).map_err(io::Error::other)?;
        let small = u32::try_from(start).ok().filter(|&at| at < layout::SEE_64);
        if small.is_none() {
            let end_64 = start + tail.len() as u64;
            tail.extend(layout::END_64.to_le_bytes());
            tail.extend((layout::END_64_BYTES as u64 - 12).to_le_bytes());
            tail.extend(layout::VERSION_64.to_le_bytes());
            tail.extend(layout::VERSION_64.to_le_bytes());
            tail.extend([0; 4 + 4]);
            tail.extend(u64::from(count).to_le_bytes());
            tail.extend(u64::from(count).to_le_bytes());
            tail.extend(u64::from(directory_bytes).to_le_bytes());
            tail.extend(start.to_le_bytes());
            tail.extend(layout::LOCATOR_64.to_le_bytes());
            tail.extend([0; 4]);
            tail.extend(end_64.to_le_bytes());
            tail.extend(1_u32.to_le_bytes());
        }
        tail.extend(layout::END.to_le_bytes());
        tail.extend([0; 2 + 2]);
        tail.extend(count.to_le_bytes());
        tail.extend(count.to_le_bytes());
        tail.extend(directory_bytes.to_le_bytes());
        tail.extend(small.unwrap_or(layout::SEE_64).to_le_bytes());
        tail.extend([0; 2]);
        self.out.write_all(&tail)?;
        self.out.flush()?;
        Ok((self.out, start + tail.len() as u64))
    }
}

fn local_header(entry: &Listed) -> Vec<u8> {
    let mut header = Vec::with_capacity(layout::LOCAL_BYTES + entry.name.len());
    header.extend(layout::LOCAL.to_le_bytes());
    entry.common.write(&mut header);
    header.extend([0; 2]);
    header.extend(entry.name.as_bytes());
    header
}

/// An entry being written.
pub(in super::super) struct EntryWriter<'a, W> {
    zip: &'a mut ZipWriter<W>,
    entry: Listed,
    crc32: crc32fast::Hasher,
    sha256: Sha256,
    size: u64,
}

impl<W: Write + Seek> EntryWriter<'_, W> {
    pub(in super::super) fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.zip.out.write_all(bytes)?;
        self.crc32.update(bytes);
        self.sha256.update(bytes);
        self.size += bytes.len() as u64;
        Ok(())
    }

    /// Ends the entry: now its header can say what it holds. Returns its SHA-256 and its size in bytes.
    pub(in super::super) fn finish(self) -> io::Result<([u8; 32], u64)> {
        let Self { zip, mut entry, crc32, sha256, size } = self;
        let short = u32::try_from(size).map_err(io::Error::other)?;
        entry.common = Common { crc32: crc32.finalize(), packed: short, size: short, ..entry.common };
        zip.at += size;
        zip.out.seek(SeekFrom::Start(entry.at))?;
        zip.out.write_all(&local_header(&entry))?;
        zip.out.seek(SeekFrom::Start(zip.at))?;
        zip.entries.push(entry);
        Ok((sha256.finalize().into(), size))
    }

    /// The SHA-256 so far.
    pub(in super::super) fn sha256(&self) -> [u8; 32] {
        self.sha256.clone().finalize().into()
    }

    /// Drops the entry, as if it had never begun. What was written of it is overwritten, or lies beyond the end that
    /// [`ZipWriter::close`] reports.
    pub(in super::super) fn abandon(self) -> io::Result<()> {
        self.zip.at = self.entry.at;
        self.zip.out.seek(SeekFrom::Start(self.entry.at)).map(drop)
    }
}
