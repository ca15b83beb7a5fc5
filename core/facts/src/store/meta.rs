//! What holds for a survey as a whole, by key: each with the sum of its row.

use rusqlite::types::Type;
use rusqlite::{Connection, Error, OptionalExtension, Result, params};

use super::sum;

/// The bits of a row do not give its sum.
#[derive(Debug, thiserror::Error)]
#[error("a row has changed since it was written")]
pub(super) struct RowChanged;

/// A row that has changed, as an error of the database.
pub(super) fn changed() -> Error {
    Error::FromSqlConversionFailure(0, Type::Null, Box::new(RowChanged))
}

fn sum_of(key: &str, value: &str) -> i64 {
    sum::of_columns([Some(key.as_bytes()), Some(value.as_bytes())])
}

/// Whether the layout is one whose rows carry sums. Older ones are looked at, and salvaged, as they are.
pub(super) fn has_sums(connection: &Connection) -> Result<bool> {
    super::schema::version(connection).map(|layout| layout >= super::schema::WITH_SUMS)
}

/// What stands under a key.
pub(super) fn get(connection: &Connection, key: &str) -> Result<Option<String>> {
    if !has_sums(connection)? {
        return connection
            .query_row("SELECT value FROM meta WHERE key = ?1", [key], |row| row.get(0))
            .optional();
    }
    let row: Option<(String, Option<i64>)> = connection
        .prepare_cached("SELECT value, sum FROM meta WHERE key = ?1")?
        .query_row([key], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    match row {
        Some((value, Some(sum))) if sum == sum_of(key, &value) => Ok(Some(value)),
        Some(_) => Err(changed()),
        None => Ok(None),
    }
}

/// As [`get`], with the one bit of the value put right that has changed, if that is all.
pub(super) fn get_put_right(connection: &Connection, key: &str) -> Option<String> {
    if let Ok(found) = get(connection, key) {
        return found;
    }
    let row = |row: &rusqlite::Row<'_>| Ok((row.get::<_, String>(0)?, row.get::<_, i64>(1)?));
    let (value, sum) = connection.query_row("SELECT value, sum FROM meta WHERE key = ?1", [key], row).ok()?;
    if (sum ^ sum_of(key, &value)).count_ones() == 1 {
        return Some(value);
    }
    let mut bytes = value.into_bytes();
    for bit in 0..bytes.len() * 8 {
        let turn = |bytes: &mut Vec<u8>| {
            if let Some(byte) = bytes.get_mut(bit / 8) {
                *byte ^= 1 << (bit % 8);
            }
        };
        turn(&mut bytes);
        if let Some(text) = std::str::from_utf8(&bytes).ok().filter(|text| sum_of(key, text) == sum) {
            return Some(text.to_owned());
        }
        turn(&mut bytes);
    }
    None
}

pub(super) fn set(connection: &Connection, key: &str, value: &str) -> Result<()> {
    connection
        .execute(
            "INSERT OR REPLACE INTO meta (key, value, sum) VALUES (?1, ?2, ?3)",
            params![key, value, sum_of(key, value)],
        )
        .map(drop)
}

pub(super) fn delete(connection: &Connection, key: &str) -> Result<()> {
    connection.execute("DELETE FROM meta WHERE key = ?1", [key]).map(drop)
}

/// Gives the rows of an older layout their sums.
pub(super) fn fill(connection: &Connection) -> Result<()> {
    let rows: Vec<(String, String)> = connection
        .prepare("SELECT key, value FROM meta")?
        .query_map((), |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect::<Result<_>>()?;
    rows.iter().try_for_each(|(key, value)| set(connection, key, value))
}
