//! The made files say what the tokens say, and every ink can be read.

use std::fs;
use std::path::Path;

use look::{Ink, Step, Tokens, Way, contrast, made, pairs, signs_of_project};

#[test]
fn the_made_files_are_those_of_the_tokens() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
    let made = made(&Tokens::of_project().unwrap(), &signs_of_project().unwrap());
    for file in &made {
        let found = fs::read_to_string(folder.join(&file.path)).unwrap_or_default();
        assert!(
            found == file.text,
            "{} says something else than tokens.toml or signs.toml: run `cargo run -p look`",
            file.path
        );
    }
    // And no drawable is left of a sign that is none any more.
    for entry in fs::read_dir(folder.join("android/drawable")).unwrap() {
        let name = format!("android/drawable/{}", entry.unwrap().file_name().display());
        assert!(made.iter().any(|file| file.path == name), "{name} is made from nothing");
    }
}

/// The commands of a path are those of SVG 1.1, 8.3.
#[test]
fn a_way_is_read_step_by_step() {
    let way = |written: &str| Way::try_from(written.to_owned());
    let steps = [
        Step::Move([1.0, 2.5]),
        Step::Line([3.0, 4.0]),
        Step::Curve([1.0, 2.0, 3.0, 4.0, 5.0, 6.0]),
        Step::Close,
        Step::Move([0.0, 24.0]),
    ];
    assert_eq!(way("M1 2.5 L3 4 C1 2 3 4 5 6 Z M0 24").unwrap().steps, steps);
    for wrong in ["L1 2", "M1", "M1 2 3", "m1 2", "M1 2 H3", "M1 2 L25 3", "M1 2 L-1 3", "M1 2 Z 3", "word"] {
        assert!(way(wrong).unwrap_err().contains("no way of a sign"), "{wrong}");
    }
}

#[test]
fn every_ink_can_be_read_on_what_it_lies_on() {
    let pairs = pairs(&Tokens::of_project().unwrap());
    assert!(pairs.len() > 90);
    for pair in pairs {
        let contrast = pair.contrast.unwrap_or_else(|| panic!("{pair:?}: no such ink"));
        assert!(contrast >= pair.least, "{pair:?}");
        assert!(contrast >= pair.wanted, "{pair:?}: readable, and less than is wanted");
    }
}

/// Worked examples: black on white is 21 (W3C, WCAG 2.2, definition of contrast ratio), and `#767676` is the lightest grey
/// that has 4.5 on white, `#949494` the lightest with 3 (W3C, Understanding SC 1.4.3 and 1.4.11, quoted from memory).
#[test]
fn contrast_is_that_of_the_standard() {
    let ink = |written: &str| Ink::try_from(written.to_owned()).unwrap();
    let white = ink("#FFFFFF");
    assert!((contrast(&ink("#000000"), &white) - 21.0).abs() < 1e-9);
    assert!((contrast(&white, &white) - 1.0).abs() < 1e-9);
    for (grey, lighter, floor) in [("#767676", "#777777", 4.5), ("#949494", "#959595", 3.0)] {
        assert!(contrast(&ink(grey), &white) >= floor && contrast(&ink(lighter), &white) < floor);
    }
}

#[test]
fn by_night_and_on_paper_no_ink_is_missing() {
    let tokens = Tokens::of_project().unwrap();
    let names = |inks: &std::collections::BTreeMap<String, Ink>| inks.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&tokens.ink.light), names(&tokens.ink.dark));
    assert_eq!(names(&tokens.ink.light), names(&tokens.ink.print));
}

#[test]
fn a_wrong_ink_is_named() {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("tokens.toml")).unwrap();
    let error = Tokens::of(&text.replacen("#0B5249", "verdigris", 1)).unwrap_err().to_string();
    assert!(error.contains("verdigris is no ink"), "{error}");
}
