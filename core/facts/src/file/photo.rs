//! The name of a photo: the SHA-256 of its bytes, and its kind.

use std::fmt;
use std::str::FromStr;

use crate::fact::{Fact, PhotoImage};
use crate::hex::{hex, unhex};

/// The kinds of picture that a survey holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PhotoKind {
    /// JPEG.
    Jpeg,
    /// PNG.
    Png,
}

impl PhotoKind {
    /// The ending of its name.
    pub const fn extension(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
        }
    }

    /// Whether a picture of this kind can begin so. Eight bytes are enough.
    pub(super) fn begins(self, bytes: &[u8]) -> bool {
        match self {
            // Start of image, then the first byte of the next marker (ISO/IEC 10918-1, B.1.1.2).
            Self::Jpeg => bytes.starts_with(&[0xFF, 0xD8, 0xFF]),
            // The signature (ISO/IEC 15948, 5.2).
            Self::Png => bytes.starts_with(b"\x89PNG\r\n\x1a\n"),
        }
    }
}

/// The name of a photo in a survey's folder and in a file: `<sha256>.jpg` or `<sha256>.png`, in lower case.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PhotoName {
    /// SHA-256 of the photo's bytes.
    pub sha256: [u8; 32],
    /// What kind of picture it is.
    pub kind: PhotoKind,
}

impl PhotoName {
    /// The photo that a fact names, if it names one.
    pub fn of_fact(fact: &Fact) -> Option<Self> {
        PhotoImage::of_fact(fact)?.file_name().parse().ok()
    }
}

impl fmt::Display for PhotoName {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}.{}", hex(&self.sha256), self.kind.extension())
    }
}

/// The text is no photo's name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("not the name of a photo: 64 digits of lower-case hexadecimal, then .jpg or .png")]
pub struct NotAPhotoName;

impl FromStr for PhotoName {
    type Err = NotAPhotoName;

    fn from_str(text: &str) -> Result<Self, NotAPhotoName> {
        let (digits, extension) = text.split_once('.').ok_or(NotAPhotoName)?;
        let kind = match extension {
            "jpg" => PhotoKind::Jpeg,
            "png" => PhotoKind::Png,
            _ => return Err(NotAPhotoName),
        };
        Ok(Self { sha256: unhex(digits).ok_or(NotAPhotoName)?, kind })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // SHA-256 of "abc": FIPS 180-4's example, as published by NIST.
    const ABC: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    #[test]
    fn a_name_reads_back() {
        let name: PhotoName = format!("{ABC}.jpg").parse().unwrap();
        assert_eq!(name.sha256[..4], [0xba, 0x78, 0x16, 0xbf]);
        assert_eq!(name.to_string(), format!("{ABC}.jpg"));
    }

    #[test]
    fn anything_else_is_no_name() {
        let upper = ABC.to_uppercase();
        let short = &ABC[1..];
        for wrong in [
            format!("{upper}.jpg"),
            format!("{short}.jpg"),
            format!("0{ABC}.jpg"),
            format!("{ABC}.jpeg"),
            format!("{ABC}.JPG"),
            format!("{ABC}.jpg.jpg"),
            format!("../{ABC}.jpg"),
            format!("{short}/.jpg"),
            format!("{}é.jpg", &ABC[2..]),
            ABC.to_owned(),
            String::new(),
        ] {
            assert_eq!(wrong.parse::<PhotoName>(), Err(NotAPhotoName), "{wrong}");
        }
    }
}
