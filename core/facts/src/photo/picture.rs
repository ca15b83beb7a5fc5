//! A picture that was looked through and cleaned, ready to be stored.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

use sha2::{Digest, Sha256};

use super::orientation::Orientation;
use super::taken_at::TakenAt;
use super::{jpeg, png};
use crate::error::{OtherKind, PictureFault};
use crate::fact::PhotoImage;
use crate::hex::hex;

/// The longest picture that is taken, in bytes, before and after cleaning.
pub const MAX_PICTURE_BYTES: usize = 32 * 1024 * 1024;

/// The most pixels that are taken: enough for the cameras of phones, and to decode them in less than half a
/// gigabyte.
pub const MAX_PIXELS: u64 = 100_000_000;

/// The most pixels on one side.
pub const MAX_SIDE: u32 = 32_768;

/// The bytes of a file, at most one more than is taken of a picture.
pub(super) fn read_bounded(file: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(file)?.take(MAX_PICTURE_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// The kinds of picture that are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PictureKind {
    /// JPEG.
    Jpeg,
    /// PNG.
    Png,
}

/// What cleaning leaves, and what it found.
pub(super) struct Cleaned {
    /// What is stored.
    pub bytes: Vec<u8>,
    /// Pixels across, as it lies in the file.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Which way up it is.
    pub orientation: Orientation,
    /// When it was taken, which is not stored with it.
    pub taken: Option<TakenAt>,
}

/// A cleaned picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    kind: PictureKind,
    bytes: Vec<u8>,
    width: u32,
    height: u32,
    orientation: Orientation,
    taken: Option<TakenAt>,
    sha256: [u8; 32],
}

impl Picture {
    /// Looks through a picture and cuts what it tells about place and camera. Its pixels stay bit for bit as they
    /// are coded. Cleaning what is clean changes nothing, so `clean(bytes)?.bytes() == bytes` tells whether a
    /// picture is one that this program stored. The pixels are not decoded here; [`Picture::thumbnail`] does that.
    ///
    /// # Errors
    /// Any [`PictureFault`].
    pub fn clean(bytes: &[u8]) -> Result<Self, PictureFault> {
        if bytes.is_empty() {
            return Err(PictureFault::Empty);
        }
        if bytes.len() > MAX_PICTURE_BYTES {
            return Err(PictureFault::TooLong { limit: MAX_PICTURE_BYTES });
        }
        let (kind, cleaned) = if bytes.starts_with(&[0xFF, 0xD8]) {
            (PictureKind::Jpeg, jpeg::clean(bytes)?)
        } else if bytes.starts_with(png::SIGNATURE) {
            (PictureKind::Png, png::clean(bytes)?)
        } else {
            return Err(other_kind(bytes));
        };
        let Cleaned { bytes, width, height, orientation, taken } = cleaned;
        if !is_taken_in_size(width, height) {
            return Err(PictureFault::TooManyPixels { width, height, pixels: MAX_PIXELS, side: MAX_SIDE });
        }
        // Only an orientation that was moved can have made it longer.
        if bytes.len() > MAX_PICTURE_BYTES {
            return Err(PictureFault::TooLong { limit: MAX_PICTURE_BYTES });
        }
        let sha256 = Sha256::digest(&bytes).into();
        Ok(Self { kind, bytes, width, height, orientation, taken, sha256 })
    }

    /// Reads a picture's file and cleans it, as [`Picture::clean`]. No more of it is read than is taken, however long it is
    /// or becomes meanwhile.
    ///
    /// # Errors
    /// What the system reports; `InvalidInput` for what is no file, such as a folder or a pipe; the fault inside where
    /// it is read and not taken.
    pub fn read(file: &Path) -> io::Result<Result<Self, PictureFault>> {
        // A pipe could keep us waiting for ever, already while it is opened.
        if !fs::metadata(file)?.is_file() {
            return Err(io::ErrorKind::InvalidInput.into());
        }
        read_bounded(file).map(|bytes| Self::clean(&bytes))
    }

    /// JPEG or PNG.
    pub const fn kind(&self) -> PictureKind {
        self.kind
    }

    /// What is stored.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// What is stored, handed over.
    pub(crate) fn into_bytes(self) -> Vec<u8> {
        self.bytes
    }

    /// SHA-256 of what is stored.
    pub const fn sha256(&self) -> &[u8; 32] {
        &self.sha256
    }

    /// Which way up it is.
    pub const fn orientation(&self) -> Orientation {
        self.orientation
    }

    /// When it was taken, by its camera's clock; `None` where nothing told. What is stored does not tell it any more, so a
    /// picture that was cleaned before has none.
    pub const fn taken(&self) -> Option<TakenAt> {
        self.taken
    }

    /// What a fact says about it.
    pub fn image(&self) -> PhotoImage {
        PhotoImage {
            sha256: hex(&self.sha256),
            ext: match self.kind {
                PictureKind::Jpeg => "jpg".into(),
                PictureKind::Png => "png".into(),
            },
            bytes: self.bytes.len() as u64,
            width: self.width,
            height: self.height,
        }
    }
}

/// Whether a picture has no more pixels than are taken.
pub(super) fn is_taken_in_size(width: u32, height: u32) -> bool {
    u64::from(width) * u64::from(height) <= MAX_PIXELS && width.max(height) <= MAX_SIDE
}

/// What it is instead, by its first bytes, so that people are told what to do.
fn other_kind(bytes: &[u8]) -> PictureFault {
    let other = |found| PictureFault::OtherKind { found };
    // ISO/IEC 14496-12, 4.3: a box `ftyp` with its brand first; ISO/IEC 23008-12, annex B, names those of HEIF.
    if bytes.get(4..8) == Some(b"ftyp") {
        return match bytes.get(8..12) {
            Some(b"heic" | b"heix" | b"heim" | b"heis" | b"hevc" | b"hevx" | b"mif1" | b"msf1") => {
                PictureFault::Heic
            }
            Some(b"avif" | b"avis") => other(OtherKind::Avif),
            _ => other(OtherKind::Film),
        };
    }
    match bytes {
        [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => other(OtherKind::WebP),
        [b'G', b'I', b'F', b'8', ..] => other(OtherKind::Gif),
        [b'I', b'I', 42, 0, ..] | [b'M', b'M', 0, 42, ..] => other(OtherKind::Tiff),
        [b'B', b'M', ..] => other(OtherKind::Bmp),
        [b'%', b'P', b'D', b'F', ..] => other(OtherKind::Pdf),
        _ => PictureFault::NotAPicture,
    }
}
