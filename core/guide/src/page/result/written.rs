//! Writing the report to a place that the shell gives.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use facts::file::LeftOut;
use facts::photo::Crop;
use facts::store::Store;
use facts::whole_file::{self, Existing, Readers};
use facts::written_kind::WrittenKind;
use phrase::{Arg, Phrase};
use telling::report::{Extent, PICTURE_SIDE, Provenance, html_weighed, one_page};
use telling::words::error::InWords;

use crate::error::{GuideError, Result, Trouble};
use crate::place::Move;
use crate::session::{After, Session, Standing, WorkKind, name_of};

/// Sends the long work that writes the report, if what it tells is worked out; else says so and has it worked out. The file
/// must not be there yet, unless it is to be replaced and is a report; nothing is left if it cannot be written. `then` is done in the session once it is there.
pub(super) fn report(
    session: &mut Session,
    (out, extent): (&BTreeSet<LeftOut>, Extent),
    file: PathBuf,
    replace: bool,
    then: fn(&mut Session) -> Result<()>,
) -> Result<()> {
    WrittenKind::Report.refuse_unfit(&file)?;
    let open = session.open_survey()?;
    let worked = match open.standing() {
        Standing::Ready(worked) => Arc::clone(worked),
        Standing::Failed(error) => {
            let failed = Phrase::new("work-failed").phrase("what", error.phrase());
            session.tell(failed);
            return Ok(());
        }
        Standing::Running(_) => {
            waits(session);
            return Ok(());
        }
        Standing::Stopped | Standing::NotBegun => {
            session.begin_long_work();
            waits(session);
            return Ok(());
        }
    };
    let mut survey = open.survey.clone();
    let mut provenance = Provenance::of(&survey, open.store.ledger())?;
    if out.contains(&LeftOut::Owner) {
        (survey.name, survey.place) = (None, None);
        provenance.authors.clear();
    }
    if out.contains(&LeftOut::Notes) {
        survey.notes.clear();
    }
    if out.contains(&LeftOut::Places) {
        survey.parts.values_mut().for_each(|part| part.place = None);
    }
    if out.contains(&LeftOut::PhotoRecords) {
        survey.photos.clear();
    }
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    let with_photos = extent == Extent::Whole && !out.contains(&LeftOut::Photos);
    let language = session.shared_language();
    let photos = if with_photos { survey.photos.len() as u64 } else { 0 };
    let existing = if replace { Existing::IsReplaced } else { Existing::Stays };
    session.send(WorkKind::Report, move |work| {
        if !work.goes_on(0.0) {
            return Err(Trouble::Stopped.into());
        }
        if with_photos {
            // Photos are read beside the screen: there may be many.
            let store = Store::open(&folder, author)?;
            let picture = |photo| store.photo_crop(photo, Crop::whole(PICTURE_SIDE)).ok();
            provenance = provenance
                .with_pictures(&survey, |photo| if work.goes_on(0.0) { picture(photo) } else { None });
        }
        let page = match extent {
            Extent::Whole => html_weighed(&survey, (&worked.list, &worked.stakes), provenance, &language),
            Extent::OnePage => one_page(&survey, &worked.list, provenance, &language),
        };
        if !work.goes_on(TOLD) {
            return Err(Trouble::Stopped.into());
        }
        let written = whole_file::write(&file, page.as_bytes(), existing, Readers::Usual);
        Ok(After::new(move |session| {
            written.map_err(|error| GuideError::of_file(&file, &error))?;
            let id = match extent {
                Extent::Whole => "handover-report-written",
                Extent::OnePage => "handover-one-page-written",
            };
            let done = Phrase::new(id).text("file", name_of(&file));
            session.tell_done(done.with("photos", Arg::Count(photos)));
            then(session)?;
            Ok(Move::Stay)
        }))
    });
    Ok(())
}

/// Which share is done once the report is told and has only to be written.
const TOLD: f64 = 0.9;

/// Says that what the report tells is still being worked out; nothing is written.
fn waits(session: &mut Session) {
    session.tell(Phrase::new("handover-report-waits"));
}
