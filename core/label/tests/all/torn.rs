//! Numbers of which digits were not seen, by what stands beside them.

use label::seen::{SeenUnit, Unsure};

use crate::seen::{label, number};

/// Seen on a photo: the point of a loss was lost by both looks, or its beginning under a glare.
#[test]
fn decibels_that_may_be_the_end_of_a_figure_are_asked() {
    for row in ["OUT3 6 9 dB", "2 dB", "3dB"] {
        let found = label(&["SPLITTER 4-WAY", row]);
        let decibels: Vec<_> =
            found.numbers.iter().filter(|number| number.unit == SeenUnit::Decibels).collect();
        assert!(decibels.iter().all(|number| !number.is_sure()), "{row}: {decibels:?}");
    }
    assert!(number(&label(&["SPLITTER 4-WAY", "OUT3 6.9 dB"]), 6.9).is_sure());
}

/// Seen on photos: 54-1218 and -24 of which a digit was lost.
#[test]
fn a_gap_at_a_sign_may_be_a_digit_that_was_not_seen() {
    let is_torn =
        |row: &str, value: f64| number(&label(&["2-WAY SPLITTER", row]), value).unsure.contains(&Unsure::Cut);
    for (row, asked) in [
        ("FWD 5 -1218 MHz", 5.0),
        ("FWD 54- 218 MHz", 218.0),
        ("FWD 5 ~1218 MHz", 5.0),
        ("PASS 5~ 1002 MHz", 1002.0),
        ("FWD 5 TO1218 MHz", 5.0),
        ("FWD 8 5-1218 MHz", 5.0),
        ("9 50-2150 MHz", 50.0),
        ("TAP - 4 dB", 4.0),
        ("TAP - 4.5 dB", 4.5),
        ("IN- 8 dB", 8.0),
        ("GAIN + 5 dB", 5.0),
        ("RL > 8 dB", 8.0),
        ("CATV- 82 FT", 82.0),
        ("04:82 FT", 82.0),
        ("CATV 4-82 FT", 82.0),
    ] {
        assert!(is_torn(row, asked), "{row}");
    }
    for (row, taken) in [
        ("BAND 54 - 1218 MHz", 54.0),
        ("BAND 54 - 1218 MHz", 1218.0),
        ("BAND 54-1218 MHz", 54.0),
        ("FWD 5 -1218 MHz", 1218.0),
        ("FWD 5-42 54-1218 MHz", 54.0),
        ("BAND 5 to 1218 MHz", 5.0),
        ("OUT -7 dB", 7.0),
        ("RL >18 dB", 18.0),
    ] {
        assert!(!is_torn(row, taken), "{row}");
    }
}

/// Seen on a photo: a mark of length that fell apart.
#[test]
fn a_mark_right_behind_a_number_is_asked() {
    let rows = [
        "CATV 05 18 m",
        "CATV-05 18 m",
        "11-05 18 m",
        "RG-06 18 m",
        "CATV-6 18 m",
        "75 OHM-11 18 m",
        "6 18 m",
    ];
    for row in rows {
        let torn = label(&["RG-59/U 75 OHM SWEPT TO 3 GHz", row]);
        assert!(!number(&torn, 18.0).is_sure(), "{row}: {torn:?}");
    }
    let rows = [
        "CATV 0518 m",
        "RG-6 0518 m",
        "SERIES 6 0518 m",
        "SERIES-6 0518 m",
        "RG-6 1699 FT / 518 m",
        "RG-6 1699 FT (518 m)",
    ];
    for row in rows {
        assert!(number(&label(&[row]), 518.0).is_sure(), "{row}");
    }
}
