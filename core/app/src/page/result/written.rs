//! Writing the report and the file to a place that the shell gives.

use std::collections::BTreeSet;
use std::fs::{File, OpenOptions};
use std::io::{self, Write};
use std::path::Path;

use survey::SurveyError;
use survey::fact::FactId;
use survey::file::{LeftOut, PackOptions, pack};
use survey::record::Survey;
use survey::report::html;

use crate::error::{GuideError, Result};
use crate::guide::Guide;
use crate::long_work::{LongWork, Standing};

/// What follows from the survey as it is; waited for, and begun if need be.
fn worked(guide: &mut Guide) -> Result<LongWork> {
    let open = guide.open_survey()?;
    if !matches!(open.standing(), Standing::Ready(_) | Standing::Running(_)) {
        guide.begin_long_work();
    }
    guide.settle_long_work();
    let open = guide.open_survey()?;
    if let Some(work) = open.results.ready(&open.survey, open.revision) {
        return Ok(work.clone());
    }
    Err(match open.standing() {
        Standing::Failed(error) => GuideError::Failed { message: error.to_string() },
        _ => GuideError::Stopped,
    })
}

/// Writes the report. The file must not be there yet; nothing is left if it cannot be written.
pub(super) fn report(guide: &mut Guide, out: &BTreeSet<LeftOut>, file: &str) -> Result<()> {
    let work = worked(guide)?;
    let (open, language) = guide.open_and_language()?;
    let mut survey = open.survey.clone();
    if out.contains(&LeftOut::Owner) {
        (survey.name, survey.place) = (None, None);
    }
    if out.contains(&LeftOut::Notes) {
        survey.notes.clear();
    }
    let list = work.worked().map(|worked| &worked.list).ok_or(GuideError::Stopped)?;
    let page = html(&survey, list, language);
    let path = Path::new(file);
    let failed = |error: io::Error| GuideError::Failed { message: format!("{file}: {error}") };
    let made = OpenOptions::new().write(true).create_new(true).open(path).map_err(failed)?;
    write_whole(made, &page).map_err(|error| {
        // Half a report is none.
        let _ = std::fs::remove_file(path);
        failed(error)
    })
}

fn write_whole(mut file: File, page: &str) -> io::Result<()> {
    file.write_all(page.as_bytes())?;
    file.sync_all()
}

/// Writes the one file for the next person, half done or whole.
pub(super) fn file(guide: &mut Guide, left_out: BTreeSet<LeftOut>, file: &str) -> Result<()> {
    let work = worked(guide)?;
    // The same facts give the same file on every device, whatever its units.
    let language = crate::words::english(survey::words::Figures::default());
    let tell = |survey: &Survey, _: Option<FactId>| {
        let list = work.worked().map(|worked| &worked.list).ok_or(SurveyError::Stopped)?;
        Ok(html(survey, list, &language))
    };
    let open = guide.open_survey()?;
    let options = PackOptions { left_out, replace: false };
    pack(&mut open.store, &options, &tell, Path::new(file), &mut |_| true)?;
    // Packing looks what others wrote meanwhile.
    open.read()
}
