//! Which way up a picture is: the one thing that stays in the file of what a camera writes beside the pixels.
//!
//! Exif 2.32 (CIPA DC-008), 4.6.2 and table 4: the tag Orientation (0x0112, one SHORT) in the first directory of a
//! TIFF structure (TIFF 6.0, section 2).

use super::tiff::Tiff;

/// Which way up a picture is (TIFF 6.0, page 36): 1 as it lies in the file, 3 turned by half, 6 and 8 by a quarter
/// clockwise and back; 2, 4, 5 and 7 are mirrored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Orientation(u8);

/// Tag of the orientation.
const TAG: u16 = 0x0112;

impl Orientation {
    /// As it lies in the file.
    pub const UPRIGHT: Self = Self(1);

    /// The value of the tag, 1 to 8.
    pub const fn tag(self) -> u8 {
        self.0
    }

    /// Reads the tag from a TIFF structure. What is not there, or not well formed, counts as upright: a picture is
    /// not worth less because a program wrote its extras badly.
    pub(super) fn of_tiff(tiff: &[u8]) -> Self {
        Self::find(tiff).unwrap_or(Self::UPRIGHT)
    }

    fn find(bytes: &[u8]) -> Option<Self> {
        let tiff = Tiff::of(bytes)?;
        let value = u8::try_from(tiff.one_short(&tiff.entry(TAG)?)?).ok()?;
        (1..=8).contains(&value).then_some(Self(value))
    }

    /// A TIFF structure that holds this tag and nothing else; nothing if the picture is upright.
    pub(super) fn to_tiff(self) -> Option<[u8; 26]> {
        (self != Self::UPRIGHT).then_some([
            b'M', b'M', 0, 42, // big-endian TIFF
            0, 0, 0, 8, // the first directory follows
            0, 1, // it has one entry:
            1, 0x12, 0, 3, 0, 0, 0, 1, 0, self.0, 0, 0, // Orientation, SHORT, one value
            0, 0, 0, 0, // and there is no second directory
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_reads_back() {
        assert_eq!(Orientation::UPRIGHT.to_tiff(), None);
        for tag in 2..=8 {
            let tiff = Orientation(tag).to_tiff().unwrap();
            assert_eq!(Orientation::of_tiff(&tiff), Orientation(tag));
            for end in 0..20 {
                assert_eq!(Orientation::of_tiff(&tiff[..end]), Orientation::UPRIGHT, "cut at {end}");
            }
        }
    }

    #[test]
    fn little_endian_and_other_tags_before() {
        // By hand after TIFF 6.0, section 2: Make (0x010F, ASCII, 4 bytes in place), then Orientation 6.
        let tiff = [
            b'I', b'I', 42, 0, 8, 0, 0, 0, 2, 0, 0x0F, 1, 2, 0, 4, 0, 0, 0, b'a', b'b', b'c', 0, 0x12, 1, 3,
            0, 1, 0, 0, 0, 6, 0, 0, 0, 0, 0, 0, 0,
        ];
        assert_eq!(Orientation::of_tiff(&tiff).tag(), 6);
        let mut wrong = tiff;
        wrong[30] = 9;
        assert_eq!(Orientation::of_tiff(&wrong), Orientation::UPRIGHT);
        wrong[4] = 0xFF;
        assert_eq!(Orientation::of_tiff(&wrong), Orientation::UPRIGHT);
    }
}
