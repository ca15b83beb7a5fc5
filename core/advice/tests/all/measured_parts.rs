//! Parts measured by an instrument: how they are kept, and where they count.
#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fmt::Write;

use advice::finding::{FindingKind, findings};
use facts::fact::{AuthorId, Edit, MAX_VALUE_BYTES, SubjectId};
use facts::store::Store;
use house::record::{ChangeKind, MeasurementIntake, Survey, field, fold, take_in};
use houses::{House, good_house, part_id};
use serde_json::json;

/// A two-way splitter of our own invention, 6 dB a leg and 20 dB between the legs, from 5 to 1700 MHz.
fn file() -> String {
    let mut text = String::from("! by somebody\n# MHz S RI R 75\n");
    for mhz in 5..=1700 {
        writeln!(text, "{mhz} 0.001 0 0.5 0 0.5 0\n0.5 0 0.001 0 0.1 0\n0.5 0 0.1 0 0.001 0").unwrap();
    }
    text
}

fn taken() -> MeasurementIntake {
    take_in("split.s3p", file().as_bytes()).unwrap()
}

/// A survey of one splitter with these edits beside, read back from the disk.
fn kept(edits: &[Edit]) -> (Survey, SubjectId) {
    let home = tempfile::TempDir::new().unwrap();
    let folder = home.path().join("house.legwork");
    let splitter = SubjectId::random();
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let own = [
        Edit::new(splitter, field::IS, "part"),
        Edit::new(splitter, field::KIND, "splitter"),
        Edit::new(splitter, field::RATING, json!({"legs": 2})),
        Edit::new(splitter, field::MEASUREMENT, json!(taken().id)),
    ];
    store.write(&[&own, edits].concat()).unwrap();
    drop(store);
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    (fold(store.ledger(), store.survey_id()).unwrap(), splitter)
}

/// What the file's bytes give at once is what its pieces give after reopening; no piece is longer than a fact.
#[test]
fn a_measurement_comes_back_whole() {
    let taken = taken();
    assert!(taken.edits.len() > 10, "the file is to fill several facts");
    for edit in &taken.edits {
        assert!(edit.value.to_string().len() <= MAX_VALUE_BYTES);
        assert!(!edit.value.to_string().contains("somebody"));
    }
    let (survey, splitter) = kept(&taken.edits);
    assert_eq!(survey.unread, []);
    assert_eq!(survey.parts[&splitter].measured.as_ref(), Some(&taken.part));
}

/// A text that lacks a piece, or has another one, is not taken for the measurement: the part counts as rated.
#[test]
fn a_measurement_that_is_not_whole_does_not_count() {
    let mut changed = taken().edits;
    let last = changed.len() - 1;
    changed[last].value = json!("1700 0 0 0.9 0 0.9 0\n0.9 0 0 0 0 0\n0.9 0 0 0 0 0\n");
    for edits in [&taken().edits[..last], &changed, &[]] {
        let (survey, splitter) = kept(edits);
        assert_eq!(survey.parts[&splitter].measured, None);
        assert!(survey.unread.contains(&(splitter, field::MEASUREMENT.into())));
    }
}

#[test]
fn the_same_file_is_the_same_record_and_another_is_not() {
    let other = take_in("split.s3p", file().replace("0.1 0", "0.2 0").as_bytes()).unwrap();
    assert_eq!(taken().id, taken().id);
    assert_ne!(taken().id, other.id);
    let commented = file().replace("# MHz", "! another day\n# MHz");
    assert_eq!(take_in("split.s3p", commented.as_bytes()).unwrap().id, taken().id);
}

fn measured_house() -> House {
    good_house().at("S1").with(|splitter| {
        splitter.rating.band = None;
        splitter.measured = Some(taken().part);
    })
}

/// A splitter whose label nobody read is a finding; one that was measured is known.
#[test]
fn a_measured_splitter_needs_no_label() {
    let unknown = |house: House| {
        let survey = house.survey();
        findings(&survey, None).iter().any(|found| found.kind == FindingKind::SplitterLabelUnknown)
    };
    assert!(unknown(measured_house().with(|splitter| splitter.measured = None)));
    assert!(!unknown(measured_house()));
}

/// What replaces a measured part was not measured.
#[test]
fn a_new_part_has_not_been_measured() {
    let survey = measured_house().survey();
    let splitter = part_id(&survey, "S1");
    assert!(survey.parts[&splitter].measured.is_some());
    let after = advice::worklist::applied(ChangeKind::SwapSplitter { splitter, legs: 2 }, &survey);
    assert_eq!(after.parts[&splitter].measured, None);
}
