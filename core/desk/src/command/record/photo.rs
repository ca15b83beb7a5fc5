//! `legwork photo`: pictures of parts, listed, assigned, written out.

use std::path::Path;

use facts::fact::SubjectId;
use facts::written_kind::WrittenKind;
use house::naming;
use house::record::{Photo, PhotoRole, Survey, field};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::names::{Names, one_by_beginning};
use super::photo_json::{PhotoJson, as_json, part_or_run};
use super::teller::{RecordTeller, short};
use super::{open_to_read, photo_add, photo_assign};
use crate::arguments::PhotoCommand;
use crate::command::context::Context;
use crate::error::{DeskError, WrongThing};
use crate::keep::{keep, refuse_if_there};
use crate::printed::Page;

/// How many photos are named where a word means several.
const MOST_NAMED: usize = 5;

/// What pictures are said to show, as it was typed.
#[derive(Clone, Copy)]
pub struct Showing<'a> {
    /// The word for the part or run.
    pub of: Option<&'a str>,
    /// What of it.
    pub role: Option<PhotoRole>,
}

/// Runs one of them.
pub fn run(context: &Context, command: PhotoCommand) -> Result<(), DeskError> {
    match command {
        PhotoCommand::Add { survey, pictures, again, of, role } => {
            let showing = Showing { of: of.as_deref(), role: role.map(PhotoRole::from) };
            photo_add::run(context, &survey, &pictures, again, showing)
        }
        PhotoCommand::List { survey, thing, unassigned } => {
            list(context, &survey, thing.as_deref(), unassigned)
        }
        PhotoCommand::Assign { survey, list: Some(list), .. } => {
            photo_assign::by_list(context, &survey, &list)
        }
        PhotoCommand::Assign { survey, photos, of, nothing: _, role, list: None } => {
            let showing = Showing { of: of.as_deref(), role: role.map(PhotoRole::from) };
            photo_assign::run(context, &survey, &photos, showing)
        }
        PhotoCommand::Write { survey, photo, out, replace } => write(context, &survey, &photo, &out, replace),
    }
}

fn list(context: &Context, folder: &Path, thing: Option<&str>, unassigned: bool) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let names = Names::shown(&store)?;
    let of = thing.map(|word| part_or_run(&names, word)).transpose()?;
    let wanted = |photo: &&Photo| match of {
        Some(_) => photo.of == of,
        None => !unassigned || photo.of.is_none(),
    };
    let mut photos: Vec<&Photo> = names.survey().photos.values().filter(wanted).collect();
    let intake = |photo: SubjectId| store.ledger().history(photo, field::IMAGE).first().map(|fact| fact.id());
    photos.sort_by_key(|photo| intake(photo.id));
    let teller = RecordTeller::new(context, &store)?;
    let as_json = as_json(&store, &teller, &photos)?;
    context.answer(&as_json, |page| {
        page.heading(&context.word("desk-photos"));
        let count = Phrase::new("desk-photos-count").with("count", Arg::Count(photos.len() as u64));
        page.paragraph(0, &context.say(&count));
        show(context, &teller, &photos, &as_json, page);
        let missing = as_json.iter().filter(|photo| photo.missing).count();
        for (message, count) in [
            ("photo-unassigned", photos.iter().filter(|photo| photo.of.is_none()).count()),
            ("photo-missing", missing),
        ] {
            if count > 0 {
                page.gap();
                let told = Phrase::new(message).with("count", Arg::Count(count as u64));
                page.paragraph(0, &context.say(&told));
            }
        }
    })
}

/// One line for each, and below it the path of its file, whole, to be opened.
pub fn show(
    context: &Context,
    teller: &RecordTeller<'_>,
    photos: &[&Photo],
    as_json: &[PhotoJson],
    page: &mut Page,
) {
    for (photo, json) in photos.iter().zip(as_json) {
        page.rows(2, &[(short(photo.id), told(context, teller, photo, json))]);
        page.whole(&format!("    {}", json.path));
    }
}

fn told(context: &Context, teller: &RecordTeller<'_>, photo: &Photo, json: &PhotoJson) -> String {
    let of = match photo.of {
        Some(of) => teller.thing_phrase(of),
        None => Phrase::new("desk-photo-of-nothing"),
    };
    let role = photo.role.and_then(|role| serde_json::to_value(role).ok());
    let shows = match role {
        Some(role) => Phrase::new("desk-photo-with-role")
            .phrase("of", of)
            .text("role", teller.value(field::ROLE, &role)),
        None => of,
    };
    let of_camera = match (&photo.file_name, photo.taken) {
        (Some(name), Some(taken)) => {
            Phrase::new("desk-photo-named-and-taken").text("name", name).text("taken", taken.to_minute())
        }
        (Some(name), None) => Phrase::new("desk-photo-named").text("name", name),
        (None, Some(taken)) => Phrase::new("desk-photo-taken").text("taken", taken.to_minute()),
        (None, None) => Phrase::new("desk-photo-unnamed"),
    };
    let line = Phrase::new("desk-photo")
        .phrase("shows", shows)
        .phrase("file", of_camera)
        .text("width", json.width.to_string())
        .text("height", json.height.to_string())
        .text("when", json.written_ms.map(telling::words::date_and_time).unwrap_or_default());
    context.say(&line)
}

/// The photo that a word names: an id or its beginning, or what its file was called.
///
/// # Errors
/// [`DeskError::NoSuchThing`], [`DeskError::WrongThing`] or [`DeskError::Ambiguous`].
pub fn photo(survey: &Survey, word: &str) -> Result<SubjectId, DeskError> {
    let lower = word.to_lowercase();
    let called = |photo: &&Photo| photo.file_name.as_ref().is_some_and(|name| name.to_lowercase() == lower);
    let by_name: Vec<SubjectId> = survey.photos.values().filter(called).map(|photo| photo.id).collect();
    match by_name.as_slice() {
        [] => {}
        [only] => return Ok(*only),
        several => {
            let told = |id: &SubjectId| {
                let name = naming::thing(survey, *id);
                Phrase::new("desk-id-named").text("id", id.to_string()).phrase("thing", name)
            };
            let found = several.iter().take(MOST_NAMED).map(told).collect();
            return Err(DeskError::Ambiguous { word: word.to_owned(), count: several.len(), found });
        }
    }
    one_by_beginning(survey.photos.keys().copied(), word).map_err(|error| match error {
        DeskError::NoSuchThing { word, .. } => DeskError::WrongThing { word, what: WrongThing::NotAPhoto },
        other => other,
    })
}

#[derive(Serialize)]
struct WrittenJson {
    photo: SubjectId,
    file: String,
    bytes: u64,
}

fn write(context: &Context, folder: &Path, word: &str, out: &Path, replace: bool) -> Result<(), DeskError> {
    let store = open_to_read(folder)?;
    let names = Names::shown(&store)?;
    let photo = photo(names.survey(), word)?;
    let bytes = store.photo_bytes(photo)?;
    WrittenKind::of_picture(&bytes).refuse_unfit(out)?;
    refuse_if_there(out, replace)?;
    keep(out, &bytes, replace)?;
    let as_json = WrittenJson { photo, file: out.display().to_string(), bytes: bytes.len() as u64 };
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-photo-written").text("file", &as_json.file);
        page.paragraph(0, &context.say(&done));
    })
}
