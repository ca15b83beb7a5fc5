//! `legwork photo add`: taking pictures in, all of them or none.

use std::io::Read;
use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::SubjectId;
use facts::photo::{MAX_PICTURE_BYTES, Picture, PictureFault};
use facts::store::Store;
use house::document::Document;
use house::record::{Photo, PhotoRole};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::names::Names;
use super::open_to_write;
use super::photo_json::{PhotoJson, as_json, part_or_run};
use super::teller::{RecordTeller, short};
use crate::command::Context;
use crate::error::DeskError;
use crate::progress::Shown;
use crate::stop::Stop;

#[derive(Serialize)]
struct AddedJson {
    photos: Vec<PhotoJson>,
}

/// Takes them in.
pub fn run(
    context: &Context,
    folder: &Path,
    files: &[PathBuf],
    of: Option<&str>,
    role: Option<PhotoRole>,
) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let mut store = open_to_write(folder)?;
    let of = match of {
        Some(word) => Some(part_or_run(&Names::shown(&store)?, word)?),
        None => None,
    };
    check(context, &stop, files)?;
    let added = add(context, &stop, &mut store, files, of, role)?;
    let teller = RecordTeller::new(context, &store)?;
    let names = Names::shown(&store)?;
    let photos: Vec<&Photo> = added.iter().filter_map(|id| names.survey().photos.get(id)).collect();
    let as_json = AddedJson { photos: as_json(&store, &teller, &photos)? };
    context.answer(&as_json, |page| {
        let done = Phrase::new("desk-photos-added").with("count", Arg::Count(added.len() as u64));
        page.paragraph(0, &context.say(&done));
        let row = |(file, id): (&PathBuf, &SubjectId)| (short(*id), file.display().to_string());
        page.rows(2, &files.iter().zip(&added).map(row).collect::<Vec<_>>());
    })
}

/// Looks at every picture before the first one is taken in.
fn check(context: &Context, stop: &Stop, files: &[PathBuf]) -> Result<(), DeskError> {
    let mut shown = Shown::new(stop, context.word("desk-doing-check-photos"));
    for (done, file) in files.iter().enumerate() {
        shown.show(done as u64, files.len() as u64);
        if stop.is_asked() {
            return Err(DeskError::Stopped);
        }
        let bytes = read(file)?;
        let looked = Picture::clean(&bytes).and_then(|picture| {
            // Decodes the pixels.
            picture.thumbnail().map(drop)
        });
        looked.map_err(|fault| DeskError::Picture { file: file.clone(), fault })?;
    }
    Ok(())
}

fn add(
    context: &Context,
    stop: &Stop,
    store: &mut Store,
    files: &[PathBuf],
    of: Option<SubjectId>,
    role: Option<PhotoRole>,
) -> Result<Vec<SubjectId>, DeskError> {
    let mut shown = Shown::new(stop, context.word("desk-doing-add-photos"));
    let mut added = Vec::new();
    for file in files {
        shown.show(added.len() as u64, files.len() as u64);
        let mut one = || -> Result<SubjectId, DeskError> {
            if stop.is_asked() {
                return Err(DeskError::Stopped);
            }
            store.add_photo(&read(file)?, of, role).map_err(|error| match error {
                FactsError::Picture(fault) => DeskError::Picture { file: file.clone(), fault },
                other => other.into(),
            })
        };
        match one() {
            Ok(photo) => added.push(photo),
            Err(why) if added.is_empty() => return Err(why),
            Err(why) => {
                let (done, of) = (added.len(), files.len());
                return Err(DeskError::PicturesPartly { done, of, why: Box::new(why) });
            }
        }
    }
    Ok(added)
}

/// Reads a picture, but no more of it than is taken.
fn read(file: &Path) -> Result<Vec<u8>, DeskError> {
    let cannot = |source| DeskError::Read { path: file.to_owned(), source };
    let mut bytes = Vec::new();
    let most = MAX_PICTURE_BYTES as u64;
    std::fs::File::open(file).map_err(cannot)?.take(most + 1).read_to_end(&mut bytes).map_err(cannot)?;
    if bytes.len() > MAX_PICTURE_BYTES {
        let fault = PictureFault::TooLong { limit: MAX_PICTURE_BYTES };
        return Err(DeskError::Picture { file: file.to_owned(), fault });
    }
    Ok(bytes)
}
