//! `legwork report`: one HTML file with everything.

use std::io::{self, Write};
use std::path::Path;

use serde::Serialize;
use survey::record::Survey;
use survey::words::Phrase;
use survey::worklist::{self, WorkList, worklist};

use super::Context;
use crate::error::{Advice, DeskError};

#[derive(Serialize)]
struct ReportJson {
    report: String,
}

/// Writes the report.
pub fn run(context: &Context, survey: &Survey, out: &Path, replace: bool) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let list = worklist(survey, &worklist::Options::default())?;
    write(context, survey, &list, out, replace)?;
    let report = out.display().to_string();
    let made = Phrase::new("desk-report-made").text("report", &report);
    context.answer(&ReportJson { report }, |page| page.paragraph(0, &context.say(&made)))
}

/// Writes the report of a house whose work list is known.
///
/// # Errors
/// [`DeskError::Exists`] or [`DeskError::Write`]; nothing is changed then.
pub fn write(
    context: &Context,
    survey: &Survey,
    list: &WorkList,
    out: &Path,
    replace: bool,
) -> Result<(), DeskError> {
    refuse_if_there(out, replace)?;
    let html = survey::report::html(survey, list, &context.language);
    keep(out, html.as_bytes(), replace).map_err(|source| match source.kind() {
        io::ErrorKind::AlreadyExists => DeskError::Exists { path: out.to_owned(), advice: Advice::Replace },
        _ => DeskError::Write { path: out.to_owned(), source },
    })
}

fn refuse_if_there(out: &Path, replace: bool) -> Result<(), DeskError> {
    let there = out.symlink_metadata().is_ok();
    if there && !replace {
        return Err(DeskError::Exists { path: out.to_owned(), advice: Advice::Replace });
    }
    Ok(())
}

/// The file appears under its name only when all of it is on the disk.
fn keep(out: &Path, bytes: &[u8], replace: bool) -> io::Result<()> {
    let folder = out.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    builder.prefix(".legwork-").suffix(".html");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // As for any new file, less what the user's umask takes away.
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    let mut new = builder.tempfile_in(folder)?;
    new.write_all(bytes)?;
    new.as_file().sync_all()?;
    if replace {
        new.persist(out)?
    } else {
        new.persist_noclobber(out)?
    };
    Ok(())
}
