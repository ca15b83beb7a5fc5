//! The label texts of a survey, read without opening it.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use rusqlite::Connection;
use uuid::Uuid;

use super::fault;
use super::peek::look;
use super::row::Bytes;
use crate::error::Result;
use crate::fact::FactId;
use crate::rating::PartRating;
use crate::record::field;

/// What is printed on one part, as somebody typed it.
#[derive(Debug, Clone, PartialEq)]
pub struct LabelTyped {
    /// The text.
    pub text: String,
    /// The rating that somebody set right by hand on that part, if anyone did.
    pub rating: Option<PartRating>,
    /// When the text was written, milliseconds since 1970.
    pub ms: u64,
}

/// The label texts that stand in the survey in `folder`, oldest first. Nothing is changed or held open.
///
/// # Errors
/// As [`peek`](super::peek::peek).
pub(crate) fn labels(folder: &Path) -> Result<Vec<LabelTyped>> {
    look(folder, &read)
}

fn read(folder: &Path, connection: &Connection) -> Result<Vec<LabelTyped>> {
    stand(connection).map_err(|error| fault::of_sqlite(folder, error))
}

fn stand(connection: &Connection) -> rusqlite::Result<Vec<LabelTyped>> {
    let fields = [field::LABEL, field::RATING];
    let mut over = connection.prepare(
        "SELECT replaced FROM fact_over JOIN fact ON fact.id = fact_over.fact WHERE fact.field IN (?1, ?2)",
    )?;
    let replaced = over.query_map(fields, |row| row.get::<_, Bytes>(0).map(|id| id.0))?;
    let replaced: BTreeSet<Uuid> = replaced.collect::<rusqlite::Result<_>>()?;
    let mut facts = connection.prepare(
        "SELECT id, subject, field, value FROM fact WHERE field IN (?1, ?2) AND value IS NOT NULL ORDER BY id",
    )?;
    let mut rows = facts.query(fields)?;
    let mut texts = Vec::new();
    let mut ratings = BTreeMap::new();
    while let Some(row) = rows.next()? {
        let (id, subject) = (row.get::<_, Bytes>(0)?.0, row.get::<_, Bytes>(1)?.0);
        if replaced.contains(&id) {
            continue;
        }
        let value: String = row.get(3)?;
        if row.get::<_, String>(2)? == field::RATING {
            // A rating of another release counts as none.
            if let Ok(rating) = serde_json::from_str::<PartRating>(&value) {
                ratings.insert(subject, rating);
            }
        } else if let Ok(text) = serde_json::from_str::<String>(&value) {
            let ms = FactId::try_from(id).map_or(0, FactId::ms);
            texts.push((subject, text, ms));
        }
    }
    let typed = |(subject, text, ms)| LabelTyped { text, rating: ratings.get(&subject).cloned(), ms };
    Ok(texts.into_iter().map(typed).collect())
}
