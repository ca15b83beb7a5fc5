//! What adapters show over a clean path tells of the adapters: more of it than expected is no better wiring.
#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

use advice::finding::{FindingKind, findings};
use advice::forecast::{Options, PathForecast, forecast};
use house::record::{CableKind, HowMeasured, PartKind, Plugged, ReadingKind, Sharing, Survey, TestReach};
use houses::{House, good_house, part_id};

fn path(survey: &Survey, outlet: &str) -> PathForecast {
    let told = forecast(survey, &Options::default()).unwrap();
    told.path(part_id(survey, outlet)).unwrap().clone()
}

/// A house of 1.1 adapters, with so much 59-series cable to the office.
fn first_generation(metres: f64) -> House {
    let adapters = |house: House, tag: &str| {
        house.at(tag).with(|outlet| {
            if let Some(adapter) = &mut outlet.adapter {
                adapter.version = Some("1.1".into());
            }
        })
    };
    adapters(adapters(good_house(), "O1"), "O2").at("O2").over(CableKind::FiftyNine, metres)
}

/// Whether a PHY rate read at O2 counts as more than what is known of the wiring explains.
fn is_better(house: House, mbps: f64) -> bool {
    let page = Some(HowMeasured::new(TestReach::AdapterPage, false));
    let survey = house.at("O2").reads_how(ReadingKind::PhyRate { mbps }, page).survey();
    let told = forecast(&survey, &Options::default()).unwrap();
    findings(&survey, Some(&told)).iter().any(|found| found.kind == FindingKind::MeasuredAboveForecast)
}

/// 275 or more by the top row of the MoCA 1.1 Reference Specification's Table 1-2; 304 worked out (`estimates.rs`).
#[test]
fn a_reading_at_the_ceiling_says_nothing_of_the_wiring() {
    let near = path(&first_generation(10.0).survey(), "O2");
    assert!(near.is_at_ceiling() && near.phy_down.high > 275.0, "{near:?}");
    for mbps in [250.0, 275.0, 304.0] {
        assert!(!is_better(first_generation(10.0), mbps), "{mbps}");
    }
    // As near as can be: a way so long that the cable holds the rate.
    let far = || first_generation(140.0);
    assert!(!path(&far().survey(), "O2").is_at_ceiling());
    assert!(is_better(far(), 275.0), "{:?}", path(&far().survey(), "O2").phy_down);
    // What no such adapter can show is told.
    assert!(is_better(first_generation(10.0), 400.0));
}

/// How an adapter's own socket divides is nowhere written; what a small splitter loses stands on it.
#[test]
fn a_through_port_is_not_taken_for_a_splitter() {
    let shared = |sharing| {
        let house = good_house().at("O2").plugged(&[Plugged::Tv]).with(|outlet| {
            assert_eq!(outlet.kind, PartKind::Outlet);
            outlet.sharing = Some(sharing);
        });
        let survey = house.survey();
        // As many draws as tell two ranges apart of which one is a little wider.
        let many = Options { draws: 1_000, points: 45, settles: false, ..Options::default() };
        let loss = forecast(&survey, &many).unwrap().path(part_id(&survey, "O2")).unwrap().loss;
        (loss.likely, loss.high - loss.low)
    };
    let (splitter, port) = (shared(Sharing::Splitter), shared(Sharing::ThroughPort));
    assert!(port.1 > splitter.1 && port.0 < splitter.0, "{splitter:?} {port:?}");
}
