//! Random histories of several copies of one survey: every kind of edit, files exchanged stale, twice, in any order,
//! with wrong clocks, some taken in and put back. In the end all copies pack to the same bytes.
//!
//! What they must end up with is worked out apart from the store: the facts that were ever written, as they were when
//! they were written, less what any of them tells to forget.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::{
    ActId, AuthorId, Edit, FORGET, Fact, FactClock, FactId, Ledger, REMOVED, Removal, SubjectId,
};
use facts::file::{self, Consent, LeftOut, Limits, PackOptions, PhotoName, Progress};
use facts::store::Store;
use house::document::Document;
use house::record::Survey;
use serde_json::{Value, json};
use tempfile::TempDir;

use crate::Outcome;
use proofs::chance::Chance;

const FIELDS: [&str; 5] = ["kind", "tag", "length", "feed", "place"];
const SUBJECTS: usize = 4;
const PICTURES: [&[u8]; 3] = [
    include_bytes!("../../core/facts/tests/pictures/grey.jpg"),
    include_bytes!("../../core/facts/tests/pictures/transparent.png"),
    include_bytes!("../../core/facts/tests/pictures/palette.png"),
];
/// How far a copy's clock may be off, in milliseconds: three months either way, and one stands in 1970.
const SKEW_MS: usize = 90 * 24 * 3600 * 1000;
const NOW_MS: u64 = 1_790_000_000_000;

/// Plays `histories` histories, the first with `seed`.
pub fn run(histories: usize, seed: u64) -> Outcome {
    let mut facts = 0;
    for number in 0..histories as u64 {
        let seed = seed.wrapping_add(number);
        facts += History::play(seed).map_err(|error| format!("history with --seed {seed}: {error}"))?;
        if (number + 1) % 100 == 0 {
            eprintln!("{} histories", number + 1);
        }
    }
    eprintln!("{histories} histories, {facts} facts: all copies equal");
    Ok(())
}

pub fn go_on(_: Progress) -> bool {
    true
}

/// Stands for the report: what it says depends on the facts alone.
#[expect(clippy::unnecessary_wraps, reason = "the shape of a report")]
pub fn report(survey: &Survey, ledger: &Ledger) -> Result<String, FactsError> {
    let newest = ledger.facts().next_back().map(Fact::id);
    Ok(format!("<!doctype html><title>{}</title>{newest:?}", survey.parts.len()))
}

/// What stands in a copy.
struct Stood {
    /// What each field of each thing says, by the facts that say it.
    said: BTreeMap<(SubjectId, String), Vec<(FactId, Value)>>,
    /// The things that are hidden.
    hidden: BTreeSet<SubjectId>,
}

fn standing(ledger: &Ledger) -> Stood {
    let fields =
        ledger.subjects().flat_map(|subject| ledger.fields(subject).map(move |field| (subject, field)));
    let said = fields.filter(|(_, field)| *field != FORGET && *field != REMOVED).map(|(subject, field)| {
        let live = ledger.live(subject, field).into_iter().filter(|fact| !fact.is_forgotten());
        let said = live.map(|fact| (fact.id(), fact.value().clone())).collect();
        ((subject, field.to_owned()), said)
    });
    Stood {
        said: said.collect(),
        hidden: ledger.subjects().filter(|&thing| is_hidden(ledger, thing)).collect(),
    }
}

fn is_hidden(ledger: &Ledger, subject: SubjectId) -> bool {
    matches!(ledger.removal(subject), Removal::Removed { .. })
}

/// Whether every field says what it said, less what was forgotten since, and what was not there or hidden is hidden.
fn stands_as_before(stood: &Stood, ledger: &Ledger) -> Outcome {
    let said = |facts: &[(FactId, Value)]| -> BTreeSet<String> {
        let kept = facts.iter().filter(|(id, _)| ledger.fact(*id).is_some_and(|fact| !fact.is_forgotten()));
        kept.map(|(_, value)| value.to_string()).filter(|value| value != "null").collect()
    };
    let now = standing(ledger);
    for (about, now) in &now.said {
        let was_there = stood.said.keys().any(|(subject, _)| *subject == about.0);
        let before = stood.said.get(about).map_or_else(BTreeSet::new, |before| said(before));
        let stands = if was_there { said(now) == before } else { is_hidden(ledger, about.0) };
        check(stands, "what was put back by facts does not stand as before")?;
    }
    check(stood.hidden.is_subset(&now.hidden), "what was hidden is not hidden after putting back")
}

/// A folder for throw-away surveys; in memory where that can be had, because each edit is synced to the disk.
pub fn scratch() -> Outcome<TempDir> {
    let memory = Path::new("/dev/shm");
    Ok(if memory.is_dir() { TempDir::new_in(memory)? } else { TempDir::new()? })
}

fn check(holds: bool, what: &str) -> Outcome {
    if holds { Ok(()) } else { Err(what.into()) }
}

pub struct Copy {
    pub store: Store,
    /// What its user did, so that it can be undone.
    acts: Vec<ActId>,
}

pub struct History {
    home: TempDir,
    chance: Chance,
    pub copies: Vec<Copy>,
    subjects: Vec<SubjectId>,
    files: Vec<PathBuf>,
    /// Every fact as it was when it was written.
    written: BTreeMap<FactId, Fact>,
}

impl History {
    /// Plays one history to its end and checks it; returns how many facts it has.
    pub fn play(seed: u64) -> Outcome<usize> {
        let mut history = Self::begin(seed)?;
        for _ in 0..10 + history.chance.below(50) {
            history.step()?;
        }
        history.exchange()?;
        history.check()?;
        Ok(history.written.len())
    }

    /// Two to five copies of one empty survey.
    pub fn begin(seed: u64) -> Outcome<Self> {
        let home = scratch()?;
        let mut chance = Chance(seed);
        let count = 2 + chance.below(4);
        let seedling = home.path().join("seedling.lwk");
        let folder = |number: usize| home.path().join(format!("{number}.legwork"));
        let mut first = Store::create(&folder(0), AuthorId::random())?;
        house::document::pack(&mut first, &PackOptions::default(), &report, &seedling, &mut go_on)?;
        drop(first);
        let mut copies = Vec::new();
        for number in 0..count {
            if number > 0 {
                let limits = Limits::default();
                file::take_as_new(
                    &seedling,
                    &folder(number),
                    AuthorId::random(),
                    Consent::NONE,
                    limits,
                    &mut go_on,
                )?;
            }
            let now = if chance.below(8) == 0 { 5 } else { NOW_MS - chance.below(SKEW_MS) as u64 };
            let clock = FactClock::with_wall(move || now);
            let store = Store::open_with(&folder(number), AuthorId::random(), clock)?;
            copies.push(Copy { store, acts: Vec::new() });
        }
        let subjects = (0..SUBJECTS).map(|_| SubjectId::random()).collect();
        Ok(Self { home, chance, copies, subjects, files: Vec::new(), written: BTreeMap::new() })
    }

    /// Somebody does something.
    pub fn step(&mut self) -> Outcome {
        let who = self.chance.below(self.copies.len());
        let about = self.chance.pick(&self.subjects).copied().ok_or("no subject")?;
        match self.chance.below(20) {
            0..=6 => self.write(who)?,
            7 => self.edit(who, |store| store.ledger().remove(about))?,
            8 => self.edit(who, |_| Edit::bring_back(about))?,
            9 => self.undo(who)?,
            10 => {
                let picture = self.chance.pick(&PICTURES).copied().unwrap_or_default();
                self.copy(who)?.store.add_photo(picture, Some(about), None).map(drop)?;
            }
            11 => {
                self.copy(who)?.store.add_note(Some(about), "behind the shelf")?;
            }
            12 => self.forget(who, about)?,
            13..=15 => self.pack(who)?,
            _ => self.take(who)?,
        }
        self.remember(who)
    }

    fn copy(&mut self, who: usize) -> Outcome<&mut Copy> {
        Ok(self.copies.get_mut(who).ok_or("no such copy")?)
    }

    fn write(&mut self, who: usize) -> Outcome {
        let mut edits = Vec::new();
        for _ in 0..=self.chance.below(3) {
            let about = self.chance.pick(&self.subjects).copied().ok_or("no subject")?;
            let field = self.chance.pick(&FIELDS).copied().unwrap_or_default();
            let number = self.chance.below(3);
            let values = [Value::Null, json!(number), json!({"known": "measured", "metres": number})];
            let value = self.chance.pick(&values).cloned().unwrap_or_default();
            edits.push(Edit::new(about, field, value));
        }
        edits.push(Edit::new(self.subjects.first().copied().ok_or("no subject")?, "is", "part"));
        let copy = self.copy(who)?;
        copy.acts.push(copy.store.write(&edits)?);
        Ok(())
    }

    fn edit(&mut self, who: usize, edit: impl FnOnce(&Store) -> Edit) -> Outcome {
        let copy = self.copy(who)?;
        let edit = edit(&copy.store);
        copy.acts.push(copy.store.write(&[edit])?);
        Ok(())
    }

    fn undo(&mut self, who: usize) -> Outcome {
        let copy = self.copy(who)?;
        if let Some(act) = copy.acts.pop() {
            match copy.store.undo(act) {
                // What was changed since, or was not worth a fact, is not undone.
                Ok(_) | Err(FactsError::Undo(_)) => {}
                Err(error) => return Err(error.into()),
            }
        }
        Ok(())
    }

    fn forget(&mut self, who: usize, about: SubjectId) -> Outcome {
        let field = self.chance.pick(&FIELDS).copied().unwrap_or_default();
        let photo = self.chance.below(2) == 0;
        let copy = self.copy(who)?;
        let ledger = copy.store.ledger();
        let photos: Vec<SubjectId> =
            ledger.subjects().filter(|&photo| ledger.shown(photo, "image").is_some()).collect();
        let forgotten = match photos.first() {
            Some(&first) if photo => copy.store.forget_photo(first),
            _ => copy.store.forget_field(about, field),
        };
        match forgotten {
            // Forgotten already.
            Ok(_) | Err(FactsError::NoSuchPhoto) => Ok(()),
            Err(error) => Err(error.into()),
        }
    }

    fn pack(&mut self, who: usize) -> Outcome {
        let all = [LeftOut::Notes, LeftOut::Owner, LeftOut::Photos];
        let left_out = all.into_iter().filter(|_| self.chance.below(5) == 0).collect();
        let path = self.home.path().join(format!("{}.lwk", self.files.len()));
        let options = PackOptions { left_out, replace: false };
        house::document::pack(&mut self.copy(who)?.store, &options, &report, &path, &mut go_on)?;
        self.files.push(path);
        Ok(())
    }

    fn take(&mut self, who: usize) -> Outcome {
        let Some(path) = self.chance.pick(&self.files).cloned() else { return Ok(()) };
        let (back, again) = (self.chance.below(6) == 0, self.chance.below(4) == 0);
        let store = &mut self.copy(who)?.store;
        let limits = Limits::default();
        let before = store.ledger().to_lines()?;
        let stood = standing(store.ledger());
        let seen = file::look(&path, Some(store), limits, &mut go_on)?;
        check(store.ledger().to_lines()? == before, "looking changed something")?;
        let taken = file::take(&path, store, Consent::ALL, limits, &mut go_on)?;
        check(
            taken.facts.len() == seen.new_facts + seen.new_words,
            "looking counted other facts than taking",
        )?;
        // A take that brings nothing leaves the one before it as the last.
        if back && !taken.facts.is_empty() {
            match file::put_back(store)? {
                // What was forgotten stays so; the rest is said again.
                returned if !returned.without_trace => stands_as_before(&stood, store.ledger())?,
                _ => check(store.ledger().to_lines()? == before, "what was put back is still there")?,
            }
        }
        if again {
            file::take(&path, store, Consent::ALL, limits, &mut go_on)?;
            let twice = file::take(&path, store, Consent::ALL, limits, &mut go_on)?;
            check(twice.facts.is_empty() && twice.photos.is_empty(), "a file brought something twice")?;
        }
        Ok(())
    }

    /// Keeps what a copy wrote as it is now, before anybody can forget it.
    fn remember(&mut self, who: usize) -> Outcome {
        let Self { copies, written, .. } = self;
        let store = &copies.get(who).ok_or("no such copy")?.store;
        for fact in store.ledger().facts().filter(|fact| fact.by() == store.author()) {
            written.entry(fact.id()).or_insert_with(|| fact.clone());
        }
        Ok(())
    }

    /// Everyone takes in what everyone has, twice, from a different neighbour first.
    pub fn exchange(&mut self) -> Outcome {
        for round in 0..2 {
            let mut files = Vec::new();
            for (number, copy) in self.copies.iter_mut().enumerate() {
                let path = self.home.path().join(format!("all-{round}-{number}.lwk"));
                house::document::pack(&mut copy.store, &PackOptions::default(), &report, &path, &mut go_on)?;
                files.push(path);
            }
            for (number, copy) in self.copies.iter_mut().enumerate() {
                files.rotate_left(number);
                for path in files.iter().chain(&files) {
                    file::take(path, &mut copy.store, Consent::ALL, Limits::default(), &mut go_on)?;
                }
            }
        }
        Ok(())
    }

    fn check(&mut self) -> Outcome {
        let told: BTreeSet<FactId> = self
            .written
            .values()
            .filter(|fact| fact.field() == FORGET)
            .filter_map(|fact| serde_json::from_value::<Vec<FactId>>(fact.value()["facts"].clone()).ok())
            .flatten()
            .collect();
        let mut packed: Option<Vec<u8>> = None;
        for (number, copy) in self.copies.iter_mut().enumerate() {
            let held: Vec<&Fact> = copy.store.ledger().facts().collect();
            check(held.len() == self.written.len(), "facts are missing or too many")?;
            for (fact, (id, as_written)) in held.iter().zip(&self.written) {
                let right = fact.id() == *id && fact.is_same(as_written);
                check(right && fact.is_forgotten() == told.contains(id), "a fact is not what was written")?;
            }
            let path = self.home.path().join(format!("end-{number}.lwk"));
            let counts =
                house::document::pack(&mut copy.store, &PackOptions::default(), &report, &path, &mut go_on)?;
            check(counts.lost_photos.is_empty(), "a photo is lost")?;
            let named: BTreeSet<String> =
                held_photos(&self.written, &told).iter().map(ToString::to_string).collect();
            let there: BTreeSet<String> = fs::read_dir(copy.store.photos())?
                .map(|entry| entry.map(|entry| entry.file_name().to_string_lossy().into_owned()))
                .collect::<Result<_, _>>()?;
            check(named == there, "the photos are not those that the facts name")?;
            let bytes = fs::read(path)?;
            check(packed.as_ref().is_none_or(|first| *first == bytes), "two copies pack to different bytes")?;
            packed.get_or_insert(bytes);
            let again = Store::open(copy.store.folder(), AuthorId::random())?;
            check(again.ledger() == copy.store.ledger(), "the disk holds something else than memory")?;
        }
        Ok(())
    }
}

/// The photos that facts name which nobody forgot.
fn held_photos(written: &BTreeMap<FactId, Fact>, told: &BTreeSet<FactId>) -> BTreeSet<PhotoName> {
    written.values().filter(|fact| !told.contains(&fact.id())).filter_map(PhotoName::of_fact).collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn copies_that_exchange_files_end_up_the_same() {
        super::run(12, crate::chance::seed(None)).unwrap();
    }
}
