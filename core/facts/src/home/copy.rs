//! A copy of a survey that is a survey of its own.

use std::fs::{self, File};
use std::io;
use std::path::Path;

use serde_json::{Value, json};

use crate::error::Result;
use crate::fact::{
    ActId, AuthorId, FORGET, Fact, FactClock, Ledger, REMOVED, Removal, SubjectId, SurveyId, reserved,
};
use crate::store::{PHOTOS, Store, disk, fault};

pub(super) fn copy(from: &Store, to: &Path, name: &str, author: AuthorId, act: ActId) -> Result<Store> {
    let survey = SurveyId::random();
    let facts = restate(from, survey, name, author, act)?;
    Store::create_with(to, author, survey, |unfinished| {
        let mut store = Store::open(unfinished, author)?;
        store.write_facts(facts)?;
        copy_photos(from, &store).map_err(|error| fault::of_system(to, &error))
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
fn copy_photos(from: &Store, to: &Store) -> io::Result<()> {
    let (source, target) = (from.photos(), to.folder().join(PHOTOS));
    for name in to.photos_named() {
        match fs::copy(source.join(&name), target.join(&name)) {
            Ok(_) => File::open(target.join(&name))?.sync_all()?,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(error),
        }
    }
    disk::sync_folder(&target)
}
