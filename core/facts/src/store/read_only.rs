//! Reading a survey where nothing may be written: a read-only folder, a stick, a backup.
//!
//! Nothing is made, locked or changed there. SQLite plays a log only where it may write; so where somebody's log lies beside
//! the database, both are copied out of there first, and the copy goes with the store.

use std::cell::Cell;
use std::fs;
use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use super::peek::as_immutable;
use super::{DATABASE, Store, Summary, disk, fault, open, pragma, row, schema};
use crate::error::{FactsError, NotASurvey, Result};
use crate::fact::{AuthorId, FactClock, Ledger};
use crate::unfinished::{self, Unfinished};

/// Opens the survey in `folder` to be read, whatever may be written there.
pub(super) fn open(folder: &Path, author: AuthorId, mut clock: FactClock) -> Result<Store> {
    open::look_at_folder(folder)?;
    let broken = |error| fault::of_sqlite(folder, error);
    let log = folder.join(format!("{DATABASE}-wal"));
    let has_log = open::length(&log).is_some_and(|length| length > 0);
    let copy = if has_log || !cfg!(unix) { Some(copy_out(folder)?) } else { None };
    let connection = if let Some(copy) = &copy {
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let database = copy.folder().join(DATABASE);
        let connection = Connection::open_with_flags(database, flags).map_err(broken)?;
        pragma::set(&connection).map_err(broken)?;
        connection
    } else {
        let flags =
            OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_URI;
        Connection::open_with_flags(as_immutable(&folder.join(DATABASE)), flags).map_err(broken)?
    };
    if schema::application_id(&connection).map_err(broken)? != schema::APPLICATION_ID {
        let why = NotASurvey::OtherProgram;
        return Err(FactsError::NotASurvey { folder: folder.to_owned(), why });
    }
    let found = schema::version(&connection).map_err(broken)?;
    if found > schema::NEWEST {
        return Err(FactsError::Newer { folder: folder.to_owned(), found, known: schema::NEWEST });
    }
    // Nothing that is written to the copy would ever come back.
    connection.pragma_update(None, "query_only", true).map_err(broken)?;
    let survey = open::survey_id(folder, &connection)?;
    let mut ledger = Ledger::new();
    let total = row::read_all(&connection, folder, &mut ledger, &mut clock)?;
    open::check_count(folder, &Summary::read(&connection).map_err(broken)?, &ledger, total)?;
    let data_version = row::data_version(&connection).map_err(broken)?;
    let summary = Summary::of(&ledger, survey);
    Ok(Store {
        folder: folder.to_owned(),
        connection,
        survey,
        author,
        ledger,
        clock,
        data_version,
        summary,
        in_log: Cell::new(0),
        reads_only: true,
        copy,
    })
}

/// Copies database and log to where the system keeps what is temporary, for its owner's eyes alone.
fn copy_out(folder: &Path) -> Result<Unfinished> {
    let system = |error| fault::of_system(folder, &error);
    let temporary = std::env::temp_dir();
    // What a process left there that died.
    unfinished::sweep(&temporary);
    let copy = Unfinished::make(&temporary, disk::make_folder).map_err(system)?;
    for ending in ["", "-wal"] {
        let name = format!("{DATABASE}{ending}");
        if folder.join(&name).is_file() {
            let mut from = fs::File::open(folder.join(&name)).map_err(system)?;
            let mut to = disk::new_file(&copy.folder().join(&name)).map_err(system)?;
            std::io::copy(&mut from, &mut to).map_err(system)?;
        }
    }
    Ok(copy)
}
