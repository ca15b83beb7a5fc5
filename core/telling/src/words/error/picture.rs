//! Why a picture is not taken in.

use facts::error::{OtherKind, PictureFault};
use phrase::{Arg, Phrase};

use super::{InWords, count};

/// A megabyte as this program counts pictures.
const MEGABYTE: usize = 1024 * 1024;

impl InWords for PictureFault {
    fn phrase(&self) -> Phrase {
        match self {
            Self::Empty => Phrase::new("error-picture-empty"),
            Self::TooLong { limit } => {
                Phrase::new("error-picture-too-long").with("most", count(limit / MEGABYTE))
            }
            Self::TooManyPixels { width, height, pixels, side } => {
                Phrase::new("error-picture-too-many-pixels")
                    .with("width", Arg::Count(u64::from(*width)))
                    .with("height", Arg::Count(u64::from(*height)))
                    .with("most", Arg::Count(pixels / 1_000_000))
                    .with("side", Arg::Count(u64::from(*side)))
            }
            Self::Heic => Phrase::new("error-picture-heic"),
            Self::OtherKind { found } => {
                Phrase::new("error-picture-other-kind").phrase("found", found.phrase())
            }
            Self::NotAPicture => Phrase::new("error-picture-none"),
            Self::Unusual { kind, what: _ } => Phrase::new("error-picture-unusual").text("kind", *kind),
            Self::CutShort => Phrase::new("error-picture-cut-short"),
            Self::NothingThere => Phrase::new("error-picture-nothing-there"),
            Self::Damaged { what: _ } => Phrase::new("error-picture-damaged"),
        }
    }
}

impl InWords for OtherKind {
    fn phrase(&self) -> Phrase {
        Phrase::new(match self {
            Self::Avif => "error-kind-avif",
            Self::Film => "error-kind-film",
            Self::WebP => "error-kind-webp",
            Self::Gif => "error-kind-gif",
            Self::Tiff => "error-kind-tiff",
            Self::Bmp => "error-kind-bmp",
            Self::Pdf => "error-kind-pdf",
        })
    }
}
