//! The order of the work makes sense as a whole: nothing is bought that a later step throws out.

use advice::worklist::{Options, worklist};
use house::record::{CableKind, ChangeKind, EntryKind, HowMeasured, ReadingKind, TestReach};
use houses::House;

/// A four-way for the band, and behind one of its legs a two-way that is not made for it.
fn two_in_a_row(den: f64, guest: f64) -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .filter("F1")
        .from("E1", 1)
        .splitter("S1", 4)
        .made_for(5.0, 2300.0)
        .from("F1", 1)
        .outlet("O1", "Hall")
        .from("S1", 1)
        .over(CableKind::Six, 12.0)
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Living room")
        .from("S1", 2)
        .over(CableKind::Six, 10.0)
        .adapter("2.5")
        .outlet("O3", "Bedroom")
        .from("S1", 3)
        .over(CableKind::Six, 15.0)
        .adapter("2.5")
        .splitter("S2", 2)
        .made_for(5.0, 1000.0)
        .from("S1", 4)
        .over(CableKind::Six, 0.3)
        .outlet("O4", "Den")
        .from("S2", 1)
        .over(CableKind::Six, den)
        .adapter("2.5")
        .wish("Den", 2300.0)
        .outlet("O5", "Guest room")
        .from("S2", 2)
        .over(CableKind::FiftyNine, guest)
        .adapter("2.5")
        .wish("Guest room", 2300.0)
}

#[test]
fn no_splitter_is_swapped_and_then_thrown_out() {
    // Lengths at which each of the two changes is worth its work on its own.
    for (den, guest) in [(20.0, 50.0), (60.0, 90.0), (100.0, 90.0)] {
        let survey = two_in_a_row(den, guest).survey();
        let steps = worklist(&survey, &Options::default()).unwrap().steps;
        let changes: Vec<_> = steps.iter().map(|step| step.change).collect();
        let merged = changes.iter().find_map(|change| match *change {
            ChangeKind::MergeSplitters { upper, lower, .. } => Some([upper, lower]),
            _ => None,
        });
        let merged = merged.unwrap_or_else(|| panic!("nothing is merged: {changes:?}"));
        let swaps = |change: &ChangeKind| matches!(change, ChangeKind::SwapSplitter { splitter, .. } if merged.contains(splitter));
        assert!(!changes.iter().any(swaps), "{changes:?}");
    }
}

/// A splitter not made for the band that the forecast trusts, on short cables.
fn trusted() -> House {
    House::new()
        .entry("E1", EntryKind::Cable)
        .filter("F1")
        .from("E1", 1)
        .splitter("S1", 2)
        .made_for(5.0, 1000.0)
        .from("F1", 1)
        .outlet("O1", "Hall")
        .from("S1", 1)
        .over(CableKind::Six, 5.0)
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::Six, 5.0)
        .adapter("2.5")
        .wish("Office", 300.0)
}

#[test]
fn a_test_below_the_forecast_puts_the_doubtful_splitter_on_the_list() {
    let swaps = |house: House| {
        let steps = worklist(&house.survey(), &Options::default()).unwrap().steps;
        steps.iter().any(|step| matches!(step.change, ChangeKind::SwapSplitter { .. }))
    };
    let tested = |mbps: f64| {
        let measured = ReadingKind::Throughput { down_mbps: mbps, up_mbps: mbps };
        trusted().at("O2").reads_how(measured, Some(HowMeasured::new(TestReach::House, false)))
    };
    assert!(!swaps(trusted()));
    assert!(!swaps(tested(2300.0)));
    assert!(swaps(tested(210.0)));
}
