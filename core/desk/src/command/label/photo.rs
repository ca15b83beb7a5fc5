//! `legwork label --photo`: what a label states, read from a photo of it. Nothing is written.

use std::path::{Path, PathBuf};

use facts::photo::{Area, Picture};
use guide::photo_read::PhotoRead;
use label::seen::{JacketLength, NoLength, SeenPlace};
use print::{Model, PrintError};

use super::{photo_json, photo_told};
use crate::command::context::Context;
use crate::command::worked::watched;
use crate::error::DeskError;
use crate::print_model;

/// Two marks give a length, and no more.
const MOST_PHOTOS: usize = 2;

/// A photo that is to be read.
struct ToRead {
    file: PathBuf,
    picture: Picture,
    part: Option<Area>,
}

/// A photo that was read.
pub struct Told {
    /// Its file.
    pub file: PathBuf,
    /// What was read.
    pub read: PhotoRead,
    /// The picture's size, the right way up.
    size: (u32, u32),
}

impl Told {
    /// Where some of it stands in the photo, as `--crop` takes it.
    pub fn area(&self, place: &SeenPlace) -> Option<Area> {
        self.read.piece(place)?.around(self.size)
    }
}

/// Reads one photo, or two that show the marks at both ends of a cable.
pub fn run(context: &Context, photos: &[PathBuf], crops: &[String]) -> Result<(), DeskError> {
    if photos.len() > MOST_PHOTOS {
        return Err(DeskError::PhotosMany { found: photos.len(), most: MOST_PHOTOS });
    }
    if !crops.is_empty() && crops.len() != photos.len() {
        return Err(DeskError::CropsOfPhotos { crops: crops.len(), photos: photos.len() });
    }
    // Whatever can be refused is, before the first is read.
    let areas = crops.iter().map(|crop| area(crop)).collect::<Result<Vec<_>, _>>()?;
    let opened = photos.iter().enumerate().map(|(at, file)| opened(file, areas.get(at).copied()));
    let opened = opened.collect::<Result<Vec<_>, _>>()?;
    let told = watched(context, "desk-doing-label-photo", |watch| read(opened, watch))?;
    let length = length(&told);
    if context.json {
        photo_json::tell(&told, length.as_ref())
    } else {
        photo_told::tell(context, &told, length.as_ref())
    }
}

/// The length between the marks of two photos.
fn length(told: &[Told]) -> Option<Result<JacketLength, NoLength>> {
    match told {
        [near, far] => Some(JacketLength::between([&near.read.suggestion, &far.read.suggestion])),
        _ => None,
    }
}

/// `X,Y,W,H`.
fn area(crop: &str) -> Result<Area, DeskError> {
    let not_read = || DeskError::CropNotRead { given: crop.to_owned() };
    let figures: Vec<u32> = crop
        .split(',')
        .map(|figure| figure.trim().parse().map_err(|_| not_read()))
        .collect::<Result<_, _>>()?;
    match figures[..] {
        [left, top, width, height] if width > 0 && height > 0 => Ok(Area { left, top, width, height }),
        _ => Err(not_read()),
    }
}

fn opened(file: &Path, part: Option<Area>) -> Result<ToRead, DeskError> {
    let file = file.to_owned();
    let picture = match Picture::read(&file) {
        Ok(Ok(picture)) => picture,
        Ok(Err(fault)) => return Err(DeskError::Picture { file, fault }),
        Err(source) => return Err(DeskError::Read { path: file, source }),
    };
    let size = picture.upright_size();
    if part.is_some_and(|part| part.within(size).is_none()) {
        return Err(DeskError::CropOutside { file, size });
    }
    Ok(ToRead { file, picture, part })
}

fn read(photos: Vec<ToRead>, watch: &mut dyn FnMut(f64) -> bool) -> Result<Vec<Told>, DeskError> {
    let folder = print_model::folder();
    let model =
        Model::load(&folder).map_err(|fault| DeskError::PrintModel { folder: folder.clone(), fault })?;
    let count = photos.len() as f64;
    let one = |(at, ToRead { file, picture, part }): (usize, ToRead)| {
        let mut share = |done: f64| watch((at as f64 + done) / count);
        match PhotoRead::of(&model, &picture, part, &mut share) {
            Ok(read) => Ok(Told { file, read, size: picture.upright_size() }),
            Err(PrintError::Picture(fault)) => Err(DeskError::Picture { file, fault }),
            Err(PrintError::Stopped) => Err(DeskError::Stopped),
            Err(PrintError::NoText) => Err(DeskError::NoText { file }),
            Err(fault) => Err(DeskError::PrintModel { folder: folder.clone(), fault }),
        }
    };
    photos.into_iter().enumerate().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crop_is_four_whole_numbers() {
        let read = Area { left: 10, top: 0, width: 300, height: 40 };
        for given in ["10,0,300,40", " 10, 0, 300, 40 "] {
            assert_eq!(area(given).unwrap(), read);
        }
        for given in [
            "",
            "1,2,3",
            "1,2,3,4,5",
            "1,2,0,4",
            "1,2,3,0",
            "-1,2,3,4",
            "1.5,2,3,4",
            "a,b,c,d",
            "1,2,3,4294967296",
        ] {
            assert!(matches!(area(given), Err(DeskError::CropNotRead { .. })), "{given}");
        }
    }
}
