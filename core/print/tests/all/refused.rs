//! Pictures that are not read, by kind, before anything is decoded or loaded.
#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

#[path = "../../../facts/tests/pictures/announcing.rs"]
mod announcing;

use std::io::Cursor;

use facts::photo::{Area, Picture, PictureFault};
use image::{ImageFormat, RgbImage};
use print::{Model, PrintError};

pub(crate) fn png(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::new(width, height).write_to(&mut bytes, ImageFormat::Png).unwrap();
    bytes.into_inner()
}

#[test]
fn a_picture_of_sixty_thousand_pixels_a_side_is_refused_before_it_is_decoded() {
    for (width, height) in [(60_000, 4), (4, 60_000), (60_000, 60_000)] {
        let refused = Picture::clean(&announcing::announcing(png(4, 4), width, height))
            .map_err(PrintError::from)
            .unwrap_err();
        assert!(matches!(refused, PrintError::Picture(PictureFault::TooManyPixels { .. })), "{refused}");
    }
}

#[test]
fn what_is_cut_short_is_no_picture() {
    let whole = png(64, 64);
    for end in [0, 1, 8, 20, whole.len() - 1] {
        assert!(Picture::clean(&whole[..end]).is_err(), "{end}");
    }
}

#[test]
fn a_part_outside_of_the_picture_is_refused() {
    let picture = Picture::clean(&png(64, 48)).unwrap();
    for part in
        [Area { left: 64, top: 0, width: 9, height: 9 }, Area { left: 0, top: 0, width: 0, height: 9 }]
    {
        let refused = picture.pixels(Some(part)).map_err(PrintError::from).unwrap_err();
        assert_eq!(refused, PrintError::Picture(PictureFault::NothingThere));
    }
}

#[test]
fn without_a_model_what_is_missing_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let refused = Model::load(folder.path()).unwrap_err();
    assert_eq!(refused, PrintError::ModelMissing { file: "letters.txt" });
    let said = refused.phrase().unwrap();
    assert_eq!(said.id, "print-model-missing");
}
