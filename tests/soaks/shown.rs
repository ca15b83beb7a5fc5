//! What a file's survey shows, for comparison with other readers.

use std::io::{self, Write};
use std::path::Path;

use facts::fact::AuthorId;
use facts::file::{self, Consent, Limits};
use serde_json::json;

use crate::Outcome;
use crate::merge::{go_on, scratch};

/// Takes the file in as a survey of its own and prints every shown value, by subject and field.
pub fn run(path: &Path) -> Outcome {
    let home = scratch()?;
    let folder = home.path().join("taken.legwork");
    let (store, _) =
        file::take_as_new(path, &folder, AuthorId::random(), Consent::NONE, Limits::default(), &mut go_on)?;
    let mut out = io::stdout().lock();
    let ledger = store.ledger();
    for subject in ledger.subjects() {
        for field in ledger.fields(subject) {
            let Some(fact) = ledger.shown(subject, field) else { continue };
            let sides = ledger.disagreement(subject, field).map_or(1, |found| found.sides.len());
            let line = json!({
                "subject": subject.to_string(), "field": field, "id": fact.id().to_string(),
                "forgotten": fact.is_forgotten(), "value": fact.value(), "sides": sides,
            });
            writeln!(out, "{line}")?;
        }
    }
    Ok(())
}
