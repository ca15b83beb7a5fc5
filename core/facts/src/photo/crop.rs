//! A part of a picture, for a screen.

use std::panic::{AssertUnwindSafe, catch_unwind};

use image::imageops::FilterType;

use super::picture::Picture;
use super::thumbnail::{decode, jpeg, upright};
use crate::error::PictureFault;

/// JPEG quality of a crop, out of 100: print stays readable.
const QUALITY: u8 = 88;

/// Which part of a picture, and how large. Shares are of the picture the right way up, from its upper left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crop {
    /// Where it begins, as a share of the width, 0 to 1.
    pub left: f64,
    /// Where it begins, as a share of the height, 0 to 1.
    pub top: f64,
    /// How wide it is, as a share of the width.
    pub width: f64,
    /// How high it is, as a share of the height.
    pub height: f64,
    /// The most pixels on its longer side. It is made smaller to fit, never larger.
    pub most_pixels: u32,
}

impl Crop {
    /// All of a picture.
    pub const fn whole(most_pixels: u32) -> Self {
        Self { left: 0.0, top: 0.0, width: 1.0, height: 1.0, most_pixels }
    }

    /// The part in pixels of a picture of this size: left, top, width, height; what lies beyond the edges is cut off.
    fn within(&self, width: u32, height: u32) -> Option<(u32, u32, u32, u32)> {
        let span = |from: f64, share: f64, side: u32| {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "between nothing and the side; what is no number becomes nothing"
            )]
            let edge = |at: f64| (at.clamp(0.0, 1.0) * f64::from(side)).round() as u32;
            let (from, to) = (edge(from), edge(from + share));
            (to > from).then(|| (from, to - from))
        };
        let (left, width) = span(self.left, self.width, width)?;
        let (top, height) = span(self.top, self.height, height)?;
        (self.most_pixels > 0).then_some((left, top, width, height))
    }
}

impl Picture {
    /// A part of the picture, or all of it: the bytes of a JPEG, the right way up.
    ///
    /// # Errors
    /// [`PictureFault::NothingThere`] if nothing of the picture lies in the crop, [`PictureFault::Damaged`] if its
    /// pixels cannot be decoded.
    pub fn crop(&self, crop: Crop) -> Result<Vec<u8>, PictureFault> {
        self.crops(&[crop])?.pop().ok_or(PictureFault::NothingThere)
    }

    /// The same of several parts: the picture is decoded once.
    ///
    /// # Errors
    /// As [`Picture::crop`], for the first that cannot be had.
    pub fn crops(&self, crops: &[Crop]) -> Result<Vec<Vec<u8>>, PictureFault> {
        let unreadable = PictureFault::damaged("its pixels cannot be read");
        // A fault of the decoder must not be the end of a survey.
        catch_unwind(AssertUnwindSafe(|| {
            let pixels = upright(decode(self).ok_or(unreadable)?, self);
            let cut = |crop: &Crop| {
                let (left, top, width, height) =
                    crop.within(pixels.width(), pixels.height()).ok_or(PictureFault::NothingThere)?;
                let mut part = pixels.crop_imm(left, top, width, height);
                if width.max(height) > crop.most_pixels {
                    part = part.resize(crop.most_pixels, crop.most_pixels, FilterType::Triangle);
                }
                jpeg(&part, QUALITY).ok_or(unreadable)
            };
            crops.iter().map(cut).collect()
        }))
        .unwrap_or(Err(unreadable))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::{ImageFormat, Rgb, RgbImage};

    /// The corners of a picture, the right way up.
    const CORNERS: [[u8; 3]; 4] = [[200, 0, 0], [0, 200, 0], [0, 0, 200], [200, 200, 0]];

    fn picture() -> Picture {
        let pixels = RgbImage::from_fn(400, 200, |x, y| {
            Rgb(CORNERS[usize::from(x >= 200) + 2 * usize::from(y >= 100)])
        });
        let mut bytes = std::io::Cursor::new(Vec::new());
        pixels.write_to(&mut bytes, ImageFormat::Png).unwrap();
        Picture::clean(&bytes.into_inner()).unwrap()
    }

    fn size_and_middle(jpeg: &[u8]) -> ((u32, u32), [u8; 3]) {
        let found = image::load_from_memory_with_format(jpeg, ImageFormat::Jpeg).unwrap().into_rgb8();
        let (width, height) = found.dimensions();
        (found.dimensions(), found.get_pixel(width / 2, height / 2).0)
    }

    #[test]
    fn each_quarter_has_its_colour_and_is_never_larger_than_asked_for() {
        let picture = picture();
        for (place, colour) in CORNERS.into_iter().enumerate() {
            let (left, top) = (0.5 * (place % 2) as f64, 0.5 * (place / 2) as f64);
            let crop = Crop { left, top, width: 0.5, height: 0.5, most_pixels: 100 };
            let (size, middle) = size_and_middle(&picture.crop(crop).unwrap());
            assert_eq!(size, (100, 50));
            let near = middle.iter().zip(colour).all(|(found, wanted)| found.abs_diff(wanted) < 12);
            assert!(near, "{place}: {middle:?} is not {colour:?}");
        }
        assert_eq!(size_and_middle(&picture.crop(Crop::whole(9_000)).unwrap()).0, (400, 200));
    }

    #[test]
    fn beyond_the_edges_is_cut_off_and_nothing_is_said_so() {
        let picture = picture();
        let crop = |left, width, most_pixels| {
            picture.crop(Crop { left, top: -1.0, width, height: 9.0, most_pixels })
        };
        assert_eq!(size_and_middle(&crop(0.75, 9.0, 4_000).unwrap()).0, (100, 200));
        for (left, width, most) in
            [(1.0, 0.5, 100), (0.2, 0.0, 100), (0.2, -0.1, 100), (f64::NAN, f64::NAN, 100), (0.0, 1.0, 0)]
        {
            assert_eq!(crop(left, width, most), Err(PictureFault::NothingThere), "{left} {width} {most}");
        }
    }
}
