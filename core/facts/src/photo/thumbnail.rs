//! Small pictures for lists, the right way up.

use std::io::Cursor;
use std::panic::{AssertUnwindSafe, catch_unwind};

use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, ImageFormat, ImageReader, Limits};

use super::picture::{MAX_SIDE, Picture, PictureKind};
use crate::error::PictureFault;

/// The longer side of a small picture, in pixels.
pub const THUMBNAIL_SIDE: u32 = 320;

/// JPEG quality of a small picture, out of 100: some ten kilobytes of most photos. What is like noise all over is
/// longer, and is coded again as the next one until it fits.
const QUALITIES: [u8; 4] = [70, 45, 20, 5];

/// The longest small picture in bytes, as the store's schema has it.
const MOST_BYTES: usize = 65_536;

/// What decoding may take: the largest picture with four bytes a pixel, and some room.
const DECODING_BYTES: u64 = 512 * 1024 * 1024;

impl Picture {
    /// Decodes the picture and makes a small one of it: the bytes of a JPEG, the right way up, at most
    /// [`THUMBNAIL_SIDE`] on its longer side.
    ///
    /// # Errors
    /// [`PictureFault::Damaged`] if its pixels cannot be decoded.
    pub fn thumbnail(&self) -> Result<Vec<u8>, PictureFault> {
        // A fault of the decoder must not be the end of a survey.
        catch_unwind(AssertUnwindSafe(|| self.make_thumbnail()))
            .ok()
            .flatten()
            .ok_or(PictureFault::damaged("its pixels cannot be read"))
    }

    fn make_thumbnail(&self) -> Option<Vec<u8>> {
        let whole = decode(self)?;
        let small = if whole.width().max(whole.height()) > THUMBNAIL_SIDE {
            whole.thumbnail(THUMBNAIL_SIDE, THUMBNAIL_SIDE)
        } else {
            whole
        };
        let small = upright(small, self);
        QUALITIES.into_iter().find_map(|quality| {
            let bytes = jpeg(&small, quality)?;
            (bytes.len() <= MOST_BYTES).then_some(bytes)
        })
    }
}

/// The pixels of a picture as they lie in the file.
pub(super) fn decode(picture: &Picture) -> Option<DynamicImage> {
    let format = match picture.kind() {
        PictureKind::Jpeg => ImageFormat::Jpeg,
        PictureKind::Png => ImageFormat::Png,
    };
    let mut reader = ImageReader::with_format(Cursor::new(picture.bytes()), format);
    let mut limits = Limits::default();
    limits.max_image_width = Some(MAX_SIDE);
    limits.max_image_height = Some(MAX_SIDE);
    limits.max_alloc = Some(DECODING_BYTES);
    reader.limits(limits);
    reader.decode().ok()
}

/// Turns what comes of a picture the right way up.
pub(super) fn upright(mut pixels: DynamicImage, picture: &Picture) -> DynamicImage {
    if let Some(turn) = image::metadata::Orientation::from_exif(picture.orientation().tag()) {
        pixels.apply_orientation(turn);
    }
    pixels
}

/// Pixels as a JPEG.
pub(super) fn jpeg(pixels: &DynamicImage, quality: u8) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    let pixels = DynamicImage::ImageRgb8(pixels.to_rgb8());
    pixels.write_with_encoder(JpegEncoder::new_with_quality(&mut bytes, quality)).ok()?;
    Some(bytes)
}
