//! docs/method.md, section 8, holds every figure that enters a forecast, a level, a finding or the work list: each estimate by its
//! name, and each constant of the code with its value. What stands there is in the code.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::{fs, io};

const PAGE: &str = include_str!("../../../../docs/method.md");

/// Where figures that decide something stand. The rest (solving, files, sums) decides nothing about a house.
const LOOKED_AT: [&str; 11] = [
    "advice/src",
    "coax/src/trade.rs",
    "coax/src/model/amplifier.rs",
    "coax/src/model/cable.rs",
    "coax/src/model/splitter.rs",
    "coax/src/link",
    "coax/src/rated",
    "house/src/record/adapter_link.rs",
    "house/src/record/possible.rs",
    "house/src/record/run.rs",
    "label/src",
];

/// Numbers of the program that say nothing about a house: keys, bounds of memory, what rounding leaves.
const NO_FIGURES: [&str; 12] = [
    "assemble::MOST_DOUBTS",
    "bits::MOST_BITS",
    "entry_levels::SAME_MHZ",
    "known_rates::MOST_KEPT",
    "loading::NO_BITS",
    "noise::THERMAL_PER_HERTZ",
    "normalise::LONGEST_TEXT",
    "prospect::HOUSES_AT_ONCE",
    "throws::MODEL_ERROR_KEY",
    "together::DRAWS_AT_ONCE",
    "together::MOST_WAVES_KEPT",
    "version_net::MOST_KEPT",
];

/// Names in backquotes at the beginning of a table's row, with the cell beside.
fn rows(page: &str) -> impl Iterator<Item = (&str, &str)> {
    page.lines().filter_map(|line| {
        let (name, rest) = line.strip_prefix("| `")?.split_once("` | ")?;
        Some((name, rest.split(" | ").next().unwrap_or_default()))
    })
}

/// The numbers in a text, in order: of `Megahertz(1_125.0)` one, of `CABLE_TOP_4_0` none.
fn numbers(text: &str) -> Vec<f64> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(start) = rest.find(|c: char| c.is_ascii_alphanumeric() || c == '_') {
        let is_negative = rest[..start].ends_with('-');
        let word = &rest[start..];
        let within = |(at, c): (usize, char)| {
            let sign_of_power =
                c == '-' && word[..at].ends_with('e') && word.starts_with(|c: char| c.is_ascii_digit());
            c.is_ascii_alphanumeric() || matches!(c, '_' | '.') || sign_of_power
        };
        let end = word.char_indices().find(|at| !within(*at)).map_or(word.len(), |(at, _)| at);
        let one = word[..end].split("..").next().unwrap_or_default();
        rest = &word[one.len().max(1)..];
        if let Ok(number) = one.trim_end_matches('.').replace('_', "").parse::<f64>() {
            found.push(if is_negative { -number } else { number });
        }
    }
    found
}

fn files(place: &Path, found: &mut Vec<PathBuf>) -> io::Result<()> {
    if place.is_dir() {
        for entry in fs::read_dir(place)? {
            files(&entry?.path(), found)?;
        }
    } else if place.extension().is_some_and(|extension| extension == "rs") {
        found.push(place.to_owned());
    }
    Ok(())
}

/// Every constant of a number, or of several, by file and name; tests have none that count.
fn constants() -> io::Result<BTreeMap<String, Vec<f64>>> {
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut all = Vec::new();
    for place in LOOKED_AT {
        files(&core.join(place), &mut all)?;
    }
    let mut found = BTreeMap::new();
    for path in all.into_iter().filter(|path| !path.ends_with("tests.rs")) {
        let text = fs::read_to_string(&path)?;
        let file = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        found.extend(constants_of(&text).map(|(name, figures)| (format!("{file}::{name}"), figures)));
    }
    Ok(found)
}

/// Those of one file, without its tests.
fn constants_of(text: &str) -> impl Iterator<Item = (&str, Vec<f64>)> {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    code.match_indices("const ").filter_map(|(at, word)| {
        let before = code[..at].rsplit('\n').next().unwrap_or_default().trim();
        let (name, rest) = code[at + word.len()..].split_once(": ")?;
        let (kind, value) = rest.split_once('=')?;
        let is_name = name.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit() || c == '_');
        let kinds = ["f64", "u8", "u32", "usize", "Megahertz", "Decibels", "Metres", "Celsius"];
        let is_number = !kind.contains('&') && kinds.iter().any(|one| kind.contains(one));
        let figures = numbers(value.split(';').next().unwrap_or_default());
        let is_one = (before.is_empty() || before.starts_with("pub")) && is_name && is_number;
        (is_one && !figures.is_empty()).then_some((name, figures))
    })
}

#[test]
fn every_estimate_stands_in_the_method_and_no_other() {
    let (_, rest) = PAGE.split_once("<!-- estimates -->").unwrap();
    let (table, _) = rest.split_once("<!-- /estimates -->").unwrap();
    let told: BTreeSet<_> = rows(table).map(|(name, _)| name).collect();
    let known: BTreeSet<_> =
        coax::estimates::ALL.iter().copied().flatten().map(|estimate| estimate.name).collect();
    assert_eq!(told, known, "tests/sources writes the table");
}

#[test]
fn every_constant_stands_in_the_method_with_its_value_and_no_other() {
    let (_, section) = PAGE.split_once("<!-- /estimates -->").unwrap();
    let told: BTreeMap<_, _> = rows(section)
        .filter(|(name, _)| name.contains("::"))
        .map(|(name, cell)| (name.to_owned(), numbers(cell)))
        .collect();
    let mut known = constants().unwrap();
    assert!(known.len() > 100, "{}", known.len());
    for name in NO_FIGURES {
        assert!(known.remove(name).is_some(), "{name} is gone");
    }
    let untold: Vec<_> = known.keys().filter(|name| !told.contains_key(*name)).collect();
    assert!(untold.is_empty(), "docs/method.md, section 8, does not have {untold:?}");
    for (name, cell) in &told {
        let figures =
            known.get(name).unwrap_or_else(|| panic!("docs/method.md has {name}, the code has not"));
        assert!(cell.starts_with(figures), "docs/method.md has {cell:?} for {name}, the code {figures:?}");
    }
}

#[test]
fn numbers_are_read_as_they_are_written() {
    assert_eq!(numbers("Megahertz(1_125.0)"), [1125.0]);
    assert_eq!(numbers("[(5.0, -42.0)]"), [5.0, -42.0]);
    assert_eq!(numbers("2.0..=20.0"), [2.0, 20.0]);
    assert_eq!(numbers("1.380_649e-23 J/K"), [1.380_649e-23]);
    assert_eq!(numbers("CABLE_TOP_4_0.value() f64"), [0.0; 0]);
    assert_eq!(numbers("0.000245 dB/100 ft."), [0.000_245, 100.0]);
}
