//! What a change says before hands go to the wall.

use advice::forecast::Options as Draws;
use advice::worklist::{Options, worklist};
use house::record::{CableKind, ChangeKind, Connector, ModemBands, ModemGeneration, Plugged, ServiceKind};
use houses::change_cases::cases;
use houses::{House, good_house, part_id};
use telling::words::{Figures, Language};

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
/// data sheet, 2019, N7Alpha/coaxial-cable-network).
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
            let bought = advice::worklist::effort(change, &survey).parts;
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

/// Not every adapter's through port keeps the network's band from what hangs on it.
#[test]
fn a_through_port_is_trusted_where_its_manual_says_so() {
    let survey = good_house().at("O2").plugged(&[Plugged::Tv]).survey();
    let change = ChangeKind::FilterAtDevice { outlet: part_id(&survey, "O2") };
    let how = english().say(&change.phrase(&survey).attribute("how"));
    assert!(how.contains("only where the adapter’s manual says"), "{how}");
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
        let bought = advice::worklist::effort(change, &survey).parts;
        assert_eq!(bought.iter().map(|part| part.count).sum::<u64>(), poor);
        let after = advice::worklist::applied(change, &survey);
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

#[test]
fn every_step_says_all_of_it() {
    let language = english();
    // Few draws: what is asked is whether a step says all of it, not its last megabit.
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let quick = Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() };
    for case in cases() {
        for step in worklist(&case.there.survey(), &quick).expect("a sound survey").steps {
            let phrase = step.change.phrase(&step.before);
            for attribute in ["why", "how", "check", "back"] {
                let said = language.say_if_known(&phrase.attribute(attribute));
                let said = said.unwrap_or_else(|| panic!("{} has no .{attribute}", phrase.id));
                assert!(said.ends_with(['.', '?']) && !said.contains(['{', '}']), "{said}");
                assert!(
                    !said.to_lowercase().contains("remove the ground") && !said.contains("measure the v"),
                    "{said}"
                );
            }
            let what = language.say(&phrase);
            assert!(what.ends_with('.') && !what.contains(['{', '}']), "{what}");
            for needed in &step.effort.parts {
                let said = language.say(&needed.what);
                assert!(!said.contains(['{', '}']) && !said.starts_with("need-"), "{said}");
            }
            for words in step.service_words() {
                let said = language.say(&words);
                assert!(!said.contains(['{', '}']) && !said.starts_with("service-change"), "{said}");
            }
        }
    }
}
