//! When a picture was taken, by the clock of its camera: read before the rest of what the camera wrote is cut.
//!
//! Exif 2.32 (CIPA DC-008), 4.6.5: the tag `DateTimeOriginal` (0x9003) in the Exif directory (0x8769), twenty bytes of ASCII,
//! `YYYY:MM:DD HH:MM:SS` and a zero; blanks where it is not known. The zone of the clock, which a later tag may tell, is
//! not read: it would say something of the place.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::tiff::Tiff;

/// The entry of the first directory that leads to the Exif directory.
const EXIF_DIRECTORY: u16 = 0x8769;
/// Tag of the time at which the picture was taken.
const TAKEN: u16 = 0x9003;

/// A time of a camera's clock, to the second and without a zone. Its text is `2026-05-31T14:05:09`, and so it stands in a fact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct TakenAt {
    year: u16,
    month: u8,
    day: u8,
    hour: u8,
    minute: u8,
    second: u8,
}

/// A text that is no time of a camera's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoTime;

impl fmt::Display for NoTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("no time as 2026-05-31T14:05:09")
    }
}

impl TakenAt {
    /// The time of a TIFF structure.
    pub(super) fn of_tiff(bytes: &[u8]) -> Option<Self> {
        let tiff = Tiff::of(bytes)?;
        let text = tiff.ascii(&tiff.entry_behind(EXIF_DIRECTORY, TAKEN)?)?;
        Self::parse(text.strip_suffix(&[0])?, [b':', b':', b' ', b':', b':'])
    }

    /// The date, the hour and the minute, as people read them: `2026-05-31 14:05`.
    pub fn to_minute(self) -> String {
        let Self { year, month, day, hour, minute, .. } = self;
        format!("{year:04}-{month:02}-{day:02} {hour:02}:{minute:02}")
    }

    /// Six figures with these marks between them, nothing else. A clock that was never set says a date that is none.
    fn parse(text: &[u8], marks: [u8; 5]) -> Option<Self> {
        const STARTS: [usize; 6] = [0, 5, 8, 11, 14, 17];
        const LENGTH: usize = 19;
        let marked = STARTS.iter().skip(1).zip(marks).all(|(start, mark)| text.get(start - 1) == Some(&mark));
        if text.len() != LENGTH || !marked {
            return None;
        }
        let mut figures = [0_u16; 6];
        for (figure, start) in figures.iter_mut().zip(STARTS) {
            let digits = text.get(start..start + if start == 0 { 4 } else { 2 })?;
            if !digits.iter().all(u8::is_ascii_digit) {
                return None;
            }
            *figure = digits.iter().fold(0, |so_far, digit| so_far * 10 + u16::from(digit - b'0'));
        }
        let [year, rest @ ..] = figures;
        let [month, day, hour, minute, second] = rest.map(|figure| u8::try_from(figure).unwrap_or(u8::MAX));
        let is_one = year > 0
            && (1..=12).contains(&month)
            && (1..=days(year, month)).contains(&day)
            && hour < 24
            && minute < 60
            && second < 60;
        is_one.then_some(Self { year, month, day, hour, minute, second })
    }
}

/// How many days a month has (Gregorian).
fn days(year: u16, month: u8) -> u8 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400)) => 29,
        2 => 28,
        _ => 31,
    }
}

impl fmt::Display for TakenAt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { year, month, day, hour, minute, second } = self;
        write!(f, "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}")
    }
}

impl FromStr for TakenAt {
    type Err = NoTime;

    fn from_str(text: &str) -> Result<Self, NoTime> {
        Self::parse(text.as_bytes(), [b'-', b'-', b'T', b':', b':']).ok_or(NoTime)
    }
}

impl TryFrom<String> for TakenAt {
    type Error = NoTime;

    fn try_from(text: String) -> Result<Self, NoTime> {
        text.parse()
    }
}

impl From<TakenAt> for String {
    fn from(taken: TakenAt) -> Self {
        taken.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_its_text() {
        for text in
            ["2026-05-31T14:05:09", "0001-01-01T00:00:00", "2024-02-29T23:59:59", "2000-02-29T00:00:00"]
        {
            assert_eq!(text.parse::<TakenAt>().unwrap().to_string(), text);
        }
        for text in [
            "",
            "2026-05-31",
            "2026-05-31 14:05:09",
            "2026-05-31T14:05:09Z",
            "2026-13-01T00:00:00",
            "2026-00-01T00:00:00",
            "2026-04-31T00:00:00",
            "2023-02-29T00:00:00",
            "1900-02-29T00:00:00",
            "2026-05-31T24:00:00",
            "2026-05-31T14:60:00",
            "2026-05-31T14:05:60",
            "0000-01-01T00:00:00",
            "2026-05-31T14:05:+9",
            "２０２６-05-31T1",
        ] {
            assert_eq!(text.parse::<TakenAt>(), Err(NoTime), "{text}");
        }
    }
}
