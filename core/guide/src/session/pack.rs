//! Packing the open survey into one file for the next person.

use std::path::{Path, PathBuf};

use advice::worklist::Options;
use facts::error::FactsError;
use facts::fact::Ledger;
use facts::file::{PackOptions, Packed};
use facts::store::Store;
use facts::written_kind::WrittenKind;
use house::record::Survey;
use phrase::{Arg, Phrase};
use telling::report::report_page_with;
use telling::words::{Figures, Language};

use super::Session;
use super::sent_work::{After, WorkKind};
use crate::error::{GuideError, Result};
use crate::kept::Beside;
use crate::place::Move;

/// What people call a file. Where it lies is told by the shell, which asked for it.
pub(crate) fn name_of(file: &Path) -> String {
    file.file_name().unwrap_or_default().to_string_lossy().into_owned()
}

pub(crate) fn is_there(file: &Path) -> bool {
    file.symlink_metadata().is_ok()
}

/// Sends the long work that packs the open survey. `then` is done in the session once the file is there.
pub(crate) fn pack(
    session: &mut Session,
    options: PackOptions,
    file: PathBuf,
    then: fn(&mut Session) -> Result<()>,
) -> Result<()> {
    WrittenKind::Packed.refuse_unfit(&file)?;
    if !options.replace && is_there(&file) {
        return Err(FactsError::FileThere { file }.into());
    }
    let open = session.open_survey()?;
    let said = open.store.ledger().len();
    let has_written = open.store.ledger().facts().any(|fact| fact.by() == open.store.author());
    if has_written {
        open.introduce()?;
    }
    if open.store.ledger().len() != said {
        open.read()?;
    }
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    session.send(WorkKind::Pack, move |work| {
        let mut store = Store::open(&folder, author)?;
        // Units and words are the same whatever this device has, so that the same facts give the same bytes.
        let words = Language::english(Figures::default());
        let report = |survey: &Survey, ledger: &Ledger| {
            let list = |survey: &Survey| {
                Beside::of(Some(&folder), survey, Options::default()).all(&mut |_| !work.is_stopped())
            };
            report_page_with(survey, ledger, &words, &|| !work.is_stopped(), &list).map_err(GuideError::from)
        };
        let packed = house::document::pack(&mut store, &options, &report, &file, &mut work.watch_file())?;
        Ok(After::new(move |session| {
            // Packing looks what others wrote meanwhile.
            session.open_survey()?.refresh()?;
            tell(session, &file, &packed);
            then(session)?;
            Ok(Move::Stay)
        }))
    });
    Ok(())
}

fn tell(session: &mut Session, file: &Path, packed: &Packed) {
    let done = Phrase::new("share-packed")
        .text("file", name_of(file))
        .with("facts", Arg::Count(packed.facts as u64))
        .with("photos", Arg::Count(packed.photos as u64))
        .phrase("size", size(packed.bytes));
    session.tell_done(done);
    if !packed.lost_photos.is_empty() {
        let lost = Arg::Count(packed.lost_photos.len() as u64);
        session.tell(Phrase::new("photo-missing").with("count", lost));
    }
}

/// A file's length for people, in powers of ten.
fn size(bytes: u64) -> Phrase {
    let (id, size) = match bytes {
        0..1_000_000 => ("share-size-kb", format!("{:.0}", (bytes as f64 / 1e3).max(1.0))),
        1_000_000..1_000_000_000 => ("share-size-mb", format!("{:.1}", bytes as f64 / 1e6)),
        _ => ("share-size-gb", format!("{:.2}", bytes as f64 / 1e9)),
    };
    Phrase::new(id).text("size", size)
}
