//! Photos: taking a picture in, without what it tells about place and camera, and finding it again.
//!
//! A picture is cleaned at the level of its markers or chunks: what is needed to decode it stays bit for bit, what
//! is not is cut, and whatever follows its end is dropped. Which way up it is stays in a tag that says nothing else; when it
//! was taken is read before that, and becomes a fact beside it.
//! What is stored is named by its SHA-256, synced to the disk, and only then named in a fact.
//!
//! This folder does not know what parts are, and does not draw or recognise anything.

mod crop;
mod file;
mod intake;
mod jpeg;
mod orientation;
mod picture;
mod piece;
mod pixels;
mod png;
mod png_data;
mod small;
mod taken_at;
mod thumbnail;
mod tiff;

pub use crate::error::PictureFault;
pub use crop::Crop;
pub(crate) use file::{open_photo, sha256_of, sound_photo};
pub use intake::MOST_PHOTOS;
pub use orientation::Orientation;
pub use picture::{MAX_PICTURE_BYTES, MAX_PIXELS, MAX_SIDE, Picture, PictureKind};
pub use piece::{NoPiece, Piece};
pub use pixels::{Area, Pixels};
pub use small::PIECE_SIDE;
pub use taken_at::{NoTime, TakenAt};
pub use thumbnail::THUMBNAIL_SIDE;
