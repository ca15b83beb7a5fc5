//! What the model itself reads. It is no part of the sources: `tests/rooms/print` makes it, names it, and runs these.
#![expect(clippy::expect_used, clippy::unwrap_used, reason = "a failed test is what is wanted")]

use std::path::PathBuf;

use facts::photo::{Area, Picture, Pixels};
use print::{Model, Point, Print, PrintError, Turn};

use crate::refused::png;

pub fn folder() -> PathBuf {
    std::env::var_os("LEGWORK_PRINT_MODEL")
        .map(PathBuf::from)
        .expect("LEGWORK_PRINT_MODEL names the model's folder")
}

fn model() -> Model {
    Model::load(&folder()).unwrap()
}

/// A photo that `tests/photos/make.py` made, and the rows on it.
pub fn photo() -> (Picture, Vec<String>) {
    let photos =
        PathBuf::from(std::env::var_os("LEGWORK_PHOTOS").expect("LEGWORK_PHOTOS names a folder of photos"));
    let truth: serde_json::Value =
        serde_json::from_slice(&std::fs::read(photos.join("truth.json")).unwrap()).unwrap();
    let first = truth.as_array().unwrap().iter().find(|photo| photo["hardship"] == "flat24").unwrap();
    let rows = first["rows"].as_array().unwrap().iter().map(|row| row.as_str().unwrap().to_owned()).collect();
    (Picture::read(&photos.join(first["file"].as_str().unwrap())).unwrap().unwrap(), rows)
}

/// The digits of each row that was read, but for those within words: whether a word has an O or a nought a face may leave open.
fn digits(print: &Print) -> Vec<String> {
    print
        .rows
        .iter()
        .filter_map(|row| row.looks.iter().flatten().next_back())
        .map(|line| digits_of(&line.text()))
        .collect()
}

/// The digits with which words begin: “1002” of “1002MHz”, none of “ST0P”.
fn digits_of(row: &str) -> String {
    row.split(|sign: char| !sign.is_alphanumeric())
        .flat_map(|word| word.chars().take_while(char::is_ascii_digit))
        .collect()
}

/// The same pixels turned clockwise by so many quarters.
fn turned(pixels: &Pixels, quarters: u32) -> Pixels {
    (0..quarters).fold(pixels.clone(), |pixels, _| {
        let (width, height) = (pixels.width() as usize, pixels.height() as usize);
        let rgb = (0..width)
            .flat_map(|x| (0..height).rev().map(move |y| 3 * (y * width + x)))
            .flat_map(|at| pixels.rgb()[at..at + 3].to_vec())
            .collect();
        Pixels::new(pixels.height(), pixels.width(), rgb).unwrap()
    })
}

#[test]
#[ignore = "needs the model and photos"]
fn a_label_is_read_whichever_way_it_is_turned() {
    let (picture, rows) = photo();
    let (model, upright) = (model(), picture.pixels(None).unwrap());
    let wanted: Vec<String> = rows.iter().map(|row| digits_of(row)).collect();
    for (quarters, turn) in
        [Turn::Upright, Turn::Quarter, Turn::Half, Turn::ThreeQuarters].into_iter().enumerate()
    {
        let pixels = turned(&upright, u32::try_from(quarters).unwrap());
        let print = model.read_pixels(&pixels, &mut |_| true).unwrap();
        assert_eq!(print.turn, turn);
        assert_eq!(digits(&print), wanted, "{quarters} quarters");
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn corners_are_in_the_whole_picture_and_the_share_done_only_rises() {
    let (picture, _) = photo();
    let model = model();
    let (width, height) = picture.upright_size();
    let middle = |print: &Print| -> Point {
        let line = print.rows[1].looks[0].as_ref().unwrap();
        let sum = |at: usize| line.corners.0.iter().map(|corner| corner[at]).sum::<f32>() / 4.0;
        [sum(0), sum(1)]
    };
    let mut shares = vec![];
    let whole = model
        .read(&picture, None, &mut |done| {
            shares.push(done);
            true
        })
        .unwrap();
    let part = Area { left: 9, top: 5, width: width - 9, height: height - 5 };
    let cropped = model.read(&picture, Some(part), &mut |_| true).unwrap();
    let (a, b) = (middle(&whole), middle(&cropped));
    assert!((a[0] - b[0]).abs() < 6.0 && (a[1] - b[1]).abs() < 6.0, "{a:?} {b:?}");
    assert!(shares.is_sorted() && shares[0] == 0.0 && shares.last() == Some(&1.0), "{shares:?}");
}

#[test]
#[ignore = "needs the model and photos"]
fn it_stops_when_told_to() {
    let (picture, _) = photo();
    let model = model();
    for after in [0.0, 0.3, 0.7] {
        let stopped = model.read(&picture, None, &mut |done| done < after);
        assert_eq!(stopped.unwrap_err(), PrintError::Stopped, "{after}");
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn a_picture_that_is_no_label_has_no_text() {
    let model = model();
    let picture = Picture::clean(&png(320, 240)).unwrap();
    assert_eq!(model.read(&picture, None, &mut |_| true).unwrap_err(), PrintError::NoText);
    // A single pixel, and a line of them.
    for (width, height) in [(1, 1), (1, 900), (900, 1)] {
        let picture = Picture::clean(&png(width, height)).unwrap();
        assert_eq!(
            model.read(&picture, None, &mut |_| true).unwrap_err(),
            PrintError::NoText,
            "{width} by {height}"
        );
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn one_changed_bit_of_the_model_is_seen() {
    let planted = tempfile::tempdir().unwrap();
    for entry in std::fs::read_dir(folder()).unwrap() {
        let entry = entry.unwrap();
        std::fs::copy(entry.path(), planted.path().join(entry.file_name())).unwrap();
    }
    assert!(Model::load(planted.path()).is_ok());
    let weights = planted.path().join("recognise.f16");
    let mut bytes = std::fs::read(&weights).unwrap();
    bytes[4_000_000] ^= 1;
    std::fs::write(&weights, bytes).unwrap();
    assert_eq!(Model::load(planted.path()).unwrap_err(), PrintError::ModelChanged { file: "recognise.f16" });
}
