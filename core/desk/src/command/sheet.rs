//! `legwork sheet`: a survey from a house written by hand.

use std::io::Read;
use std::path::Path;

use facts::error::FactsError;
use facts::fact::SurveyId;
use phrase::{Arg, Phrase};
use serde::Serialize;

use facts::store::Store;
use house::record::{Survey, fold};

use super::context::Context;
use crate::author;
use crate::error::DeskError;
use crate::printed::Page;
use crate::sheet::{self, Known, MOST_BYTES, Sheet};

/// Makes the survey and tells what it holds.
pub fn run(context: &Context, file: &Path, folder: &Path) -> Result<(), DeskError> {
    let sheet = read(file)?;
    let survey = write(sheet, folder)?;
    let told = Told::of(&survey, folder);
    context.answer(&told, |page| told.page(context, page))
}

/// Reads a sheet from a file.
///
/// # Errors
/// [`DeskError::Read`], [`DeskError::SheetTooLong`], or every mistake in it.
pub fn read(file: &Path) -> Result<Sheet, DeskError> {
    read_onto(file, &Known::default())
}

/// The same for a survey that is there: what that knows need not stand in the sheet.
///
/// # Errors
/// As [`read`].
pub fn read_onto(file: &Path, known: &Known) -> Result<Sheet, DeskError> {
    let cannot = |source| DeskError::Read { path: file.to_owned(), source };
    let mut bytes = Vec::new();
    let opened = std::fs::File::open(file).map_err(cannot)?;
    let long = opened.metadata().map_err(cannot)?.len();
    // One byte more than is taken, so that a file without a length of its own (a pipe) is refused as well.
    opened.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(cannot)?;
    let held = long.max(bytes.len() as u64);
    if held > MOST_BYTES {
        return Err(DeskError::SheetTooLong { file: file.to_owned(), bytes: held, most: MOST_BYTES });
    }
    let beside = file.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    sheet::read_onto(&bytes, Some(beside), known)
        .map_err(|problems| DeskError::Sheet { file: file.to_owned(), problems })
}

/// Writes a sheet into a new survey, which appears under its name only when all is in it.
///
/// # Errors
/// What [`Store`] refuses; nothing is left then.
pub fn write(sheet: Sheet, folder: &Path) -> Result<Survey, DeskError> {
    refuse_if_there(folder)?;
    let author = author::this_computer()?;
    let id = SurveyId::random();
    let edits = sheet.edits(id.subject());
    // It may be 8 MiB, and so may what is made of it.
    drop(sheet);
    let mut survey = None;
    Store::create_with(folder, author, id, |unfinished| {
        let mut store = Store::open(unfinished, author)?;
        store.write(&edits)?;
        drop(edits);
        survey = Some(fold(store.ledger(), id)?);
        Ok(())
    })
    .map_err(|error| of_folder(error, folder))?;
    survey.ok_or(DeskError::Fault)
}

fn refuse_if_there(folder: &Path) -> Result<(), FactsError> {
    match folder.symlink_metadata() {
        Ok(_) => Err(FactsError::AlreadyThere { folder: folder.to_owned() }),
        Err(_) => Ok(()),
    }
}

/// The error as it concerns the folder that the user named, not the one it is being built in.
fn of_folder(error: FactsError, folder: &Path) -> FactsError {
    match error {
        FactsError::NotASurvey { why, .. } => FactsError::NotASurvey { folder: folder.to_owned(), why },
        FactsError::Inaccessible { why, reason, .. } => {
            FactsError::Inaccessible { folder: folder.to_owned(), why, reason }
        }
        FactsError::DiskFull { .. } => FactsError::DiskFull { folder: folder.to_owned() },
        other => other,
    }
}

/// What was made, and what of its labels is doubtful.
#[derive(Serialize)]
struct Told {
    survey: String,
    name: Option<String>,
    parts: usize,
    runs: usize,
    rooms: usize,
    loose: Vec<String>,
    label_doubts: Vec<LabelDoubts>,
}

#[derive(Serialize)]
struct LabelDoubts {
    tag: String,
    doubts: Vec<String>,
}

impl Told {
    fn of(survey: &Survey, folder: &Path) -> Self {
        let tag = |id| survey.parts.get(&id).and_then(|part| part.tag.clone()).unwrap_or_default();
        let mut loose: Vec<_> = survey.wiring.loose().keys().map(|id| tag(*id)).collect();
        loose.sort();
        let mut label_doubts: Vec<_> = survey
            .parts
            .values()
            .filter_map(|part| {
                let doubts = telling::doubts::of_part_in_english(part);
                (!doubts.is_empty()).then(|| LabelDoubts { tag: tag(part.id), doubts })
            })
            .collect();
        label_doubts.sort_by(|a, b| a.tag.cmp(&b.tag));
        Self {
            survey: folder.display().to_string(),
            name: survey.name.clone(),
            parts: survey.parts.len(),
            runs: survey.runs.len(),
            rooms: survey.rooms.len(),
            loose,
            label_doubts,
        }
    }

    fn page(&self, context: &Context, page: &mut Page) {
        let made = Phrase::new("desk-sheet-made")
            .text("survey", &self.survey)
            .with("parts", Arg::Count(self.parts as u64))
            .with("runs", Arg::Count(self.runs as u64))
            .with("rooms", Arg::Count(self.rooms as u64));
        page.paragraph(0, &context.say(&made));
        if !self.loose.is_empty() {
            let tags = self.loose.iter().map(|tag| Arg::Text(tag.clone())).collect();
            page.paragraph(
                0,
                &context.say(&Phrase::new("desk-sheet-loose").with("tags", Arg::Several(tags))),
            );
        }
        for label in &self.label_doubts {
            page.title(&context.say(&Phrase::new("desk-sheet-doubts").text("tag", &label.tag)));
            for doubt in &label.doubts {
                page.item(2, doubt);
            }
        }
        page.gap();
        page.paragraph(0, &context.word("desk-sheet-next"));
        page.paragraph(4, &format!("legwork forecast {}", self.survey));
    }
}
