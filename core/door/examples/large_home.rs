//! Writes a home with two surveys for benches of the shells: one of 300 parts and 2,000 photos, and one with nothing in it.
//!
//!     cargo run -p door --example large_home FOLDER
#![expect(clippy::unwrap_used, reason = "a tool for benches stops where it cannot go on")]

use std::io::Cursor;

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::home::Home;
use facts::store::Store;
use house::document::Document;
use house::record::PhotoRole;
use image::{DynamicImage, ImageFormat, RgbImage};

const PARTS: usize = 300;
/// Every second one shows a part, the others wait.
const PHOTOS: usize = 2000;

fn main() {
    let folder = std::env::args().nth(1).unwrap();
    let home = Home::at(folder.as_ref()).unwrap();
    let author = AuthorId::random();
    for (name, is_large) in [("Empty", false), ("Large", true)] {
        let mut store = Store::create(&home.place(name).unwrap(), author).unwrap();
        let survey = store.survey_id().subject();
        store.write(&[Edit::new(survey, "is", "survey"), Edit::new(survey, "name", name)]).unwrap();
        if is_large {
            let (parts, edits) = houses::large(PARTS);
            store.write(&edits).unwrap();
            photos(&mut store, &parts);
        }
    }
}

/// Small pictures, each another one.
fn photos(store: &mut Store, parts: &[SubjectId]) {
    for number in 0..PHOTOS {
        let shade = |by: usize| u8::try_from(number / by % 256).unwrap_or_default();
        let picture = RgbImage::from_fn(96, 72, |x, y| {
            image::Rgb([shade(1), shade(256), u8::try_from((x + y) % 256).unwrap_or_default()])
        });
        let mut file = Cursor::new(Vec::new());
        DynamicImage::from(picture).write_to(&mut file, ImageFormat::Jpeg).unwrap();
        let of = parts.get(number / 2 % parts.len()).copied().filter(|_| number % 2 == 0);
        store.add_photo(file.get_ref(), of, of.map(|_| PhotoRole::Before)).unwrap();
    }
}
