//! The names by which a sheet calls kinds and states. They are those of the record where it has one.

use house::record::{CableKind, Named};
use phrase::Phrase;

use super::table::one_of;

/// Reads the name of a member of a closed list. Case, blanks and dashes do not matter: `Ground block` is
/// `ground_block`.
///
/// # Errors
/// The names that are taken, with the nearest.
pub fn named<T: Named>(text: &str) -> Result<T, Phrase> {
    let plain = text.trim().to_lowercase().replace([' ', '-'], "_");
    T::of_name(&plain).ok_or_else(|| one_of("sheet-one-of", text, T::ALL.iter().map(|member| member.name())))
}

/// The series of cables as they stand on jackets.
const SERIES: [(&str, CableKind); 5] = [
    ("6", CableKind::Six),
    ("59", CableKind::FiftyNine),
    ("7", CableKind::Seven),
    ("11", CableKind::Eleven),
    ("unknown", CableKind::Unknown),
];

/// A cable's series: `RG-6/U`, `6 series` and `6` are the same.
///
/// # Errors
/// The series that there are, with the nearest.
pub fn series(text: &str) -> Result<CableKind, Phrase> {
    let print = text.trim_start_matches(['R', 'r', 'G', 'g']).trim_start_matches(['-', ' ']);
    let print = print.trim_end_matches("/U").trim_end_matches("series").trim();
    let found = SERIES.iter().find(|(name, _)| *name == print.to_lowercase());
    found
        .map(|(_, series)| *series)
        .ok_or_else(|| one_of("sheet-one-of", print, SERIES.iter().map(|(name, _)| *name)))
}

/// The MoCA versions as the record writes them.
const VERSIONS: [&str; 5] = ["1.0", "1.1", "2.0", "2.0 bonded", "2.5"];

/// A MoCA version.
///
/// # Errors
/// The versions there are.
pub fn moca_version(text: &str) -> Result<String, Phrase> {
    let found = VERSIONS.iter().find(|version| version.eq_ignore_ascii_case(text));
    found
        .map(|version| (*version).to_owned())
        .ok_or_else(|| one_of("sheet-one-of", text, VERSIONS.iter().copied()))
}

#[cfg(test)]
mod tests {
    use house::record::PartKind;
    use phrase::Arg;

    use super::*;

    #[test]
    fn every_series_has_its_name() {
        for series in CableKind::ALL {
            assert!(SERIES.iter().any(|(_, of)| of == series), "{series:?}");
        }
    }

    #[test]
    fn a_name_nearly_right_brings_the_right_one() {
        assert_eq!(named::<PartKind>("Ground block"), Ok(PartKind::GroundBlock));
        assert_eq!(named::<PartKind>("high-pass filter"), Ok(PartKind::HighPassFilter));
        let near = named::<PartKind>("spliter").unwrap_err();
        assert_eq!(near.args.first(), Some(&("near", Arg::Text("splitter".into()))));
        assert_eq!(near.id, "sheet-one-of-near");
        assert_eq!(series("58").unwrap_err().id, "sheet-one-of-near");
        assert_eq!(named::<PartKind>("quux").unwrap_err().id, "sheet-one-of");
    }
}
