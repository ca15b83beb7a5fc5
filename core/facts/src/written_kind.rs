//! What is written into a file that somebody names: its ending says what is in it, and it never takes the place of a file
//! of another kind.

use std::io::Read as _;
use std::path::Path;

use crate::error::FactsError;
use crate::file;

/// So much of a file tells what it is.
const BEGINNING: usize = 512;

/// A kind of file that is written for people.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrittenKind {
    /// A page to read and print.
    Report,
    /// A survey packed into one file.
    Packed,
    /// A photo as JPEG.
    Jpeg,
    /// A photo as PNG.
    Png,
}

impl WrittenKind {
    /// The kind of a picture's bytes.
    pub fn of_picture(bytes: &[u8]) -> Self {
        if bytes.starts_with(b"\x89PNG") { Self::Png } else { Self::Jpeg }
    }

    /// How its names end, the usual one first.
    pub const fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Report => &["html", "htm"],
            Self::Packed => &[file::FILE_EXTENSION],
            Self::Jpeg => &["jpg", "jpeg"],
            Self::Png => &["png"],
        }
    }

    fn usual_ending(self) -> &'static str {
        self.endings().first().copied().unwrap_or_default()
    }

    /// Whether a name ends as those of this kind do.
    pub fn is_named(self, place: &Path) -> bool {
        let end = place.extension().unwrap_or_default();
        self.endings().iter().any(|ending| end.eq_ignore_ascii_case(ending))
    }

    /// Whether what stands there is of this kind.
    fn stands_at(self, place: &Path) -> bool {
        if self == Self::Packed {
            return file::recognise(place);
        }
        let mut beginning = Vec::new();
        let read = std::fs::File::open(place)
            .and_then(|file| file.take(BEGINNING as u64).read_to_end(&mut beginning));
        let text = String::from_utf8_lossy(&beginning).trim_start().to_lowercase();
        read.is_ok()
            && match self {
                Self::Report => text.starts_with("<!doctype html") || text.starts_with("<html"),
                Self::Jpeg => beginning.starts_with(b"\xff\xd8"),
                Self::Png => beginning.starts_with(b"\x89PNG"),
                Self::Packed => false,
            }
    }

    /// Refuses a name that says something else, and a place where a file of another kind stands.
    ///
    /// # Errors
    /// [`FactsError::OtherEnding`] or [`FactsError::OtherKindThere`].
    pub fn refuse_unfit(self, place: &Path) -> Result<(), FactsError> {
        let (file, ending) = (place.to_owned(), self.usual_ending());
        if !self.is_named(place) {
            return Err(FactsError::OtherEnding { file, ending });
        }
        // An empty file is no file of another kind.
        let holds_something = place.metadata().is_ok_and(|found| found.is_file() && found.len() > 0);
        if holds_something && !self.stands_at(place) {
            return Err(FactsError::OtherKindThere { file, ending });
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_report_goes_into_no_survey_and_over_nothing_but_a_report() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        let refused = |kind: WrittenKind, name: &str| kind.refuse_unfit(&at(name)).err();
        assert!(matches!(
            refused(WrittenKind::Report, "house.lwk"),
            Some(FactsError::OtherEnding { ending: "html", .. })
        ));
        assert!(matches!(
            refused(WrittenKind::Packed, "house"),
            Some(FactsError::OtherEnding { ending: "lwk", .. })
        ));
        assert!(
            refused(WrittenKind::Report, "House.HTML").is_none()
                && refused(WrittenKind::Jpeg, "a.jpeg").is_none()
        );
        let stands =
            [("a.html", "dear diary", false), ("b.html", "<!DOCTYPE html><p>", true), ("c.html", "", true)];
        for (name, text, is_fit) in stands {
            std::fs::write(at(name), text).unwrap();
            assert_eq!(refused(WrittenKind::Report, name).is_none(), is_fit, "{name}");
        }
        std::fs::write(at("d.lwk"), "<!DOCTYPE html>").unwrap();
        assert!(matches!(refused(WrittenKind::Packed, "d.lwk"), Some(FactsError::OtherKindThere { .. })));
        std::fs::write(at("e.png"), b"\x89PNG\r\n").unwrap();
        assert!(refused(WrittenKind::Png, "e.png").is_none());
        assert_eq!(WrittenKind::of_picture(b"\xff\xd8\xff"), WrittenKind::Jpeg);
    }
}
