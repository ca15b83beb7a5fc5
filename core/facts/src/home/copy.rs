//! A copy of a survey that is a survey of its own.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

use serde_json::{Value, json};

use crate::error::{FactsError, Result};
use crate::fact::{
    ActId, AuthorId, FORGET, Fact, FactClock, Ledger, REMOVED, Removal, SubjectId, SurveyId, Writer, reserved,
};
use crate::file::{Progress, Watch};
use crate::store::{PHOTOS, Store, disk, fault};

/// How much of a photo is copied between two looks at whether to go on.
const PIECE_BYTES: u64 = 1024 * 1024;

pub(super) fn copy(
    from: &Store,
    to: &Path,
    name: &str,
    author: Writer,
    act: ActId,
    watch: &mut dyn Watch,
) -> Result<Store> {
    let survey = SurveyId::random();
    let author = author.in_survey(survey, |_| false);
    let facts = restate(from, survey, name, author, act)?;
    Store::create_with(to, author, survey, |unfinished| {
        let mut store = Store::open(unfinished, author)?;
        store.write_facts(facts)?;
        copy_photos(from, &store, watch)
    })
}

/// What stands in a survey, said anew.
fn restate(from: &Store, survey: SurveyId, name: &str, author: AuthorId, act: ActId) -> Result<Vec<Fact>> {
    let ledger = from.ledger();
    let mut clock = FactClock::system();
    if let Some(newest) = ledger.facts().next_back() {
        clock.raise(newest.id());
    }
    let (old, new) = (from.survey_id().subject(), survey.subject());
    let mut facts = Vec::new();
    let mut say = |subject: SubjectId, field: &str, value: &Value| -> Result<()> {
        facts.push(Fact::new(clock.next_id(), act, author, subject, field, value, Vec::new())?);
        Ok(())
    };
    for subject in ledger.subjects().filter(|&subject| !is_removed(ledger, subject)) {
        for field in ledger.fields(subject).filter(|&field| field != REMOVED && field != FORGET) {
            if subject == old && field == reserved::NAME {
                continue;
            }
            for value in standing(ledger, subject, field) {
                // What is about the survey is about the new one.
                let value = if value == json!(old) { json!(new) } else { value };
                say(if subject == old { new } else { subject }, field, &value)?;
            }
        }
    }
    say(new, reserved::NAME, &json!(name))?;
    Ok(facts)
}

fn is_removed(ledger: &Ledger, subject: SubjectId) -> bool {
    matches!(ledger.removal(subject), Removal::Removed { .. })
}

/// The different values that stand, so that a disagreement stays one.
fn standing(ledger: &Ledger, subject: SubjectId, field: &str) -> Vec<Value> {
    let mut values = Vec::new();
    for fact in ledger.live(subject, field) {
        if !fact.is_forgotten() && !values.contains(fact.value()) {
            values.push(fact.value().clone());
        }
    }
    // An empty field is nothing to copy, but an emptied side of a disagreement is.
    if values == [Value::Null] { Vec::new() } else { values }
}

/// Copies the photos that the copy names. One that is missing is missing in the copy too.
fn copy_photos(from: &Store, to: &Store, watch: &mut dyn Watch) -> Result<()> {
    let (source, target) = (from.photos(), to.folder().join(PHOTOS));
    let system = |error: io::Error| fault::of_system(to.folder(), &error);
    let names = to.photos_named();
    let length = |name: &String| fs::metadata(source.join(name)).map_or(0, |found| found.len());
    let mut progress = Progress { done_bytes: 0, of_bytes: names.iter().map(length).sum() };
    for name in names {
        match File::open(source.join(&name)) {
            Ok(photo) => copy_photo(photo, &target.join(&name), &mut progress, watch, &system)?,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(fault::of_system(from.folder(), &error)),
        }
    }
    disk::sync_folder(&target).map_err(system)
}

/// Copies one photo, a piece at a time, so that it can be stopped.
fn copy_photo(
    mut from: File,
    to: &Path,
    progress: &mut Progress,
    watch: &mut dyn Watch,
    system: &dyn Fn(io::Error) -> FactsError,
) -> Result<()> {
    let mut copy = disk::new_file(to).map_err(system)?;
    loop {
        if !watch.goes_on(*progress) {
            return Err(FactsError::Stopped);
        }
        let copied = io::copy(&mut Read::by_ref(&mut from).take(PIECE_BYTES), &mut copy).map_err(system)?;
        if copied == 0 {
            break;
        }
        progress.done_bytes += copied;
        progress.of_bytes = progress.of_bytes.max(progress.done_bytes);
    }
    copy.sync_all().map_err(system)
}
