//! A look at a survey without opening it: a few rows, whatever its size.

use std::fs::{self, Metadata};
use std::path::{Path, PathBuf};

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags};

use super::summary::Kept;
use super::{DATABASE, Summary, fault, open, pragma, repair, schema, summary};
use crate::error::Result;
use crate::fact::SurveyId;

/// What a look at a survey shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Peek {
    /// The survey's id, the same in every copy.
    pub survey: SurveyId,
    /// What a list shows of it.
    pub summary: Summary,
}

/// Looks at the survey in `folder`. Changes nothing, checks nothing, and holds nothing open.
///
/// # Errors
/// `NotASurvey`, `Newer`, `Damaged` or `Inaccessible`, as far as a look shows it.
pub fn peek(folder: &Path) -> Result<Peek> {
    look(folder, &read)
}

/// Reads something of a survey without opening it. `read` may run twice.
pub(super) fn look<T>(folder: &Path, read: &dyn Fn(&Path, &Connection) -> Result<T>) -> Result<T> {
    let database = database_of(folder);
    // Whatever is odd about a quick look, a proper one says.
    if let Some(found) = look_at_rest(folder, &database, read) {
        return Ok(found);
    }
    open::look_at_folder(folder)?;
    let broken = |error| fault::of_sqlite(folder, error);
    let log_at_hand = open::has_log(&database);
    // A connection that may only read would leave an empty log and its index behind.
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let mut connection = Connection::open_with_flags(&database, flags).map_err(broken)?;
    connection.busy_timeout(pragma::BUSY_TIMEOUT).map_err(broken)?;
    // A log that somebody left stays as it is: a look moves nothing into the file.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, log_at_hand).map_err(broken)?;
    // One transaction, so that all rows are of one state.
    let transaction = connection.transaction().map_err(broken)?;
    read_checked(folder, &transaction, read)
}

/// The database, or the one that waits to take its place where a repair was cut off between taking the damaged one away
/// and putting that there.
fn database_of(folder: &Path) -> PathBuf {
    let (database, rebuilt) = (folder.join(DATABASE), folder.join(repair::REBUILT));
    if !database.exists() && rebuilt.exists() { rebuilt } else { database }
}

/// Whether a program has the survey open. One that ended without closing it does not count.
pub(crate) fn is_open(folder: &Path) -> bool {
    let database = folder.join(DATABASE);
    let is_at_hand = || fs::symlink_metadata(log(&database)).is_ok();
    if !is_at_hand() {
        return false;
    }
    // The last connection that closes moves the log into the file and deletes it; it is no other's then.
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let closed = Connection::open_with_flags(&database, flags).and_then(|connection| {
        pragma::set(&connection)?;
        schema::version(&connection)?;
        connection.close().map_err(|(_, error)| error)
    });
    // A damaged one may be moved, whatever lies beside it.
    closed.is_ok() && is_at_hand()
}

/// A look at a survey that nobody has open, without locks and without the log and its index, which would be made and
/// deleted again and cost more than the look itself does. Nothing if somebody had it open before or afterwards.
fn look_at_rest<T>(
    folder: &Path,
    database: &Path,
    read: &dyn Fn(&Path, &Connection) -> Result<T>,
) -> Option<T> {
    if !cfg!(unix) {
        // Elsewhere a path is not spelt in a URI as it stands.
        return None;
    }
    let state = || {
        // SQLite would wait for ever for a pipe.
        let found = fs::metadata(database).ok().filter(Metadata::is_file)?;
        // SQLite deletes the log when the last connection closes, and makes it before it writes.
        let rests = fs::symlink_metadata(log(database)).is_err();
        rests.then_some((found.len(), found.modified().ok()?))
    };
    let before = state()?;
    let flags =
        OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_URI;
    let connection = Connection::open_with_flags(as_immutable(database), flags).ok()?;
    let found = read_checked(folder, &connection, read).ok()?;
    (state()? == before).then_some(found)
}

fn log(database: &Path) -> PathBuf {
    let mut log = database.to_owned().into_os_string();
    log.push("-wal");
    log.into()
}

/// A file as SQLite's URI (<https://sqlite.org/uri.html>) that promises that it does not change meanwhile.
pub(super) fn as_immutable(path: &Path) -> String {
    use std::fmt::Write;
    let mut uri = String::from("file:");
    for &byte in path.as_os_str().as_encoded_bytes() {
        if byte.is_ascii_alphanumeric() || b"/-_.".contains(&byte) {
            uri.push(char::from(byte));
        } else {
            // Writing to a String cannot fail.
            let _ = write!(uri, "%{byte:02X}");
        }
    }
    uri + "?immutable=1"
}

/// Reads a database that is a survey's and not newer than this release.
fn read_checked<T>(
    folder: &Path,
    connection: &Connection,
    read: &dyn Fn(&Path, &Connection) -> Result<T>,
) -> Result<T> {
    open::layout_of(folder, connection)?;
    read(folder, connection)
}

fn read(folder: &Path, connection: &Connection) -> Result<Peek> {
    let broken = |error| fault::of_sqlite(folder, error);
    let survey = open::survey_id(folder, connection)?;
    let found = schema::version(connection).map_err(broken)?;
    let kept = if found < 2 { Kept::Nothing } else { Summary::read(connection).map_err(broken)? };
    let summary = match kept {
        Kept::Whole(kept, _) => kept,
        Kept::Changed => {
            return Err(fault::damaged(folder, &"what a list shows has changed since it was written"));
        }
        Kept::Nothing => summary::peek_layout_1(connection, survey).map_err(broken)?,
    };
    Ok(Peek { survey, summary })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::{AuthorId, Edit};
    use crate::store::Store;

    #[test]
    fn a_look_at_rest_is_a_proper_look_whatever_the_name_and_none_while_it_is_open() {
        let home = tempfile::TempDir::new().unwrap();
        let folder = home.path().join("50%20 ?house#1=ä&immutable=0.legwork");
        let mut store = Store::create(&folder, AuthorId::random()).unwrap();
        let about = store.survey_id().subject();
        store.write(&[Edit::new(about, "name", "House by the mill")]).unwrap();
        let at_rest = || look_at_rest(&folder, &folder.join(DATABASE), &read);
        assert_eq!(at_rest(), None);
        let open = peek(&folder).unwrap();
        drop(store);
        let before: Vec<_> = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()).collect();
        assert_eq!(at_rest(), cfg!(unix).then_some(open.clone()));
        assert_eq!(open.summary.name.as_deref(), Some("House by the mill"));
        let after: Vec<_> = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()).collect();
        assert_eq!(before, after);
    }
}
