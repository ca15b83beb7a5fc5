//! Pictures made for the tests, encoded by the `image` crate.

#[path = "../../../../facts/tests/pictures/announcing.rs"]
mod announcing;

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

/// A JPEG whose camera wrote when it was taken, as in `2026:05:31 14:05:09`: made by hand after Exif 2.32, 4.6.
pub fn jpeg_taken(width: u32, height: u32, number: u32, time: &str) -> Vec<u8> {
    let mut tiff = b"MM\0\x2A\0\0\0\x08".to_vec();
    tiff.extend(b"\0\x01\x87\x69\0\x04\0\0\0\x01\0\0\0\x1A\0\0\0\0");
    tiff.extend(b"\0\x01\x90\x03\0\x02\0\0\0\x14\0\0\0\x2C\0\0\0\0");
    tiff.extend(time.as_bytes());
    tiff.push(0);
    let segment = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = u16::try_from(segment.len() + 2).unwrap().to_be_bytes();
    let whole = jpeg(width, height, number);
    [&whole[..2], &[0xFF, 0xE1], &length, &segment, &whole[2..]].concat()
}

/// A PNG whose header says that it has so many pixels.
pub fn png_announcing(width: u32, height: u32) -> Vec<u8> {
    announcing::announcing(png(4, 4, 1), width, height)
}
