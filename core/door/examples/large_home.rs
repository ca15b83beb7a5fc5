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
use serde_json::json;

/// One entry, 19 splitters of 16 legs, and outlets, each over a run of its own.
const PARTS: usize = 300;
const SPLITTERS: usize = 19;
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
            let parts = parts(&mut store);
            photos(&mut store, &parts);
        }
    }
}

fn parts(store: &mut Store) -> Vec<SubjectId> {
    let parts: Vec<_> = (0..PARTS).map(|_| SubjectId::random()).collect();
    let mut edits = Vec::new();
    for (number, &part) in parts.iter().enumerate() {
        let (kind, letter, feeder) = match number {
            0 => ("entry", 'E', None),
            1 => ("splitter", 'S', Some((0, 1))),
            _ if number <= SPLITTERS => {
                ("splitter", 'S', Some((1 + (number - 2) / 16, (number - 2) % 16 + 1)))
            }
            _ => {
                ("outlet", 'O', Some((3 + (number - SPLITTERS - 1) / 16, (number - SPLITTERS - 1) % 16 + 1)))
            }
        };
        edits.push(Edit::new(part, "is", "part"));
        edits.push(Edit::new(part, "kind", kind));
        edits.push(Edit::new(part, "tag", format!("{letter}{number}")));
        if kind == "splitter" {
            edits.push(Edit::new(part, "rating", json!({"legs": 16})));
        }
        if let Some((feeder, port)) = feeder {
            let run = SubjectId::random();
            edits.push(Edit::new(run, "is", "run"));
            let feed = json!({"from": {"part": parts[feeder], "port": port, "run": run}});
            edits.push(Edit::new(part, "feed", feed));
        }
        if kind == "outlet" {
            let room = SubjectId::random();
            edits.push(Edit::new(room, "is", "room"));
            edits.push(Edit::new(room, "name", format!("Room {number}")));
            edits.push(Edit::new(part, "room", json!(room)));
        }
    }
    store.write(&edits).unwrap();
    parts
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
