//! Pictures made for the tests, encoded by the `image` crate.

use std::io::Cursor;

use image::{ImageFormat, Rgb, RgbImage};

/// A PNG of this size; another number is another picture.
pub fn png(width: u32, height: u32, number: u32) -> Vec<u8> {
    encoded(width, height, number, ImageFormat::Png)
}

/// A JPEG of this size.
pub fn jpeg(width: u32, height: u32, number: u32) -> Vec<u8> {
    encoded(width, height, number, ImageFormat::Jpeg)
}

fn encoded(width: u32, height: u32, number: u32, format: ImageFormat) -> Vec<u8> {
    let picture = RgbImage::from_fn(width, height, |x, y| {
        // Like noise, so that it does not shrink when it is packed.
        let mixed = (x * 2_654_435 + y * 40_503 + number * 97_531).wrapping_mul(2_246_822_519);
        let [red, green, blue, _] = mixed.to_be_bytes();
        Rgb([red, green, blue])
    });
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}
