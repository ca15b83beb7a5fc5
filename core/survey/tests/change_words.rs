//! What a change says before hands go to the wall.
#![allow(clippy::expect_used, clippy::panic, reason = "a failed test is what is wanted")]

mod house;

use house::{House, good_house, part_id};
use survey::record::ChangeKind;
use survey::record::{CableKind, Connector, ModemBands, ModemGeneration, Plugged, ServiceKind};
use survey::words::{Figures, Language};

fn english() -> Language {
    Language::english(Figures::default())
}

fn with_internet(generation: Option<ModemGeneration>, top_mhz: Option<f64>) -> House {
    good_house().about_service(ServiceKind::CableInternet, move |service| {
        service.top_mhz = top_mhz;
        service.modem = Some(ModemBands { generation, upstream_top_mhz: None });
    })
}

/// Modems of DOCSIS 3.1 may listen to 1218 MHz (broadbandtechreport.com, 2015-06-03); such filters pass 1002 MHz (a
/// published data sheet, 2019).
#[test]
fn a_filter_asks_the_provider_first_where_the_service_may_reach_above_it() {
    let cases = [
        (Some(with_internet(Some(ModemGeneration::V3_1), None)), true),
        (Some(with_internet(Some(ModemGeneration::V4_0), None)), true),
        (Some(with_internet(None, None)), true),
        (Some(with_internet(Some(ModemGeneration::V3_0), None)), false),
        (Some(with_internet(Some(ModemGeneration::V3_1), Some(862.0))), false),
        // No cable internet at all.
        (None, false),
    ];
    let language = english();
    for (house, asks) in cases {
        let of = house.is_some();
        let survey = house.unwrap_or_else(good_house).at("O2").plugged(&[Plugged::Modem]).survey();
        let (behind, outlet) = (part_id(&survey, "G1"), part_id(&survey, "O2"));
        for change in [ChangeKind::AddEntryFilter { behind }, ChangeKind::FilterAtDevice { outlet }] {
            let how = language.say(&change.phrase(&survey).attribute("how"));
            assert_eq!(how.starts_with("First ask the provider"), asks, "{of} {how}");
            assert!(how.contains("crew the filter to"), "{how}");
            let bought = survey::worklist::effort(change, &survey).parts;
            let bought = language.say(&bought.first().expect("a filter").what);
            assert_eq!(bought.contains("ask the provider first"), asks, "{bought}");
        }
    }
}

/// A filter at a TV has nothing to do with the internet.
#[test]
fn a_filter_at_a_tv_asks_nobody() {
    let survey = with_internet(None, None).at("O2").plugged(&[Plugged::Tv]).survey();
    let change = ChangeKind::FilterAtDevice { outlet: part_id(&survey, "O2") };
    assert!(!english().say(&change.phrase(&survey).attribute("how")).contains("provider"));
}

#[test]
fn only_poor_connectors_are_renewed() {
    let cases = [
        (Connector::Corroded, Connector::Compression, 1),
        (Connector::Crimp, Connector::TwistOn, 1),
        (Connector::HandTight, Connector::PushOn, 2),
    ];
    for (near, far, poor) in cases {
        let house = good_house().at("O2").over(CableKind::Six, 10.0).run(|run| {
            (run.connector_near, run.connector_far) = (near, far);
        });
        let survey = house.survey();
        let to = part_id(&survey, "O2");
        let change = ChangeKind::RenewConnectors { to };
        let bought = survey::worklist::effort(change, &survey).parts;
        assert_eq!(bought.iter().map(|part| part.count).sum::<u64>(), poor);
        let after = survey::worklist::applied(change, &survey);
        let run = after.wiring.feed(to).and_then(|feed| after.runs.get(&feed.run?)).expect("a run");
        // A sound crimped connector stays.
        let renewed = |was: Connector| if was.is_poor() { Connector::Compression } else { was };
        assert_eq!((run.connector_near, run.connector_far), (renewed(near), renewed(far)));
        let how = english().say(&change.phrase(&survey).attribute("how"));
        for tool in ["stripper", "compression tool", "Somebody"] {
            assert!(how.contains(tool), "{how}");
        }
    }
}
