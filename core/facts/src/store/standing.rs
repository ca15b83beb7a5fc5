//! What stands in a survey under some fields, read without opening it.

use std::collections::BTreeSet;
use std::path::Path;

use rusqlite::{Connection, params_from_iter};
use serde_json::Value;
use uuid::Uuid;

use super::fault;
use super::peek::look;
use super::row::Bytes;
use crate::error::Result;
use crate::fact::{FactId, SubjectId};

/// What a fact says that nothing replaced and nobody forgot.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// What it speaks of.
    pub subject: SubjectId,
    /// Under which field.
    pub field: String,
    /// What it says.
    pub value: Value,
    /// When it was written, milliseconds since 1970.
    pub ms: u64,
}

/// What stands under `fields` in the survey in `folder`, oldest first. Nothing is changed or held open.
///
/// # Errors
/// As [`peek`](super::peek::peek).
pub fn standing(folder: &Path, fields: &[&str]) -> Result<Vec<Standing>> {
    look(folder, &|folder: &Path, connection: &Connection| {
        stand(connection, fields).map_err(|error| fault::of_sqlite(folder, error))
    })
}

fn stand(connection: &Connection, fields: &[&str]) -> rusqlite::Result<Vec<Standing>> {
    let asked = vec!["?"; fields.len()].join(", ");
    let mut over = connection.prepare(&format!(
        "SELECT replaced FROM fact_over JOIN fact ON fact.id = fact_over.fact WHERE fact.field IN ({asked})",
    ))?;
    let replaced = over.query_map(params_from_iter(fields), |row| row.get::<_, Bytes>(0).map(|id| id.0))?;
    let replaced: BTreeSet<Uuid> = replaced.collect::<rusqlite::Result<_>>()?;
    let mut facts = connection.prepare(&format!(
        "SELECT id, subject, field, value FROM fact WHERE field IN ({asked}) AND value IS NOT NULL ORDER BY id",
    ))?;
    let mut rows = facts.query(params_from_iter(fields))?;
    let mut standing = Vec::new();
    while let Some(row) = rows.next()? {
        let (id, subject) = (row.get::<_, Bytes>(0)?.0, row.get::<_, Bytes>(1)?.0);
        let value: String = row.get(3)?;
        if let (false, Ok(value)) = (replaced.contains(&id), serde_json::from_str(&value)) {
            let ms = FactId::try_from(id).map_or(0, FactId::ms);
            standing.push(Standing { subject: SubjectId::from_uuid(subject), field: row.get(2)?, value, ms });
        }
    }
    Ok(standing)
}
