//! Reading the content of an entry: counted, checked, hashed.

use std::fs::File;
use std::io::{self, BufReader, Read, Seek, SeekFrom, Take};

use flate2::bufread::DeflateDecoder;
use sha2::{Digest, Sha256};

use super::super::fault::ReadFault;
use super::directory::Entry;
use crate::error::FileFault;

/// How much is read at once.
const BUFFER_BYTES: usize = 128 * 1024;

enum Content<'a> {
    Stored(Take<&'a File>),
    Deflated(Box<DeflateDecoder<BufReader<Take<&'a File>>>>),
}

/// The content of an entry. It is true only once [`EntryReader::finish`] has said so.
pub(in super::super) struct EntryReader<'a> {
    content: Content<'a>,
    entry: &'a Entry,
    what: String,
    /// Bytes that are still to come.
    left: u64,
    crc32: crc32fast::Hasher,
    sha256: Sha256,
}

impl<'a> EntryReader<'a> {
    /// Starts to read an entry. `what` names it in messages. One entry of a file is read at a time.
    pub(in super::super) fn new(file: &'a File, entry: &'a Entry, what: String) -> io::Result<Self> {
        let mut from = file;
        from.seek(SeekFrom::Start(entry.data_at))?;
        let packed = from.take(entry.packed);
        let content = if entry.deflated {
            Content::Deflated(Box::new(DeflateDecoder::new(BufReader::with_capacity(BUFFER_BYTES, packed))))
        } else {
            Content::Stored(packed)
        };
        let (crc32, sha256) = (crc32fast::Hasher::new(), Sha256::new());
        Ok(Self { content, entry, what, left: entry.size, crc32, sha256 })
    }

    fn damaged(&self) -> ReadFault {
        FileFault::Damaged { what: self.what.clone() }.into()
    }

    /// Reads what comes next into `buffer`; 0 at the end.
    pub(in super::super) fn next(&mut self, buffer: &mut [u8]) -> Result<usize, ReadFault> {
        let most = usize::try_from(self.left).unwrap_or(usize::MAX).min(buffer.len());
        let Some(room) = buffer.get_mut(..most).filter(|room| !room.is_empty()) else { return Ok(0) };
        let read = loop {
            let read = match &mut self.content {
                Content::Stored(from) => from.read(room),
                Content::Deflated(from) => from.read(room),
            };
            match read {
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                read => break read,
            }
        };
        let read = match read {
            Ok(read) => read,
            Err(error) if is_of_content(&error) => return Err(self.damaged()),
            Err(error) => return Err(error.into()),
        };
        if read == 0 {
            return Err(self.damaged());
        }
        let bytes = buffer.get(..read).unwrap_or_default();
        self.crc32.update(bytes);
        self.sha256.update(bytes);
        self.left -= read as u64;
        Ok(read)
    }

    /// Checks that all was read, that nothing is left over, and the CRC-32. Returns the SHA-256.
    pub(in super::super) fn finish(mut self) -> Result<[u8; 32], ReadFault> {
        if self.left > 0 {
            return Err(self.damaged());
        }
        if let Content::Deflated(from) = &mut self.content {
            let more = match from.read(&mut [0]) {
                Ok(more) => more,
                Err(error) if is_of_content(&error) => return Err(self.damaged()),
                Err(error) => return Err(error.into()),
            };
            if more > 0 || from.total_in() != self.entry.packed {
                return Err(self.damaged());
            }
        }
        if self.crc32.clone().finalize() != self.entry.crc32 {
            return Err(self.damaged());
        }
        Ok(self.sha256.finalize().into())
    }
}

/// Whether an error comes from wrong content, and not from the medium.
fn is_of_content(error: &io::Error) -> bool {
    use io::ErrorKind::{InvalidData, InvalidInput, UnexpectedEof};
    matches!(error.kind(), InvalidData | InvalidInput | UnexpectedEof)
}
