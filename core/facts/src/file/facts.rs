//! The facts of a file: read line by line, checked without being kept, then read again for those that are new.

use std::collections::{BTreeSet, HashMap, HashSet};
use std::hash::{BuildHasher, RandomState};

use serde_json::Value;

use super::bag::Bag;
use super::fault::ReadFault;
use super::limits;
use super::name::EntryName;
use super::photo::PhotoName;
use super::watch::Meter;
use super::zip::EntryReader;
use crate::error::FileFault;
use crate::error::{FactsError, Result};
use crate::fact::{Fact, FactClock, FactId, Ledger, REMOVED, SubjectId, reserved};

/// What the facts of a file are, once they were found to be right.
pub(super) struct Checked {
    /// SHA-256 of `facts.jsonl`.
    pub(super) sha256: [u8; 32],
    /// The photos that its facts name.
    pub(super) named: BTreeSet<PhotoName>,
    /// Those among them that nobody has forgotten here.
    pub(super) wanted: BTreeSet<PhotoName>,
}

/// Reads all facts and checks each alone, against those before it, and against those held. Keeps none, so that a file
/// that is refused costs no memory.
pub(super) fn check(bag: &Bag, held: &Ledger, clock: &FactClock, meter: &mut Meter<'_>) -> Result<Checked> {
    let mut so_far = SoFar::default();
    let (mut named, mut wanted) = (BTreeSet::new(), BTreeSet::new());
    let sha256 = each_fact(bag, |number, fact, bytes| {
        meter.done(bytes)?;
        so_far.add(number, &fact).map_err(|fault| fault.of(bag.path()))?;
        if so_far.bare_parts.len() > reserved::MOST_PARTS {
            return Err(FactsError::TooManyParts {
                found: so_far.bare_parts.len(),
                most: reserved::MOST_PARTS,
            });
        }
        let known = held.fact(fact.id());
        match known {
            Some(known) if !known.is_same(&fact) => return Err(FactsError::FactDiffers { id: fact.id() }),
            Some(_) => {}
            None => clock.check(fact.id())?,
        }
        if let Some(photo) = PhotoName::of_fact(&fact) {
            named.insert(photo);
            let is_gone = known.map_or_else(|| held.tells_to_forget(fact.id()), Fact::is_forgotten);
            if !is_gone {
                wanted.insert(photo);
            }
        }
        Ok(())
    })?;
    if so_far.count != bag.header().facts {
        return Err(FileFault::Header("it counts other facts than there are").of(bag.path()));
    }
    Ok(Checked { sha256, named, wanted })
}

/// Reads the facts again, and returns those that are not held, or that the file has forgotten and `held` has not.
/// `sha256` is what [`check`] found.
pub(super) fn new_facts(bag: &Bag, held: &Ledger, sha256: [u8; 32]) -> Result<Vec<Fact>> {
    let mut new = Vec::new();
    let again = each_fact(bag, |_, fact, _| {
        match held.fact(fact.id()) {
            Some(known) if known.is_forgotten() || !fact.is_forgotten() => {}
            _ => new.push(fact),
        }
        Ok(())
    })?;
    if again == sha256 { Ok(new) } else { Err(FileFault::Changed.of(bag.path())) }
}

/// Calls `each` with the number of every line after the header, its fact, and its length. Returns the SHA-256 of all.
fn each_fact(bag: &Bag, mut each: impl FnMut(usize, Fact, usize) -> Result<()>) -> Result<[u8; 32]> {
    let broken = |fault: ReadFault| fault.of(bag.path());
    let mut lines = Lines::new(bag.reader(EntryName::Facts)?);
    // The header was read when the file was opened.
    lines.next().map_err(broken)?;
    let mut number = 1;
    while let Some(line) = lines.next().map_err(broken)? {
        number += 1;
        if number > limits::FACTS + 1 {
            let most = limits::FACTS as u64;
            return Err(FileFault::TooLarge { what: "the number of its records", most }.of(bag.path()));
        }
        let text = std::str::from_utf8(line)
            .map_err(|_| FileFault::Order { number, why: "it is not UTF-8" }.of(bag.path()))?;
        let fact = Fact::from_line(text).map_err(|fault| FileFault::Line { number, fault }.of(bag.path()))?;
        each(number, fact, line.len())?;
    }
    lines.entry.finish().map_err(broken)
}

/// What is remembered of the facts before a line.
#[derive(Default)]
struct SoFar {
    count: usize,
    last: Option<FactId>,
    /// Of every fact, its subject and field as one number. The number depends on chance, so that nobody can make a
    /// file in which two agree; the store compares in full.
    about: HashMap<FactId, u64>,
    chance: RandomState,
    values: usize,
    containers: usize,
    /// Parts that no fact removes.
    bare_parts: HashSet<SubjectId>,
    removed: HashSet<SubjectId>,
}

impl SoFar {
    fn add(&mut self, number: usize, fact: &Fact) -> Result<(), FileFault> {
        let wrong = |why| FileFault::Order { number, why };
        if self.last.is_some_and(|last| last >= fact.id()) {
            return Err(wrong("it is not in the order of ids"));
        }
        let about = self.chance.hash_one((fact.subject(), fact.field()));
        for over in fact.over() {
            match self.about.get(over) {
                None => return Err(wrong("it replaces a record that is not in the file")),
                Some(&other) if other != about => {
                    return Err(wrong("it replaces a record about something else"));
                }
                Some(_) => {}
            }
        }
        self.count += 1;
        self.last = Some(fact.id());
        self.about.insert(fact.id(), about);
        self.count_values(fact.value());
        for value in fact.extra().values() {
            self.count_values(value);
        }
        let too_many = |what, most: usize| Err(FileFault::TooLarge { what, most: most as u64 });
        if self.values > limits::VALUES {
            return too_many("the number of values in its records", limits::VALUES);
        }
        if self.containers > limits::CONTAINERS {
            return too_many("the number of lists and objects in its records", limits::CONTAINERS);
        }
        self.count_part(fact);
        Ok(())
    }

    fn count_values(&mut self, value: &Value) {
        // A value that was read is at most `fact::MAX_DEPTH` deep.
        self.values += 1;
        match value {
            Value::Array(items) => {
                self.containers += 1;
                for item in items {
                    self.count_values(item);
                }
            }
            Value::Object(members) => {
                self.containers += 1;
                for member in members.values() {
                    self.count_values(member);
                }
            }
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
        }
    }

    fn count_part(&mut self, fact: &Fact) {
        let subject = fact.subject();
        if fact.field() == REMOVED {
            self.removed.insert(subject);
            self.bare_parts.remove(&subject);
        } else if fact.field() == reserved::IS
            && fact.value() == reserved::PART
            && !self.removed.contains(&subject)
        {
            self.bare_parts.insert(subject);
        }
    }
}

/// The lines of an entry, each ended by a line feed.
struct Lines<'a> {
    entry: EntryReader<'a>,
    chunk: Vec<u8>,
    /// What of the chunk is not handed out yet.
    rest: std::ops::Range<usize>,
    line: Vec<u8>,
}

impl<'a> Lines<'a> {
    fn new(entry: EntryReader<'a>) -> Self {
        Self { entry, chunk: vec![0; 64 * 1024], rest: 0..0, line: Vec::new() }
    }

    /// The next line without its line feed, or nothing at the end.
    fn next(&mut self) -> Result<Option<&[u8]>, ReadFault> {
        self.line.clear();
        loop {
            if self.rest.is_empty() {
                let read = self.entry.next(&mut self.chunk)?;
                self.rest = 0..read;
                if read == 0 {
                    let cut = FileFault::Damaged { what: "the end of its records".into() };
                    return if self.line.is_empty() { Ok(None) } else { Err(cut.into()) };
                }
            }
            let rest = self.chunk.get(self.rest.clone()).unwrap_or_default();
            let end = rest.iter().position(|&byte| byte == b'\n');
            let part = rest.get(..end.unwrap_or(rest.len())).unwrap_or_default();
            if self.line.len() + part.len() > limits::LINE_BYTES {
                let (what, most) = ("a line of its records, in bytes,", limits::LINE_BYTES as u64);
                return Err(FileFault::TooLarge { what, most }.into());
            }
            self.line.extend_from_slice(part);
            self.rest.start += part.len() + usize::from(end.is_some());
            if end.is_some() {
                return Ok(Some(&self.line));
            }
        }
    }
}
