//! Every setting of the database connection, each with its reason.

use std::time::Duration;

use rusqlite::{Connection, Result};

use super::schema;

/// How long a writer waits for another process before it tells the user.
pub(super) const BUSY_TIMEOUT: Duration = Duration::from_secs(5);

/// Settings of one connection. None of them writes to the file.
pub(super) fn set(connection: &Connection) -> Result<()> {
    connection.busy_timeout(BUSY_TIMEOUT)?;
    // A commit that was acknowledged must survive a power cut: the log is synced at each one ...
    connection.pragma_update(None, "synchronous", "FULL")?;
    // ... and on Apple's systems, where a plain sync stops at the drive's cache, down to the medium.
    connection.pragma_update(None, "fullfsync", true)?;
    connection.pragma_update(None, "checkpoint_fullfsync", true)?;
    // The log is moved into the file by us ([`move_log`]), never in the middle of a draft.
    connection.pragma_update(None, "wal_autocheckpoint", 0)?;
    // `fact_over` names only facts that are there.
    connection.pragma_update(None, "foreign_keys", true)?;
    // INSERT OR REPLACE must meet the triggers that keep facts from being deleted.
    connection.pragma_update(None, "recursive_triggers", true)?;
    // A crafted database must not run functions from its schema.
    connection.pragma_update(None, "trusted_schema", false)?;
    // A medium that fails under a memory map would end the process instead of giving an error.
    connection.pragma_update(None, "mmap_size", 0)?;
    // What was forgotten must not linger in free pages ...
    connection.pragma_update(None, "secure_delete", true)?;
    // ... nor in temporary files outside the survey's folder.
    connection.pragma_update(None, "temp_store", "MEMORY")?;
    // A damaged page is to be noticed when it is read.
    connection.pragma_update(None, "cell_size_check", true)
}

/// The journal: readers and the writer do not wait for each other, and a commit is one sync. This is written to
/// the file and holds for every later connection.
pub(super) fn set_journal(connection: &Connection) -> Result<()> {
    connection.pragma_update(None, "journal_mode", "WAL")
}

/// Does something that need not be on the disk at once and waits for nobody. What was acknowledged before stays safe:
/// the log is in the order of its writing, and whatever of its end is lost with the power is lost whole
/// (<https://sqlite.org/pragma.html#pragma_synchronous>).
pub(super) fn unsynced(connection: &Connection, work: impl FnOnce(&Connection) -> Result<()>) -> Result<()> {
    connection.busy_timeout(Duration::ZERO)?;
    connection.pragma_update(None, "synchronous", "NORMAL")?;
    let done = work(connection);
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.busy_timeout(BUSY_TIMEOUT)?;
    done
}

/// Moves the log into the file and begins the next one. A log's head is synced when its first page is written, also by
/// what is else done [`unsynced`]: so that page is written here.
pub(super) fn move_log(connection: &Connection) -> Result<()> {
    connection.query_row("PRAGMA wal_checkpoint(PASSIVE)", (), |_| Ok(()))?;
    begin_log(connection)
}

/// Writes something that changes nothing, so that the log has a head.
pub(super) fn begin_log(connection: &Connection) -> Result<()> {
    connection.pragma_update(None, "application_id", schema::APPLICATION_ID)
}
