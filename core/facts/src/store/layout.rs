//! Bringing a database to the newest layout: its tables, then what the new columns of older rows hold.

use rusqlite::{Connection, Result};

use super::{draft, meta, row, schema, summary, thumbnail};

/// Brings the database to the newest layout in one transaction, whatever layout it has; `fill` runs in the same transaction.
pub(super) fn bring_up(
    connection: &mut Connection,
    fill: impl FnOnce(&Connection) -> Result<()>,
) -> Result<()> {
    schema::bring_up(connection, |connection, found| {
        if found < schema::WITH_SUMS {
            meta::fill(connection)?;
            row::fill_sums(connection)?;
            draft::fill_sums(connection)?;
            thumbnail::fill_sums(connection)?;
            summary::fill_sums(connection)?;
        }
        fill(connection)
    })
}
