//! Reading a survey where nothing may be written: a read-only folder, a stick, a backup.
//!
//! Nothing is made, locked or changed there. SQLite plays a log only where it may write, and an older layout becomes the
//! newest only there; so a database with somebody's log beside it, or of an older layout, is copied out of there first, and
//! the copy goes with the store.

use std::cell::Cell;
use std::fs;
use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use super::peek::as_immutable;
use super::{DATABASE, Store, Summary, disk, fault, layout, open, pragma, row, schema};
use crate::error::Result;
use crate::fact::{FactClock, Writer};
use crate::unfinished::{self, Unfinished};

/// Opens the survey in `folder` to be read, whatever may be written there.
pub(super) fn open(folder: &Path, author: Writer, mut clock: FactClock) -> Result<Store> {
    open::look_at_folder(folder)?;
    let broken = |error| fault::of_sqlite(folder, error);
    let in_place =
        if cfg!(unix) && !open::has_log(&folder.join(DATABASE)) { in_place(folder)? } else { None };
    let (connection, copy) = match in_place {
        Some(connection) => (connection, None),
        None => brought_up(folder).map(|(connection, copy)| (connection, Some(copy)))?,
    };
    // Nothing that is written to the copy would ever come back.
    connection.pragma_update(None, "query_only", true).map_err(broken)?;
    let survey = open::survey_id(folder, &connection)?;
    let (ledger, total) = row::read_all(&connection, folder, &mut clock)?;
    open::check_count(folder, &Summary::read(&connection).map_err(broken)?, &ledger, total)?;
    let data_version = row::data_version(&connection).map_err(broken)?;
    let summary = Summary::of(&ledger, survey);
    Ok(Store {
        folder: folder.to_owned(),
        connection,
        survey,
        author: author.in_ledger(survey, &ledger),
        ledger,
        clock,
        data_version,
        summary,
        in_log: Cell::new(0),
        reads_only: true,
        copy,
    })
}

/// Opens the database where it lies; nothing if its layout is an older one.
fn in_place(folder: &Path) -> Result<Option<Connection>> {
    let flags =
        OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_URI;
    let connection = Connection::open_with_flags(as_immutable(&folder.join(DATABASE)), flags)
        .map_err(|error| fault::of_sqlite(folder, error))?;
    let is_newest = open::layout_of(folder, &connection)? == schema::NEWEST;
    Ok(is_newest.then_some(connection))
}

/// Opens a copy of the database, in the newest layout.
fn brought_up(folder: &Path) -> Result<(Connection, Unfinished)> {
    let broken = |error| fault::of_sqlite(folder, error);
    let copy = copy_out(folder)?;
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let mut connection = Connection::open_with_flags(copy.folder().join(DATABASE), flags).map_err(broken)?;
    pragma::set(&connection).map_err(broken)?;
    if open::layout_of(folder, &connection)? < schema::NEWEST {
        layout::bring_up(&mut connection, |_| Ok(())).map_err(broken)?;
    }
    Ok((connection, copy))
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

#[cfg(test)]
mod tests {
    use rusqlite::Connection;

    use super::*;
    use crate::fact::AuthorId;
    use crate::store::Draft;

    const LAYOUTS: [&str; 2] =
        [include_str!("../../tests/layouts/v1.sql"), include_str!("../../tests/layouts/v2.sql")];

    fn survey_of(home: &Path, layout: u32) -> std::path::PathBuf {
        let folder = home.join("old.legwork");
        disk::make_folder(&folder).unwrap();
        let database = Connection::open(folder.join(DATABASE)).unwrap();
        database.execute_batch(LAYOUTS[layout.min(2) as usize - 1]).unwrap();
        if layout == 3 {
            database.execute_batch(include_str!("schema/v3.sql")).unwrap();
            database.pragma_update(None, "user_version", 3).unwrap();
        }
        folder
    }

    #[test]
    fn an_older_layout_is_read_as_what_it_becomes_and_stays_as_it_is() {
        for layout in 1..schema::NEWEST {
            let home = tempfile::TempDir::new().unwrap();
            let folder = survey_of(home.path(), layout);
            let before = fs::read(folder.join(DATABASE)).unwrap();
            let found = schema::version(&Connection::open(folder.join(DATABASE)).unwrap()).unwrap();
            assert_eq!(found, layout);
            let read = open(&folder, AuthorId::random().into(), FactClock::system()).unwrap();
            assert_eq!(read.kept_thumbnail(&[7; 32]).unwrap(), None);
            assert_eq!(read.wishes().unwrap(), []);
            let drafts: Vec<Draft> = read.drafts().unwrap();
            assert_eq!(drafts.len(), 1, "layout {layout}");
            let lines = read.ledger().to_lines().unwrap();
            drop(read);
            assert_eq!(fs::read(folder.join(DATABASE)).unwrap(), before);
            assert_eq!(fs::read_dir(&folder).unwrap().count(), 1);
            let brought_up = Store::open(&folder, AuthorId::random()).unwrap();
            assert_eq!(brought_up.ledger().to_lines().unwrap(), lines);
            assert_eq!(brought_up.drafts().unwrap(), drafts);
        }
    }
}
