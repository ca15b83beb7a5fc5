//! Small pictures of photos, kept in the database. They can be made again from the photos at any time.

use rusqlite::{Connection, OptionalExtension, params};

use super::{Store, fault, sum};
use crate::error::Result;

impl Store {
    /// The small picture of a photo, if one is kept: the bytes of a JPEG.
    pub(crate) fn kept_thumbnail(&self, sha256: &[u8; 32]) -> Result<Option<Vec<u8>>> {
        self.connection
            .prepare_cached("SELECT jpeg, sum FROM thumbnail WHERE photo = ?1")
            .and_then(|mut select| {
                let row = |row: &rusqlite::Row<'_>| Ok((row.get(0)?, row.get(1)?));
                select.query_row([sha256.as_slice()], row).optional()
            })
            // One that has changed on the disk is made anew.
            .map(|kept: Option<(Vec<u8>, Option<i64>)>| {
                kept.filter(|(jpeg, sum)| *sum == Some(sum_of(sha256, jpeg))).map(|(jpeg, _)| jpeg)
            })
            .map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// Keeps the small picture of a photo.
    pub(crate) fn keep_thumbnail(&self, sha256: &[u8; 32], jpeg: &[u8]) -> Result<()> {
        if self.reads_only {
            return Ok(());
        }
        write(&self.connection, sha256, jpeg).map_err(|error| fault::of_sqlite(&self.folder, error))?;
        self.tend_log(1);
        Ok(())
    }
}

pub(super) fn write(connection: &Connection, sha256: &[u8; 32], jpeg: &[u8]) -> rusqlite::Result<()> {
    connection
        .prepare_cached("INSERT OR REPLACE INTO thumbnail (photo, jpeg, sum) VALUES (?1, ?2, ?3)")?
        .execute(params![sha256.as_slice(), jpeg, sum_of(sha256, jpeg)])
        .map(drop)
}

fn sum_of(sha256: &[u8], jpeg: &[u8]) -> i64 {
    sum::of_columns([Some(sha256), Some(jpeg)])
}

/// Gives the rows of an older layout their sums.
pub(super) fn fill_sums(connection: &Connection) -> rusqlite::Result<()> {
    let photos: Vec<Vec<u8>> = connection
        .prepare("SELECT photo FROM thumbnail")?
        .query_map((), |row| row.get(0))?
        .collect::<rusqlite::Result<_>>()?;
    for photo in photos {
        let jpeg: Vec<u8> =
            connection
                .query_row("SELECT jpeg FROM thumbnail WHERE photo = ?1", [&photo], |row| row.get(0))?;
        connection.execute(
            "UPDATE thumbnail SET sum = ?2 WHERE photo = ?1",
            params![photo, sum_of(&photo, &jpeg)],
        )?;
    }
    Ok(())
}

pub(super) fn delete(connection: &Connection, sha256: &[u8; 32]) -> rusqlite::Result<()> {
    connection
        .prepare_cached("DELETE FROM thumbnail WHERE photo = ?1")?
        .execute([sha256.as_slice()])
        .map(drop)
}
