//! Opening a survey, or saying why not, with nothing changed.

use std::cell::Cell;
use std::fs;
use std::io;
use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, MAIN_DB, OpenFlags};

use super::create::SURVEY_KEY;
use super::repair::REBUILT;
use super::summary::Kept;
use super::{DATABASE, PHOTOS, Store, Summary, disk, fault, layout, meta, pragma, row, schema};
use crate::error::{FactsError, NotASurvey, Result, SystemFault};
use crate::fact::{FactClock, Ledger, SurveyId, Writer};

/// Opens the survey in `folder` and reads its facts.
pub(super) fn open(folder: &Path, author: Writer, mut clock: FactClock) -> Result<Store> {
    super::repair::finish(folder)?;
    look_at_folder(folder)?;
    // What belongs to somebody else stays as its owner has it.
    disk::make_private(folder, PHOTOS).ok();
    // SQLite removes its log when the last connection closes. A log at hand means that somebody else has the
    // survey open, or that the last one ended without closing: then the file is checked.
    let log_at_hand = has_log(&folder.join(DATABASE));
    let mut connection = connect(folder, log_at_hand)?;
    let broken = |error| fault::of_sqlite(folder, error);
    if log_at_hand {
        check(folder, &connection)?;
    } else {
        check_length(folder, &connection)?;
    }
    if schema::version(&connection).map_err(broken)? < schema::NEWEST {
        layout::bring_up(&mut connection, |_| Ok(())).map_err(broken)?;
    }
    let transaction = connection.transaction().map_err(broken)?;
    let survey = survey_id(folder, &transaction)?;
    let data_version = row::data_version(&transaction).map_err(broken)?;
    let (ledger, read_total) = row::read_all(&transaction, folder, &mut clock)?;
    let kept = Summary::read(&transaction).map_err(broken)?;
    transaction.commit().map_err(broken)?;
    let summary = match kept {
        Kept::Whole(kept, total) if kept.is_of(&ledger) && total == read_total => kept,
        Kept::Whole(kept, _) => return Err(missing(folder, &kept, &ledger)),
        Kept::Changed => {
            // Nothing tells any more how many facts there were: so the file is looked at as a whole.
            check(folder, &connection)?;
            rewrite_summary(folder, &connection, &ledger, survey, read_total)?
        }
        Kept::Nothing => rewrite_summary(folder, &connection, &ledger, survey, read_total)?,
    };
    let mut store = Store {
        folder: folder.to_owned(),
        connection,
        survey,
        author: author.in_ledger(survey, &ledger),
        ledger,
        clock,
        data_version,
        summary,
        in_log: Cell::new(0),
        reads_only: false,
        copy: None,
    };
    // A copying program may have left an empty folder out.
    disk::make_folder(&folder.join(PHOTOS)).ok();
    // What cannot be cleared now is tried again at the next opening; see `Store::scrub_is_due`.
    store.scrub_at_opening().ok();
    store.sweep().ok();
    Ok(store)
}

/// Refuses facts that are not those that were counted.
pub(super) fn check_count(folder: &Path, kept: &Kept, ledger: &Ledger, total: i64) -> Result<()> {
    match kept {
        Kept::Whole(kept, counted) if kept.is_of(ledger) && *counted == total => Ok(()),
        Kept::Whole(kept, _) => Err(missing(folder, kept, ledger)),
        Kept::Changed | Kept::Nothing => Ok(()),
    }
}

/// Facts that were counted and are no longer there, or more than were ever written.
fn missing(folder: &Path, kept: &Summary, ledger: &Ledger) -> FactsError {
    fault::damaged(
        folder,
        &format_args!("{} records were written, and {} are there", kept.facts, ledger.len()),
    )
}

/// Makes the row of the summary again from the facts. If another program writes, it does so itself.
fn rewrite_summary(
    folder: &Path,
    connection: &Connection,
    ledger: &Ledger,
    survey: SurveyId,
    total: i64,
) -> Result<Summary> {
    let summary = Summary::of(ledger, survey);
    match summary.write(connection, total).map_err(|error| fault::of_sqlite(folder, error)) {
        Err(FactsError::Busy { .. }) | Ok(()) => Ok(summary),
        Err(error) => Err(error),
    }
}

pub(super) fn look_at_folder(folder: &Path) -> Result<()> {
    let not_a_survey = |why| Err(FactsError::NotASurvey { folder: folder.to_owned(), why });
    match fs::metadata(folder) {
        Ok(found) if found.is_dir() => {}
        Ok(_) => return not_a_survey(NotASurvey::AFile),
        Err(error) if is_absent(&error) => return not_a_survey(NotASurvey::Missing),
        Err(error) => return Err(fault::of_system(folder, &error)),
    }
    // SQLite opens what lies beside its database, and waits for ever for a pipe.
    let beside = ["-wal", "-shm", "-journal"].map(|ending| folder.join(format!("{DATABASE}{ending}")));
    if beside.iter().any(|path| fs::metadata(path).is_ok_and(|found| !found.is_file())) {
        return not_a_survey(NotASurvey::NotSqlite);
    }
    match fs::metadata(folder.join(DATABASE)) {
        Ok(found) if found.is_file() && found.len() > 0 => Ok(()),
        Ok(_) => not_a_survey(NotASurvey::NotSqlite),
        // A repair that was cut off has one more step to go.
        Err(error) if is_absent(&error) && folder.join(REBUILT).is_file() => Ok(()),
        Err(error) if is_absent(&error) => not_a_survey(NotASurvey::NoDatabase),
        Err(error) => Err(fault::of_system(folder, &error)),
    }
}

fn is_absent(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::NotADirectory)
}

fn length(path: &Path) -> Option<u64> {
    fs::metadata(path).ok().map(|found| found.len())
}

/// The layout of a database, if it is a survey's and not newer than this release.
pub(super) fn layout_of(folder: &Path, connection: &Connection) -> Result<u32> {
    let broken = |error| fault::of_sqlite(folder, error);
    if schema::application_id(connection).map_err(broken)? != schema::APPLICATION_ID {
        let why = NotASurvey::OtherProgram;
        return Err(FactsError::NotASurvey { folder: folder.to_owned(), why });
    }
    match schema::version(connection).map_err(broken)? {
        found if found > schema::NEWEST => {
            Err(FactsError::Newer { folder: folder.to_owned(), found, known: schema::NEWEST })
        }
        found => Ok(found),
    }
}

/// Whether somebody's log lies beside a database.
pub(super) fn has_log(database: &Path) -> bool {
    let mut log = database.to_owned().into_os_string();
    log.push("-wal");
    length(Path::new(&log)).is_some_and(|length| length > 0)
}

/// Opens the database if it is a survey's and not newer than this release.
fn connect(folder: &Path, log_at_hand: bool) -> Result<Connection> {
    let broken = |error| fault::of_sqlite(folder, error);
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(folder.join(DATABASE), flags).map_err(broken)?;
    // If we refuse, closing must not move somebody's log into their file.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, log_at_hand).map_err(broken)?;
    pragma::set(&connection).map_err(broken)?;
    layout_of(folder, &connection)?;
    if connection.is_readonly(MAIN_DB).map_err(broken)? {
        let reason = format!("{DATABASE} may only be read");
        let why = SystemFault::NotAllowed;
        return Err(FactsError::Inaccessible { folder: folder.to_owned(), why, reason });
    }
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false).map_err(broken)?;
    pragma::set_journal(&connection).map_err(broken)?;
    Ok(connection)
}

/// SQLite's own check of the file's structure.
fn check(folder: &Path, connection: &Connection) -> Result<()> {
    let report = connection
        .prepare("PRAGMA quick_check(5)")
        .and_then(|mut statement| statement.query_map((), |row| row.get(0))?.collect())
        .map(|lines: Vec<String>| lines.join("; "))
        .map_err(|error| fault::of_sqlite(folder, error))?;
    if report == "ok" { Ok(()) } else { Err(fault::damaged(folder, &report)) }
}

/// Refuses a file that ends within a page: SQLite notices missing pages, but reads the rest of a cut one as zeros.
/// Only for a file without a log, because the log may hold that page whole.
fn check_length(folder: &Path, connection: &Connection) -> Result<()> {
    let page: u32 = connection
        .pragma_query_value(None, "page_size", |row| row.get(0))
        .map_err(|error| fault::of_sqlite(folder, error))?;
    match length(&folder.join(DATABASE)) {
        Some(length) if length.is_multiple_of(u64::from(page)) => Ok(()),
        _ => Err(fault::damaged(folder, &"the file ends within a page")),
    }
}

pub(super) fn survey_id(folder: &Path, connection: &Connection) -> Result<SurveyId> {
    meta::get(connection, SURVEY_KEY)
        .map_err(|error| fault::of_sqlite(folder, error))?
        .and_then(|id| id.parse().ok())
        .ok_or_else(|| fault::damaged(folder, &"the survey's id is missing"))
}
