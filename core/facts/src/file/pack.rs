//! Packing a survey into a file.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, BufWriter, Read};
use std::path::Path;

use super::FORMAT;
use super::header::Header;
use super::limits;
use super::manifest::{self, Hashes, Payload};
use super::name::EntryName;
use super::options::{Filter, LeftOut, PackOptions};
use super::photo::PhotoName;
use super::syncer::Syncer;
use super::take::named_photos;
use super::watch::{Meter, Watch};
use super::zip::ZipWriter;
use crate::error::{FactsError, Result};
use crate::fact::{Ledger, SurveyId};
use crate::photo::open_photo;
use crate::store::Store;
use crate::store::fault::of_system;
use crate::whole_file::{Existing, Readers, WholeFile};

/// How much of a photo is copied at once.
const CHUNK_BYTES: usize = 128 * 1024;

/// After how many bytes of photos the disk is set to work, while the next ones are read and hashed.
const EARLY_SYNC_BYTES: u64 = 32 * 1024 * 1024;

/// Writes the page for people who have no program, as one page of HTML. Is given the facts that go into the file and the
/// survey that they are of. The same facts must give the same bytes: the only date that the page may carry is that of the
/// newest fact. An empty text is none: the file then has no page.
pub type Page<'a, E> = &'a dyn Fn(&Ledger, SurveyId) -> Result<String, E>;

/// What was packed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packed {
    /// Facts in the file.
    pub facts: usize,
    /// Photos in the file.
    pub photos: usize,
    /// The file's length in bytes.
    pub bytes: u64,
    /// Photos that should be in it and are not, because they are missing here or damaged.
    pub lost_photos: Vec<PhotoName>,
}

/// Packs a survey into a file at `path`, which has its name only once it is whole and on the disk. The same facts,
/// photos, options, page and release give the same bytes.
///
/// # Errors
/// `FileThere` if something has that name and the options do not say to replace it; `DoesNotFit` if the survey is
/// larger than a file can be; `Stopped`; `Inaccessible` or `DiskFull` if it cannot be written; what `page` returns. No file is left then.
pub fn pack<E: From<FactsError>>(
    store: &mut Store,
    options: &PackOptions,
    page: Page<'_, E>,
    path: &Path,
    watch: &mut dyn Watch,
) -> Result<Packed, E> {
    store.refresh()?;
    let filter = Filter::new(&options.left_out, store.ledger(), store.survey_id());
    let html = write_page(store, &filter, page)?;
    Ok(pack_with(store, options, &filter, &html, path, watch)?)
}

/// Packs a survey with the page that stands in it.
fn pack_with(
    store: &Store,
    options: &PackOptions,
    filter: &Filter<'_>,
    html: &str,
    path: &Path,
    watch: &mut dyn Watch,
) -> Result<Packed> {
    let photos = if options.left_out.contains(&LeftOut::Photos) {
        BTreeSet::new()
    } else {
        named_photos(store.ledger().facts().filter(|fact| filter.admits(fact)))
    };
    let folder = store.photos();
    let length =
        |photo: &PhotoName| fs::metadata(folder.join(photo.to_string())).map_or(0, |found| found.len());
    let mut meter = Meter::new(watch, photos.iter().map(length).sum());

    let broken = |error: io::Error| match error.kind() {
        io::ErrorKind::AlreadyExists => FactsError::FileThere { file: path.to_owned() },
        _ => of_system(path, &error),
    };
    let existing = if options.replace { Existing::IsReplaced } else { Existing::Stays };
    let part = WholeFile::create(path, existing, Readers::Usual).map_err(broken)?;
    let out = ZipWriter::new(BufWriter::with_capacity(CHUNK_BYTES, part.file()));
    let mut bag = BagWriter { out, path, hashes: Hashes::new(), payload: Payload::default() };
    bag.out.whole(&EntryName::BagIt.in_zip(), manifest::BAGIT.as_bytes()).map_err(broken)?;
    let facts = bag.write_facts(store, options, filter, &mut meter)?;
    if !html.is_empty() {
        bag.write_payload(EntryName::Report, html.as_bytes())?;
    }
    let mut lost_photos = Vec::new();
    let mut syncer = Syncer::start().map_err(broken)?;
    let mut synced = 0;
    for photo in photos {
        if !bag.write_photo(photo, &folder, &mut meter)? {
            lost_photos.push(photo);
        }
        if bag.payload.bytes - synced >= EARLY_SYNC_BYTES {
            synced = bag.payload.bytes;
            syncer.begin(part.file()).map_err(broken)?;
        }
    }
    let entries = bag.payload.entries;
    let bytes = bag.close(store)?;
    syncer.finish().map_err(broken)?;
    // What was written past the end while it was not known yet goes.
    part.file().set_len(bytes).map_err(broken)?;
    part.finish().map_err(broken)?;
    let others = if html.is_empty() { 1 } else { 2 };
    Ok(Packed { facts, photos: entries - others, bytes, lost_photos })
}

/// The page on what goes into the file.
fn write_page<E: From<FactsError>>(
    store: &Store,
    filter: &Filter<'_>,
    page: Page<'_, E>,
) -> Result<String, E> {
    let html = if filter.leaves_out_facts() {
        let mut part = Ledger::new();
        for fact in store.ledger().facts().filter(|fact| filter.admits(fact)) {
            part.insert(fact.clone())?;
        }
        page(&part, store.survey_id())?
    } else {
        page(store.ledger(), store.survey_id())?
    };
    fits(html.len() as u64, limits::REPORT_BYTES, "its report may have, in bytes,")?;
    Ok(html)
}

fn fits(found: u64, most: u64, what: &'static str) -> Result<()> {
    if found > most { Err(FactsError::DoesNotFit { what, most }) } else { Ok(()) }
}

/// A bag being written into its zip.
struct BagWriter<'a> {
    out: ZipWriter<BufWriter<&'a File>>,
    path: &'a Path,
    hashes: Hashes,
    payload: Payload,
}

impl BagWriter<'_> {
    fn count(&mut self, name: EntryName, sha256: [u8; 32], bytes: u64) {
        self.hashes.insert(name, sha256);
        self.payload.bytes += bytes;
        self.payload.entries += 1;
    }

    fn write_payload(&mut self, name: EntryName, content: &[u8]) -> Result<()> {
        let sha256 = self.out.whole(&name.in_zip(), content).map_err(|error| of_system(self.path, &error))?;
        self.count(name, sha256, content.len() as u64);
        Ok(())
    }

    fn write_facts(
        &mut self,
        store: &Store,
        options: &PackOptions,
        filter: &Filter<'_>,
        meter: &mut Meter<'_>,
    ) -> Result<usize> {
        let broken = |error: io::Error| of_system(self.path, &error);
        let count = store.ledger().facts().filter(|fact| filter.admits(fact)).count();
        fits(count as u64, limits::FACTS as u64, "the number of its records may be")?;
        let header = Header {
            core: env!("CARGO_PKG_VERSION").to_owned(),
            facts: count,
            format: FORMAT,
            left_out: options.left_out.clone(),
            survey: store.survey_id(),
        };
        let mut entry = self.out.begin(&EntryName::Facts.in_zip()).map_err(broken)?;
        let mut line = header.to_line()?;
        line.push('\n');
        entry.write(line.as_bytes()).map_err(broken)?;
        for fact in store.ledger().facts().filter(|fact| filter.admits(fact)) {
            let mut line = fact.to_line()?;
            fits(line.len() as u64, limits::LINE_BYTES as u64, "one of its records may have, in bytes,")?;
            line.push('\n');
            entry.write(line.as_bytes()).map_err(broken)?;
            meter.done(line.len())?;
        }
        let (sha256, bytes) = entry.finish().map_err(broken)?;
        fits(bytes, limits::FACTS_BYTES, "its records may have, in bytes,")?;
        self.count(EntryName::Facts, sha256, bytes);
        Ok(count)
    }

    /// Copies a photo; returns false, with nothing written, if it is missing or not what its name says.
    fn write_photo(&mut self, photo: PhotoName, folder: &Path, meter: &mut Meter<'_>) -> Result<bool> {
        let broken = |error: io::Error| of_system(self.path, &error);
        let source = folder.join(photo.to_string());
        let mut from = match open_photo(&source) {
            Ok(from) => from,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(false),
            Err(error) => return Err(of_system(&source, &error)),
        };
        // All entries but this: bag-info, both manifests, and those that are counted.
        fits(
            self.payload.entries as u64 + 5,
            limits::ENTRIES as u64,
            "the number of its photos may be about",
        )?;
        let name = EntryName::Photo(photo);
        let mut entry = self.out.begin(&name.in_zip()).map_err(broken)?;
        let mut chunk = vec![0; CHUNK_BYTES];
        let mut left = limits::PHOTO_BYTES + 1;
        let mut right = true;
        loop {
            let read = from.read(&mut chunk).map_err(|error| of_system(&source, &error))?;
            let bytes = chunk.get(..read).unwrap_or_default();
            left = left.saturating_sub(read as u64);
            if read == 0 || left == 0 {
                break;
            }
            if left + read as u64 == limits::PHOTO_BYTES + 1 {
                right = photo.kind.begins(bytes);
            }
            entry.write(bytes).map_err(broken)?;
            meter.done(read)?;
        }
        if !right || left == 0 || entry.sha256() != photo.sha256 {
            entry.abandon().map_err(broken)?;
            return Ok(false);
        }
        let (sha256, bytes) = entry.finish().map_err(broken)?;
        self.count(name, sha256, bytes);
        Ok(true)
    }

    /// Writes the bag's own files and the directory; returns the length of the file.
    fn close(self, store: &Store) -> Result<u64> {
        let Self { mut out, path, hashes, payload } = self;
        let broken = |error: io::Error| of_system(path, &error);
        let listed = manifest::write_manifest(&hashes);
        fits(listed.len() as u64, limits::MANIFEST_BYTES, "the list of its content may have, in bytes,")?;
        let info = manifest::write_info(env!("CARGO_PKG_VERSION"), store.survey_id(), payload);
        let mut tags = Hashes::new();
        let bagit = EntryName::BagIt;
        tags.insert(bagit, sha256(manifest::BAGIT.as_bytes()));
        for (name, content) in [(EntryName::BagInfo, &info), (EntryName::Manifest, &listed)] {
            tags.insert(name, out.whole(&name.in_zip(), content.as_bytes()).map_err(broken)?);
        }
        let tag_list = manifest::write_manifest(&tags);
        out.whole(&EntryName::TagManifest.in_zip(), tag_list.as_bytes()).map_err(broken)?;
        out.close().map(|(_, bytes)| bytes).map_err(broken)
    }
}

fn sha256(content: &[u8]) -> [u8; 32] {
    use sha2::Digest;
    sha2::Sha256::digest(content).into()
}
