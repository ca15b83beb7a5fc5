//! Every kind of finding appears where it must and nowhere else.

use std::collections::BTreeSet;

use advice::finding::{FindingKind, Place, Weight, findings};
use advice::forecast::{Options, Reach, forecast};
use house::rating::PartRating;
use house::record::{
    EntryKind, EntryState, HowMeasured, Plugged, ReadingKind, ServiceKind, Survey, TestReach,
};
use houses::finding_cases::{Seen, cases};
use houses::{House, good_house, part_id};

fn kinds(seen: &Seen) -> BTreeSet<FindingKind> {
    findings(&seen.survey, seen.forecast.as_ref()).iter().map(|finding| finding.kind).collect()
}

fn kinds_of(house: House) -> Vec<FindingKind> {
    findings(&house.survey(), None).iter().map(|finding| finding.kind).collect()
}

#[test]
fn every_kind_has_a_case() {
    let covered: BTreeSet<_> = cases().iter().map(|case| case.kind).collect();
    let missing: Vec<_> = FindingKind::ALL.iter().filter(|kind| !covered.contains(kind)).collect();
    assert!(missing.is_empty(), "no case for {missing:?}");
}

#[test]
fn every_kind_appears_where_it_must_and_not_where_it_must_not() {
    for case in cases() {
        let there = kinds(&case.there);
        let absent = kinds(&case.absent);
        assert!(there.contains(&case.kind), "{:?} is missing; found {there:?}", case.kind);
        assert!(!absent.contains(&case.kind), "{:?} is there; found {absent:?}", case.kind);
    }
}

/// A PHY rate is held against the forecast made for the same house, whatever the way; one of a radio link is not.
#[test]
fn a_phy_rate_is_held_against_the_forecast() {
    let found = |share: f64, over_radio: bool| {
        let quick = Options { draws: 16, seed: 1, points: 89, settles: false };
        let told = forecast(&good_house().survey(), &quick).expect("a sound survey");
        let office = part_id(&good_house().survey(), "O2");
        let Some(Reach::Estimated(path)) = told.room(office).map(|room| &room.reach) else {
            panic!("no path")
        };
        let measured = ReadingKind::PhyRate { mbps: share * path.phy_down.likely };
        let how = Some(HowMeasured::new(TestReach::AdapterPage, over_radio));
        let survey = good_house().at("O2").reads_how(measured, how).survey();
        findings(&survey, Some(&told)).iter().map(|finding| finding.kind).collect::<Vec<_>>()
    };
    assert_eq!(found(1.0, false), []);
    assert_eq!(found(0.4, false), [FindingKind::MeasuredBelowForecast]);
    assert_eq!(found(2.0, false), [FindingKind::MeasuredAboveForecast]);
    assert_eq!(found(0.4, true), []);
}

#[test]
fn a_house_in_good_order_has_no_finding() {
    assert_eq!(kinds_of(good_house()), []);
}

#[test]
fn an_empty_survey_says_nothing() {
    assert_eq!(kinds_of(House::new()), []);
}

#[test]
fn where_nothing_is_known_only_notes_are_made() {
    // Parts are there, traced; nobody looked at any label, leg, cable or device.
    let house = House::new()
        .entry("E1", EntryKind::Unknown)
        .with(|entry| entry.entry_state = EntryState::Unknown)
        .splitter("S1", 4)
        .from("E1", 1)
        .outlet("O1", "Study")
        .from("S1", 1)
        .outlet("O2", "Office")
        .from("S1", 2);
    let found = findings(&house.survey(), None);
    assert!(!found.is_empty());
    for finding in found {
        assert_eq!(finding.weight(), Weight::Note, "{:?}", finding.kind);
    }
}

#[test]
fn the_place_is_the_part_it_speaks_of() {
    let survey = good_house().at("S1").made_for(5.0, 1000.0).survey();
    let found = findings(&survey, None);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].at, [Place::Part(part_id(&survey, "S1"))]);
}

#[test]
fn the_order_is_by_weight_then_kind_then_tag() {
    let house = good_house()
        .without("F1")
        .splitter("S10", 2)
        .made_for(5.0, 1000.0)
        .from("S1", 2)
        .splitter("S2", 2)
        .made_for(5.0, 1000.0)
        .from("S10", 1)
        .at("O2")
        .from("S2", 1)
        .outlet("O3", "Den")
        .from("S10", 2)
        .adapter("2.5")
        .outlet("O4", "Hall")
        .from("S2", 2)
        .adapter("2.5");
    let survey = house.survey();
    let found = findings(&survey, None);
    let weights: Vec<_> = found.iter().map(advice::finding::Finding::weight).collect();
    assert!(weights.is_sorted(), "{weights:?}");
    let bands: Vec<_> =
        found.iter().filter(|f| f.kind == FindingKind::SplitterNotForBand).map(|f| f.at[0]).collect();
    assert_eq!(bands, ["S2", "S10"].map(|tag| Place::Part(part_id(&survey, tag))));
}

#[test]
fn an_unknown_entry_never_gets_a_filter_ordered_outright() {
    // It may be a dish's, which a filter would cut.
    let house = good_house().without("F1").at("E1").with(|entry| entry.entry_kind = EntryKind::Unknown);
    let found = kinds_of(house);
    assert!(found.contains(&FindingKind::EntryFilterIfConnected));
    assert!(!found.contains(&FindingKind::EntryFilterMissing));
}

#[test]
fn a_ground_block_with_a_filter_built_in_is_a_filter() {
    let house = good_house().without("F1").at("G1").with(|block| block.rating.rejection_db = Some(70.0));
    assert_eq!(kinds_of(house), []);
}

#[test]
fn no_adapter_and_no_wish_means_no_filter_finding() {
    let bare = |house: House, tag: &str| house.at(tag).with(|outlet| outlet.adapter = None);
    let house = bare(bare(good_house().without("F1"), "O1"), "O2");
    assert!(!kinds_of(house.clone()).contains(&FindingKind::EntryFilterMissing));
    assert!(kinds_of(house.wish("Office", 500.0)).contains(&FindingKind::EntryFilterMissing));
}

#[test]
fn a_version_1_0_adapter_lowers_the_number_allowed() {
    // 8 nodes as soon as one is 1.0: from memory.
    let with = |version: &str| {
        let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 9);
        let house = (3..=9).fold(house, |house, leg| {
            house.outlet(&format!("O{leg}"), &format!("Room {leg}")).from("S1", leg).adapter("2.5")
        });
        kinds_of(house.at("O9").adapter(version)).contains(&FindingKind::TooManyAdapters)
    };
    assert!(with("1.0"));
    assert!(!with("1.1"));
}

#[test]
fn what_the_provider_runs_is_never_told_to_go() {
    let house = good_house()
        .service(ServiceKind::ProviderNetwork, None)
        .service(ServiceKind::FibreLink, None)
        .at("O2")
        .plugged(&[Plugged::TvBox]);
    // Nothing else than that they are there, and that their channels would be good to know.
    let expected = [
        FindingKind::ProviderNetwork,
        FindingKind::FibreLink,
        FindingKind::NetworkChannelsUnknown,
        FindingKind::NetworkChannelsUnknown,
    ];
    assert_eq!(kinds_of(house), expected);
}

#[test]
fn the_providers_boxes_count_as_nodes() {
    // 16 nodes: TR-181 Issue 2, type MocaNodeID.
    let with = |nodes| {
        kinds_of(good_house().about_service(ServiceKind::ProviderNetwork, |service| {
            service.network = Some(house::record::OtherNetwork { nodes, ..Default::default() });
        }))
        .contains(&FindingKind::TooManyAdapters)
    };
    assert!(with(15));
    assert!(!with(14));
}

#[test]
fn a_modem_on_the_port_that_is_not_amplified_returns_freely() {
    let on_port = |port| {
        let house = good_house()
            .amplifier("A1", 1)
            .with(|amplifier| {
                amplifier.rating.moca_bypass = Some(true);
                amplifier.rating.modem_port = true;
                amplifier.rating.return_high_mhz = Some(42.0);
            })
            .from("F1", 1)
            .at("S1")
            .from("A1", 1)
            .outlet("O3", "Hall")
            .from("A1", port)
            .plugged(&[Plugged::Modem])
            .at("O1")
            .plugged(&[])
            .about_service(ServiceKind::CableInternet, |service| {
                service.modem =
                    Some(house::record::ModemBands { generation: None, upstream_top_mhz: Some(85.0) });
            });
        kinds_of(house).contains(&FindingKind::AmplifierReturnNarrow)
    };
    assert!(!on_port(2));
    assert!(on_port(1));
}

#[test]
fn the_same_house_gives_the_same_findings() {
    let twice = |survey: &Survey| (findings(survey, None), findings(&survey.clone(), None));
    for case in cases() {
        let (one, two) = twice(&case.there.survey);
        assert_eq!(one, two);
    }
}

#[test]
fn labels_lead_to_findings() {
    let with_label = |text: &str| {
        kinds_of(good_house().at("S1").with(|splitter| splitter.rating = PartRating::default()).label(text))
    };
    assert_eq!(with_label("2-WAY SPLITTER 5-1000MHz -3.5dB"), [FindingKind::SplitterNotForBand]);
    assert_eq!(with_label("2-WAY SPLITTER 5-1675MHz -3.7dB"), []);
    assert_eq!(with_label("2-WAY SPLITTER"), [FindingKind::SplitterLabelUnknown]);
}

#[test]
fn a_filter_behind_a_split_parts_rooms_whatever_comes_in() {
    let parted = || good_house().without("F1").filter("F2").from("S1", 2).at("O2").from("F2", 1);
    let cut_off = parted().at("E1").with(|entry| entry.entry_state = EntryState::CutOff);
    for house in [parted(), cut_off] {
        assert_eq!(kinds_of(house), [FindingKind::FilterAfterSplit]);
    }
}

#[test]
fn a_filter_of_its_own_for_the_modem_does_not_guard_the_entry() {
    let house = good_house()
        .without("F1")
        .at("S1")
        .with(|splitter| splitter.rating.legs = 3)
        .filter("F2")
        .from("S1", 3)
        .outlet("O3", "Den")
        .from("F2", 1)
        .plugged(&[Plugged::Modem]);
    assert_eq!(kinds_of(house), [FindingKind::EntryFilterMissing]);
}
