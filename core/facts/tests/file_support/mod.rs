//! Surveys and files for the checks of the exchange file. Everything in them is invented.
#![allow(dead_code, reason = "each check uses its part")]
#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use facts::FactsError;
use facts::fact::{AuthorId, Edit, Ledger, SubjectId, SurveyId};
use facts::file::{self, Consent, Limits, PackOptions, Packed, Progress};
use facts::store::Store;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use tempfile::TempDir;

pub const NO_LIMIT: Limits = Limits { total_bytes: u64::MAX };

pub fn go_on(_: Progress) -> bool {
    true
}

#[expect(clippy::unnecessary_wraps, reason = "the shape of a report")]
/// Stands for the page for people, which is no part of these checks.
pub fn report(ledger: &Ledger, survey: SurveyId) -> facts::Result<String> {
    let name = ledger.shown(survey.subject(), "name").and_then(|fact| fact.value().as_str());
    Ok(format!("<!doctype html><title>{}</title><p>{}", name.unwrap_or("-"), !ledger.is_empty()))
}

/// A number generator for checks: `SplitMix64`, whose seed is new in each run and printed.
pub struct Chance(u64);

impl Chance {
    pub fn new() -> Self {
        let seed = std::env::var("LEGWORK_SEED").ok().and_then(|seed| seed.parse().ok());
        let seed = seed.unwrap_or_else(|| AuthorId::random().uuid().as_u64_pair().1);
        println!("seed: LEGWORK_SEED={seed}");
        Self(seed)
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    pub fn below(&mut self, bound: usize) -> usize {
        usize::try_from(self.next() % bound as u64).unwrap()
    }

    /// Bytes that begin as a JPEG does.
    pub fn picture(&mut self, bytes: usize) -> Vec<u8> {
        let mut picture = vec![0xFF, 0xD8, 0xFF, 0xE0];
        while picture.len() < bytes {
            picture.extend(self.next().to_le_bytes());
        }
        picture.truncate(bytes);
        picture
    }
}

/// A folder with an empty survey in it.
pub fn empty() -> (TempDir, Store) {
    let home = TempDir::new().unwrap();
    let store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    (home, store)
}

/// A small survey with a splitter, a run, a note and a photo.
pub fn house(chance: &mut Chance) -> (TempDir, Store) {
    let (home, mut store) = empty();
    let survey = store.survey_id().subject();
    let author = store.author().subject();
    let (part, run, note) = (SubjectId::random(), SubjectId::random(), SubjectId::random());
    store
        .write(&[
            Edit::new(survey, "name", "House by the mill"),
            Edit::new(survey, "place", "Invented Street 1"),
            Edit::new(author, "name", "A. Surveyor"),
            Edit::new(part, "is", "part"),
            Edit::new(part, "kind", "splitter"),
            Edit::new(run, "is", "run"),
            Edit::new(note, "is", "note"),
            Edit::new(note, "about", part.to_string()),
            Edit::new(note, "text", "behind the shelf"),
        ])
        .unwrap();
    store.write(&[Edit::new(part, "tag", "S1")]).unwrap();
    store.write(&[Edit::new(part, "tag", "S2")]).unwrap();
    let picture = chance.picture(900);
    add_photo(&mut store, part, &picture);
    (home, store)
}

/// Puts a photo into a survey as the intake does: first the file, then the fact.
pub fn add_photo(store: &mut Store, of: SubjectId, picture: &[u8]) -> SubjectId {
    let sha256 = sha256_hex(picture);
    fs::write(store.photos().join(format!("{sha256}.jpg")), picture).unwrap();
    let photo = SubjectId::random();
    store
        .write(&[
            Edit::new(photo, "is", "photo"),
            Edit::new(
                photo,
                "image",
                json!({"sha256": sha256, "ext": "jpg", "bytes": picture.len(), "width": 4, "height": 3}),
            ),
            Edit::new(photo, "of", of.to_string()),
            Edit::new(photo, "role", "before"),
        ])
        .unwrap();
    photo
}

pub fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"))
}

pub fn pack(store: &mut Store, path: &Path) -> Packed {
    pack_with(store, &PackOptions::default(), path)
}

pub fn pack_with(store: &mut Store, options: &PackOptions, path: &Path) -> Packed {
    file::pack(store, options, &report, path, &mut go_on).unwrap()
}

/// Everything that a survey is: the lines of its facts, and its photos by name.
pub type Content = (String, BTreeMap<String, Vec<u8>>);

pub fn content(store: &Store) -> Content {
    let photos = fs::read_dir(store.photos()).unwrap().map(|entry| entry.unwrap().path());
    let photos = photos.map(|path| (name_of(&path), fs::read(&path).unwrap())).collect();
    (store.ledger().to_lines().unwrap(), photos)
}

/// What a file holds, by taking it in as a new survey; or why it is refused.
pub fn taken_as_new(path: &Path) -> Result<Content, FactsError> {
    let home = TempDir::new().unwrap();
    let folder = home.path().join("copy.legwork");
    let taken = file::take_as_new(path, &folder, AuthorId::random(), Consent::NONE, NO_LIMIT, &mut go_on);
    if taken.is_err() {
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 0, "something is left");
    }
    taken.map(|(store, _)| content(&store))
}

/// Every file below a folder with its bytes. The index of the database's log is no content: SQLite makes it anew.
pub fn snapshot(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut left = vec![folder.to_owned()];
    while let Some(folder) = left.pop() {
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                found.insert(path.clone(), Vec::new());
                left.push(path);
            } else if !name_of(&path).ends_with("-shm") {
                found.insert(path.clone(), fs::read(&path).unwrap());
            }
        }
    }
    found
}

fn name_of(path: &Path) -> String {
    path.file_name().unwrap().to_string_lossy().into_owned()
}

/// A bag under construction: names within `survey/`, in the order of the zip.
#[derive(Clone)]
pub struct Bag {
    /// The lines of `facts.jsonl`, the header first.
    pub lines: Vec<String>,
    pub photos: Vec<(String, Vec<u8>)>,
    pub survey: String,
}

pub type Entries = Vec<(Vec<u8>, Vec<u8>)>;

impl Bag {
    /// A bag of the survey with these facts.
    pub fn new(survey: &str, facts: Vec<String>) -> Self {
        let header = json!({
            "core": "0.1.0", "facts": facts.len(), "file": "legwork", "format": 1, "left_out": [], "survey": survey,
        });
        // serde_json sorts members, and these hold nothing that RFC 8785 writes in another way.
        let lines = std::iter::once(header.to_string()).chain(facts).collect();
        Self { lines, photos: Vec::new(), survey: survey.to_owned() }
    }

    /// The entries with manifests that fit.
    pub fn entries(&self) -> Entries {
        let facts = self.lines.iter().fold(String::new(), |text, line| text + line + "\n");
        let mut payload = vec![("data/facts.jsonl".to_owned(), facts.into_bytes())];
        payload
            .extend(self.photos.iter().map(|(name, bytes)| (format!("data/photos/{name}"), bytes.clone())));
        seal(&self.survey, payload)
    }
}

/// Adds the bag's own files to a payload.
pub fn seal(survey: &str, mut payload: Vec<(String, Vec<u8>)>) -> Entries {
    payload.sort();
    let bytes: usize = payload.iter().map(|(_, content)| content.len()).sum();
    let list = |files: &[(String, Vec<u8>)]| {
        let lines = files.iter().map(|(name, content)| sha256_hex(content) + "  " + name + "\n");
        lines.collect::<String>()
    };
    let manifest = list(&payload);
    let info = format!("External-Identifier: {survey}\nPayload-Oxum: {bytes}.{}\n", payload.len());
    let bagit = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
    let tags = vec![
        ("bag-info.txt".to_owned(), info.into_bytes()),
        ("bagit.txt".to_owned(), bagit.as_bytes().to_vec()),
        ("manifest-sha256.txt".to_owned(), manifest.into_bytes()),
    ];
    let tag_list = list(&tags);
    let tag_list = vec![("tagmanifest-sha256.txt".to_owned(), tag_list.into_bytes())];
    let all = payload.into_iter().chain(tags).chain(tag_list);
    all.map(|(name, content)| (format!("survey/{name}").into_bytes(), content)).collect()
}

/// The line of a fact, written by hand. `number` is unique in a file; ids rise with it.
pub fn line(number: u64, subject: u64, field: &str, value: &Value, over: &[u64]) -> String {
    line_at(1_760_000_000_000 + number, subject, field, value, over)
}

pub fn id(ms: u64) -> String {
    format!("{:08x}-{:04x}-7000-8000-000000000001", ms >> 16, ms & 0xFFFF)
}

pub fn line_at(ms: u64, subject: u64, field: &str, value: &Value, over: &[u64]) -> String {
    let over: Vec<String> = over.iter().map(|number| id(1_760_000_000_000 + number)).collect();
    json!({
        "act": "00000000-0000-4000-8000-0000000000a1",
        "by": "00000000-0000-4000-8000-0000000000b1",
        "field": field,
        "id": id(ms),
        "over": over,
        "subject": format!("00000000-0000-4000-8000-{subject:012x}"),
        "value": value,
    })
    .to_string()
}

/// An independent writer of zips (APPNOTE.TXT 6.3.10, 4.3), which also writes what ours never would.
#[derive(Clone)]
pub struct RawEntry {
    pub name: Vec<u8>,
    pub data: Vec<u8>,
    pub size: u32,
    pub crc32: u32,
    pub method: u16,
    pub flags: u16,
    pub version: u16,
    pub made_by: u16,
    pub attributes: u32,
    pub extra: Vec<u8>,
    pub local_extra: Vec<u8>,
    pub comment: Vec<u8>,
    pub disk: u16,
    /// Where the directory says that it is, instead of where it is.
    pub at: Option<u32>,
    /// Bytes before its header.
    pub gap: usize,
    pub local_name: Option<Vec<u8>>,
    pub local_size: Option<u32>,
}

impl RawEntry {
    pub fn stored(name: &[u8], content: &[u8]) -> Self {
        Self {
            name: name.to_vec(),
            data: content.to_vec(),
            size: u32::try_from(content.len()).unwrap(),
            crc32: crc32fast::hash(content),
            method: 0,
            flags: 0,
            version: 20,
            made_by: 20,
            attributes: 0,
            extra: Vec::new(),
            local_extra: Vec::new(),
            comment: Vec::new(),
            disk: 0,
            at: None,
            gap: 0,
            local_name: None,
            local_size: None,
        }
    }

    pub fn deflated(name: &[u8], content: &[u8]) -> Self {
        use std::io::Write;
        let mut deflater = flate2::write::DeflateEncoder::new(Vec::new(), flate2::Compression::best());
        deflater.write_all(content).unwrap();
        Self { data: deflater.finish().unwrap(), method: 8, ..Self::stored(name, content) }
    }

    fn common(&self, name: &[u8], size: u32) -> Vec<u8> {
        let mut out = Vec::new();
        for number in [self.version, self.flags, self.method, 0, 0x21] {
            out.extend(number.to_le_bytes());
        }
        for number in [self.crc32, u32::try_from(self.data.len()).unwrap(), size] {
            out.extend(number.to_le_bytes());
        }
        out.extend(u16::try_from(name.len()).unwrap().to_le_bytes());
        out
    }
}

/// Entries as a zip.
pub fn zip(entries: &[RawEntry]) -> Vec<u8> {
    zip_with(entries, |_, _| ())
}

/// The same; `last` may change the end record (22 bytes) and what stands before it.
pub fn zip_with(entries: &[RawEntry], last: impl FnOnce(&mut Vec<u8>, &mut Vec<u8>)) -> Vec<u8> {
    let (mut out, mut directory) = (Vec::new(), Vec::new());
    for entry in entries {
        out.extend(std::iter::repeat_n(0, entry.gap));
        let at = entry.at.unwrap_or(u32::try_from(out.len()).unwrap());
        let local_name = entry.local_name.as_ref().unwrap_or(&entry.name);
        out.extend(b"PK\x03\x04");
        out.extend(entry.common(local_name, entry.local_size.unwrap_or(entry.size)));
        out.extend(u16::try_from(entry.local_extra.len()).unwrap().to_le_bytes());
        out.extend(local_name);
        out.extend(&entry.local_extra);
        out.extend(&entry.data);
        directory.extend(b"PK\x01\x02");
        directory.extend(entry.made_by.to_le_bytes());
        directory.extend(entry.common(&entry.name, entry.size));
        directory.extend(u16::try_from(entry.extra.len()).unwrap().to_le_bytes());
        directory.extend(u16::try_from(entry.comment.len()).unwrap().to_le_bytes());
        directory.extend(entry.disk.to_le_bytes());
        directory.extend([0; 2]);
        directory.extend(entry.attributes.to_le_bytes());
        directory.extend(at.to_le_bytes());
        directory.extend(&entry.name);
        directory.extend(&entry.extra);
        directory.extend(&entry.comment);
    }
    let mut end = b"PK\x05\x06\0\0\0\0".to_vec();
    let count = u16::try_from(entries.len().min(65_535)).unwrap();
    end.extend(count.to_le_bytes());
    end.extend(count.to_le_bytes());
    end.extend(u32::try_from(directory.len()).unwrap().to_le_bytes());
    end.extend(u32::try_from(out.len()).unwrap().to_le_bytes());
    end.extend([0; 2]);
    out.extend(directory);
    last(&mut end, &mut out);
    out.extend(end);
    out
}

/// Entries, all stored.
pub fn stored(entries: &Entries) -> Vec<RawEntry> {
    entries.iter().map(|(name, content)| RawEntry::stored(name, content)).collect()
}
