//! What a fact says of a photo: its file, and what is in it.

use serde::{Deserialize, Serialize};

use super::{Fact, reserved};
use crate::hex::unhex;

/// The ending of a damaged photo that was set aside, until it is forgotten.
const DAMAGED: &str = ".damaged";

/// Which file holds a photo, and what is in it: one decision, the value of the field [`reserved::IMAGE`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoImage {
    /// SHA-256 of the file's bytes, in lower-case hexadecimal.
    pub sha256: String,
    /// `jpg` or `png`.
    pub ext: String,
    /// The file's length.
    pub bytes: u64,
    /// The picture's width in pixels, as it lies in the file, before any turning.
    pub width: u32,
    /// The picture's height in pixels, as it lies in the file.
    pub height: u32,
}

impl PhotoImage {
    /// The image that a fact names, if it is of the field [`reserved::IMAGE`] and names one that can be a file here.
    pub fn of_fact(fact: &Fact) -> Option<Self> {
        if fact.field() != reserved::IMAGE {
            return None;
        }
        serde_json::from_value(fact.value().clone())
            .ok()
            .filter(|image: &Self| Self::is_file_name(&image.file_name()))
    }

    /// The name of its file in the survey's folder of photos.
    pub fn file_name(&self) -> String {
        format!("{}.{}", self.sha256, self.ext)
    }

    /// Whether a file's name is one that a photo can have.
    pub fn is_file_name(name: &str) -> bool {
        let Some((digits, extension)) = name.split_once('.') else { return false };
        matches!(extension, "jpg" | "png")
            && digits.len() == 64
            && digits.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
    }

    /// Where a damaged photo of this name is set aside, in the folder of photos.
    pub(crate) fn damaged_name(name: &str) -> String {
        format!("{name}{DAMAGED}")
    }

    /// The name that a photo had before it was set aside as damaged, or has.
    pub(crate) fn sound_name(name: &str) -> &str {
        name.strip_suffix(DAMAGED).unwrap_or(name)
    }

    /// The SHA-256 as bytes.
    pub fn digest(&self) -> Option<[u8; 32]> {
        unhex(&self.sha256)
    }
}
