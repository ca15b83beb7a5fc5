//! How fast photos are packed and taken in, against a plain copy that is hashed and synced in the same way.

use std::fs::{self, File};
use std::io::{Read, Write};
use std::path::Path;

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::file::{self, Consent, Limits, PackOptions};
use facts::store::Store;
use serde_json::json;
use sha2::{Digest, Sha256};
use tempfile::TempDir;

use super::{median, seconds};
use crate::Outcome;
use crate::merge::{go_on, report};
use proofs::chance::Chance;

const PHOTO_BYTES: usize = 3 * 1024 * 1024;

/// Measures with photos of 3 MB, `megabytes` in all, on the disk that holds `folder`.
pub fn photos(megabytes: usize, rounds: usize, folder: &Path) -> Outcome {
    let home = TempDir::new_in(folder)?;
    let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random())?;
    fill(&mut store, megabytes * 1024 * 1024 / PHOTO_BYTES)?;
    let path = home.path().join("house.lwk");
    let (mut packs, mut takes, mut one_files, mut many_files) = (vec![], vec![], vec![], vec![]);
    let (mut pack_memory, mut take_memory) = (0, 0);
    for round in 0..rounds {
        one_files.push(seconds(|| copy_into_one(&store.photos(), &home.path().join("plain")))?);
        many_files.push(seconds(|| copy_each(&store.photos(), &home.path().join("plain-photos")))?);
        let options = PackOptions { replace: true, ..PackOptions::default() };
        reset_peak();
        packs.push(seconds(|| {
            house::document::pack(&mut store, &options, &report, &path, &mut go_on)
                .map(drop)
                .map_err(Into::into)
        })?);
        pack_memory = pack_memory.max(peak_kilobytes()?);
        let copy = home.path().join(format!("copy-{round}.legwork"));
        reset_peak();
        takes.push(seconds(|| {
            file::take_as_new(&path, &copy, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)
                .map(drop)
                .map_err(Into::into)
        })?);
        take_memory = take_memory.max(peak_kilobytes()?);
        fs::remove_dir_all(&copy)?;
        fs::remove_dir_all(home.path().join("plain-photos"))?;
    }
    let [pack, take, one, many] = [packs, takes, one_files, many_files].map(median);
    println!(
        "{megabytes} MB of photos of {PHOTO_BYTES} bytes, median of {rounds} rounds, process peak (VmHWM)"
    );
    println!("plain copy into one file + SHA-256 + sync:  {one:.2} s");
    println!(
        "pack:                                       {pack:.2} s, {:.2} x, {pack_memory} kB",
        one / pack
    );
    println!("plain copy file by file + SHA-256 + sync:   {many:.2} s");
    println!(
        "take in:                                    {take:.2} s, {:.2} x, {take_memory} kB",
        many / take
    );
    Ok(())
}

fn fill(store: &mut Store, photos: usize) -> Outcome {
    let mut chance = Chance(1);
    let mut edits = Vec::new();
    for _ in 0..photos {
        let mut picture = vec![0xFF, 0xD8, 0xFF, 0xE0];
        while picture.len() < PHOTO_BYTES {
            picture.extend(chance.bits().to_le_bytes());
        }
        let sha256 =
            Sha256::digest(&picture).iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"));
        fs::write(store.photos().join(format!("{sha256}.jpg")), &picture)?;
        let photo = SubjectId::random();
        let image = json!({"bytes": picture.len(), "ext": "jpg", "height": 3, "sha256": sha256, "width": 4});
        edits.extend([Edit::new(photo, "is", "photo"), Edit::new(photo, "image", image)]);
    }
    store.write(&edits)?;
    Ok(())
}

/// Copies a photo in chunks, hashing it on the way.
fn copy(from: &Path, to: &mut File, chunk: &mut [u8]) -> Outcome {
    let (mut from, mut sha256) = (File::open(from)?, Sha256::new());
    loop {
        let read = from.read(chunk)?;
        let bytes = chunk.get(..read).unwrap_or_default();
        if bytes.is_empty() {
            break;
        }
        sha256.update(bytes);
        to.write_all(bytes)?;
    }
    std::hint::black_box(sha256.finalize());
    Ok(())
}

fn copy_into_one(photos: &Path, to: &Path) -> Outcome {
    let (mut to, mut chunk) = (File::create(to)?, vec![0; 128 * 1024]);
    for photo in fs::read_dir(photos)? {
        copy(&photo?.path(), &mut to, &mut chunk)?;
    }
    Ok(to.sync_all()?)
}

fn copy_each(photos: &Path, folder: &Path) -> Outcome {
    fs::create_dir(folder)?;
    let mut chunk = vec![0; 128 * 1024];
    for photo in fs::read_dir(photos)? {
        let photo = photo?;
        let mut to = File::create(folder.join(photo.file_name()))?;
        copy(&photo.path(), &mut to, &mut chunk)?;
        to.sync_all()?;
    }
    Ok(File::open(folder)?.sync_all()?)
}

/// Linux forgets the peak so far (proc(5), `clear_refs`, 5). Elsewhere the peak is that of the whole run.
fn reset_peak() {
    let _ = fs::write("/proc/self/clear_refs", "5");
}

/// The greatest resident set since then, as the system counts it.
fn peak_kilobytes() -> Outcome<u64> {
    let status = fs::read_to_string("/proc/self/status")?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).ok_or("no VmHWM")?;
    Ok(line.trim().trim_end_matches(" kB").trim().parse()?)
}
