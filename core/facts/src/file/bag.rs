//! A file that was received: opened, then checked to the last byte.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use super::facts::{self, Checked};
use super::fault::ReadFault;
use super::header::Header;
use super::limits::{self, Limits};
use super::manifest::{self, Hashes, Payload};
use super::name::EntryName;
use super::photo::PhotoName;
use super::staging::Staging;
use super::watch::Meter;
use super::zip::{Entry, EntryReader, read_directory};
use crate::error::FileFault;
use crate::error::Result;
use crate::fact::{FactClock, Ledger};
use crate::store::fault::of_system;

/// How much is copied at once.
const CHUNK_BYTES: usize = 128 * 1024;

/// An opened file, of which only container, names, sizes and header are known to be right.
pub(super) struct Bag {
    path: PathBuf,
    file: File,
    entries: BTreeMap<EntryName, Entry>,
    header: Header,
}

impl Bag {
    /// Opens a file and looks at everything but its content.
    pub(super) fn open(path: &Path, limits: Limits) -> Result<Self> {
        let unreadable = |error| of_system(path, &error);
        // Not opened before that: opening a pipe would wait for its writer.
        if !fs::metadata(path).map_err(unreadable)?.is_file() {
            return Err(FileFault::NotAZip.of(path));
        }
        let file = File::open(path).map_err(unreadable)?;
        let found = read_directory(&file).map_err(|fault| fault.of(path))?;
        let header = read_header(&file, &found).map_err(|fault| fault.of(path))?;
        let entries = by_name(found, limits).map_err(|fault| fault.of(path))?;
        Ok(Self { path: path.to_owned(), file, entries, header })
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    pub(super) fn header(&self) -> &Header {
        &self.header
    }

    /// Bytes to be read to check all of it.
    pub(super) fn total_bytes(&self) -> u64 {
        self.entries.values().map(|entry| entry.size).sum()
    }

    pub(super) fn photos(&self) -> impl Iterator<Item = (PhotoName, &Entry)> {
        self.entries.iter().filter_map(|(name, entry)| match name {
            EntryName::Photo(photo) => Some((*photo, entry)),
            _ => None,
        })
    }

    /// Starts to read an entry.
    pub(super) fn reader(&self, name: EntryName) -> Result<EntryReader<'_>> {
        let missing = || FileFault::Missing { what: name.in_bag() }.of(&self.path);
        let entry = self.entries.get(&name).ok_or_else(missing)?;
        EntryReader::new(&self.file, entry, name.in_bag()).map_err(|error| of_system(&self.path, &error))
    }

    /// Checks every byte. `held` is what is known of the survey already. Photos that are new go to `staging`.
    pub(super) fn check(
        &self,
        held: &Ledger,
        clock: &FactClock,
        mut staging: Option<&mut Staging>,
        meter: &mut Meter<'_>,
    ) -> Result<Checked> {
        let hashes = self.check_tags()?;
        let checked = facts::check(self, held, clock, meter)?;
        self.compare(&hashes, EntryName::Facts, checked.sha256)?;
        if self.entries.contains_key(&EntryName::Report) {
            let sha256 = self.copy(EntryName::Report, None, meter)?;
            self.compare(&hashes, EntryName::Report, sha256)?;
        }
        for (photo, entry) in self.photos() {
            if !checked.named.contains(&photo) {
                return Err(FileFault::StrangePhoto.of(&self.path));
            }
            let name = EntryName::Photo(photo);
            let wanted = checked.wanted.contains(&photo);
            let sha256 =
                match staging.as_deref_mut().filter(|staging| wanted && staging.lacks(photo, entry.size)) {
                    Some(staging) => {
                        let (path, mut file) = staging.begin(photo)?;
                        let sha256 = self.copy(name, Some((&path, &mut file)), meter)?;
                        staging.end(file)?;
                        sha256
                    }
                    None => self.copy(name, None, meter)?,
                };
            self.compare(&hashes, name, sha256)?;
            if sha256 != photo.sha256 {
                return Err(FileFault::Altered { what: name.in_bag() }.of(&self.path));
            }
        }
        Ok(checked)
    }

    /// Checks the bag's own files; returns what the manifest says of the content.
    fn check_tags(&self) -> Result<Hashes> {
        let mut tags = Hashes::new();
        let mut read = |name| -> Result<Vec<u8>> {
            let (content, sha256) = self.whole(name)?;
            tags.insert(name, sha256);
            Ok(content)
        };
        if read(EntryName::BagIt)? != manifest::BAGIT.as_bytes() {
            let what = EntryName::BagIt.in_bag();
            return Err(
                FileFault::TagFile { what, why: "it must be the two lines of BagIt 1.0" }.of(&self.path)
            );
        }
        let info = read(EntryName::BagInfo)?;
        let listed = read(EntryName::Manifest)?;
        let (listed_tags, _) = self.whole(EntryName::TagManifest)?;
        let wrong = |fault: FileFault| fault.of(&self.path);
        let stated = manifest::read_manifest(EntryName::TagManifest, &listed_tags).map_err(wrong)?;
        self.compare_names(EntryName::TagManifest, &stated, manifest::LISTED_TAGS.into_iter().collect())?;
        for (name, sha256) in tags {
            self.compare(&stated, name, sha256)?;
        }
        let hashes = manifest::read_manifest(EntryName::Manifest, &listed).map_err(wrong)?;
        let payload: BTreeSet<EntryName> =
            self.entries.keys().copied().filter(|name| name.is_payload()).collect();
        let bytes = payload.iter().filter_map(|name| self.entries.get(name)).map(|entry| entry.size).sum();
        let sum = Payload { bytes, entries: payload.len() };
        manifest::check_info(&info, self.header.survey, sum).map_err(wrong)?;
        self.compare_names(EntryName::Manifest, &hashes, payload)?;
        Ok(hashes)
    }

    fn compare_names(&self, list: EntryName, listed: &Hashes, there: BTreeSet<EntryName>) -> Result<()> {
        if listed.keys().copied().eq(there) {
            return Ok(());
        }
        let why = "it does not list exactly what is there";
        Err(FileFault::TagFile { what: list.in_bag(), why }.of(&self.path))
    }

    fn compare(&self, stated: &Hashes, name: EntryName, found: [u8; 32]) -> Result<()> {
        if stated.get(&name) == Some(&found) {
            return Ok(());
        }
        Err(FileFault::Altered { what: name.in_bag() }.of(&self.path))
    }

    /// A small entry at once, with its SHA-256.
    fn whole(&self, name: EntryName) -> Result<(Vec<u8>, [u8; 32])> {
        let mut reader = self.reader(name)?;
        let mut read = || -> Result<Vec<u8>, ReadFault> {
            let (mut content, mut chunk) = (Vec::new(), vec![0; 8 * 1024]);
            loop {
                match reader.next(&mut chunk)? {
                    0 => return Ok(content),
                    read => content.extend_from_slice(chunk.get(..read).unwrap_or_default()),
                }
            }
        };
        let content = read().map_err(|fault| fault.of(&self.path))?;
        let sha256 = reader.finish().map_err(|fault| fault.of(&self.path))?;
        Ok((content, sha256))
    }

    /// Reads an entry to its end, into a file if one is given, and returns its SHA-256. A photo must begin as one.
    fn copy(
        &self,
        name: EntryName,
        mut into: Option<(&Path, &mut File)>,
        meter: &mut Meter<'_>,
    ) -> Result<[u8; 32]> {
        let mut reader = self.reader(name)?;
        let mut chunk = vec![0; CHUNK_BYTES];
        let mut first = true;
        loop {
            let read = reader.next(&mut chunk).map_err(|fault| fault.of(&self.path))?;
            let bytes = chunk.get(..read).unwrap_or_default();
            if let (true, EntryName::Photo(photo)) = (first, name)
                && !photo.kind.begins(bytes)
            {
                return Err(FileFault::NoPicture.of(&self.path));
            }
            first = false;
            if read == 0 {
                break;
            }
            if let Some((path, file)) = &mut into {
                file.write_all(bytes).map_err(|error| of_system(path, &error))?;
            }
            meter.done(read)?;
        }
        reader.finish().map_err(|fault| fault.of(&self.path))
    }
}

/// The header, before anything is said about names: a newer format may have other ones.
fn read_header(file: &File, found: &[Entry]) -> Result<Header, ReadFault> {
    let name = EntryName::Facts.in_zip();
    let entry = found.iter().find(|entry| entry.name == name.as_bytes()).ok_or(FileFault::NoSurvey)?;
    let mut reader = EntryReader::new(file, entry, EntryName::Facts.in_bag())?;
    let mut begin = Vec::new();
    let mut chunk = vec![0; 4 * 1024];
    loop {
        let read = reader.next(&mut chunk)?;
        begin.extend_from_slice(chunk.get(..read).unwrap_or_default());
        if let Some(end) = begin.iter().position(|&byte| byte == b'\n') {
            return Ok(Header::read(begin.get(..end).unwrap_or_default())?);
        }
        if read == 0 || begin.len() > limits::LINE_BYTES {
            return Err(FileFault::NoSurvey.into());
        }
    }
}

fn by_name(found: Vec<Entry>, limits: Limits) -> Result<BTreeMap<EntryName, Entry>, FileFault> {
    let mut entries = BTreeMap::new();
    let mut total: u64 = 0;
    for entry in found {
        let name = EntryName::of_zip(&entry.name).ok_or(FileFault::StrangeEntry)?;
        let (what, most) = name.most_bytes();
        if entry.size > most {
            return Err(FileFault::TooLarge { what, most });
        }
        total = total.saturating_add(entry.size);
        entries.insert(name, entry);
    }
    if total > limits.total_bytes {
        return Err(FileFault::TotalTooLarge { most: limits.total_bytes });
    }
    Ok(entries)
}
