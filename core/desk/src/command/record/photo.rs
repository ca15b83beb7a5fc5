//! `legwork photo`: pictures of parts, listed, assigned, written out.

use std::path::Path;

use facts::fact::{ActId, SubjectId};
use house::document::Assignment;
use house::document::Document;
use house::record::{Photo, PhotoRole, Survey, field};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::names::{Names, one_by_beginning};
use super::photo_json::{PhotoJson, as_json, part_or_run};
use super::teller::{RecordTeller, short};
use super::{open_to_read, open_to_write, photo_add};
use crate::arguments::PhotoCommand;
use crate::command::Context;
use crate::error::{DeskError, WrongThing};
use crate::keep::keep;

/// Runs one of them.
pub fn run(context: &Context, command: PhotoCommand) -> Result<(), DeskError> {
    match command {
        PhotoCommand::Add { survey, pictures, of, role } => {
            photo_add::run(context, &survey, &pictures, of.as_deref(), role.map(PhotoRole::from))
        }
        PhotoCommand::List { survey, thing, unassigned } => {
            list(context, &survey, thing.as_deref(), unassigned)
        }
        PhotoCommand::Assign { survey, photos, of, nothing: _, role } => {
            assign(context, &survey, &photos, of.as_deref(), role.map(PhotoRole::from))
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
        let row =
            |(photo, json): (&&Photo, &PhotoJson)| (short(photo.id), told(context, &teller, photo, json));
        page.rows(2, &photos.iter().zip(&as_json).map(row).collect::<Vec<_>>());
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

fn told(context: &Context, teller: &RecordTeller<'_>, photo: &Photo, json: &PhotoJson) -> String {
    let of = match photo.of {
        Some(of) => teller.thing_phrase(of),
        None => Phrase::new("desk-photo-of-nothing"),
    };
    let role = photo.role.and_then(|role| serde_json::to_value(role).ok());
    let line = match role {
        Some(role) => Phrase::new("desk-photo-with-role")
            .phrase("of", of)
            .text("role", teller.value(field::ROLE, &role)),
        None => Phrase::new("desk-photo").phrase("of", of),
    };
    let line = line
        .text("width", json.width.to_string())
        .text("height", json.height.to_string())
        .text("when", json.written_ms.map(telling::words::date_and_time).unwrap_or_default());
    context.say(&line)
}

#[derive(Serialize)]
struct AssignedJson {
    act: ActId,
    photos: Vec<PhotoJson>,
}

fn assign(
    context: &Context,
    folder: &Path,
    words: &[String],
    of: Option<&str>,
    role: Option<PhotoRole>,
) -> Result<(), DeskError> {
    let mut store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let of = of.map(|word| part_or_run(&names, word)).transpose()?;
    let ids: Vec<SubjectId> =
        words.iter().map(|word| photo(names.survey(), word)).collect::<Result<_, _>>()?;
    let assignments: Vec<Assignment> = ids.iter().map(|&photo| Assignment { photo, of, role }).collect();
    let act = store.assign_photos(&assignments)?;
    let teller = RecordTeller::new(context, &store)?;
    let now = Names::shown(&store)?;
    let photos: Vec<&Photo> = ids.iter().filter_map(|id| now.survey().photos.get(id)).collect();
    let as_json = AssignedJson { act, photos: as_json(&store, &teller, &photos)? };
    context.answer(&as_json, |page| {
        page.paragraph(0, &context.word("desk-photos-assigned"));
        let row =
            |(photo, json): (&&Photo, &PhotoJson)| (short(photo.id), told(context, &teller, photo, json));
        page.rows(2, &photos.iter().zip(&as_json.photos).map(row).collect::<Vec<_>>());
    })
}

/// The photo that a word names.
fn photo(survey: &Survey, word: &str) -> Result<SubjectId, DeskError> {
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
    keep(out, &bytes, replace)?;
    let as_json = WrittenJson { photo, file: out.display().to_string(), bytes: bytes.len() as u64 };
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-photo-written").text("file", &as_json.file);
        page.paragraph(0, &context.say(&done));
    })
}
