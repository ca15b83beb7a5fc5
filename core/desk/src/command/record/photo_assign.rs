//! `legwork photo assign`: what photos show, of several at once or by a list.

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;

use clap::ValueEnum;
use facts::fact::{ActId, SubjectId};
use facts::store::Store;
use house::document::{Assignment, Document, RoleSaid};
use house::record::{Photo, PhotoRole};
use phrase::Phrase;
use serde::Serialize;

use super::names::Names;
use super::open_to_write;
use super::photo::{Showing, photo, show};
use super::photo_json::{PhotoJson, as_json, part_or_run};
use super::teller::RecordTeller;
use crate::arguments::Role;
use crate::command::context::Context;
use crate::error::{DeskError, ListFault};

/// The word for no part in a list.
const NOTHING: &str = "-";
/// The longest list that is read, bytes: more than all photos of a survey fill.
const MOST_BYTES: u64 = 4 * 1024 * 1024;

#[derive(Serialize)]
struct AssignedJson {
    act: ActId,
    photos: Vec<PhotoJson>,
    left_out: Vec<LeftOutJson>,
}

/// A line of a list that names no photo of the survey.
#[derive(Serialize)]
struct LeftOutJson {
    line: u64,
    word: String,
}

/// Says of all these photos the same.
pub fn run(
    context: &Context,
    folder: &Path,
    words: &[String],
    showing: Showing<'_>,
) -> Result<(), DeskError> {
    let store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let of = showing.of.map(|word| part_or_run(&names, word)).transpose()?;
    let role = role_said(of, showing.role);
    let one = |word: &String| Ok(Assignment { photo: photo(names.survey(), word)?, of, role });
    let assignments: Vec<Assignment> = words.iter().map(one).collect::<Result<_, DeskError>>()?;
    write(context, store, &assignments, Vec::new())
}

/// Says of each photo what its line of a list says.
pub fn by_list(context: &Context, folder: &Path, list: &Path) -> Result<(), DeskError> {
    let text = read(list)?;
    let store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let fault = |faults| DeskError::InList { list: list.to_owned(), faults };
    let mut lines: BTreeMap<SubjectId, u64> = BTreeMap::new();
    let (mut assignments, mut faults, mut left_out) = (Vec::new(), Vec::new(), Vec::new());
    for (line, words) in lines_of(&text).map_err(|line| fault(vec![(line, ListFault::NotText)]))? {
        let word = words.first().cloned().unwrap_or_default();
        match assignment(&names, &words) {
            Ok(None) => {}
            Ok(Some(read)) => match lines.insert(read.photo, line) {
                Some(first) => faults.push((line, ListFault::Twice { word, first })),
                None => assignments.push(read),
            },
            // A list written from the camera's folder names the pictures, too, that were there already and not taken in again.
            Err(ListFault::NoPhoto { word, .. }) => left_out.push(LeftOutJson { line, word }),
            Err(why) => faults.push((line, why)),
        }
    }
    if assignments.is_empty() || !faults.is_empty() {
        let no_photo = left_out.into_iter().map(|out| (out.line, ListFault::NoPhoto { word: out.word }));
        faults.extend(no_photo);
        faults.sort_by_key(|(line, _)| *line);
        if !faults.is_empty() {
            return Err(fault(faults));
        }
        return Err(DeskError::EmptyList { list: list.to_owned() });
    }
    write(context, store, &assignments, left_out)
}

/// What a photo is taken off, of that it shows nothing either.
fn role_said(of: Option<SubjectId>, role: Option<PhotoRole>) -> RoleSaid {
    match (role, of) {
        (Some(role), _) => RoleSaid::Is(role),
        (None, None) => RoleSaid::Gone,
        (None, Some(_)) => RoleSaid::Stays,
    }
}

fn read(list: &Path) -> Result<Vec<u8>, DeskError> {
    let cannot = |source| DeskError::Read { path: list.to_owned(), source };
    let mut text = Vec::new();
    if list == Path::new("-") {
        std::io::stdin().lock().take(MOST_BYTES).read_to_end(&mut text).map_err(cannot)?;
    } else {
        let file = std::fs::File::open(list).map_err(cannot)?;
        file.take(MOST_BYTES).read_to_end(&mut text).map_err(cannot)?;
    }
    Ok(text)
}

/// The words of each line, with its number from 1: parted by commas where it has one (RFC 4180), else by blanks. Fails with
/// the number of a line that is no text.
fn lines_of(text: &[u8]) -> Result<Vec<(u64, Vec<String>)>, u64> {
    let text = text.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(text);
    let mut lines = Vec::new();
    for (number, line) in (1..).zip(text.split(|&byte| byte == b'\n')) {
        let line = std::str::from_utf8(line).map_err(|_| number)?.trim().replace('\t', " ");
        let delimiter = if line.contains(',') { b',' } else { b' ' };
        let mut reader = csv::ReaderBuilder::new();
        reader.has_headers(false).flexible(true).trim(csv::Trim::All).delimiter(delimiter);
        let record = reader.from_reader(line.as_bytes()).into_records().next();
        let words: Vec<String> = match record {
            Some(Ok(record)) => record.iter().map(str::to_owned).collect(),
            _ => Vec::new(),
        };
        // Several blanks part words as one does; a comma with nothing behind it leaves something out.
        let words: Vec<String> = if delimiter == b' ' {
            words.into_iter().filter(|word| !word.is_empty()).collect()
        } else {
            words
        };
        lines.push((number, words));
    }
    Ok(lines)
}

/// What a line says; nothing of an empty line, a remark, or the line with the names of the columns.
fn assignment(names: &Names, words: &[String]) -> Result<Option<Assignment>, ListFault> {
    // What begins with # is a remark, also behind what a line says.
    let said = words.iter().position(|word| word.starts_with('#')).unwrap_or(words.len());
    let words = words.get(..said).unwrap_or(words);
    let (word, thing, role) = match words {
        [] => return Ok(None),
        [first, ..] if first.is_empty() && words.iter().all(String::is_empty) => return Ok(None),
        [first, second, ..]
            if first.eq_ignore_ascii_case("photo") && second.eq_ignore_ascii_case("thing") =>
        {
            return Ok(None);
        }
        [photo, thing] => (photo, thing, ""),
        [photo, thing, role] => (photo, thing, role.as_str()),
        other => return Err(ListFault::Words { found: other.len() }),
    };
    let role = match role {
        "" => None,
        word => {
            let role = Role::from_str(word, true).map_err(|_| ListFault::Role { word: word.to_owned() })?;
            Some(PhotoRole::from(role))
        }
    };
    let of = match thing.as_str() {
        "" | NOTHING => None,
        thing => Some(part_or_run(names, thing).map_err(ListFault::Thing)?),
    };
    let photo = photo(names.survey(), word).map_err(|error| match error {
        DeskError::WrongThing { word, .. } => ListFault::NoPhoto { word },
        other => ListFault::Thing(other),
    })?;
    Ok(Some(Assignment { photo, of, role: role_said(of, role) }))
}

fn write(
    context: &Context,
    mut store: Store,
    assignments: &[Assignment],
    left_out: Vec<LeftOutJson>,
) -> Result<(), DeskError> {
    let act = store.assign_photos(assignments)?;
    let teller = RecordTeller::new(context, &store)?;
    let now = Names::shown(&store)?;
    let shown = assignments.iter().filter_map(|said| now.survey().photos.get(&said.photo));
    let photos: Vec<&Photo> = shown.collect();
    let as_json = AssignedJson { act, photos: as_json(&store, &teller, &photos)?, left_out };
    context.answer(&as_json, |page| {
        page.paragraph(0, &context.word("desk-photos-assigned"));
        show(context, &teller, &photos, &as_json.photos, page);
        for out in &as_json.left_out {
            let told = Phrase::new("desk-photos-left-out").text("line", out.line.to_string());
            page.paragraph(0, &context.say(&told.text("word", &out.word)));
        }
    })
}
