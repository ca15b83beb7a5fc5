//! A rectangle of a picture that means the same whatever its size in pixels.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::crop::Crop;
use super::pixels::Area;

/// A rectangle of a picture the right way up, in ten-thousandths of its width and of its height. It lies within the picture, and
/// something lies within it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Piece {
    left: u32,
    top: u32,
    width: u32,
    height: u32,
}

impl Piece {
    /// What the width and the height of a picture are divided into.
    pub const PARTS: u32 = 10_000;

    /// All of a picture.
    pub const WHOLE: Self = Self { left: 0, top: 0, width: Self::PARTS, height: Self::PARTS };

    /// A rectangle within a picture; `None` where it reaches beyond it or nothing lies within it.
    pub fn new(left: u32, top: u32, width: u32, height: u32) -> Option<Self> {
        let is_within =
            |from: u32, side: u32| side > 0 && from.checked_add(side).is_some_and(|to| to <= Self::PARTS);
        (is_within(left, width) && is_within(top, height)).then_some(Self { left, top, width, height })
    }

    /// The rectangle between two corners that lie across from each other, whichever comes first: across and down. What lies
    /// beyond the edges is drawn in to them; `None` where nothing lies between.
    pub fn between(one: (u32, u32), other: (u32, u32)) -> Option<Self> {
        let span = |one: u32, other: u32| {
            let (one, other) = (one.min(Self::PARTS), other.min(Self::PARTS));
            (one.min(other), one.abs_diff(other))
        };
        let ((left, width), (top, height)) = (span(one.0, other.0), span(one.1, other.1));
        Self::new(left, top, width, height)
    }

    /// The smallest one around an area in pixels of a picture of this size; `None` where nothing of it lies there.
    pub fn around(area: Area, size: (u32, u32)) -> Option<Self> {
        let Area { left, top, width, height } = area.within(size)?;
        let span = |from: u32, pixels: u32, side: u32| {
            let parts = |at: u64| at * u64::from(Self::PARTS);
            let from_parts = parts(from.into()) / u64::from(side);
            let to_parts = parts(u64::from(from) + u64::from(pixels)).div_ceil(u64::from(side));
            Some((u32::try_from(from_parts).ok()?, u32::try_from(to_parts).ok()?))
        };
        let ((left, right), (top, bottom)) = (span(left, width, size.0)?, span(top, height, size.1)?);
        Self::between((left, top), (right, bottom))
    }

    /// The same in pixels of a picture of this size: no pixel of it is left out.
    pub fn area(self, size: (u32, u32)) -> Area {
        let span = |from: u32, parts: u32, side: u32| {
            let pixels = |at: u32| u64::from(at) * u64::from(side);
            let begin = pixels(from) / u64::from(Self::PARTS);
            let end = pixels(from + parts).div_ceil(u64::from(Self::PARTS));
            let pixels = |at: u64| u32::try_from(at).unwrap_or(side);
            (pixels(begin), pixels(end - begin))
        };
        let ((left, width), (top, height)) =
            (span(self.left, self.width, size.0), span(self.top, self.height, size.1));
        Area { left, top, width, height }
    }

    /// The same to be cut out, with at most so many pixels on its longer side.
    pub fn crop(self, most_pixels: u32) -> Crop {
        let share = |parts: u32| f64::from(parts) / f64::from(Self::PARTS);
        let (left, top) = (share(self.left), share(self.top));
        Crop { left, top, width: share(self.width), height: share(self.height), most_pixels }
    }

    /// Left edge, upper edge, width, height.
    pub const fn sides(self) -> [u32; 4] {
        [self.left, self.top, self.width, self.height]
    }

    /// Its middle, across and down.
    pub const fn middle(self) -> (u32, u32) {
        (self.left + self.width / 2, self.top + self.height / 2)
    }
}

impl fmt::Display for Piece {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}-{}-{}-{}", self.left, self.top, self.width, self.height)
    }
}

/// A text that names no rectangle within a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoPiece;

impl fmt::Display for NoPiece {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("no rectangle within a picture")
    }
}

impl FromStr for Piece {
    type Err = NoPiece;

    fn from_str(text: &str) -> Result<Self, NoPiece> {
        let sides: Result<Vec<u32>, _> = text.split('-').map(str::parse).collect();
        match sides.map_err(|_| NoPiece)?[..] {
            [left, top, width, height] => Self::new(left, top, width, height).ok_or(NoPiece),
            _ => Err(NoPiece),
        }
    }
}

impl TryFrom<String> for Piece {
    type Error = NoPiece;

    fn try_from(text: String) -> Result<Self, NoPiece> {
        text.parse()
    }
}

impl From<Piece> for String {
    fn from(piece: Piece) -> Self {
        piece.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_of_two_corners_says_nothing_and_beyond_the_edges_is_drawn_in() {
        let wanted = Piece::new(1000, 2000, 3000, 500);
        for (one, other) in [
            ((1000, 2000), (4000, 2500)),
            ((4000, 2500), (1000, 2000)),
            ((4000, 2000), (1000, 2500)),
            ((1000, 2500), (4000, 2000)),
        ] {
            assert_eq!(Piece::between(one, other), wanted);
        }
        assert_eq!(Piece::between((9000, 9000), (u32::MAX, 20_000)), Piece::new(9000, 9000, 1000, 1000));
        assert_eq!(Piece::between((5, 5), (5, 900)), None);
        assert_eq!(Piece::between((u32::MAX, 0), (12_000, 900)), None);
    }

    #[test]
    fn what_reaches_beyond_a_picture_is_none_and_what_is_written_is_read() {
        for (left, top, width, height) in
            [(0, 0, 0, 1), (0, 0, 10_001, 1), (9_999, 0, 2, 1), (u32::MAX, 0, 1, 1), (1, 0, u32::MAX, 1)]
        {
            assert_eq!(Piece::new(left, top, width, height), None);
            assert_eq!(format!("{left}-{top}-{width}-{height}").parse::<Piece>(), Err(NoPiece));
        }
        for text in ["", "1", "1-2-3", "1-2-3-4-5", "a-2-3-4", "-1-2-3-4", "1.5-2-3-4"] {
            assert_eq!(text.parse::<Piece>(), Err(NoPiece), "{text}");
        }
        let piece = Piece::new(12, 3_400, 5_600, 78).unwrap();
        assert_eq!(piece.to_string().parse(), Ok(piece));
    }

    #[test]
    fn an_area_and_its_piece_cover_each_other() {
        let size = (4032, 3024);
        assert_eq!(Piece::WHOLE.area(size), Area { left: 0, top: 0, width: 4032, height: 3024 });
        let area = Area { left: 1, top: 3000, width: 7, height: 99 };
        let piece = Piece::around(area, size).unwrap();
        let found = piece.area(size);
        assert!(found.left <= 1 && found.left + found.width >= 8, "{found:?}");
        assert!(found.top <= 3000 && found.top + found.height == 3024, "{found:?}");
        assert_eq!(Piece::around(Area { left: 4032, ..area }, size), None);
    }
}
