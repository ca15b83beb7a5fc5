//! A look at a survey without opening it: a few rows, whatever its size.

use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use super::{DATABASE, Summary, fault, open, pragma, schema, summary};
use crate::error::{NotASurvey, Result, SurveyError};
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
    open::look_at_folder(folder)?;
    let broken = |error| fault::of_sqlite(folder, error);
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let mut connection = Connection::open_with_flags(folder.join(DATABASE), flags).map_err(broken)?;
    connection.busy_timeout(pragma::BUSY_TIMEOUT).map_err(broken)?;
    // One transaction, so that all rows are of one state.
    let transaction = connection.transaction().map_err(broken)?;
    if schema::application_id(&transaction).map_err(broken)? != schema::APPLICATION_ID {
        let why = NotASurvey::OtherProgram;
        return Err(SurveyError::NotASurvey { folder: folder.to_owned(), why });
    }
    let found = schema::version(&transaction).map_err(broken)?;
    if found > schema::NEWEST {
        return Err(SurveyError::Newer { folder: folder.to_owned(), found, known: schema::NEWEST });
    }
    let survey = open::survey_id(folder, &transaction)?;
    let kept = if found < 2 { None } else { Summary::read(&transaction).map_err(broken)? };
    let summary = match kept {
        Some(kept) => kept,
        None => summary::peek_layout_1(&transaction, survey).map_err(broken)?,
    };
    Ok(Peek { survey, summary })
}
