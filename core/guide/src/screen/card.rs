//! Blocks about one thing of the house: a photo, a label, a reading, a part.

use super::{Aloud, Need};

/// A photo that is there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoShown {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Which photo: [`small_photo`](crate::Guide::small_photo) and [`whole_photo`](crate::Guide::whole_photo) give its files.
    pub photo: String,
    /// What it is, for those who do not see it.
    pub name: String,
    /// Its key if a touch leads on, or picks it.
    pub key: Option<String>,
    /// Whether it is picked; `None` where photos are not picked.
    pub picked: Option<bool>,
}

/// A place for photos.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoSlotBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// The key by which a new photo is given.
    pub key: String,
    /// What is to be photographed.
    pub name: String,
    /// The photos that are there.
    pub photos: Vec<PhotoShown>,
    /// Whether one photo follows another until somebody says that it is enough.
    pub burst: bool,
    /// What it needs: a photo.
    pub need: Need,
    /// The key by which print recognised in a new photo is offered ([`Deed::Print`](crate::Deed::Print)); `None` where
    /// print is of no use.
    pub print_key: Option<String>,
}

/// A piece of a photo: [`photo_piece`](crate::Guide::photo_piece) gives its file. Edges and sides are in ten-thousandths of the
/// width and the height of the photo the right way up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoPiece {
    /// Which photo.
    pub photo: String,
    /// Where it begins, across.
    pub left: u32,
    /// Where it begins, down.
    pub top: u32,
    /// How wide it is.
    pub width: u32,
    /// How high it is.
    pub height: u32,
    /// Where in the photo it is, in a few words, for those who do not see it.
    pub name: String,
}

/// A photo of which a part is chosen, by touches on two corners of it that lie across from each other, whichever comes first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoPartBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// The key by which a touch on it is told ([`Deed::Touch`](crate::Deed::Touch)).
    pub key: String,
    /// What is to be done on it.
    pub name: String,
    /// The photo, all of it.
    pub photo: PhotoPiece,
    /// The corner that was touched, while the other is waited for.
    pub corner: Option<TouchedSpot>,
    /// The part that counts now.
    pub part: Option<PhotoPiece>,
}

/// A place in a photo that was touched, in ten-thousandths of its width and height.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TouchedSpot {
    /// How far across.
    pub across: u32,
    /// How far down.
    pub down: u32,
}

/// One figure read off a label, or recognised in its photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LabelFigure {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// The key by which it is corrected or, where it waits for that, taken.
    pub key: Option<String>,
    /// What it is: "loss to each leg".
    pub name: String,
    /// What it says, with its unit.
    pub says: String,
    /// Whether it counts already; recognised figures wait for a touch.
    pub taken: bool,
    /// Whether it stands open to be corrected.
    pub picked: bool,
    /// What is doubtful about it; may be empty.
    pub doubt: String,
    /// The piece of the photo in which it stands, for the eyes of who confirms it; `None` where it was not read in a photo.
    pub piece: Option<PhotoPiece>,
}

/// A label's photo beside its text and the figures in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LabelBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What it is.
    pub name: String,
    /// The id of the label's photo, if there is one.
    pub photo: Option<String>,
    /// The part of the photo that somebody chose, to be shown large in its place.
    pub part: Option<PhotoPiece>,
    /// The text as it stands.
    pub text: String,
    /// The figures in it, number by number.
    pub figures: Vec<LabelFigure>,
    /// What is doubtful about the whole; may be empty.
    pub doubts: Vec<String>,
}

/// Something measured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadingBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What was measured, and where.
    pub name: String,
    /// What it said, with its unit.
    pub says: String,
    /// How, when and by whom; may be empty.
    pub remark: String,
}

/// One part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key if a touch leads on.
    pub key: Option<String>,
    /// Its tag; may be empty.
    pub tag: String,
    /// What it is.
    pub name: String,
    /// What is known of it, a line each.
    pub lines: Vec<String>,
    /// The id of a photo of it, if there is one.
    pub photo: Option<String>,
}
