//! Writing the report to a place that the shell gives.

use std::collections::BTreeSet;
use std::io;
use std::path::Path;

use facts::file::LeftOut;
use facts::whole_file::{self, Existing, Readers};
use phrase::Phrase;
use telling::report::html;
use telling::words::error::InWords;

use crate::error::{GuideError, Result};
use crate::session::{Session, Standing};

/// Writes the report, if what it tells is worked out; else says so and has it worked out. The file must not be there yet;
/// nothing is left if it cannot be written. Returns whether it was written.
pub(super) fn report(session: &mut Session, out: &BTreeSet<LeftOut>, file: &str) -> Result<bool> {
    let (open, language) = session.open_and_language()?;
    let list = match open.standing() {
        Standing::Ready(worked) => &worked.list,
        Standing::Failed(error) => {
            let failed = Phrase::new("work-failed").phrase("what", error.phrase());
            session.tell(failed);
            return Ok(false);
        }
        Standing::Running(_) => return Ok(waits(session)),
        Standing::Stopped | Standing::NotBegun => {
            session.begin_long_work();
            return Ok(waits(session));
        }
    };
    let mut survey = open.survey.clone();
    if out.contains(&LeftOut::Owner) {
        (survey.name, survey.place) = (None, None);
    }
    if out.contains(&LeftOut::Notes) {
        survey.notes.clear();
    }
    let page = html(&survey, list, language);
    let failed = |error: io::Error| GuideError::of_file(Path::new(file), &error);
    whole_file::write(Path::new(file), page.as_bytes(), Existing::Stays, Readers::Usual).map_err(failed)?;
    Ok(true)
}

/// Says that what the report tells is still being worked out; nothing is written.
fn waits(session: &mut Session) -> bool {
    session.tell(Phrase::new("handover-report-waits"));
    false
}
