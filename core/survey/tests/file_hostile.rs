//! Files made to harm: every one is refused, costs little memory, and changes nothing.
//!
//! In a binary of its own, because it counts the memory of the whole process. What is counted is what Rust allocates;
//! SQLite, which is written in C, is not reached by a file that is refused.

mod file_support;

use std::fs;

use file_support::*;
use peak_alloc::PeakAlloc;
use serde_json::{Value, json};
use survey::file::{Limits, look, take, take_as_new};
use survey::fact::AuthorId;
use survey::store::Store;

#[global_allocator]
static COUNTED: PeakAlloc = PeakAlloc;

const MEMORY_MB: f32 = 64.0;

/// A hostile file: what it is, and its bytes.
type Case = (&'static str, Vec<u8>);

#[test]
fn hostile_files_are_refused_cheaply_and_change_nothing() {
    let mut chance = Chance::new();
    let (home, mut store) = house(&mut chance);
    let path = home.path().join("hostile.lwk");
    let survey = store.survey_id().to_string();
    let mut count = 0;
    // One after the other, so that only one is in memory; each is made before the counting begins.
    for make in [containers, names, bags, chains, facts, photos] {
        for (what, bytes) in make(&survey, &store) {
            fs::write(&path, &bytes).unwrap();
            let length = bytes.len();
            drop(bytes);
            let folder = store.folder().to_owned();
            let before = snapshot(&folder);
            let start = COUNTED.current_usage_as_mb();
            COUNTED.reset_peak_usage();
            let refused = look(&path, Some(&mut store), &Limits::default(), &mut go_on);
            let refused = refused.err().unwrap_or_else(|| panic!("look: {what} is accepted"));
            let take_refused = take(&path, &mut store, &Limits::default(), &mut go_on);
            assert!(take_refused.is_err(), "take: {what} is accepted");
            let peak = COUNTED.peak_usage_as_mb() - start;
            assert!(peak < MEMORY_MB, "{what}: {peak} MB");
            assert!(snapshot(&folder) == before, "{what}: something changed");
            // As a survey of its own, nothing must be left either. What only collides with facts that are held may
            // well be right by itself.
            let fresh = home.path().join("fresh.legwork");
            let author = AuthorId::random();
            if take_as_new(&path, &fresh, author, &Limits::default(), &mut go_on).is_err() {
                assert!(!fresh.exists(), "{what}: something is left");
            } else {
                assert!(what.contains("held"), "{what} is accepted as a survey of its own");
                fs::remove_dir_all(&fresh).unwrap();
            }
            let left = fs::read_dir(home.path()).unwrap().count();
            assert_eq!(left, 2, "{what}: something is left");
            println!("{what} ({length} bytes): {peak:.1} MB: {refused}");
            count += 1;
        }
    }
    println!("{count} hostile files");
    assert!(count >= 40, "only {count}");
    // The way in is open for what is right.
    let good = small(&survey);
    fs::write(&path, zip(&stored(&good.entries()))).unwrap();
    assert_eq!(take(&path, &mut store, &Limits::default(), &mut go_on).unwrap().facts.len(), 3);
}

/// A small bag that is right.
fn small(survey: &str) -> Bag {
    let facts = vec![
        line(1, 1, "is", &json!("part"), &[]),
        line(2, 1, "tag", &json!("S1"), &[]),
        line(3, 1, "tag", &json!("S2"), &[2]),
    ];
    Bag::new(survey, facts)
}

fn changed(survey: &str, at: &str, change: impl FnOnce(&mut RawEntry)) -> Vec<u8> {
    let mut entries = stored(&small(survey).entries());
    change(entries.iter_mut().find(|entry| entry.name.ends_with(at.as_bytes())).unwrap());
    zip(&entries)
}

fn containers(survey: &str, _: &Store) -> Vec<Case> {
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
        ("a comment at the end", with_end(&|end, _| {
            end[20] = 4;
            end.extend(b"note");
        })),
        ("an end that hides in a comment", with_end(&|end, _| {
            end[20] = 22;
            let inner = end[..20].to_vec();
            end.extend(inner);
            end.extend([0; 2]);
        })),
        ("encryption", facts(&|entry| entry.flags = 1)),
        ("strong encryption", facts(&|entry| entry.flags = 0x41)),
        ("a data descriptor", facts(&|entry| entry.flags = 8)),
        ("a masked directory", facts(&|entry| entry.flags = 1 << 13)),
        ("method 12", facts(&|entry| entry.method = 12)),
        ("method 14", facts(&|entry| entry.method = 14)),
        ("method 99", facts(&|entry| entry.method = 99)),
        ("another name in the local header", facts(&|entry| {
            entry.local_name = Some(b"survey/data/../../cts".to_vec());
        })),
        ("another size in the local header", facts(&|entry| entry.local_size = Some(entry.size + 1))),
        ("a wrong checksum", facts(&|entry| entry.crc32 ^= 1)),
        ("a stored entry of two sizes", facts(&|entry| entry.size += 1)),
        ("overlapping entries", changed(survey, "bagit.txt", |entry| entry.at = Some(0))),
        ("a gap between entries", changed(survey, "bagit.txt", |entry| entry.gap = 7)),
        ("a gap before the directory", with_end(&|_, out| {
            let start = out.windows(4).position(|four| four == b"PK\x01\x02").unwrap();
            out.insert(start, 0);
        })),
        ("an entry twice", zip(&good.iter().chain([&good[0]]).cloned().collect::<Vec<_>>())),
        ("a link", facts(&|entry| {
            entry.made_by = 3 << 8 | 20;
            entry.attributes = 0o120_777 << 16;
        })),
        ("a device", facts(&|entry| {
            entry.made_by = 3 << 8 | 20;
            entry.attributes = 0o060_666 << 16;
        })),
        ("a folder by its attributes", facts(&|entry| entry.attributes = 0x10)),
        ("an extra field", facts(&|entry| entry.extra = vec![1, 0, 4, 0, 0, 0, 0, 0])),
        ("an extra field in the local header", facts(&|entry| entry.local_extra = vec![0x75, 0x70, 1, 0, 0])),
        ("a comment on an entry", facts(&|entry| entry.comment = b"run me".to_vec())),
        ("an entry on another disk", facts(&|entry| entry.disk = 1)),
        ("a version that nobody has", facts(&|entry| entry.version = 63)),
        ("a place of 64 bits that is not needed", facts(&|entry| {
            entry.at = Some(u32::MAX);
            entry.extra = [vec![1, 0, 8, 0], vec![0; 8]].concat();
        })),
        ("a directory of 64 bits that is not there", with_end(&|end, _| end[16..20].fill(0xFF))),
        ("more entries counted than there are", with_end(&|end, _| {
            end[8] += 1;
            end[10] += 1;
        })),
        ("fewer entries counted than there are", with_end(&|end, _| {
            end[8] -= 1;
            end[10] -= 1;
        })),
        ("two counts", with_end(&|end, _| end[8] -= 1)),
        ("a directory of 4 GB", with_end(&|end, _| end[12..16].copy_from_slice(&[0xFE, 0xFF, 0xFF, 0xFF]))),
        ("65,535 entries counted", with_end(&|end, _| end[8..12].fill(0xFF))),
        ("6,000 entries", zip(&many)),
        ("a name of 60,000 bytes", facts(&|entry| entry.name = vec![b'a'; 60_000])),
        ("a bomb that says how large it is", replaced(&declared_large)),
        ("a bomb that says that it is just small enough", replaced(&declared_medium)),
        ("a bomb that says that it is what it should be", replaced(&bomb)),
        ("deflated bytes that are none", facts(&|entry| {
            entry.method = 8;
            entry.data.fill(0xFF);
        })),
        ("bytes after the deflated ones", {
            let (name, content) = small(survey).entries().swap_remove(0);
            let mut entry = RawEntry::deflated(&name, &content);
            entry.data.extend(b"hidden");
            replaced(&entry)
        }),
    ]
}

fn names(survey: &str, _: &Store) -> Vec<Case> {
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
        ("a photo with capitals in its name", added(format!("survey/data/photos/{}.jpg", sha256.to_uppercase()).as_bytes())),
        ("a photo of another kind", added(format!("survey/data/photos/{sha256}.exe").as_bytes())),
        ("a photo of two kinds", added(format!("survey/data/photos/{sha256}.jpg.png").as_bytes())),
        ("no facts", zip(&stored(&vec![(b"survey/bagit.txt".to_vec(), b"BagIt-Version: 1.0\n".to_vec())]))),
    ]
}

fn bags(survey: &str, _: &Store) -> Vec<Case> {
    let good = small(survey).entries();
    // Changes one of the bag's own files, and makes the list of those files fit again.
    let tag = |name: &str, change: &dyn Fn(&str) -> Vec<u8>| {
        let mut entries = good.clone();
        let mut list = String::new();
        for (entry, content) in &mut entries {
            let entry = String::from_utf8(entry.clone()).unwrap();
            let entry = entry.strip_prefix("survey/").unwrap();
            if entry == name {
                *content = change(std::str::from_utf8(content).unwrap());
            }
            if !entry.starts_with("data/") && !entry.starts_with("tagmanifest") {
                list += &format!("{}  {entry}\n", sha256_hex(content));
            }
        }
        if name != "tagmanifest-sha256.txt" {
            entries.last_mut().unwrap().1 = list.into_bytes();
        }
        zip(&stored(&entries))
    };
    let without = |name: &str| {
        let left = good.iter().filter(|(entry, _)| !entry.ends_with(name.as_bytes())).cloned().collect();
        zip(&stored(&left))
    };
    let text = |change: fn(&str) -> String| move |old: &str| change(old).into_bytes();
    let (manifest, tags, bagit, info) =
        ("manifest-sha256.txt", "tagmanifest-sha256.txt", "bagit.txt", "bag-info.txt");
    vec![
        ("no manifest", without("/manifest-sha256.txt")),
        ("no list of the bag's own files", without(tags)),
        ("no bagit.txt", without(bagit)),
        ("no bag-info.txt", without(info)),
        ("an empty manifest", tag(manifest, &text(|_| String::new()))),
        ("a manifest with one more", tag(manifest, &text(|old| old.to_owned() + &old.replace("facts.jsonl", "report.html")))),
        ("a manifest with one twice", tag(manifest, &text(|old| old.repeat(2)))),
        ("a manifest that climbs", tag(manifest, &text(|old| old.to_owned() + &old.replace("data/facts.jsonl", "../../etc/passwd")))),
        ("a wrong hash", tag(manifest, &text(|old| "0".repeat(64) + &old[64..]))),
        ("a hash in capitals", tag(manifest, &text(|old| old[..64].to_uppercase() + &old[64..]))),
        ("a short hash", tag(manifest, &text(|old| old[1..].to_owned()))),
        ("a manifest with CRLF", tag(manifest, &text(|old| old.replace('\n', "\r\n")))),
        ("a manifest without its last line feed", tag(manifest, &text(|old| old.trim_end().to_owned()))),
        ("a manifest of 2 MB", tag(manifest, &text(|old| old.repeat(25_000)))),
        ("a manifest that is not UTF-8", tag(manifest, &|old| [old.as_bytes(), b"\xFF\n"].concat())),
        ("a list of own files that lacks one", tag(tags, &text(|old| old.split_once('\n').unwrap().1.to_owned()))),
        ("a list of own files that is wrong", tag(tags, &text(|old| "0".repeat(64) + &old[64..]))),
        ("a byte order mark", tag(bagit, &text(|old| "\u{feff}".to_owned() + old))),
        ("bagit.txt with CRLF", tag(bagit, &text(|old| old.replace('\n', "\r\n")))),
        ("another BagIt", tag(bagit, &text(|old| old.replace("1.0", "0.97")))),
        ("UTF-16", tag(bagit, &text(|old| old.replace("UTF-8", "UTF-16")))),
        ("a wrong sum", tag(info, &text(|old| old.replace("Oxum: ", "Oxum: 1")))),
        ("no sum", tag(info, &text(|old| old.replace("Payload-Oxum", "Payload")))),
        ("two sums", tag(info, &text(|old| old.to_owned() + old.rsplit_once("\nP").map(|_| "Payload-Oxum: 1.1\n").unwrap()))),
        ("bag-info of another survey", tag(info, &text(|old| old.replace("Identifier: ", "Identifier: 0")))),
        ("bag-info that is no list of labels", tag(info, &text(|_| "hello\n".into()))),
    ]
}

/// Long ones, one after the other, because each takes some memory to make.
fn chains(survey: &str, _: &Store) -> Vec<Case> {
    let sealed = |facts: Vec<String>| {
        let entries = Bag::new(survey, facts).entries();
        zip(&entries.iter().map(|(name, content)| RawEntry::deflated(name, content)).collect::<Vec<_>>())
    };
    let parts = (1..60_000).map(|n| line(n, n, "is", &json!("part"), &[])).collect();
    let fed = (2..60_000).map(|n| {
        let (part, of) = (n / 2, format!("00000000-0000-4000-8000-{:012x}", n / 2 + 1));
        match n % 2 {
            0 => line(n, part, "is", &json!("part"), &[]),
            _ => line(n, part, "feed", &json!({"from": {"part": of, "port": 1}}), &[]),
        }
    });
    let over = |hole: u64| {
        (1..60_000).filter(move |&n| n != hole).map(|n| line(n, 1, "tag", &json!(n), &[n - 1][usize::from(n == 1)..]))
    };
    let crowd: Vec<Value> = (0..1150).map(|_| json!({"": 0})).collect();
    vec![
        ("60,000 parts", sealed(parts)),
        ("a chain of 30,000 parts, each fed by the next", sealed(fed.collect())),
        ("a story of 60,000 steps with a hole", sealed(over(59_990).collect())),
        ("60,001 facts", sealed((1..=60_001).map(|n| line(n, n / 1000, "tag", &json!(n), &[])).collect())),
        ("objects that cost more memory than text", sealed((1..200).map(|n| line(n, n, "x", &json!(crowd), &[])).collect())),
        ("a million values", sealed((1..400).map(|n| line(n, n, "x", &json!(vec![0; 4000]), &[])).collect())),
        ("a line of 30 MB", {
            let mut bag = small(survey);
            bag.lines.push("[".repeat(30 * 1024 * 1024));
            sealed_lines(bag)
        }),
        ("33 MB of facts", {
            let mut bag = small(survey);
            bag.lines.extend((0..5).map(|_| " ".repeat(7 * 1024 * 1024)));
            sealed_lines(bag)
        }),
    ]
}

fn sealed_lines(bag: Bag) -> Vec<u8> {
    zip(&bag.entries().iter().map(|(name, content)| RawEntry::deflated(name, content)).collect::<Vec<_>>())
}

fn facts(survey: &str, store: &Store) -> Vec<Case> {
    let sealed = |facts: Vec<String>| zip(&stored(&Bag::new(survey, facts).entries()));
    let one = |line: String| sealed(vec![line]);
    let raw = |change: &dyn Fn(Vec<u8>) -> Vec<u8>| {
        let lines = small(survey).lines.join("\n") + "\n";
        let payload = vec![("data/facts.jsonl".to_owned(), change(lines.into_bytes()))];
        zip(&stored(&seal(survey, payload)))
    };
    let header = |change: &dyn Fn(&str) -> String| {
        let mut bag = small(survey);
        bag.lines[0] = change(&bag.lines[0]);
        zip(&stored(&bag.entries()))
    };
    let tag = |n| line(n, 1, "tag", &json!("S1"), &[]);
    let deep = tag(1).replace("\"S1\"", &("[".repeat(20_000) + &"]".repeat(20_000)));
    let held = store.ledger().facts().next().unwrap().to_line().unwrap();
    let shifted = |by: &str, to: &str| tag(1).replace(by, to);
    // 9999-12-31 and the last moment that an id can state: GNU date; RFC 9562, 5.7.
    let late = line_at(253_402_214_400_000, 1, "tag", &json!(1), &[]);
    vec![
        ("a fact that is held, with another value", one({
            let mut fact: Value = serde_json::from_str(&held).unwrap();
            fact["value"] = json!("forged");
            fact.to_string()
        })),
        ("a fact that is held, by another author", one({
            let mut fact: Value = serde_json::from_str(&held).unwrap();
            fact["by"] = json!("00000000-0000-4000-8000-0000000000b9");
            fact.to_string()
        })),
        ("an id of the year 9999", one(late)),
        ("the last id of all", one(line_at((1 << 48) - 1, 1, "tag", &json!(1), &[]))),
        ("an id of version 4", one(shifted("-7000-", "-4000-"))),
        ("an id in capitals", one(shifted("-8000-000000000001\",\"over", "-8000-00000000000A\",\"over"))),
        ("deep JSON", one(deep)),
        ("deep members that nobody knows", one(tag(1).replace("\"value\":\"S1\"}", &format!("\"value\":\"S1\",\"z\":{}1{}}}", "[".repeat(100), "]".repeat(100))))),
        ("facts in another order", sealed(vec![tag(2), tag(1)])),
        ("a fact twice", sealed(vec![tag(1), tag(1)])),
        ("one id for two facts", sealed(vec![tag(1), tag(1).replace("S1", "S2")])),
        ("over what nobody has", one(line(5, 1, "tag", &json!("S1"), &[4]))),
        ("over what comes later", sealed(vec![line(1, 1, "tag", &json!("S1"), &[2]), tag(2)])),
        ("over itself", one(line(1, 1, "tag", &json!("S1"), &[1]))),
        ("over another field", sealed(vec![line(1, 1, "kind", &json!("tap"), &[]), line(2, 1, "tag", &json!("S1"), &[1])])),
        ("over another part", sealed(vec![line(1, 2, "tag", &json!("S1"), &[]), line(2, 1, "tag", &json!("S1"), &[1])])),
        ("a value of 9 kB", one(line(1, 1, "tag", &json!("x".repeat(9000)), &[]))),
        ("a field name of 65 letters", one(line(1, 1, &"f".repeat(65), &json!(1), &[]))),
        ("a field name that climbs", one(line(1, 1, "../x", &json!(1), &[]))),
        ("a number beyond all numbers", one(shifted("\"S1\"", "1e400"))),
        ("a number that is not exact", one(shifted("\"S1\"", "9007199254740993"))),
        ("a number that is none", one(shifted("\"S1\"", "NaN"))),
        ("half a surrogate pair", one(shifted("S1", "\\ud800"))),
        ("a member twice", one(shifted("\"value\":\"S1\"", "\"value\":\"S1\",\"value\":\"S2\""))),
        ("spaces", one(shifted(",\"by\"", ", \"by\""))),
        ("no value", one(shifted(",\"value\":\"S1\"", ""))),
        ("a list", one("[]".into())),
        ("an empty line", one(String::new())),
        ("bad UTF-8", raw(&|mut bytes| {
            let at = bytes.len() - 5;
            bytes[at] = 0xFF;
            bytes
        })),
        ("facts with a byte order mark", raw(&|bytes| [b"\xEF\xBB\xBF".to_vec(), bytes].concat())),
        ("facts with CRLF", raw(&|bytes| String::from_utf8(bytes).unwrap().replace('\n', "\r\n").into_bytes())),
        ("no line feed at the end", raw(&|mut bytes| {
            bytes.pop();
            bytes
        })),
        ("no facts in the file of facts", raw(&|_| Vec::new())),
        ("no header", raw(&|bytes| bytes[bytes.iter().position(|&byte| byte == b'\n').unwrap() + 1..].to_vec())),
        ("a newer format", header(&|old| old.replace("\"format\":0", "\"format\":1"))),
        ("a format beyond 64 bits", header(&|old| old.replace("\"format\":0", "\"format\":99999999999999999999"))),
        ("a format that is a text", header(&|old| old.replace("\"format\":0", "\"format\":\"0\""))),
        ("more facts counted than there are", header(&|old| old.replace("\"facts\":3", "\"facts\":4"))),
        ("fewer facts counted than there are", header(&|old| old.replace("\"facts\":3", "\"facts\":2"))),
        ("a header that is not canonical", header(&|old| old.replace("\"facts\":3", "\"facts\":3.0"))),
        ("a header of no survey", header(&|old| old.replace("\"survey\":\"", "\"survey\":\"x"))),
        ("a header of something else", header(&|old| old.replace("legwork", "lunchbox"))),
    ]
}

fn photos(survey: &str, _: &Store) -> Vec<Case> {
    let picture = [b"\xFF\xD8\xFF\xE0".to_vec(), vec![7; 600]].concat();
    let sha256 = sha256_hex(&picture);
    let with = |named: &str, extension: &str, entry: &str, content: &[u8]| {
        let image = json!({"bytes": content.len(), "ext": extension, "height": 3, "sha256": named, "width": 4});
        let mut bag = Bag::new(survey, vec![line(1, 1, "image", &image, &[])]);
        bag.photos.push((entry.to_owned(), content.to_vec()));
        bag
    };
    let plain = |bag: &Bag| zip(&stored(&bag.entries()));
    let jpg = format!("{sha256}.jpg");
    let other = sha256_hex(b"other");
    let script = b"<script>alert(1)</script>";
    let script_hash = sha256_hex(script);
    let huge = [b"\xFF\xD8\xFF\xE0".to_vec(), vec![0; 33 * 1024 * 1024]].concat();
    let huge_hash = sha256_hex(&huge);
    let large = with(&huge_hash, "jpg", &format!("{huge_hash}.jpg"), &huge);
    vec![
        ("a photo that is not what its name says", plain(&with(&other, "jpg", &format!("{other}.jpg"), &picture))),
        ("a photo that no fact names", plain(&with(&other, "jpg", &jpg, &picture))),
        ("a photo named as another kind", plain(&with(&sha256, "png", &jpg, &picture))),
        ("a JPEG that is called PNG", plain(&with(&sha256, "png", &format!("{sha256}.png"), &picture))),
        ("a photo that is no picture", plain(&with(&script_hash, "jpg", &format!("{script_hash}.jpg"), script))),
        ("an empty photo", plain(&with(&sha256_hex(b""), "jpg", &format!("{}.jpg", sha256_hex(b"")), b""))),
        ("a photo of 33 MB in 33 kB", sealed_lines(large)),
    ]
}
