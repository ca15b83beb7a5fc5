//! What is wrong with the zip or the names in it.

use facts::store::Store;

use super::super::file_support::*;
use super::{Case, small};

/// The version that plain zips need, on Unix: system 3 in the upper byte (APPNOTE.TXT, 4.4.2).
const UNIX: u16 = 0x0314;

pub fn changed(survey: &str, at: &str, change: impl FnOnce(&mut RawEntry)) -> Vec<u8> {
    let mut entries = stored(&small(survey).entries());
    change(entries.iter_mut().find(|entry| entry.name.ends_with(at.as_bytes())).unwrap());
    zip(&entries)
}

#[expect(clippy::too_many_lines, reason = "a list")]
pub fn containers(survey: &str, _: &Store) -> Vec<Case> {
    let good = stored(&small(survey).entries());
    let whole = zip(&good);
    let facts = |change: &dyn Fn(&mut RawEntry)| changed(survey, "facts.jsonl", change);
    let with_end = |change: &dyn Fn(&mut Vec<u8>, &mut Vec<u8>)| zip_with(&good, change);
    // The right facts, and 200 MB of nothing behind them.
    let right = good[0].size;
    let mut zeros = small(survey).entries().swap_remove(0).1;
    zeros.resize(200 * 1024 * 1024, 0);
    let declared_large = RawEntry::deflated(b"survey/data/facts.jsonl", &zeros);
    drop(zeros);
    let bomb = RawEntry { size: right, crc32: good[0].crc32, ..declared_large.clone() };
    let declared_medium = RawEntry { size: 30 * 1024 * 1024, ..declared_large.clone() };
    let replaced = |entry: &RawEntry| {
        let others = good.iter().filter(|other| other.name != entry.name).cloned();
        zip(&others.chain([entry.clone()]).collect::<Vec<_>>())
    };
    let many: Vec<RawEntry> =
        (0..6000).map(|number| RawEntry::stored(format!("survey/{number}").as_bytes(), b"")).collect();
    vec![
        ("nothing", Vec::new()),
        ("only an end record", b"PK\x05\x06".iter().copied().chain([0; 18]).collect()),
        ("text", b"not a zip at all, but long enough to hold an end record".to_vec()),
        ("bytes before the first entry", [b"#!/bin/sh\n".to_vec(), whole.clone()].concat()),
        ("bytes after the end", [whole.clone(), b"\n".to_vec()].concat()),
        ("two zips in one", [whole.clone(), whole.clone()].concat()),
        (
            "a comment at the end",
            with_end(&|end, _| {
                end[20] = 4;
                end.extend(b"note");
            }),
        ),
        (
            "an end that hides in a comment",
            with_end(&|end, _| {
                end[20] = 22;
                let inner = end[..20].to_vec();
                end.extend(inner);
                end.extend([0; 2]);
            }),
        ),
        ("encryption", facts(&|entry| entry.flags = 1)),
        ("strong encryption", facts(&|entry| entry.flags = 0x41)),
        ("a data descriptor", facts(&|entry| entry.flags = 8)),
        ("a masked directory", facts(&|entry| entry.flags = 1 << 13)),
        ("method 12", facts(&|entry| entry.method = 12)),
        ("method 14", facts(&|entry| entry.method = 14)),
        ("method 99", facts(&|entry| entry.method = 99)),
        (
            "another name in the local header",
            facts(&|entry| {
                entry.local_name = Some(b"survey/data/../../cts".to_vec());
            }),
        ),
        ("another size in the local header", facts(&|entry| entry.local_size = Some(entry.size + 1))),
        ("a wrong checksum", facts(&|entry| entry.crc32 ^= 1)),
        ("a stored entry of two sizes", facts(&|entry| entry.size += 1)),
        ("overlapping entries", changed(survey, "bagit.txt", |entry| entry.at = Some(0))),
        ("a gap between entries", changed(survey, "bagit.txt", |entry| entry.gap = 7)),
        (
            "a gap before the directory",
            with_end(&|_, out| {
                let start = out.windows(4).position(|four| four == b"PK\x01\x02").unwrap();
                out.insert(start, 0);
            }),
        ),
        ("an entry twice", zip(&good.iter().chain([&good[0]]).cloned().collect::<Vec<_>>())),
        (
            "a link",
            facts(&|entry| {
                entry.made_by = UNIX;
                entry.attributes = 0o120_777 << 16;
            }),
        ),
        (
            "a device",
            facts(&|entry| {
                entry.made_by = UNIX;
                entry.attributes = 0o060_666 << 16;
            }),
        ),
        ("a folder by its attributes", facts(&|entry| entry.attributes = 0x10)),
        ("an extra field", facts(&|entry| entry.extra = vec![1, 0, 4, 0, 0, 0, 0, 0])),
        ("an extra field in the local header", facts(&|entry| entry.local_extra = vec![0x75, 0x70, 1, 0, 0])),
        ("a comment on an entry", facts(&|entry| entry.comment = b"run me".to_vec())),
        ("an entry on another disk", facts(&|entry| entry.disk = 1)),
        ("a version that nobody has", facts(&|entry| entry.version = 63)),
        (
            "a place of 64 bits that is not needed",
            facts(&|entry| {
                entry.at = Some(u32::MAX);
                entry.extra = [vec![1, 0, 8, 0], vec![0; 8]].concat();
            }),
        ),
        ("a directory of 64 bits that is not there", with_end(&|end, _| end[16..20].fill(0xFF))),
        (
            "more entries counted than there are",
            with_end(&|end, _| {
                end[8] += 1;
                end[10] += 1;
            }),
        ),
        (
            "fewer entries counted than there are",
            with_end(&|end, _| {
                end[8] -= 1;
                end[10] -= 1;
            }),
        ),
        ("two counts", with_end(&|end, _| end[8] -= 1)),
        ("a directory of 4 GB", with_end(&|end, _| end[12..16].copy_from_slice(&[0xFE, 0xFF, 0xFF, 0xFF]))),
        ("65,535 entries counted", with_end(&|end, _| end[8..12].fill(0xFF))),
        ("6,000 entries", zip(&many)),
        ("a name of 60,000 bytes", facts(&|entry| entry.name = vec![b'a'; 60_000])),
        ("a bomb that says how large it is", replaced(&declared_large)),
        ("a bomb that says that it is just small enough", replaced(&declared_medium)),
        ("a bomb that says that it is what it should be", replaced(&bomb)),
        (
            "deflated bytes that are none",
            facts(&|entry| {
                entry.method = 8;
                entry.data.fill(0xFF);
            }),
        ),
        ("bytes after the deflated ones", {
            let (name, content) = small(survey).entries().swap_remove(0);
            let mut entry = RawEntry::deflated(&name, &content);
            entry.data.extend(b"hidden");
            replaced(&entry)
        }),
    ]
}

pub fn names(survey: &str, _: &Store) -> Vec<Case> {
    let added = |name: &[u8]| {
        let mut entries = stored(&small(survey).entries());
        entries.push(RawEntry::stored(name, b"x"));
        zip(&entries)
    };
    let sha256 = sha256_hex(b"x");
    vec![
        ("a name that climbs", added(b"../../../evil")),
        ("a name that climbs inside", added(b"survey/data/photos/../../../evil.jpg")),
        ("an absolute name", added(b"/etc/cron.d/evil")),
        ("a name with a drive", added(b"C:\\evil.jpg")),
        ("a name with backslashes", added(b"survey\\data\\evil.jpg")),
        ("a name with a zero byte", added(b"survey/data/report.html\0.jpg")),
        ("a name that is not UTF-8", added(b"survey/data/\xFF\xFE.jpg")),
        ("an empty name", added(b"")),
        ("a folder", added(b"survey/data/")),
        ("a file that no survey has", added(b"survey/data/notes.txt")),
        ("a list of things to fetch", added(b"survey/fetch.txt")),
        (
            "a photo with capitals in its name",
            added(format!("survey/data/photos/{}.jpg", sha256.to_uppercase()).as_bytes()),
        ),
        ("a photo of another kind", added(format!("survey/data/photos/{sha256}.exe").as_bytes())),
        ("a photo of two kinds", added(format!("survey/data/photos/{sha256}.jpg.png").as_bytes())),
        ("no facts", zip(&stored(&vec![(b"survey/bagit.txt".to_vec(), b"BagIt-Version: 1.0\n".to_vec())]))),
    ]
}
