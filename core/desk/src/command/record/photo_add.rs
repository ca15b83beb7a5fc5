//! `legwork photo add`: taking pictures in, all of them or none.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::SubjectId;
use facts::photo::Picture;
use facts::store::Store;
use house::document::{Document, PhotoSaid};
use house::record::Photo;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::names::Names;
use super::open_to_write;
use super::photo::Showing;
use super::photo_json::{PhotoJson, as_json, part_or_run};
use super::teller::{RecordTeller, short};
use crate::command::context::Context;
use crate::error::DeskError;
use crate::given::{self, Given};
use crate::progress::Shown;
use crate::stop::Stop;

#[derive(Serialize)]
struct AddedJson {
    photos: Vec<PhotoJson>,
    already: Vec<AlreadyJson>,
}

/// A picture that was not taken in, since it is there.
#[derive(Serialize)]
struct AlreadyJson {
    file: String,
    photo: SubjectId,
}

/// A picture to take in.
struct ToTake {
    file: PathBuf,
    /// Set where the picture is there already: in the survey, or as a file given before.
    same_as: Option<SameAs>,
}

/// What a picture is the same as.
#[derive(Clone, Copy)]
enum SameAs {
    /// A photo that was there before.
    Photo(SubjectId),
    /// The picture of this place among those given.
    Given(usize),
}

/// Takes them in.
pub fn run(
    context: &Context,
    folder: &Path,
    words: &[PathBuf],
    again: bool,
    showing: Showing<'_>,
) -> Result<(), DeskError> {
    let stop = Stop::listen()?;
    let files = files_of(words)?;
    let mut store = open_to_write(folder)?;
    let names = Names::shown(&store)?;
    let of = showing.of.map(|word| part_or_run(&names, word)).transpose()?;
    let pictures = check(context, &stop, &names, files)?;
    let said = PhotoSaid { of, role: showing.role, file_name: None };
    let wanted = |picture: &&ToTake| again || picture.same_as.is_none();
    let to_add: Vec<&Path> = pictures.iter().filter(wanted).map(|picture| picture.file.as_path()).collect();
    let added = add(context, &stop, &mut store, &to_add, said)?;
    let teller = RecordTeller::new(context, &store)?;
    let names = Names::shown(&store)?;
    let photos: Vec<&Photo> = added.iter().filter_map(|id| names.survey().photos.get(id)).collect();
    let already = if again { Vec::new() } else { already(&pictures, &added) };
    let as_json = AddedJson { photos: as_json(&store, &teller, &photos)?, already };
    context.answer(&as_json, |page| {
        if added.is_empty() {
            page.paragraph(0, &context.word("desk-photos-added-none"));
        } else {
            let done = Phrase::new("desk-photos-added").with("count", Arg::Count(added.len() as u64));
            page.paragraph(0, &context.say(&done));
        }
        let row = |(file, id): (&&Path, &SubjectId)| (short(*id), file.display().to_string());
        page.rows(2, &to_add.iter().zip(&added).map(row).collect::<Vec<_>>());
        if as_json.already.is_empty() {
            return;
        }
        page.gap();
        let count = Arg::Count(as_json.already.len() as u64);
        page.paragraph(0, &context.say(&Phrase::new("desk-photos-already").with("count", count)));
        for one in &as_json.already {
            let of = names.survey().photos.get(&one.photo).and_then(|photo| photo.of);
            let shows = of.map_or_else(|| Phrase::new("desk-photo-of-nothing"), |of| teller.thing_phrase(of));
            let told = Phrase::new("desk-photo-already").text("file", &one.file);
            let told = told.text("photo", short(one.photo)).phrase("shows", shows);
            page.item(2, &context.say(&told));
        }
    })
}

/// The files that were given, in the order given; what stands for several is each of them.
fn files_of(words: &[PathBuf]) -> Result<Vec<PathBuf>, DeskError> {
    let mut files = Vec::new();
    for word in words {
        let given = given::files(word, given::PICTURES)
            .map_err(|source| DeskError::Read { path: word.to_owned(), source })?;
        match given {
            Given::Files(found) => files.extend(found),
            Given::Nothing => return Err(DeskError::NoPictures { path: word.to_owned() }),
        }
    }
    Ok(files)
}

/// Looks at every picture before the first one is taken in.
fn check(
    context: &Context,
    stop: &Stop,
    names: &Names,
    files: Vec<PathBuf>,
) -> Result<Vec<ToTake>, DeskError> {
    let mut shown = Shown::new(stop, &context.language, "desk-doing-check-photos");
    let mut given: BTreeMap<[u8; 32], usize> = BTreeMap::new();
    let (mut pictures, count) = (Vec::new(), files.len());
    for (place, file) in files.into_iter().enumerate() {
        shown.show(place as u64, count as u64);
        if stop.is_asked() {
            return Err(DeskError::Stopped);
        }
        let picture = read(&file)?;
        // Decodes the pixels.
        if let Err(fault) = picture.thumbnail() {
            return Err(DeskError::Picture { file, fault });
        }
        let there = names.survey().photo_with(&picture.image()).map(|photo| SameAs::Photo(photo.id));
        let same_as = there.or_else(|| given.get(picture.sha256()).copied().map(SameAs::Given));
        given.entry(*picture.sha256()).or_insert(place);
        pictures.push(ToTake { file, same_as });
    }
    Ok(pictures)
}

/// The pictures that are there already, each with its photo.
fn already(pictures: &[ToTake], added: &[SubjectId]) -> Vec<AlreadyJson> {
    let photo_of = |place: usize| {
        let is_new = |picture: &&ToTake| picture.same_as.is_none();
        let before = pictures.iter().take(place).filter(is_new).count();
        added.get(before).copied()
    };
    let same = pictures.iter().filter_map(|picture| {
        let photo = match picture.same_as? {
            SameAs::Photo(photo) => photo,
            SameAs::Given(place) => photo_of(place)?,
        };
        Some(AlreadyJson { file: picture.file.display().to_string(), photo })
    });
    same.collect()
}

fn add(
    context: &Context,
    stop: &Stop,
    store: &mut Store,
    files: &[&Path],
    said: PhotoSaid<'_>,
) -> Result<Vec<SubjectId>, DeskError> {
    let mut shown = Shown::new(stop, &context.language, "desk-doing-add-photos");
    let mut added = Vec::new();
    for file in files {
        shown.show(added.len() as u64, files.len() as u64);
        let mut one = || -> Result<SubjectId, DeskError> {
            if stop.is_asked() {
                return Err(DeskError::Stopped);
            }
            let name = file.file_name().map(|name| name.to_string_lossy());
            let said = PhotoSaid { file_name: name.as_deref(), ..said };
            store.add_picture(&read(file)?, said).map_err(|error| match error {
                FactsError::Picture(fault) => DeskError::Picture { file: (*file).to_owned(), fault },
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

/// Reads a picture and cleans it; no more of it is read than is taken.
fn read(file: &Path) -> Result<Picture, DeskError> {
    let cannot = |source| DeskError::Read { path: file.to_owned(), source };
    Picture::read(file).map_err(cannot)?.map_err(|fault| DeskError::Picture { file: file.to_owned(), fault })
}
