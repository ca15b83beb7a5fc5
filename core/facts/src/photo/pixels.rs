//! The pixels of a picture, or of a part of it, the right way up, for who looks at them closely.

use std::panic::{AssertUnwindSafe, catch_unwind};

use super::picture::Picture;
use super::thumbnail::decode;
use crate::error::PictureFault;

/// A part of a picture in its pixels, the picture the right way up: as it is shown, and as a person counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Area {
    /// Pixels to the left of it.
    pub left: u32,
    /// Pixels above it.
    pub top: u32,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
}

impl Area {
    /// What of it lies within a picture of this size; `None` where nothing does.
    pub fn within(self, (width, height): (u32, u32)) -> Option<Self> {
        let across = self.width.min(width.checked_sub(self.left)?);
        let down = self.height.min(height.checked_sub(self.top)?);
        (across > 0 && down > 0).then_some(Self { width: across, height: down, ..self })
    }

    /// The same part as it lies in the file: the tag of the orientation says how a picture is turned from there to here, and
    /// `file` is its size there.
    const fn in_file(self, tag: u8, file: (u32, u32)) -> Self {
        let Self { left, top, width, height } = self;
        let is_turned = tag >= 5;
        let (across, down) = if is_turned { (top, left) } else { (left, top) };
        let (width, height) = if is_turned { (height, width) } else { (width, height) };
        // The tags whose first column is the file's last, and whose first row is its last.
        let left = if matches!(tag, 2 | 3 | 7 | 8) { file.0.saturating_sub(across + width) } else { across };
        let top = if matches!(tag, 3 | 4 | 6 | 7) { file.1.saturating_sub(down + height) } else { down };
        Self { left, top, width, height }
    }
}

/// Pixels in rows from the upper left, red, green and blue a byte each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    width: u32,
    height: u32,
    rgb: Vec<u8>,
}

impl Pixels {
    /// Pixels that are there; `None` where there are not as many as their size says, or none.
    pub fn new(width: u32, height: u32, rgb: Vec<u8>) -> Option<Self> {
        let bytes = 3 * u64::from(width) * u64::from(height);
        (bytes > 0 && rgb.len() as u64 == bytes).then_some(Self { width, height, rgb })
    }

    /// Pixels across.
    pub const fn width(&self) -> u32 {
        self.width
    }

    /// Pixels down.
    pub const fn height(&self) -> u32 {
        self.height
    }

    /// Three bytes a pixel.
    pub fn rgb(&self) -> &[u8] {
        &self.rgb
    }
}

impl Picture {
    /// Pixels across and down, the right way up.
    pub fn upright_size(&self) -> (u32, u32) {
        let image = self.image();
        if self.orientation().tag() > 4 { (image.height, image.width) } else { (image.width, image.height) }
    }

    /// The pixels of a part of the picture, or of all of it, the right way up. What lies beyond the edges is cut off.
    ///
    /// # Errors
    /// [`PictureFault::NothingThere`] if nothing of the picture lies in that part, [`PictureFault::Damaged`] if its pixels
    /// cannot be decoded.
    pub fn pixels(&self, part: Option<Area>) -> Result<Pixels, PictureFault> {
        let (width, height) = self.upright_size();
        let part = part
            .unwrap_or(Area { left: 0, top: 0, width, height })
            .within((width, height))
            .ok_or(PictureFault::NothingThere)?;
        // A fault of the decoder must not be the end of a survey.
        catch_unwind(AssertUnwindSafe(|| self.decode_part(part)))
            .ok()
            .flatten()
            .ok_or(PictureFault::damaged("its pixels cannot be read"))
    }

    fn decode_part(&self, part: Area) -> Option<Pixels> {
        let tag = self.orientation().tag();
        let whole = decode(self)?;
        let there = part.in_file(tag, (whole.width(), whole.height()));
        // Turned only once it is cut out: of a large picture the whole is not copied.
        let is_whole = (there.width, there.height) == (whole.width(), whole.height());
        let mut cut =
            if is_whole { whole } else { whole.crop_imm(there.left, there.top, there.width, there.height) };
        if let Some(turn) = image::metadata::Orientation::from_exif(tag) {
            cut.apply_orientation(turn);
        }
        let cut = cut.into_rgb8();
        let (width, height) = cut.dimensions();
        Pixels::new(width, height, cut.into_raw())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::{DynamicImage, ImageFormat, Rgb, RgbImage};

    /// A PNG of 5 by 3 pixels that all differ, in a given orientation.
    fn picture(tag: u8) -> Picture {
        let pixels = RgbImage::from_fn(5, 3, |x, y| {
            Rgb([u8::try_from(40 * x).unwrap(), u8::try_from(60 * y).unwrap(), 9])
        });
        let mut bytes = std::io::Cursor::new(Vec::new());
        let mut encoder = image::codecs::png::PngEncoder::new(&mut bytes);
        let tiff = [b'M', b'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, tag, 0, 0, 0, 0, 0, 0];
        image::ImageEncoder::set_exif_metadata(&mut encoder, tiff.to_vec()).unwrap();
        DynamicImage::ImageRgb8(pixels).write_with_encoder(encoder).unwrap();
        Picture::clean(&bytes.into_inner()).unwrap()
    }

    #[test]
    fn a_part_is_what_lies_there_in_the_picture_the_right_way_up() {
        for tag in 1..=8 {
            let picture = picture(tag);
            let mut whole = image::load_from_memory_with_format(picture.bytes(), ImageFormat::Png).unwrap();
            whole.apply_orientation(image::metadata::Orientation::from_exif(tag).unwrap());
            assert_eq!(picture.upright_size(), (whole.width(), whole.height()));
            assert_eq!(picture.pixels(None).unwrap().rgb(), whole.to_rgb8().as_raw().as_slice(), "{tag}");
            let part = picture.pixels(Some(Area { left: 1, top: 0, width: 2, height: 3 })).unwrap();
            assert_eq!(part.rgb(), whole.crop_imm(1, 0, 2, 3).to_rgb8().as_raw().as_slice(), "{tag}");
        }
    }

    #[test]
    fn beyond_the_edges_is_cut_off_and_nothing_is_said_so() {
        let picture = picture(1);
        let part = picture.pixels(Some(Area { left: 3, top: 1, width: u32::MAX, height: 9 })).unwrap();
        assert_eq!((part.width(), part.height()), (2, 2));
        for (left, top, width, height) in
            [(5, 0, 1, 1), (0, 3, 1, 1), (u32::MAX, 0, u32::MAX, 1), (0, 0, 0, 1)]
        {
            let part = Area { left, top, width, height };
            assert_eq!(picture.pixels(Some(part)), Err(PictureFault::NothingThere), "{part:?}");
        }
    }
}
