//! Why a picture is not taken in, and what to do about it.

/// Why a picture is not taken in. Nothing is stored then.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PictureFault {
    /// Nothing at all.
    #[error("it is empty")]
    Empty,
    /// Longer than is taken.
    #[error(
        "it has more than {} MB; save it smaller or at a lower quality and try again",
        limit / (1024 * 1024)
    )]
    TooLong {
        /// The longest that is taken, in bytes.
        limit: usize,
    },
    /// More pixels than is taken.
    #[error(
        "it has {width} x {height} pixels, and at most {} million are taken, {side} on a side; save it smaller and \
         try again",
        pixels / 1_000_000
    )]
    TooManyPixels {
        /// Its width.
        width: u32,
        /// Its height.
        height: u32,
        /// The most pixels that are taken.
        pixels: u64,
        /// The most on one side.
        side: u32,
    },
    /// HEIC or HEIF, as many phones take them.
    #[error(
        "it is a HEIC picture, which this program cannot read. In the camera's settings choose the format that \
         works everywhere (often called \"most compatible\"), or open the picture and save or share it as JPEG"
    )]
    Heic,
    /// Another known kind of file.
    #[error("it is {found}, and pictures are taken as JPEG or PNG; save it as one of these and try again")]
    OtherKind {
        /// What it is.
        found: OtherKind,
    },
    /// Nothing that this program knows as a picture.
    #[error("it is no JPEG or PNG picture")]
    NotAPicture,
    /// A way of coding that cameras do not use.
    #[error(
        "it is a kind of {kind} that few programs read ({what}); open it and save it again as an ordinary {kind}"
    )]
    Unusual {
        /// JPEG or PNG.
        kind: &'static str,
        /// What is unusual.
        what: &'static str,
    },
    /// Cut short: its end is missing.
    #[error("its end is missing; it was probably not copied in full. Copy it again, or take it again")]
    CutShort,
    /// A part of it was asked for, and nothing of it lies there.
    #[error("nothing of it lies in the part that was asked for")]
    NothingThere,
    /// Anything in it that does not fit.
    #[error("it is damaged ({what}); copy it again, or take it again")]
    Damaged {
        /// What does not fit.
        what: &'static str,
    },
}

/// A kind of file that is no JPEG or PNG picture, and known for what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum OtherKind {
    /// An AVIF picture.
    #[error("an AVIF picture")]
    Avif,
    /// A film.
    #[error("a film")]
    Film,
    /// A WebP picture.
    #[error("a WebP picture")]
    WebP,
    /// A GIF picture.
    #[error("a GIF picture")]
    Gif,
    /// A TIFF picture, or a camera's raw one.
    #[error("a TIFF or raw picture")]
    Tiff,
    /// A BMP picture.
    #[error("a BMP picture")]
    Bmp,
    /// A PDF document.
    #[error("a PDF document")]
    Pdf,
}

impl PictureFault {
    pub(crate) const fn damaged(what: &'static str) -> Self {
        Self::Damaged { what }
    }
}
