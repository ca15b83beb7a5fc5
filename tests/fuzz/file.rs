//! A survey file.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use facts::error::FactsError;
use facts::fact::{AuthorId, Ledger, SubjectId, Wish};
use facts::file::{self, Consent, Limits, Look, PackOptions, Progress, Taken};
use facts::store::Store;
use house::record::Survey;
use proofs::chance::Chance;
use tempfile::TempDir;

use crate::fact::kind_of;
use crate::target::{Target, Verdict};
use crate::{bag, shape};

pub const TARGET: Target = Target {
    name: "file",
    weight: 4.0,
    most_bytes: 128 * 1024,
    check,
    shape: shaped,
    words: &[
        b"PK\x03\x04",
        b"PK\x01\x02",
        b"PK\x05\x06",
        b"PK\x06\x06",
        b"survey/data/facts.jsonl",
        b"survey/../",
        b"survey/data/photos/",
        b"\x08\0",
        b"\x01\0\x18\0",
        b"BagIt-Version: 1.0\n",
        b"Payload-Oxum: 1.1\n",
        b"\r\n",
        b"{\"core\":\"0.1.0\"",
        b"\"format\":1",
    ],
    most_memory: 64 << 20,
};

/// Changes the content and makes the sums fit.
fn shaped(chance: &mut Chance, input: &[u8]) -> Option<Vec<u8>> {
    // A zip of nothing has nothing to change.
    let mut entries = bag::open(input).filter(|entries| !entries.is_empty())?;
    match chance.below(8) {
        0 => {
            let (from, to) = (chance.below(entries.len()), chance.below(entries.len()));
            entries.swap(from, to);
        }
        1 => {
            let at = chance.below(entries.len());
            let again = entries.get(at)?.clone();
            if chance.below(2) == 0 { drop(entries.remove(at)) } else { entries.push(again) }
        }
        2 => {
            let at = chance.below(entries.len());
            let (name, content) = entries.get_mut(at)?;
            let byte = chance.below(content.len());
            if let Some(byte) = content.get_mut(byte) {
                *byte = chance.bits().to_le_bytes()[0];
            } else {
                name.push('x');
            }
        }
        _ => {
            let mut lines = bag::lines(&entries)?;
            let at = if chance.below(8) == 0 { 0 } else { chance.below(lines.len()) };
            let line = lines.get(at)?.clone();
            match chance.below(8) {
                0 => drop(lines.remove(at)),
                1 => lines.insert(chance.below(lines.len() + 1), line),
                2 => {
                    let to = chance.below(lines.len());
                    lines.swap(at, to);
                }
                _ => *lines.get_mut(at)? = shape::json_text(chance, &line)?,
            }
            // Mostly with the right number of facts in the header.
            if at > 0 && chance.below(8) > 0 {
                let mut header: serde_json::Value = serde_json::from_str(lines.first()?).ok()?;
                *header.get_mut("facts")? = (lines.len() - 1).into();
                *lines.first_mut()? = header.to_string();
            }
            bag::set_lines(&mut entries, &lines);
        }
    }
    Some(bag::seal(entries, chance.below(4) > 0))
}

fn go_on(_: Progress) -> bool {
    true
}

#[expect(clippy::unnecessary_wraps, reason = "the shape of a report")]
fn report(survey: &Survey, _: &Ledger) -> Result<String, FactsError> {
    Ok(format!("<!doctype html><title>{}</title>", survey.parts.len()))
}

/// A place in memory, because everything is synced.
fn scratch() -> TempDir {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { TempDir::new_in(memory).unwrap() } else { TempDir::new().unwrap() }
}

/// A file is refused by a look and by a take alike, with nothing left; or it brings exactly its lines and photos, and
/// what it brought can be packed and taken in again.
fn check(input: &[u8]) -> Result<Verdict, String> {
    let home = scratch();
    let (path, folder) = (home.path().join("sent.lwk"), home.path().join("house.legwork"));
    fs::write(&path, input).map_err(|error| error.to_string())?;
    let looked = file::look(&path, None, Limits::default(), &mut go_on);
    let looked = match looked {
        Ok(looked) => looked,
        Err(fault @ FactsError::Inner(_)) => return Err(format!("{fault:?}")),
        Err(fault) => {
            // What a look refuses is not worth a survey each time; its kind decides.
            if input.len().is_multiple_of(16)
                && file::take_as_new(
                    &path,
                    &folder,
                    AuthorId::random(),
                    Consent::NONE,
                    Limits::default(),
                    &mut go_on,
                )
                .is_ok()
            {
                return Err(format!("a look refuses it and a take does not: {fault}"));
            }
            return match fs::read_dir(home.path()).unwrap().count() {
                1 => Ok(Verdict::refused(kind_of(&fault).replace(&kind_of(&path), ""))),
                _ => Err("something is left of a file that was refused".into()),
            };
        }
    };
    let (mut store, taken) =
        file::take_as_new(&path, &folder, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)
            .map_err(|fault| format!("a look finds it right and a take does not: {fault}"))?;
    if announced(&looked) != brought(&store, &taken)? {
        return Err(format!("it brought something else than was announced: {looked:?} {taken:?}"));
    }
    compare(input, &store)?;
    round_trip(&mut store, &home)?;
    let forgets = store.ledger().facts().any(facts::fact::Fact::is_forgotten);
    store.agree_to_wishes().map_err(|fault| fault.to_string())?;
    if looked.facts != store.ledger().len() {
        return Err(format!("a yes brought something else than was announced: {looked:?}"));
    }
    Ok(Verdict::taken(format!(
        "{} {} {forgets} {} {}",
        looked.facts.min(40),
        looked.photos,
        looked.new_disagreements.len(),
        looked.left_out.len()
    )))
}

/// What a look says that a take brings: its records, photos, what it asks to forget, disagreements.
type Brought = (usize, usize, BTreeSet<Wish>, BTreeSet<(SubjectId, String)>);

fn announced(looked: &Look) -> Brought {
    let disagreements = looked.new_disagreements.iter().cloned().collect();
    (looked.new_facts, looked.new_photos, looked.forgotten.iter().cloned().collect(), disagreements)
}

/// The same of what is there afterwards.
fn brought(store: &Store, taken: &Taken) -> Result<Brought, String> {
    let wishes: BTreeSet<Wish> = store.wishes().map_err(|fault| fault.to_string())?.into_iter().collect();
    if taken.facts.len() != store.ledger().len() || taken.waiting != wishes.len() {
        return Err(format!("it holds something else than it took: {taken:?}"));
    }
    let disagreements = store.ledger().disagreements();
    let disagreements = disagreements.iter().map(|one| (one.subject, one.field.to_owned())).collect();
    Ok((taken.facts.len(), taken.photos.len(), wishes, disagreements))
}

/// What was taken in against what the file's own lines say, found by another reader.
fn compare(input: &[u8], store: &Store) -> Result<(), String> {
    let Some(lines) = bag::open(input).as_ref().and_then(bag::lines) else { return Ok(()) };
    let written: BTreeSet<&str> = lines.iter().skip(1).map(String::as_str).collect();
    let held = store.ledger().to_lines().map_err(|fault| fault.to_string())?;
    let other: Vec<&str> = held.lines().filter(|line| !written.contains(line)).collect();
    // A fact of the file that another one tells to forget comes without its value.
    let forgotten = store.ledger().facts().filter(|fact| fact.is_forgotten()).count();
    if other.len() > forgotten || other.iter().any(|line| !line.contains("\"forgotten\":true")) {
        return Err(format!("it brought what is not in it: {other:?}"));
    }
    for photo in fs::read_dir(store.photos()).unwrap() {
        let path = photo.unwrap().path();
        let entries = bag::open(input).unwrap_or_default();
        let content = fs::read(&path).unwrap();
        if !entries.iter().any(|(_, entry)| *entry == content) {
            return Err(format!("a photo that is not in it: {}", path.display()));
        }
    }
    Ok(())
}

/// Packs what was taken in and takes it in again.
fn round_trip(store: &mut Store, home: &TempDir) -> Result<(), String> {
    let (path, folder) = (home.path().join("again.lwk"), home.path().join("again.legwork"));
    house::document::pack(store, &PackOptions::default(), &report, &path, &mut go_on)
        .map_err(|fault| format!("taken in and not packed: {fault}"))?;
    let (again, _) =
        file::take_as_new(&path, &folder, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)
            .map_err(|fault| format!("packed and then refused: {fault}"))?;
    if again.ledger().to_lines() == store.ledger().to_lines() {
        Ok(())
    } else {
        Err("it changed on the way".into())
    }
}
