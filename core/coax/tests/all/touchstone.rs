//! Touchstone files: examples in the layouts of the specification, what scikit-rf writes, and bytes of any kind.

use std::path::PathBuf;
use std::sync::Arc;

use coax::model::{Cable, Measured};
use coax::touchstone::{TouchstoneError, read, read_named};
use coax::{Complex64, Megahertz, Metres, Model, ScatterMatrix};
use proptest::prelude::*;

fn at(part: &Measured, megahertz: f64) -> ScatterMatrix {
    let mut matrix = ScatterMatrix::new(0);
    Model::Measured(Arc::new(part.clone())).scatter(Megahertz(megahertz), &mut matrix);
    matrix
}

fn close(found: Complex64, re: f64, im: f64, within: f64) {
    assert!((found - Complex64::new(re, im)).norm() <= within, "{found} is not {re} + {im}i");
}

#[test]
fn a_two_port_stands_in_the_order_11_21_12_22() {
    let text = b"! invented\n# MHz S RI R 75\n100 0.1 0 0.5 0.2 0.3 -0.1 0.4 0 ! all on one line\n\
                 200 0.1 0 0.5 0.2 0.3 -0.1 0.4 0\n";
    let part = read(text).unwrap();
    assert_eq!(part.ports(), 2);
    assert!(!part.is_reciprocal() && part.is_passive());
    let s = at(&part, 100.0);
    close(s.at(0, 0), 0.1, 0.0, 1e-15);
    close(s.at(1, 0), 0.5, 0.2, 1e-15);
    close(s.at(0, 1), 0.3, -0.1, 1e-15);
    close(s.at(1, 1), 0.4, 0.0, 1e-15);
}

#[test]
fn nothing_said_means_gigahertz_magnitude_and_fifty_ohm() {
    // A short is a short at any resistance: -1. 75 ohm measured against 50: (75 - 50)/(75 + 50) = 0.2, so nothing at 75.
    let part = read(b"#\n1 1 180\n1.5 0.2 0\n").unwrap();
    assert_eq!(part.ports(), 1);
    assert_eq!(part.range(), (Megahertz(1000.0), Megahertz(1500.0)));
    close(at(&part, 1000.0).at(0, 0), -1.0, 0.0, 1e-12);
    close(at(&part, 1500.0).at(0, 0), 0.0, 0.0, 1e-12);
}

#[test]
fn decibels_and_degrees() {
    // -6.0206 dB is half the amplitude.
    let part = read(b"# khz s db r 75\n5000 -6.0206 90\n6000 -6.0206 -90").unwrap();
    close(at(&part, 5.0).at(0, 0), 0.0, 0.5, 1e-6);
}

#[test]
fn rows_wrap_after_four_pairs_and_ports_are_counted() {
    // A matched three-port and a five-port, whose rows take two lines each.
    let three = b"# GHz S MA R 75\n1.0 0 0 0.7 0 0.5 0\n0.7 0 0 0 0.1 90\n0.5 0 0.1 90 0 0\n";
    let part = read(three).unwrap();
    assert_eq!(part.ports(), 3);
    close(at(&part, 1000.0).at(2, 1), 0.0, 0.1, 1e-12);
    let mut five = String::from("# GHz S MA R 75\n");
    for f in ["1.0", "2.0"] {
        for row in 0..5 {
            let entry = |column: usize| format!(" 0.0{}{} 0", row.min(column), row.max(column));
            five += if row == 0 { f } else { " " };
            five += &(0..4).map(entry).collect::<String>();
            five += &["\n ", &entry(4), "\n"].concat();
        }
    }
    let part = read(five.as_bytes()).unwrap();
    assert_eq!(part.ports(), 5);
    close(at(&part, 1000.0).at(4, 2), 0.024, 0.0, 1e-12);
    assert_eq!(read_named("part.S5P", five.as_bytes()).unwrap(), part);
    assert!(read_named("part.s2p", five.as_bytes()).is_err());
}

#[test]
fn noise_data_are_passed_over() {
    let text =
        b"# MHz S RI R 75\n100 0 0 0.5 0 0.5 0 0 0\n200 0 0 0.5 0 0.5 0 0 0\n! noise\n50 2.5 0.3 40 0.2\n\
                 150 2.6 0.3 50 0.2\n";
    let part = read(text).unwrap();
    assert_eq!(part.range(), (Megahertz(100.0), Megahertz(200.0)));
}

/// The layouts of version 2.0: keywords, a triangle of a matrix, a resistance for each port.
#[test]
fn version_2_states_its_layout() {
    let text =
        b"[Version] 2.0\n# MHz S RI\n[Number of Ports] 3\n[Number of Frequencies] 2\n[Reference] 75\n75 75\n\
        [Matrix Format] Lower\n[Begin Information]\nanything [at] all\n[End Information]\n[Network Data]\n\
        100 0.1 0\n 0.2 0 0.3 0\n 0.4 0 0.5 0 0.6 0\n200 0.1 0 0.2 0 0.3 0 0.4 0 0.5 0 0.6 0\n[End]\nrubbish";
    let part = read(text).unwrap();
    let s = at(&part, 100.0);
    close(s.at(0, 2), 0.4, 0.0, 1e-15);
    close(s.at(2, 1), 0.5, 0.0, 1e-15);
    close(s.at(2, 2), 0.6, 0.0, 1e-15);
    let order = |order: &str| {
        let text = format!(
            "[Version] 2.0\n# MHz S RI R 75\n[Number of Ports] 2\n{order}\n[Network Data]\n1 0 0 0.1 0 0.2 0 0 0\n\
             [Noise Data]\n1 2 3 4 5\n[End]\n"
        );
        read(text.as_bytes())
    };
    close(at(&order("[Two-Port Data Order] 12_21").unwrap(), 1.0).at(0, 1), 0.1, 0.0, 1e-15);
    close(at(&order("[Two-Port Data Order] 21_12").unwrap(), 1.0).at(0, 1), 0.2, 0.0, 1e-15);
    assert_eq!(
        order(""),
        Err(TouchstoneError::KeywordMissing { keyword: "Two-Port Data Order" }),
        "a guess would swap the two directions"
    );
}

#[test]
fn what_cannot_be_read_is_refused_with_its_line() {
    let refused = |text: &str| read(text.as_bytes()).unwrap_err().to_string();
    let cases = [
        ("", "the number of ports cannot be told"),
        ("# MHz S RI R 75\n100 0 0\n100 0 0", "line 3: the frequency 100 MHz is not above"),
        ("# MHz S RI R 75\n100 0 0\n200 0 nan", "line 3: \"nan\" is not a number"),
        ("# MHz S RI R 75\n100 0 0\n200 0 1e400", "line 3: \"1e400\" is not a number"),
        ("# MHz S DB R 75\n100 9999 0", "line 2: \"9999 0\" is not a number"),
        ("# MHz Z RI R 75\n100 0 0", "line 1: the file holds Z parameters"),
        ("# MHz S RI R 0\n100 0 0", "line 1: \"0\" cannot stand in the option line"),
        ("# MHz S RI R\n100 0 0", "line 1: \"R\" cannot stand"),
        ("# furlongs\n100 0 0", "line 1: \"furlongs\" cannot stand"),
        ("# MHz S RI R 75\n100 0 0 0 0", "the number of ports cannot be told"),
        ("[Version] 3.0\n# MHz S RI R 75\n100 0 0", "line 1: \"[version]\""),
        (
            "[Version] 2.0\n# MHz\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n1 0 0",
            "announces 2",
        ),
        ("[Version] 2.0\n# MHz\n[Number of Ports] 17\n[Network Data]\n1 0 0", "17 ports"),
        (
            "[Version] 2.0\n# MHz\n[Number of Ports] 1\n[Reference] 50 75\n[Network Data]\n1 0 0",
            "reference resistances",
        ),
        (
            "[Version] 2.0\n# MHz\n[Number of Ports] 1\n[Mixed-Mode Order] D1,2\n[Network Data]\n1 0 0",
            "mixed-mode",
        ),
        // An active one-port that answers 75 ohm with an endless wave.
        ("# MHz S RI R 50\n100 5 0", "at 100 MHz the values cannot be turned to 75 ohm"),
    ];
    for (text, expected) in cases {
        let found = refused(text);
        assert!(found.contains(expected), "{text:?}: {found}");
    }
    let cut = read_named("a.s2p", b"# MHz S RI R 75\n100 0 0 0 0 0 0 0 0\n200 0 0 0 0").unwrap_err();
    assert_eq!(cut, TouchstoneError::CutShort { line: 3, given: 5, needed: 9, ports: 2 });
    let large = vec![b'1'; coax::touchstone::MOST_BYTES + 1];
    assert!(matches!(read(&large), Err(TouchstoneError::TooLarge { .. })));
}

/// A cable measured every 40 MHz, whose phase turns by more than a third of a turn between: in between its loss is the
/// cable's (plain interpolation would show up to 6 dB more), its phase too.
#[test]
fn between_its_frequencies_a_measured_cable_stays_a_cable() {
    let cable = Model::Cable(Cable::new(Metres(2.2), 75.0, 0.66, 0.0008, 0.83).unwrap());
    let frequencies: Vec<_> = (0..40).map(|k| Megahertz(50.0 + 40.0 * f64::from(k))).collect();
    let matrices: Vec<_> = frequencies
        .iter()
        .map(|&frequency| {
            let mut matrix = ScatterMatrix::new(0);
            cable.scatter(frequency, &mut matrix);
            matrix
        })
        .collect();
    let part = Measured::new(&frequencies, &matrices).unwrap();
    assert!(part.fastest_turn() > 2.0 && part.fastest_turn() < std::f64::consts::PI);
    assert!(part.is_passive() && part.is_reciprocal());
    for k in 0..1500 {
        let f = 50.0 + f64::from(k);
        let (mut cable_here, measured_here) = (ScatterMatrix::new(0), at(&part, f));
        cable.scatter(Megahertz(f), &mut cable_here);
        let found = measured_here.at(1, 0) / cable_here.at(1, 0);
        assert!((found - 1.0).norm() < 2e-3, "{found} at {f} MHz");
    }
    assert!(part.covers(Megahertz(1125.0), Megahertz(1600.0)));
    assert!(!part.covers(Megahertz(1125.0), Megahertz(1675.0)), "a doubt to show");
    assert_eq!(at(&part, 5.0), at(&part, 50.0), "outside the ends are held");
    assert_eq!(at(&part, 2000.0), at(&part, 1610.0));
}

#[test]
fn ports_can_be_put_in_another_order_and_active_parts_are_known() {
    let text = b"# MHz S RI R 75\n100 0.1 0 2 0 0.3 0 0.4 0\n";
    let part = read(text).unwrap();
    assert!(!part.is_passive());
    let turned = part.with_ports(&[1, 0]).unwrap();
    close(at(&turned, 100.0).at(0, 1), 2.0, 0.0, 1e-15);
    close(at(&turned, 100.0).at(0, 0), 0.4, 0.0, 1e-15);
    for bad in [&[0_usize][..], &[0, 0], &[0, 2], &[0, 1, 2]] {
        assert!(part.with_ports(bad).is_err());
    }
}

#[derive(serde::Deserialize)]
struct Expected {
    file: String,
    frequencies_mhz: Vec<f64>,
    /// At 75 ohm, per frequency row by row.
    re: Vec<Vec<f64>>,
    im: Vec<Vec<f64>>,
    within: f64,
}

/// Files written by scikit-rf (`tests/peer/touchstone.py`), against its own matrices at 75 ohm. `tests/run core` makes them and
/// names their folder.
#[test]
#[ignore = "run by tests/rooms/core, which makes the files"]
fn files_of_scikit_rf_read_as_scikit_rf_has_them() {
    let Some(folder) = std::env::var_os("LEGWORK_TOUCHSTONE").map(PathBuf::from) else {
        panic!("LEGWORK_TOUCHSTONE names no folder of files: bash tests/run core");
    };
    let list = std::fs::read_to_string(folder.join("expected.json")).unwrap();
    let all: Vec<Expected> = serde_json::from_str(&list).unwrap();
    assert!(all.len() >= 40, "only {} files", all.len());
    for expected in all {
        let bytes = std::fs::read(folder.join(&expected.file)).unwrap();
        let part = read(&bytes).unwrap_or_else(|error| panic!("{}: {error}", expected.file));
        assert_eq!(Ok(&part), read_named(&expected.file, &bytes).as_ref(), "{}", expected.file);
        let n = part.ports();
        for ((&f, re), im) in expected.frequencies_mhz.iter().zip(&expected.re).zip(&expected.im) {
            let matrix = at(&part, f);
            assert_eq!(re.len(), n * n);
            for (index, (&re, &im)) in re.iter().zip(im).enumerate() {
                let found = matrix.at(index / n, index % n);
                let off = (found - Complex64::new(re, im)).norm();
                assert!(off <= expected.within, "{} at {f} MHz, entry {index}: off by {off}", expected.file);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let _ = read(&bytes);
    }

    /// Pieces of real files in any order: deeper than bytes alone get.
    #[test]
    fn any_pieces_are_read_or_refused(
        pieces in proptest::collection::vec(
            prop_oneof![
                Just("# MHz S RI R 75\n".to_owned()),
                Just("# S DB\n".to_owned()),
                Just("[Version] 2.0\n".to_owned()),
                Just("[Number of Ports] 2\n".to_owned()),
                Just("[Number of Ports] 99999999999\n".to_owned()),
                Just("[Two-Port Data Order] 12_21\n".to_owned()),
                Just("[Reference] 50 \n".to_owned()),
                Just("[Matrix Format] Upper\n".to_owned()),
                Just("[Network Data]\n".to_owned()),
                Just("[Noise Data]\n[End".to_owned()),
                Just("\n".to_owned()),
                Just("! \u{b0}\r\n".to_owned()),
                any::<f64>().prop_map(|x| format!("{x:e} ")),
                (0.0..2.0_f64).prop_map(|x| format!("{x} ")),
                (1..3000_u32).prop_map(|x| format!("\n{x} ")),
            ],
            0..60,
        ),
        name in prop_oneof![Just("a.s1p"), Just("a.s2p"), Just("b.s3p"), Just("b.s0p"), Just("b.s77p"), Just("x")],
    ) {
        let text = pieces.concat();
        for part in [read(text.as_bytes()), read_named(name, text.as_bytes())].into_iter().flatten() {
            for f in [0.0, 5.0, 1400.0, 1e9] {
                let matrix = at(&part, f);
                for to in 0..part.ports() {
                    for from in 0..part.ports() {
                        prop_assert!(matrix.at(to, from).is_finite());
                    }
                }
            }
        }
    }

    /// What is written in any format, unit and resistance reads back as it was.
    #[test]
    fn a_file_of_any_format_reads_back(
        entries in proptest::collection::vec((0.01..0.9_f64, -3.1..3.1_f64), 9),
        format in 0..3_usize,
        unit in 0..4_usize,
    ) {
        let (name, scale) = [("Hz", 1e6), ("kHz", 1e3), ("MHz", 1.0), ("GHz", 1e-3)][unit];
        let pair = |&(size, phase): &(f64, f64)| match format {
            0 => format!(" {} {}", 20.0 * size.log10(), phase.to_degrees()),
            1 => format!(" {size} {}", phase.to_degrees()),
            _ => format!(" {} {}", size * phase.cos(), size * phase.sin()),
        };
        let rows: Vec<String> =
            entries.chunks(3).map(|row| row.iter().map(pair).collect::<String>()).collect();
        let text = format!(
            "# {name} S {} R 75\n{} {}\n",
            ["DB", "MA", "RI"][format],
            1234.0 * scale,
            rows.join("\n")
        );
        let part = read(text.as_bytes()).unwrap();
        let matrix = at(&part, 1234.0);
        for (index, &(size, phase)) in entries.iter().enumerate() {
            let off = (matrix.at(index / 3, index % 3) - Complex64::from_polar(size, phase)).norm();
            // Entries nearly alike both ways are made alike: -60 dB.
            prop_assert!(off < 1e-3, "{off}");
        }
    }
}
