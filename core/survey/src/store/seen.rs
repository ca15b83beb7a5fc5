//! What stands in one field anywhere in a survey, read without opening it.

use std::path::Path;

use serde_json::Value;

use super::row::Bytes;
use super::{fault, peek};
use crate::error::Result;
use crate::fact::FactId;

/// The texts that stand in a field of any subject, each with the id of the fact that says so. What was replaced or
/// forgotten is left out.
///
/// # Errors
/// As [`peek()`](super::peek()).
pub(crate) fn live_texts(folder: &Path, field: &str) -> Result<Vec<(FactId, String)>> {
    peek::look(folder, &|folder, connection| {
        let broken = |error| fault::of_sqlite(folder, error);
        let mut select = connection
            .prepare(
                "SELECT id, value FROM fact WHERE field = ?1 AND value IS NOT NULL \
                 AND id NOT IN (SELECT replaced FROM fact_over)",
            )
            .map_err(broken)?;
        let mut rows = select.query([field]).map_err(broken)?;
        let mut found = Vec::new();
        while let Some(row) = rows.next().map_err(broken)? {
            let (id, value): (Bytes, String) =
                row.get(0).and_then(|id| Ok((id, row.get(1)?))).map_err(broken)?;
            if let (Ok(id), Ok(Value::String(text))) = (FactId::try_from(id.0), serde_json::from_str(&value))
            {
                found.push((id, text));
            }
        }
        Ok(found)
    })
}
