//! Small pictures of photos, kept in the database. They can be made again from the photos at any time.

use rusqlite::{Connection, OptionalExtension, params};

use super::{Store, fault};
use crate::error::Result;

impl Store {
    /// The small picture of a photo, if one is kept: the bytes of a JPEG.
    pub(crate) fn kept_thumbnail(&self, sha256: &[u8; 32]) -> Result<Option<Vec<u8>>> {
        self.connection
            .prepare_cached("SELECT jpeg FROM thumbnail WHERE photo = ?1")
            .and_then(|mut select| select.query_row([sha256.as_slice()], |row| row.get(0)).optional())
            .map_err(|error| fault::of_sqlite(&self.folder, error))
    }

    /// Keeps the small picture of a photo.
    pub(crate) fn keep_thumbnail(&self, sha256: &[u8; 32], jpeg: &[u8]) -> Result<()> {
        write(&self.connection, sha256, jpeg).map_err(|error| fault::of_sqlite(&self.folder, error))?;
        self.tend_log(1);
        Ok(())
    }
}

pub(super) fn write(connection: &Connection, sha256: &[u8; 32], jpeg: &[u8]) -> rusqlite::Result<()> {
    connection
        .prepare_cached("INSERT OR REPLACE INTO thumbnail (photo, jpeg) VALUES (?1, ?2)")?
        .execute(params![sha256.as_slice(), jpeg])
        .map(drop)
}

pub(super) fn delete(connection: &Connection, sha256: &[u8; 32]) -> rusqlite::Result<()> {
    connection
        .prepare_cached("DELETE FROM thumbnail WHERE photo = ?1")?
        .execute([sha256.as_slice()])
        .map(drop)
}
